/** How wide a plot may be and how high its type is, followed while the page turns, text grows or a print is made. */
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { PlotSize } from './plot-spec';

/** The width of a narrow phone between its margins, until the page has been measured. */
const unmeasured: PlotSize = { width: 328, text: 16 };

/** On paper: 9 pt type, within the margins of A4 and Letter. CSS reckons a pt as 4/3 px. */
const onPaper: PlotSize = { width: 640, text: 12 };

/** --text-second, in px; in very large text on a narrow page it stops while the plot still has room beside its words. */
function textOf(width: number): number {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return Math.min((Number.isFinite(rem) ? rem : 18) * 0.875, width * 0.085);
}

function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const query = window.matchMedia('print');
    const follow = () => setPrinting(query.matches);
    const before = () => setPrinting(true);
    const after = () => setPrinting(false);
    query.addEventListener('change', follow);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      query.removeEventListener('change', follow);
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}

/** The size of the plot in the element; the same object as long as nothing changed. */
export function usePlotSize(element: RefObject<HTMLElement | null>): PlotSize {
  const [size, setSize] = useState(unmeasured);
  const printing = usePrinting();
  useLayoutEffect(() => {
    const { current } = element;
    if (!current || typeof ResizeObserver === 'undefined') return;
    const measure = () => {
      const width = Math.floor(current.clientWidth);
      const text = textOf(width);
      if (width > 0) setSize((last) => (last.width === width && last.text === text ? last : { width, text }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, [element]);
  return printing ? onPaper : size;
}
