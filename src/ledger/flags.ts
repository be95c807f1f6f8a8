/** What is wrong now, from the state alone; clocks and due dates are elsewhere. Codes and numbers, no sentences. */

import type { Metal } from '../reference/tables';
import type { Element } from '../rules/element-levels';
import type { ThingId } from '../safety/must-not-meet/matter';
import type { StreamKind } from '../safety/stream-kind';
import { isNothing, readableDifference } from './amounts';
import { clearanceFault } from './clearance';
import { type CodeTwice, codeKey } from './codes-twice';
import { contradictionsOf, disputedIn } from './disagreements';
import type { Amount } from './entries/containers';
import type { Law, RuleName } from './entries/local-rules';
import { capacityOf, fillLimit, fillLimitPercent, takesUp } from './fill';
import { flagsOfHandOvers } from './flags-of-hand-overs';
import { flagsOfDilution, flagsOfLife, flagsOfReports } from './flags-of-life';
import { flagsOfMeetings } from './flags-of-meetings';
import { putAwayRows } from './put-away';
import type { Refusal } from './refusal';
import type { BatchState, ContainerState, State, StepState, StreamState, Trouble } from './state';
import { type NotAllowed, treatmentRuleFault } from './treatment';
import { flagsOfAmmonia, flagsOfTreatment } from './treatment-flags';
import { givesGas, wasteKinds } from './waste-kinds';

/** `now`: someone may get hurt or waste may run out; `soon`: the record or the shelf is wrong; `know`: it limits what is shown. */
export type Pressing = 'now' | 'soon' | 'know';

/** Ids of what the flag is about. */
type About = {
  readonly containerId?: string;
  readonly streamId?: string;
  readonly stepId?: string;
  readonly treatmentId?: string;
  readonly handOverId?: string;
  readonly entryId?: string;
};

/** Volumes in L and masses in g, as decimals. */
export type Flag = { readonly pressing: Pressing; readonly about: About } & (
  | { readonly code: 'over-capacity'; readonly holds: string; readonly capacity: string }
  | {
      readonly code: 'over-fill-limit';
      readonly holds: string;
      readonly limit: string;
      readonly limitPercent: string;
      readonly limitStated: boolean;
    }
  | { readonly code: 'tight-cap-on-gassing-waste'; readonly streams: readonly StreamKind[] }
  | { readonly code: 'contents-doubtful'; readonly since: string; readonly damaged: boolean }
  /** Two things of one vessel, or what it is made of and what is in it; `card` is the emergency card for it. */
  | {
      readonly code: 'met-what-it-must-not' | 'container-does-not-hold';
      readonly a: ThingId;
      readonly b: ThingId;
      readonly by: string;
      readonly card: string;
    }
  /** Acid whose strength nobody told, or a material that nobody named. */
  | { readonly code: 'material-not-determined'; readonly lacks: 'material' | 'strength' }
  | {
      readonly code: 'more-taken-than-held';
      readonly held: string;
      readonly taken: string;
      readonly unit: 'L' | 'g';
    }
  | {
      readonly code:
        | 'added-while-closed'
        | 'added-while-held'
        | 'added-while-gone'
        | 'handed-over-while-gone';
    }
  | { readonly code: 'placed-in-another-unit' }
  /** What the collector has of it, and by which share of the record it differs; below nothing where it is less. */
  | { readonly code: 'quantity-differs'; readonly agreed: Amount; readonly percent: string }
  /** A load was refused, and it has to leave again. */
  | { readonly code: 'load-came-back'; readonly since: string }
  /** It is broken, and something is still in it. */
  | { readonly code: 'container-damaged'; readonly since: string }
  /** Said to be empty, or read on its gauge, against what the record says it holds; L, or g. */
  | { readonly code: 'said-empty-yet-holds'; readonly volume: string; readonly mass: string }
  | {
      readonly code: 'level-disagrees';
      readonly level: string;
      readonly held: string;
      readonly unit: 'L' | 'g';
      readonly at: string;
    }
  /** A laboratory found other levels dissolved in it than its wastes come to. */
  | { readonly code: 'report-disagrees'; readonly of: readonly Element[] }
  /** Something that a walk found and nobody has closed. */
  | {
      readonly code: 'finding-open';
      readonly findingId: string;
      readonly ask: string;
      readonly answer: string;
      readonly since: string;
    }
  /** What was mixed into it made a code disappear, by what was known then. */
  | { readonly code: 'was-diluted'; readonly codes: readonly string[]; readonly laws: readonly Law[] }
  /** A class or code that somebody accepted for what was in it before. */
  | { readonly code: 'answer-stale'; readonly answered: readonly string[] }
  | { readonly code: 'stream-not-placed'; readonly volume: string; readonly mass: string }
  | { readonly code: 'placed-more-than-logged'; readonly volume: string; readonly mass: string }
  | { readonly code: 'evidence-disagrees'; readonly of: readonly (Metal | 'acid')[] }
  | { readonly code: 'more-acid-taken-than-charged' }
  /** `lateListAt`: when its list was gone through after all. */
  | { readonly code: 'step-without-clearance'; readonly step: string; readonly lateListAt: string | null }
  | { readonly code: 'clearance-does-not-hold'; readonly step: string; readonly why: Refusal['code'] }
  /** Under way, not wrong. */
  | { readonly code: 'treatment-running'; readonly since: string; readonly lastReadingAt: string | null }
  | { readonly code: 'treatment-not-allowed'; readonly because: NotAllowed }
  | { readonly code: 'treatment-without-clearance' }
  | { readonly code: 'treatment-clearance-does-not-hold'; readonly why: Refusal['code'] }
  /** Told to have reached its end, against the pH that was read, and what it treated is still there. */
  | { readonly code: 'treatment-fell-short'; readonly aim: string; readonly read: string | null }
  | { readonly code: 'ammonia-in-treatment'; readonly baseAdded: boolean }
  | { readonly code: 'dose-outside-treatment' | 'treatment-while-another-runs' | 'added-during-treatment' }
  | { readonly code: 'code-used-twice'; readonly used: string }
  | { readonly code: 'entry-does-not-add-up'; readonly why: Trouble['code']; readonly subject: string }
  | { readonly code: 'workshop-not-described' }
  | { readonly code: 'local-rules-missing'; readonly rules: readonly RuleName[] }
  | { readonly code: 'treatment-for-planning-only'; readonly because: NotAllowed }
  | { readonly code: 'nothing-fit-for-drain' }
);

