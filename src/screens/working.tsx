/**
 * The working of a figure: what stands in it, the formula with the numbers put in, where each number is from. Every
 * input that was worked out opens in the same way, down to what was read, measured or published.
 */
import { howKnownWords } from '../chemistry/evidence-words';
import type { Figure } from '../quantities/figure';
import { partsOfRange } from '../quantities/figure';
import { type DecimalSign, formatNumber, headlineDecimals, inFormula, printed } from '../quantities/format';
import { formulaText } from '../quantities/formula-text';
import { FigureValue } from '../ui/figure-value';
import { Part } from '../ui/page';
import { Row, Rows } from '../ui/row';
import { shown } from './amounts';
import { containerWords } from './containers/words';
import { Frame } from './frame';
import { useShell } from './shell';
import { words } from './words';
import styles from './working.module.css';

const w = containerWords.working;

function Sources({ figure }: { readonly figure: Figure }) {
  return (
    <>
      {figure.sources.map((s) => (
        <span key={s.title} class={styles.source}>
          {s.title}: {w.status[s.status]}
        </span>
      ))}
      {figure.note !== undefined && <span class={styles.source}>{figure.note}</span>}
    </>
  );
}

/** How wide it is: "± 11 %", "350 to 440", "exact". */
function spreadText(figure: Figure, sign: DecimalSign): string {
  const { percent, low, high } = printed(figure, sign);
  if (low === undefined) return w.exactly;
  return percent === undefined ? `${low} ${words.to} ${high}` : `±\u202f${percent}\u202f%`;
}

type LineProps = { readonly figure: Figure; readonly number: number; readonly href: string };

/** One input: its own formula in one line where it was worked out, else how it is known. */
function Line({ figure, number, href }: LineProps) {
  const { sign } = useShell();
  const spread = spreadText(figure, sign.value);
  return (
    <li class={styles.line}>
      <span class={styles.number}>{number}</span>
      <div>
        <span class={styles.sentence}>{figure.sentence}</span>
        {figure.formula && <span class={styles.formula}>{formulaText(figure.formula, sign.value)}</span>}
        <span class={styles.result}>
          {figure.formula ? '= ' : ''}
          {inFormula(figure, sign.value)}
        </span>
        {figure.inputs.length > 0 ? (
          <a class={styles.link} href={href}>
            {howKnownWords[figure.how]}, {spread}
          </a>
        ) : (
          <>
            <span class={styles.source}>
              {howKnownWords[figure.how]}, {spread}
            </span>
            <Sources figure={figure} />
          </>
        )}
      </div>
    </li>
  );
}

function Range({ figure }: { readonly figure: Figure }) {
  const { sign } = useShell();
  const parts = partsOfRange(figure).slice(0, 8);
  const decimals = headlineDecimals(figure);
  return (
    <details>
      <summary>{w.range}</summary>
      {parts.length === 0 ? (
        <p>{w.rangeNone}</p>
      ) : (
        <Rows>
          {parts.map((p) => (
            <Row
              key={p.sentence}
              title={p.sentence}
              figure={
                <FigureValue
                  value={`−${formatNumber(p.minus, decimals + 1, sign.value)} / +${formatNumber(p.plus, decimals + 1, sign.value)}`}
                  unit={figure.unit}
                  size="inline"
                />
              }
            />
          ))}
        </Rows>
      )}
      <p>{w.holds}</p>
    </details>
  );
}

/** The figure reached from `root` by choosing inputs, as "0-2-1"; undefined when there is none. */
export function figureBy(root: Figure | undefined, steps: string): Figure | undefined {
  return steps
    .split('-')
    .filter((s) => s !== '')
    .reduce<Figure | undefined>((figure, step) => figure?.inputs[Number(step)], root);
}

type Props = {
  readonly root: Figure | undefined;
  /** Inputs chosen so far, as "0-2-1". */
  readonly steps: string;
  /** Address of the root's own page. */
  readonly here: string;
  /** What the figure is of. */
  readonly subject: string;
  /** Where "Back" leads from the root. */
  readonly back: string;
};

export function WorkingPage({ root, steps, here, subject, back }: Props) {
  const { sign } = useShell();
  const figure = figureBy(root, steps);
  const up = steps === '' ? back : `${here}/${steps.split('-').slice(0, -1).join('-')}`.replace(/\/$/, '');
  const ways = [{ label: words.back, href: `#/${up}` }];
  if (!figure)
    return (
      <Frame title={subject} ways={ways}>
        <Part>
          <p>{w.missing}</p>
        </Part>
      </Frame>
    );
  const text = shown(figure, sign.value);
  const next = (i: number) => `#/${here}/${steps === '' ? i : `${steps}-${i}`}`;
  return (
    <Frame
      title={figure.sentence}
      above={<p class={styles.source}>{subject}</p>}
      second={
        <FigureValue
          value={text.value}
          unit={text.unit}
          range={text.range}
          size="large"
          equals={!!figure.formula}
        />
      }
      ways={ways}
    >
      {figure.formula ? (
        <Part rule title={w.inputs}>
          <ol class={styles.lines}>
            {figure.inputs.map((input, i) => (
              <Line key={`${i}${input.sentence}`} figure={input} number={i + 1} href={next(i)} />
            ))}
          </ol>
          <p class={styles.sentence}>{w.result}</p>
          <p class={styles.formula}>{formulaText(figure.formula, sign.value)}</p>
          <p class={styles.result}>= {inFormula(figure, sign.value)}</p>
          <p class={styles.source}>{w.shown}</p>
          <Sources figure={figure} />
        </Part>
      ) : (
        <Part rule title={w.evidence}>
          <p>{howKnownWords[figure.how]}</p>
          <Sources figure={figure} />
        </Part>
      )}
      <Part rule>
        <Range figure={figure} />
      </Part>
    </Frame>
  );
}
