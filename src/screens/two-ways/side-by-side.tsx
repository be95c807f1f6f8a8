/** Two columns, as it is and treated first; one under the other where there is no room. A figure opens its working. */
import type { Figure } from '../../quantities/figure';
import { FigureValue } from '../../ui/figure-value';
import { shown } from '../amounts';
import { useShell } from '../shell';
import styles from './side-by-side.module.css';
import { twoWaysWords as w } from './words';

/** A figure with the address of its working, or words in its place. */
export type Side = { readonly figure: Figure; readonly href: string } | { readonly words: string };

export type Line = {
  readonly name: string;
  readonly second?: string | undefined;
  readonly asItIs: Side;
  readonly treated: Side;
};

type CellProps = { readonly side: Side; readonly way: string; readonly name: string };

function Cell({ side, way, name }: CellProps) {
  const { sign } = useShell();
  if ('words' in side)
    return (
      <span class={styles.cell}>
        <span class={styles.way}>{`${way}: `}</span>
        <span class={styles.words}>{side.words}</span>
      </span>
    );
  const { value, unit, range } = shown(side.figure, sign.value);
  return (
    <a class={styles.cell} href={side.href}>
      <span class={styles.way}>{way}</span>
      <span class="visually-hidden">{` ${name}: `}</span>
      <span class={styles.value}>
        <FigureValue value={value} unit={unit} range={range} />
        {side.figure.formula && (
          <span class={styles.equals} aria-hidden="true">
            =
          </span>
        )}
      </span>
    </a>
  );
}

type Props = {
  readonly lines: readonly Line[];
  /** What the second column is called here. */
  readonly treated: string;
  readonly label: string;
};

export const SideBySide = ({ lines, treated, label }: Props) => (
  <>
    <p class={styles.head} aria-hidden="true">
      <span>{w.asItIs}</span>
      <span>{treated}</span>
    </p>
    <ul aria-label={label}>
      {lines.map(({ name, second, asItIs, treated: other }) => (
        <li key={name} class={styles.line}>
          <span class={styles.name}>
            {name}
            {second !== undefined && <span class={styles.second}>{second}</span>}
          </span>
          <Cell side={asItIs} way={w.asItIs} name={name} />
          <Cell side={other} way={treated} name={name} />
        </li>
      ))}
    </ul>
  </>
);