/** Rules that each workshop needs an answer to; the others only where it has such a place or such a discharge. */
export const neededRules: readonly RuleName[] = [
  'laws',
  'generator-category',
  'treatment-allowed',
  'storage-days',
  'fill-limit',
  'inspection-days',
  'month-limit',
  'on-site-limit',
  'proof-days',
  'retention-years',
];

function flagsOfFill(state: State, container: ContainerState): Flag[] {
  const { holds, body } = container;
  const about = { containerId: body.containerId };
  const room = takesUp(holds);
  const amount = room.toFixed();
  const capacity = capacityOf(container);
  if (room.gt(capacity))
    return [{ pressing: 'now', about, code: 'over-capacity', holds: amount, capacity: capacity.toFixed() }];
  const limit = fillLimit(state, container);
  if (!room.gt(limit)) return [];
  const { percent: limitPercent, stated: limitStated } = fillLimitPercent(state);
  return [
    {
      pressing: 'now',
      about,
      code: 'over-fill-limit',
      holds: amount,
      limit: limit.toFixed(),
      limitPercent,
      limitStated,
    },
  ];
}

/** Contents that no stream accounts for are taken for gassing ones. */
/** What is wrong with it by itself, the worst first. */
export function flagsOfContainer(state: State, container: ContainerState): Flag[] {
  const about = { containerId: container.body.containerId };
  // What has met or stands in the wrong vessel comes first: it may be the worst.
  const flags = [
    ...flagsOfMeetings(state, container),
    ...flagsOfAmmonia(state, container),
    ...flagsOfFill(state, container),
  ];
  const { kinds: all, unaccounted } = wasteKinds(state, container.body.containerId);
  const kinds = all.filter(givesGas);
  if (container.body.cap === 'tight' && (kinds.length > 0 || unaccounted))
    flags.push({ pressing: 'now', about, code: 'tight-cap-on-gassing-waste', streams: kinds });
  if (container.doubtfulSince !== null)
    flags.push({
      pressing: 'soon',
      about,
      code: 'contents-doubtful',
      since: container.doubtfulSince,
      damaged: container.damagedSince !== null,
    });
  return [
    ...flags,
    ...flagsOfLife(container),
    ...flagsOfReports(state, container),
    ...flagsOfDilution(state, container),
  ];
}

/** What was found on a walk stays until it is closed, wherever the container is by now. */
const flagsOfFindings = (state: State): Flag[] =>
  [...state.findings.values()].flatMap(({ containerId, entryId, at, found, closed }) =>
    closed
      ? []
      : [
          {
            pressing: found.stops ? 'now' : 'soon',
            about: { entryId, ...(containerId === null ? {} : { containerId }) },
            code: 'finding-open',
            findingId: found.findingId,
            ask: found.ask,
            answer: found.answer,
            since: at,
          } as const,
        ],
  );

function flagsOfStream({ body, amount, placed, unplaced }: StreamState): Flag[] {
  const about = { streamId: body.streamId };
  const flags: Flag[] = [];
  if (!isNothing(unplaced)) {
    const [volume, mass] = [unplaced.volume.toFixed(), unplaced.mass.toFixed()];
    flags.push({ pressing: 'soon', about, code: 'stream-not-placed', volume, mass });
  }
  const over = readableDifference(placed, amount);
  if (!isNothing(over)) {
    const [volume, mass] = [over.volume.toFixed(), over.mass.toFixed()];
    flags.push({ pressing: 'soon', about, code: 'placed-more-than-logged', volume, mass });
  }
  return flags;
}

