/** The data under a plot, folded away. */
import styles from './plot.module.css';
import type { FiguresTable, PlotFigures } from './plot-figures';
import { plotSayings } from './plot-sayings';

const Table = ({ name, table }: { readonly name: string; readonly table: FiguresTable }) => (
  // Wide tables scroll by themselves, by finger and by keyboard.
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
  <section class={styles.scroll} tabIndex={0} aria-label={name}>
    <table class={styles.table}>
      <thead>
        <tr>
          {table.head.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row, line) => (
          <tr key={line}>
            {row.map((cell, at) =>
              at === 0 ? (
                <th key={table.head[at]} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={table.head[at]}>{cell}</td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

export const FiguresAsTable = ({
  title,
  figures,
}: {
  readonly title: string;
  readonly figures: PlotFigures;
}) => (
  <details class={styles.figures}>
    <summary class={styles.summary}>
      <span>{plotSayings.asTable}</span>
    </summary>
    {figures.lines && <Table name={plotSayings.linesOf(title)} table={figures.lines} />}
    {figures.dots && <Table name={plotSayings.dotsOf(title)} table={figures.dots} />}
    {figures.marks.length > 0 && (
      <>
        <p class={styles.marksHead}>{plotSayings.marked}</p>
        <ul>
          {figures.marks.map((mark) => (
            <li key={mark}>{mark}</li>
          ))}
        </ul>
      </>
    )}
  </details>
);
