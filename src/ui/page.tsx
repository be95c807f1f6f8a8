/** The frame of every page: top line, title that takes the focus, what to look at and read, what to touch, the bar. */
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { type KeptPlace, placeOnPage, returnTo } from './kept-place';
import styles from './page.module.css';
import { TopLine, type TopLineProps } from './top-line';

export type PageProps = {
  readonly title: ComponentChildren;
  readonly bar: ComponentChildren;
  readonly children?: ComponentChildren;
  readonly top?: TopLineProps | undefined;
  /** Under the title. */
  readonly second?: ComponentChildren;
  /** Right of the title, e.g. the days left. */
  readonly aside?: ComponentChildren;
  /** Between top line and title: task line and pegs, the octagon of a stop. */
  readonly above?: ComponentChildren;
  /** A strip across the very top, such as `<DemoRibbon>`. */
  readonly ribbon?: ComponentChildren;
  /** At the thumb, fixed above the bar: the primary block and its doors. */
  readonly actions?: ComponentChildren;
  /** Name of that part for screen readers. */
  readonly actionsLabel?: string | undefined;
  readonly voice?: 'title' | 'question' | undefined;
  /** `stop` puts the head on red: stop pages and emergency cards only. */
  readonly tone?: 'paper' | 'stop' | undefined;
  /** Where the person was when they left this page, and where to keep it; absent for pages that always begin at their start. */
  readonly kept?: { readonly read: () => KeptPlace | null; readonly keep: (place: KeptPlace | null) => void };
  /** When it changes (the route, the question) focus goes to the title and the page to its start. */
  readonly focusKey?: string | undefined;
  /** `spread` puts what is to be touched at the bottom of a page that has air between. */
  readonly main?: 'flow' | 'spread' | undefined;
  /** Puts the title inside something drawn, such as a `<Tag>`. */
  readonly placeTitle?: ((heading: ComponentChildren) => ComponentChildren) | undefined;
};

/** Room that stays for reading, in rem; where a foot would leave less it scrolls with the page and only its bar stays. */
const leastRoom = {
  paper: 12,
  /** On an emergency card the call stays at the thumb, whatever the size of text. */
  stop: 4,
} as const;

/** Tells the page how much of it the foot covers, so that a focused control scrolls clear of it. */
function useFootHeight(tone: keyof typeof leastRoom) {
  const foot = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = foot.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const parts = [...element.children].filter((child) => child instanceof HTMLElement);
    const measure = () => {
      const whole = parts.reduce((sum, part) => sum + part.offsetHeight, 0);
      const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 18;
      const tall = parts.length > 1 && window.innerHeight - whole < leastRoom[tone] * rem;
      element.toggleAttribute('data-tall', tall);
      const covered = tall ? (parts.at(-1)?.offsetHeight ?? 0) : whole;
      document.documentElement.style.setProperty('--foot', `${covered}px`);
    };
    const observer = new ResizeObserver(measure);
    for (const part of parts) observer.observe(part);
    window.addEventListener('resize', measure);
    return () => {
      observer.disconnect();
      window.removeEventListener('resize', measure);
    };
  });
  return foot;
}

/** Characters that fill two lines of a small phone in the largest letters; a longer question gives way to what is looked at. */
const twoLines = 26;

const questionClass = (asked: ComponentChildren): string =>
  `${styles.question} ${typeof asked === 'string' && asked.length > twoLines ? styles.long : ''}`;

export function Page(props: PageProps) {
  const title = useRef<HTMLHeadingElement>(null);
  const foot = useFootHeight(props.tone ?? 'paper');
  const { kept } = props;
  const opened = useRef(false);
  useEffect(() => {
    const place = opened.current ? null : kept?.read();
    opened.current = true;
    if (place) returnTo(place);
    else window.scrollTo(0, 0);
    title.current?.focus({ preventScroll: true });
  }, [props.focusKey]);
  useLayoutEffect(() => () => kept?.keep(placeOnPage()), [kept]);
  const heading = (
    <h1 ref={title} tabIndex={-1} class={props.voice === 'question' ? questionClass(props.title) : undefined}>
      {props.title}
    </h1>
  );
  return (
    <div class={styles.page}>
      {props.ribbon}
      <header class={`${styles.head} ${props.tone === 'stop' ? styles.stop : ''}`}>
        {props.top && <TopLine {...props.top} />}
        {props.above}
        <div class={styles.titleLine}>
          {props.placeTitle ? props.placeTitle(heading) : heading}
          {props.aside !== undefined && <div class={styles.aside}>{props.aside}</div>}
        </div>
        {props.second !== undefined && <p class={styles.second}>{props.second}</p>}
      </header>
      <main class={`${styles.main} ${props.main === 'spread' ? styles.spread : ''}`}>{props.children}</main>
      <div class={styles.foot} ref={foot}>
        {props.actions !== undefined && (
          <section class={styles.actions} aria-label={props.actionsLabel ?? 'Actions'}>
            <div class={styles.act}>{props.actions}</div>
          </section>
        )}
        {props.bar}
      </div>
    </div>
  );
}

/** A part of a page that keeps the side margin; `rule` draws the 2 px line between parts. */
export const Part = (props: {
  readonly children: ComponentChildren;
  readonly title?: ComponentChildren;
  readonly rule?: boolean | undefined;
  /** `edge` lets rows run to the page's edge. */
  readonly width?: 'margin' | 'edge' | undefined;
}) => (
  <section
    class={`${styles.part} ${props.rule ? styles.rule : ''} ${props.width === 'edge' ? styles.edge : ''}`}
  >
    {props.title !== undefined && <h2>{props.title}</h2>}
    {props.children}
  </section>
);