/** Evidence is of the waste as it was logged, wherever it is now. */
function flagsOfEvidence(state: State, { body }: StreamState): Flag[] {
  const about = { streamId: body.streamId };
  const found = contradictionsOf(state, body.streamId);
  const of = disputedIn(found);
  return [
    ...(of.length > 0 ? [{ pressing: 'soon', about, code: 'evidence-disagrees', of } as const] : []),
    ...(found.short ? [{ pressing: 'soon', about, code: 'more-acid-taken-than-charged' } as const] : []),
  ];
}

/** How a step was begun. */
export function flagsOfStep(state: State, { body, at, who, lateLists }: StepState): Flag[] {
  const { stepId, step, batchId, stationId, clearance } = body;
  const about = { stepId };
  if (clearance === null) {
    const lateListAt = state.checklists.get(lateLists.at(-1) ?? '')?.at ?? null;
    return [{ pressing: 'soon', about, code: 'step-without-clearance', step, lateListAt }];
  }
  const fault = clearanceFault(state, clearance, { step, batchId, stationId, who, at });
  return fault ? [{ pressing: 'soon', about, code: 'clearance-does-not-hold', step, why: fault.code }] : [];
}

const flagsOfUpsets = (state: State): Flag[] =>
  state.upsets.map((upset): Flag => {
    const { entryId, containerId } = upset;
    const about = { entryId, containerId };
    if (upset.code === 'more-taken-than-held') {
      const { held, taken, unit } = upset;
      return {
        pressing: 'soon',
        about,
        code: upset.code,
        held: held.toFixed(),
        taken: taken.toFixed(),
        unit,
      };
    }
    if (upset.code === 'placed-in-another-unit')
      return { pressing: 'soon', about: { ...about, streamId: upset.streamId }, code: upset.code };
    if (!('treatmentId' in upset)) return { pressing: 'soon', about, code: upset.code };
    return { pressing: 'soon', about: { ...about, treatmentId: upset.treatmentId }, code: upset.code };
  });

/** Two devices that were apart can give the same code. */
function flagsOfCodes(state: State): Flag[] {
  const seen = new Set(putAwayRows(state).map(codeKey));
  const flagsOf = (is: CodeTwice['is'], things: Iterable<BatchState | ContainerState>): Flag[] =>
    [...things].flatMap(({ body: { code }, entryId }) => {
      const used = codeKey({ is, code });
      if (seen.has(used))
        return { pressing: 'soon', about: { entryId }, code: 'code-used-twice', used: code };
      seen.add(used);
      return [];
    });
  return [...flagsOf('batch', state.batches.values()), ...flagsOf('container', state.containers.values())];
}

function flagsOfRules(state: State): Flag[] {
  const about = {};
  const flags: Flag[] = [];
  if (!state.workshop) flags.push({ pressing: 'know', about, code: 'workshop-not-described' });
  const rules = neededRules.filter((rule) => !state.rules.has(rule));
  if (rules.length > 0) flags.push({ pressing: 'know', about, code: 'local-rules-missing', rules });
  const because = treatmentRuleFault(state);
  if (because) flags.push({ pressing: 'know', about, code: 'treatment-for-planning-only', because });
  if (rules.length > 0) flags.push({ pressing: 'know', about, code: 'nothing-fit-for-drain' });
  return flags;
}

const weight: Readonly<Record<Pressing, number>> = { now: 0, soon: 1, know: 2 };

/** What has met already comes before all that only may. */
const orderOf = ({ code, pressing }: Flag): number =>
  code === 'met-what-it-must-not' ? -1 : weight[pressing];

/** Every flag, most pressing first, in small steps: one container, waste, step or treatment each. */
function* workingOut(state: State): Generator<undefined, readonly Flag[]> {
  const found: Flag[] = [];
  for (const container of state.containers.values()) {
    if (container.goneSince !== null) continue;
    found.push(...flagsOfContainer(state, container));
    yield;
  }
  found.push(...flagsOfFindings(state));
  const streams = [...state.streams.values()];
  found.push(...streams.flatMap(flagsOfStream));
  for (const stream of streams) {
    found.push(...flagsOfEvidence(state, stream));
    yield;
  }
  for (const step of state.steps.values()) {
    found.push(...flagsOfStep(state, step));
    yield;
  }
  for (const treatment of state.treatments.values()) {
    found.push(...flagsOfTreatment(state, treatment));
    yield;
  }
  found.push(
    ...flagsOfHandOvers(state),
    ...flagsOfUpsets(state),
    ...flagsOfCodes(state),
    ...state.troubles.map(
      ({ entryId, code: why, subject }): Flag => ({
        pressing: 'soon',
        about: { entryId },
        code: 'entry-does-not-add-up',
        why,
        subject,
      }),
    ),
    ...flagsOfRules(state),
  );
  return found.sort((a, b) => orderOf(a) - orderOf(b));
}

const made = new WeakMap<State, readonly Flag[]>();

/** `flags` in small steps, for where nobody waits for them; at once where they are worked out already. */
export function* flagsInSteps(state: State): Generator<undefined, readonly Flag[]> {
  const all = made.get(state) ?? (yield* workingOut(state));
  made.set(state, all);
  return all;
}

/** Every flag, most pressing first. Worked out once for a state, since a paper asks for each of its containers. */
export function flags(state: State): readonly Flag[] {
  const steps = flagsInSteps(state);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
