/** Pages that need the whole record: of a long one only what is recent or still matters is at hand. */
import type { ComponentType } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { entriesIn } from '../ledger/opening';
import { isPutAway } from '../ledger/put-away';
import type { Earlier, State } from '../ledger/state';
import { monthOf } from '../rules/clocks/calendar-day';
import type { HowFar } from '../storage/pages-of-entries';
import { Button } from '../ui/button';
import { Part } from '../ui/page';
import { ProgressBar } from '../ui/progress-bar';
import { countText } from './amounts';
import { namedIn } from './checklist/list-for';
import { Frame } from './frame';
import { percentOf } from './record/how-far';
import { useShell } from './shell';
import { failureWords, wholeWords as w, words } from './words';

type At = { readonly at: Readonly<Record<string, string>> };

function ReadWhole() {
  const { state, readWhole } = useShell();
  const [howFar, setHowFar] = useState<HowFar | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const count = countText(entriesIn(state.value));
  const left = useRef(new AbortController());
  useEffect(() => () => left.current.abort(), []);
  async function read(): Promise<void> {
    setHowFar({ done: 0, of: 1 });
    const done = await readWhole(setHowFar, left.current.signal);
    setHowFar(null);
    setFault(done.ok ? null : failureWords(done.failure));
  }
  return (
    <Frame
      title={w.title}
      second={w.second(count)}
      ways={[{ label: words.back, onTap: () => window.history.back() }]}
      actions={
        <Button look="primary" disabled={howFar !== null} second={w.readSecond} onTap={() => void read()}>
          {w.read}
        </Button>
      }
    >
      <Part>
        {howFar === null ? (
          <p>{w.why}</p>
        ) : (
          <ProgressBar
            name={w.reading}
            says={
              howFar.done === howFar.of
                ? w.workingOut
                : w.howFar(countText(howFar.done), countText(howFar.of))
            }
            percent={percentOf(howFar)}
          />
        )}
        {fault !== null && <p role="alert">{fault}</p>}
      </Part>
    </Frame>
  );
}

type Asked = At & { readonly state: State; readonly zone: string };

/** The screen; where it needs what is not at hand, once the whole record is. */
const once =
  (needsWhole: (asked: Asked, earlier: Earlier) => boolean) =>
  (Screen: ComponentType<At>): ComponentType<At> =>
    function WithWhole({ at }: At) {
      const { state, zone } = useShell();
      const { earlier } = state.value;
      const needs = earlier !== null && needsWhole({ at, state: state.value, zone }, earlier);
      return needs ? <ReadWhole /> : <Screen at={at} />;
    };

export const withWhole = once(() => true);

/** Of an entry. */
export const withEntry = once(({ at, state }) => !state.log.some(({ id }) => id === at.entry));

/** Parts of an address that name a container. */
const ofContainer = ['id', 'container', 'from', 'instead', 'of', 'set'] as const;

/** Maps of those that a row is kept of, when they are put away: what has none is not in the record. */
const withRow = ['containers', 'batches', 'handOvers', 'papers'] as const;
const rowKinds = ['container', 'batch', 'hand-over', 'paper'] as const;

/** Parts that name what no row is kept of: what is not at hand may be in the record. */
const withoutRow = {
  stream: ['streams'],
  treatment: ['treatments'],
  finding: ['findings'],
  check: ['silverChecks', 'ventilationChecks'],
  clock: ['clocks'],
  step: ['steps'],
} as const;

const isAtHand = (state: State, maps: readonly (keyof State)[], id: string): boolean =>
  maps.some((of) => {
    const map = state[of];
    return map instanceof Map && map.has(id);
  });

/** What the address names, with what that is about: the batch of a step, the containers of a paper. */
function namedBy({ at, state }: Asked): readonly string[] {
  const { batch, container, from, id, instead, of, set, step } = at;
  const batchId = state.steps.get(step ?? '')?.body.batchId ?? undefined;
  const onPaper = state.papers.get(set ?? '')?.body.containerIds ?? [];
  return [batch, container, from, id, instead, of, set, batchId, ...onPaper].flatMap((one) => one ?? []);
}

/** Of a container that is gone only what others came from may be at hand. */
const isGoneLongAgo = ({ at, state }: Asked, { from }: Earlier): boolean =>
  ofContainer.some((part) => {
    const gone = state.containers.get(at[part] ?? '')?.goneSince ?? null;
    return gone !== null && gone < from;
  });

/** Of a walk all is at hand that was written since it began; one that nobody has finished may have been long ago. */
const isWalkedLongAgo = ({ at, state }: Asked, { from }: Earlier): boolean =>
  at.walk !== undefined && (state.walks.get(at.walk)?.finished?.body.startedAt ?? '') < from;

/** Of everything that the address names. */
export const withNamed = once(({ at: parts, ...asked }, earlier) => {
  const at: At['at'] = { ...parts, ...namedIn(parts.for ?? '-') };
  const named = { ...asked, at };
  return (
    isGoneLongAgo(named, earlier) ||
    isWalkedLongAgo(named, earlier) ||
    Object.entries(withoutRow).some(([part, maps]) => {
      const id = at[part];
      return id !== undefined && !isAtHand(asked.state, maps, id);
    }) ||
    namedBy(named).some(
      (id) => !isAtHand(asked.state, withRow, id) && rowKinds.some((is) => isPutAway(asked.state, is, id)),
    )
  );
});

/** Of the batch that a waste came of. */
export const withItsBatch = once(({ at, state }) => {
  const id = state.streams.get(at.stream ?? '')?.body.batchId;
  return typeof id === 'string' && isPutAway(state, 'batch', id);
});

/** Of a month, which begins where all is at hand. */
export const withMonth = once(({ at, zone }, { from }) => (at.month ?? '') <= monthOf(from, zone));
