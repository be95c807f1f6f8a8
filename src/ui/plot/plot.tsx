/** A plot that also speaks: drawing, slider if asked for, and the figures as a table. */
import { useId, useMemo, useRef, useState } from 'preact/hooks';
import { FiguresAsTable } from './figures-table';
import styles from './plot.module.css';
import { CursorLine, CursorSlider, type PlotCursor } from './plot-cursor';
import { PlotDrawing } from './plot-drawing';
import { plotFigures } from './plot-figures';
import { plotGeometry } from './plot-geometry';
import { usePlotSize } from './plot-measure';
import type { PlotSpec } from './plot-spec';

export type PlotProps = {
  /** Keep the same object (`useMemo`) as long as it says the same: everything is drawn anew for a new one. */
  readonly spec: PlotSpec;
  readonly cursor?: PlotCursor | undefined;
};

export function Plot({ spec, cursor }: PlotProps) {
  const id = useId();
  const figure = useRef<HTMLElement>(null);
  const size = usePlotSize(figure);
  const [moved, setMoved] = useState<number>();
  const at = cursor && Math.min(Math.max(moved ?? cursor.start, cursor.from), cursor.to);
  const geometry = useMemo(() => plotGeometry(spec, size), [spec, size]);
  // The same element as before is passed over: a move of the slider redraws one line.
  const drawing = useMemo(() => <PlotDrawing id={id} geometry={geometry} />, [id, geometry]);
  const table = useMemo(() => <FiguresAsTable title={spec.title} figures={plotFigures(spec)} />, [spec]);
  return (
    <figure ref={figure} class={styles.plot}>
      <div class={styles.sheet}>
        {drawing}
        {at !== undefined && (
          <svg class={styles.over} viewBox={`0 0 ${geometry.width} ${geometry.height}`} aria-hidden="true">
            <CursorLine geometry={geometry} at={at} />
          </svg>
        )}
      </div>
      {cursor && at !== undefined && (
        <CursorSlider cursor={cursor} geometry={geometry} at={at} onMove={setMoved} />
      )}
      {table}
    </figure>
  );
}
