/** Containers as they are now: the vessel with its changes, its marks, what it holds and what was said of that. */
import { contentsOf, type Followed, type ToldTreatment } from './contents';
import type { CandidateAnswered } from './entries/candidates';
import type { ContainerChanged, ContainerMarked, ContainerOpened } from './entries/containers';
import type { LabReported } from './entries/lab-reports';
import { asHappened, lastById } from './grouping';
import { isSame, type Remembering } from './memory';
import { newPot } from './pot';
import { doubtSince, sinceMarked } from './since-marked';
import type { SortedFacts } from './sorted-facts';
import type { ContainerState, HandOverState, Told } from './state';

/** The vessel with all that was changed about it since. */
function vesselNow(opened: ContainerOpened, changes: readonly Told<ContainerChanged>[]): ContainerOpened {
  const now: Record<string, unknown> = { ...opened };
  for (const { body } of changes) {
    const { kind: _, v: __, containerId: ___, note: ____, ...changed } = body;
    for (const [key, value] of Object.entries(changed)) {
      if (value === null) delete now[key];
      else if (value !== undefined) now[key] = value;
    }
  }
  return now as ContainerOpened;
}

/** Where it stood, one after the other; empty where nobody said. */
function areasOf(
  opened: Told<ContainerOpened>,
  changes: readonly Told<ContainerChanged>[],
): ContainerState['areas'] {
  const said = [opened, ...changes].flatMap(({ at, body }) =>
    body.area ? [{ is: body.area, since: at }] : [],
  );
  return said.filter(({ is }, i) => is !== said[i - 1]?.is);
}

/** In every zone that day is over: it ends twelve hours later than in UTC where it ends last. */
const surelyOver = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00.000Z`) + 36 * 3_600_000).toISOString();

/** From then on other things are in it than on that day, as far as it was told of at `at`. */
function otherSince(at: string, day: string, othersSince: string | null): string | null {
  const over = surelyOver(day);
  return othersSince !== null && othersSince > (over < at ? over : at) ? othersSince : null;
}

/** Water that went off after that day. */
function driedSince(at: string, day: string, movements: ContainerState['movements']): string | null {
  const over = surelyOver(day);
  const dried = movements.findLast(({ purpose }) => purpose === 'evaporated')?.at;
  return dried !== undefined && dried > (over < at ? over : at) ? dried : null;
}

/**
 * A word on a candidate is of what was in it when it was said, though it was written down later. That a code is not there
 * says nothing once water went off: it may be by now.
 */
const answerStale = (
  { at, body }: Told<CandidateAnswered>,
  othersSince: string | null,
  movements: ContainerState['movements'],
): string | null =>
  otherSince(at, body.saidOn, othersSince) ??
  (body.answer === 'refused' ? driedSince(at, body.saidOn, movements) : null);

/** A report is of what was sampled. */
const reportStale = (
  { at, body }: Told<LabReported>,
  othersSince: string | null,
  movements: ContainerState['movements'],
): string | null => otherSince(at, body.sampledOn, othersSince) ?? driedSince(at, body.sampledOn, movements);

type AboutContainers = {
  readonly marks: ReadonlyMap<string, readonly Told<ContainerMarked>[]>;
  readonly contents: Followed;
  readonly treatments: ReadonlyMap<string, ToldTreatment>;
  readonly handOvers: ReadonlyMap<string, HandOverState>;
};

/** Hand-overs that each container went with, in the order in which they happened. */
function loadsByContainer(
  handOvers: AboutContainers['handOvers'],
  last: ReadonlyMap<string, readonly HandOverState[]> = new Map(),
): ReadonlyMap<string, readonly HandOverState[]> {
  const loads = new Map<string, HandOverState[]>();
  for (const handOver of handOvers.values())
    for (const { containerId } of handOver.body.containers) {
      const before = loads.get(containerId);
      if (before) before.push(handOver);
      else loads.set(containerId, [handOver]);
    }
  return new Map(
    [...loads].map(([id, now]) => {
      const before = last.get(id);
      return [id, before && isSame(before, now) ? before : now];
    }),
  );
}

/** When its proof was filed: the one of its hand-over, or, where it went some other way, the one that was marked. */
const proofAt = (
  left: HandOverState | undefined,
  containerId: string,
  marks: ContainerState['marks'],
  goneSince: string,
): string | null => {
  const marked = marks.findLast(({ body, at }) => body.mark === 'proof-filed' && at >= goneSince);
  const filed = left?.parts.find((part) => part.containerId === containerId)?.proofAt;
  return filed ?? marked?.at ?? null;
};

export function containersOf(
  facts: SortedFacts,
  told: Remembering,
  opened: ReadonlyMap<string, Told<ContainerOpened>>,
  { marks, contents, treatments, handOvers }: AboutContainers,
): ReadonlyMap<string, ContainerState> {
  type About = { readonly body: { readonly containerId: string } };
  const idOf = ({ body }: About): string => body.containerId;
  const begun = told.once('treatments in order', [treatments], () => [...treatments.values()]);
  const treatmentsIn = told.grouped('treatments in it', begun, idOf);
  const changed = told.grouped('changed', asHappened(facts['container-changed']), idOf);
  const answered = told.grouped('answered', asHappened(facts['candidate-answered']), idOf);
  const reported = told.grouped('reported', asHappened(facts['lab-reported']), idOf);
  const inspected = told.grouped('inspected', asHappened(facts['container-inspected']), idOf);
  const loads = told.once(
    'loads of a container',
    [handOvers],
    (last?: ReadonlyMap<string, readonly HandOverState[]>) => loadsByContainer(handOvers, last),
  );
  return told.each(
    'containers',
    opened,
    [treatmentsIn, changed, answered, reported, inspected, marks, contents.pots, loads],
    (fact, containerId) => {
      const marked = marks.get(containerId) ?? [];
      const { othersSince, ...held } = contentsOf(contents.pots.get(containerId) ?? newPot());
      const changes = changed.get(containerId) ?? [];
      const lastAnswers = lastById(
        answered.get(containerId) ?? [],
        ({ body }) => `${body.scheme} ${body.code}`,
      );
      const goneSince = sinceMarked(marked, 'gone', 'came-back');
      // The hand-over that it left with then; none where it went some other way.
      const left =
        goneSince === null ? undefined : loads.get(containerId)?.findLast(({ at }) => at === goneSince);
      return {
        ...fact,
        ...held,
        body: vesselNow(fact.body, changes),
        changes,
        treatmentIds: (treatmentsIn.get(containerId) ?? []).map(({ body }) => body.treatmentId),
        marks: marked,
        answers: [...lastAnswers.values()].map((told) => ({
          ...told,
          staleSince: answerStale(told, othersSince, held.movements),
        })),
        reports: (reported.get(containerId) ?? []).map((told) => ({
          ...told,
          staleSince: reportStale(told, othersSince, held.movements),
        })),
        inspections: inspected.get(containerId) ?? [],
        areas: areasOf(fact, changes),
        closedAt: sinceMarked(marked, 'closed', 'reopened'),
        heldSince: sinceMarked(marked, 'held', 'let-go'),
        leavingSince: sinceMarked(marked, 'leaving', 'staying'),
        goneSince,
        damagedSince: sinceMarked(marked, 'damaged', 'mended'),
        handOverId: left?.body.handOverId ?? null,
        proofFiledAt: goneSince === null ? null : proofAt(left, containerId, marked, goneSince),
        doubtfulSince: doubtSince(marked, held.determined, held.movements),
      };
    },
  );
}
