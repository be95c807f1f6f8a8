/** Who must still say yes: codes that wait for a word, what the place has not said, then what somebody said. */
import type { Scheme } from '../../ledger/entries/candidates';
import type { ContainerState, State } from '../../ledger/state';
import { type SchemeWords, schemesAsked } from '../../ledger/still-to-say';
import { codeText } from '../../paperwork/candidate-words';
import { formatWritten } from '../../quantities/format';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { waitsForText } from '../candidates/word-text';
import { useShell } from '../shell';
import { placeRows } from './check-rows';
import { setWords as w } from './set-words';

/** Of each container of the set, as far as it is worked out. */
export type Said = ReadonlyMap<string, readonly SchemeWords[]>;

type Line = { readonly codes: readonly string[]; readonly containers: readonly ContainerState[] };

const noLine: Line = { codes: [], containers: [] };

const each = <T,>(all: readonly T[]): readonly T[] => [...new Set(all)];

/** So many codes, and containers, stand in a row; the others are counted. */
const namedFirst = 6;

function listed(all: readonly string[]): string {
  const more = all.length - namedFirst;
  return more > 1 ? `${all.slice(0, namedFirst).join(', ')} ${w.and(more)}` : all.join(', ');
}

const codesOf = ({ containers }: Line): string => listed(containers.map(({ body }) => unbroken(body.code)));

/** Waiting codes law by law, with the containers that would leave under them. */
const waitingLines = (containers: readonly ContainerState[], said: Said) =>
  schemesAsked.flatMap((scheme) => {
    const lines = containers.flatMap((container) =>
      (said.get(container.body.containerId) ?? []).flatMap((one) =>
        one.scheme === scheme && one.waiting.length > 0 ? [{ container, codes: one.waiting }] : [],
      ),
    );
    if (lines.length === 0) return [];
    const codes = each(lines.flatMap((line) => line.codes));
    return [{ scheme, codes, containers: lines.map(({ container }) => container) }];
  });

type SaidLine = Line & { readonly scheme: Scheme; readonly saidBy: string; readonly saidOn: string };

/** Confirmed codes, together where one person said them on one day. */
function saidLines(containers: readonly ContainerState[], said: Said): ReadonlyMap<string, SaidLine> {
  const lines = new Map<string, SaidLine>();
  for (const container of containers)
    for (const one of said.get(container.body.containerId) ?? [])
      for (const { body } of one.said) {
        const key = `${one.scheme} ${body.saidBy} ${body.saidOn}`;
        const line = lines.get(key) ?? {
          ...noLine,
          scheme: one.scheme,
          saidBy: body.saidBy,
          saidOn: body.saidOn,
        };
        lines.set(key, {
          ...line,
          codes: each([...line.codes, body.code]),
          containers: each([...line.containers, container]),
        });
      }
  return lines;
}

/** How long it may stand here, by somebody's word. */
function StorageSaid({ state }: { readonly state: State }) {
  const { now, sign } = useShell();
  const rule = state.rules.get('storage-days')?.body;
  if (rule?.stated.rule !== 'storage-days') return null;
  return (
    <Row
      mark={<Mark kind="confirmed" />}
      title={w.storageDays(formatWritten(rule.stated.value, sign.value))}
      second={w.ruleSaid(rule.saidBy, calendarDayText(rule.saidOn, now.value))}
      href="#/record/rules/storage-days"
    />
  );
}

type SayRowsProps = {
  readonly containers: readonly ContainerState[];
  readonly said: Said;
  readonly onOpen: () => void;
};

export function SayRows({ containers, said, onOpen }: SayRowsProps) {
  const { state, now } = useShell();
  const names = (codes: readonly string[]) => listed(codes.map(codeText));
  const pageOf = ({ containers: [one] }: Line) => `#/containers/${one?.body.containerId ?? ''}/candidates`;
  const forWhich = (line: Line) => (containers.length === 1 ? '' : codesOf(line));
  return (
    <Rows label={w.sayTitle}>
      {waitingLines(containers, said).map(({ scheme, ...line }) => (
        <Row
          key={scheme}
          mark={<Mark kind="candidate" />}
          title={w.codes(scheme, names(line.codes))}
          second={[waitsForText(state.value, scheme), forWhich(line)].filter(Boolean).join(' ')}
          href={pageOf(line)}
          onTap={onOpen}
        />
      ))}
      {placeRows(state.value).map(({ key, mark, title, href }) => (
        <Row key={key} mark={<Mark kind={mark} />} title={title} href={href} onTap={onOpen} />
      ))}
      <StorageSaid state={state.value} />
      {[...saidLines(containers, said)].map(([key, line]) => (
        <Row
          key={key}
          mark={<Mark kind="confirmed" />}
          title={w.codes(line.scheme, names(line.codes))}
          second={w.saidSo(line.saidBy, calendarDayText(line.saidOn, now.value), forWhich(line))}
          href={pageOf(line)}
          onTap={onOpen}
        />
      ))}
    </Rows>
  );
}
