/** The place of the papers: what can be made, in the order of use, and what was made, kind by kind. */

import { useMemo, useState } from 'preact/hooks';
import type { PaperMade } from '../../ledger/entries/papers';
import { codeOfContainer } from '../../ledger/put-away';
import type { State, Told } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText, dayText } from '../amounts';
import { Before } from '../find/door';
import { Frame, hour } from '../frame';
import { handOverWords } from '../hand-overs/words';
import { labelPageWords } from '../labels/words';
import { LongRows } from '../long-rows';
import record from '../record/record.module.css';
import { registerPageWords } from '../register/words';
import { useShell } from '../shell';
import { yearWords } from '../year/words';
import { setHref } from './set-address';
import { paperWords as w } from './words';

type Kind = NonNullable<PaperMade['paper']>;

const kinds: readonly Kind[] = ['disposal', 'receipt', 'labels', 'register', 'year'];

/** Of entries from before there were several the file's name tells it. */
const kindOf = ({ paper, fileName }: PaperMade): Kind =>
  paper ?? (/(^|-)label-/.test(fileName) ? 'labels' : 'disposal');

/** What it is about: containers, or a time. */
function aboutOf(state: State, { containerIds, period }: PaperMade, now: string): string {
  if (period) return w.period(calendarDayText(period.first, now), calendarDayText(period.last, now));
  return containerIds.map((id) => unbroken(codeOfContainer(state, id) ?? '?')).join(', ');
}

/** Where the same is made again, by the record as it is then. */
function againHref({ paperId, containerIds, ...body }: PaperMade): string | null {
  switch (kindOf({ paperId, containerIds, ...body })) {
    case 'disposal':
      return setHref(paperId);
    case 'labels':
      return containerIds.length === 1 ? `#/containers/${containerIds[0]}/label` : '#/papers/labels';
    case 'year':
      return `#/papers/year/${body.period?.first.slice(0, 4) ?? ''}`;
    case 'register':
      return '#/papers/register';
    case 'receipt':
      return null;
  }
}

function PaperRow({ paper }: { readonly paper: Told<PaperMade> }) {
  const { state, now } = useShell();
  const again = againHref(paper.body);
  return (
    <Row
      title={aboutOf(state.value, paper.body, now.value)}
      second={w.madeFor(paper.body.fileName, `${dayText(paper.at, now.value)}, ${hour(paper.at)}`)}
      href={`#/record/entry/${paper.entryId}`}
      below={
        again && (
          <Button look="plain" href={again}>
            {w.makeAgain}
          </Button>
        )
      }
    />
  );
}

const paperRow = (paper: Told<PaperMade>) => <PaperRow key={paper.entryId} paper={paper} />;

/** So many of a kind are seen at once. */
const shownFirst = 3;

function PapersOfKind({
  kind,
  papers,
}: {
  readonly kind: Kind;
  readonly papers: readonly Told<PaperMade>[];
}) {
  const { here } = useShell();
  const [kept] = useState(here);
  const [open, setOpen] = useState(kept.read(`older ${kind}`) === true);
  const first = useMemo(() => papers.slice(0, shownFirst), [papers]);
  const older = useMemo(() => papers.slice(shownFirst), [papers]);
  return (
    <Part rule title={w.kinds[kind]} width="edge">
      <LongRows of={first} row={paperRow} label={w.kinds[kind]} />
      {older.length > 0 && (
        <Part>
          <details
            class={record.fold}
            open={open}
            onToggle={({ currentTarget }) => {
              kept.keep(`older ${kind}`, currentTarget.open);
              setOpen(currentTarget.open);
            }}
          >
            <summary>
              <span>{w.older(older.length)}</span>
            </summary>
            {open && (
              <LongRows of={older} row={paperRow} label={`${w.kinds[kind]}: ${w.older(older.length)}`} />
            )}
          </details>
        </Part>
      )}
    </Part>
  );
}

export function PaperList() {
  const { state } = useShell();
  const all = state.value.papers;
  const papers = useMemo(() => [...all.values()].toReversed(), [all]);
  const byKind = useMemo(
    () => kinds.map((kind) => [kind, papers.filter(({ body }) => kindOf(body) === kind)] as const),
    [papers],
  );
  return (
    <Frame
      place="papers"
      title={w.title}
      actions={
        <Button look="primary" voice="serif" href="#/papers/new" second={w.makeSecond}>
          {w.make}
        </Button>
      }
    >
      <Rows label={w.others}>
        <Row title={handOverWords.title} second={handOverWords.second} href="#/hand-overs" />
        <Row
          title={labelPageWords.openSeveral}
          second={labelPageWords.openSeveralSecond}
          href="#/papers/labels"
        />
        <Row title={registerPageWords.title} second={registerPageWords.second} href="#/papers/register" />
        <Row title={yearWords.door} second={yearWords.doorSecond} href="#/papers/year" />
      </Rows>
      {papers.length === 0 ? (
        <Part rule>
          <p>{w.none}</p>
        </Part>
      ) : (
        <>
          {byKind.map(([kind, some]) =>
            some.length === 0 ? null : <PapersOfKind key={kind} kind={kind} papers={some} />,
          )}
          <Before />
          <Part rule>
            <p>{w.again}</p>
          </Part>
        </>
      )}
    </Frame>
  );
}
