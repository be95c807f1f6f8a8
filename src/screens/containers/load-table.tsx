/** What is dissolved: each metal and the acid, a litre and in all, every figure a way to its working. */
import { howKnownWords } from '../../chemistry/evidence-words';
import type { ContainerFigures } from '../../ledger/container-figures';
import { disputesIn } from '../../ledger/disagreements';
import { evidenceBehind } from '../../ledger/evidence-behind';
import type { State } from '../../ledger/state';
import { type Figure, mostlyKnownBy } from '../../quantities/figure';
import { printed } from '../../quantities/format';
import { type Metal, metals } from '../../reference/tables';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { shown, streamTitle } from '../amounts';
import { useShell } from '../shell';
import { words } from '../words';
import styles from './load-table.module.css';
import { containerWords as w } from './words';

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How it is known, and how wide its range is: of the concentration, where the volume says nothing. */
function evidenceOf(state: State, figure: Figure, what: Metal | 'acid' | 'nitrate'): string {
  const { percent } = printed(figure);
  const ways = what === 'nitrate' ? [figure.how] : evidenceBehind(state, figure, what).map(({ by }) => by);
  const named = [...new Set(ways.length > 0 ? ways : [mostlyKnownBy(figure)])];
  return `${named.map((by) => howKnownWords[by] ?? by).join('; ')}${percent === undefined ? '' : `, ±\u202f${percent}\u202f%`}`;
}

const Cell = ({
  figure,
  href,
  label,
}: {
  readonly figure: Figure;
  readonly href: string;
  readonly label: string;
}) => {
  const { sign } = useShell();
  const text = shown(figure, sign.value);
  return (
    <a class={styles.cell} href={href} aria-label={`${label}: ${text.value} ${text.unit ?? ''}`}>
      <span class={styles.value}>
        <FigureValue value={text.value} unit={text.unit} />
        <span class={styles.equals} aria-hidden="true">
          =
        </span>
      </span>
    </a>
  );
};

type LineProps = {
  readonly name: string;
  readonly all: Figure;
  readonly perLitre?: Figure | undefined;
  readonly keyName: Metal | 'acid' | 'nitrate';
  readonly base: string;
  readonly openIn: readonly string[];
  /** Wastes in it that tell of this in two ways that disagree. */
  readonly disputed: readonly string[];
};

function Line({ name, all, perLitre, keyName, base, openIn, disputed }: LineProps) {
  const { state } = useShell();
  const open = openIn.map((id) => streamTitle(state.value, id)).join('; ');
  return (
    <li class={styles.line}>
      <span class={styles.name}>
        {name}
        <span class={styles.second}>{evidenceOf(state.value, perLitre ?? all, keyName)}</span>
        {open !== '' && <span class={styles.second}>{`${w.atLeast}${w.openIn(open)}`}</span>}
      </span>
      <span class={styles.cells}>
        {perLitre ? (
          <Cell figure={perLitre} href={`${base}/${keyName}-a-litre`} label={`${name}, ${w.aLitre}`} />
        ) : (
          <span />
        )}
        <Cell figure={all} href={`${base}/${keyName}`} label={`${name}, ${w.inAll}`} />
      </span>
      {disputed.map((id) => (
        <a key={id} class={styles.disputed} href={`#/streams/${id}`}>
          <Mark kind="wrong" sizePx={24} />
          <mark>{w.disputed(streamTitle(state.value, id))}</mark>
        </a>
      ))}
    </li>
  );
}

type Props = { readonly figures: ContainerFigures; readonly containerId: string };

export function LoadTable({ figures, containerId }: Props) {
  const { state } = useShell();
  const disputes = disputesIn(state.value, containerId);
  const base = `#/containers/${containerId}/working`;
  const told = figures.metals.filter((m) => m.all);
  return (
    <>
      <p class={styles.head} aria-hidden="true">
        <span>{w.aLitre}</span>
        <span>{w.inAll}</span>
      </p>
      <ul>
        {told.map(
          (m) =>
            m.all && (
              <Line
                key={m.metal}
                name={capital(metals[m.metal].name)}
                all={m.all}
                perLitre={m.perLitre}
                keyName={m.metal}
                base={base}
                openIn={m.openIn}
                disputed={disputes.get(m.metal) ?? []}
              />
            ),
        )}
        {figures.acid.figure && (
          <Line
            name={w.nitricAcid}
            all={figures.acid.figure}
            perLitre={figures.acidPerLitre}
            keyName="acid"
            base={base}
            openIn={figures.acid.openIn}
            disputed={disputes.get('acid') ?? []}
          />
        )}
        {figures.nitrate.figure && (
          <Line
            name={w.nitrate}
            all={figures.nitrate.figure}
            perLitre={figures.nitratePerLitre}
            keyName="nitrate"
            base={base}
            openIn={figures.nitrate.openIn}
            disputed={[]}
          />
        )}
      </ul>
    </>
  );
}

/** What nothing in it tells. Rows from edge to edge, beside a table that is not. */
export function NotDetermined({
  figures,
  reported,
}: Pick<Props, 'figures'> & {
  /** What a laboratory looked for in it: told elsewhere on the page. */
  readonly reported: ReadonlySet<string>;
}) {
  const untold = figures.metals
    .filter((m) => !m.all && !reported.has(m.metal))
    .map((m) => metals[m.metal].name);
  return (
    <Rows>
      {!figures.acid.figure && (
        <Row mark={<Mark kind="unknown" />} title={w.nitricAcid} figure={words.notDetermined} />
      )}
      {!figures.nitrate.figure && (
        <Row mark={<Mark kind="unknown" />} title={w.nitrate} figure={words.notDetermined} />
      )}
      {untold.length > 0 && (
        <Row mark={<Mark kind="unknown" />} title={capital(untold.join(', '))} second={words.notDetermined} />
      )}
    </Rows>
  );
}
