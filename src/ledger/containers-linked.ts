/** Containers as they are now: the vessel with its changes, its marks, what it holds and what was said of that. */
import { type Contents, noContents, type ToldTreatment } from './contents';
import type { CandidateAnswered } from './entries/candidates';
import type { ContainerChanged, ContainerMarked, ContainerOpened } from './entries/containers';
import type { LabReported } from './entries/lab-reports';
import { asHappened, grouped, mapped } from './grouping';
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
  readonly contents: ReadonlyMap<string, Contents>;
  readonly treatments: ReadonlyMap<string, ToldTreatment>;
  readonly handOvers: ReadonlyMap<string, HandOverState>;
};

/** The hand-over that a container left with then; undefined where it went some other way. */
const handOverOf = (
  handOvers: AboutContainers['handOvers'],
  containerId: string,
  goneSince: string,
): HandOverState | undefined =>
  [...handOvers.values()].findLast(
    ({ at, body }) => at === goneSince && body.containers.some((taken) => taken.containerId === containerId),
  );

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
  opened: ReadonlyMap<string, Told<ContainerOpened>>,
  about: AboutContainers,
): Map<string, ContainerState> {
  const treatmentsIn = grouped(about.treatments.values(), ({ body }) => body.containerId);
  const changed = grouped(asHappened(facts['container-changed']), ({ body }) => body.containerId);
  const answered = grouped(asHappened(facts['candidate-answered']), ({ body }) => body.containerId);
  const reported = grouped(asHappened(facts['lab-reported']), ({ body }) => body.containerId);
  const inspected = grouped(asHappened(facts['container-inspected']), ({ body }) => body.containerId);
  return mapped(opened, (fact, containerId) => {
    const marks = about.marks.get(containerId) ?? [];
    const { othersSince, ...contents } = about.contents.get(containerId) ?? noContents;
    const changes = changed.get(containerId) ?? [];
    const lastAnswers = new Map(
      (answered.get(containerId) ?? []).map((told) => [`${told.body.scheme} ${told.body.code}`, told]),
    );
    const goneSince = sinceMarked(marks, 'gone', 'came-back');
    const left = goneSince === null ? undefined : handOverOf(about.handOvers, containerId, goneSince);
    return {
      ...fact,
      ...contents,
      body: vesselNow(fact.body, changes),
      changes,
      treatmentIds: (treatmentsIn.get(containerId) ?? []).map(({ body }) => body.treatmentId),
      marks,
      answers: [...lastAnswers.values()].map((told) => ({
        ...told,
        staleSince: answerStale(told, othersSince, contents.movements),
      })),
      reports: (reported.get(containerId) ?? []).map((told) => ({
        ...told,
        staleSince: reportStale(told, othersSince, contents.movements),
      })),
      inspections: inspected.get(containerId) ?? [],
      areas: areasOf(fact, changes),
      closedAt: sinceMarked(marks, 'closed', 'reopened'),
      heldSince: sinceMarked(marks, 'held', 'let-go'),
      leavingSince: sinceMarked(marks, 'leaving', 'staying'),
      goneSince,
      damagedSince: sinceMarked(marks, 'damaged', 'mended'),
      handOverId: left?.body.handOverId ?? null,
      proofFiledAt: goneSince === null ? null : proofAt(left, containerId, marks, goneSince),
      doubtfulSince: doubtSince(marks, contents.determined, contents.movements),
    };
  });
}
