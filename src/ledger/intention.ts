/** What a person wants to write down. Each is the body without what the ledger itself gives: kind, version, new ids. */
import type { BodyOf, PlainBody } from './entries/body';

type Plain = PlainBody['kind'];
type Stated<K extends Plain, Given extends string = never> = Omit<BodyOf<K>, 'kind' | 'v' | Given>;
/** A code is the next free one unless the person typed one. */
type Coded<K extends Plain, Given extends string> = Stated<K, Given | 'code'> & { readonly code?: string };

/** What the local rules said is for the ledger to know. */
type Begun = Stated<'treatment-begun', 'treatmentId' | 'allowed' | 'clearance'>;

type Does<Name extends string, What> = { readonly do: Name } & Readonly<What>;

/**
 * A plan (`start-step`, `place-stream`, `move-contents`, `move-all`, `begin-treatment`) can be refused; what has happened (`log-…-happened`) is
 * written down and flagged.
 */
export type Intention =
  | Does<'describe-workshop', Stated<'workshop-described'>>
  | Does<'add-person', Stated<'person-added', 'personId'>>
  | Does<'change-person', Stated<'person-added'>>
  | Does<'person-leaves', Stated<'person-left'>>
  | Does<'state-local-rule', Stated<'local-rule-stated'>>
  | Does<'describe-base', Stated<'base-described'>>
  | Does<'open-batch', Coded<'batch-opened', 'batchId'>>
  | Does<'finish-checklist', Stated<'checklist-finished'>>
  | Does<'answer-checklist-later', Stated<'checklist-answered-later'>>
  | Does<'change-list', Stated<'list-changed'>>
  | Does<'start-clock', Stated<'clock-started', 'clockId'>>
  | Does<'stop-clock', Stated<'clock-stopped'>>
  | Does<'add-station', Stated<'station-described', 'stationId'>>
  | Does<'change-station', Stated<'station-described'>>
  | Does<'give-up-station', Stated<'station-given-up'>>
  | Does<'log-ventilation-check', Stated<'ventilation-checked', 'checkId' | 'station'>>
  | Does<'log-silver-check', Stated<'silver-checked', 'checkId'>>
  | Does<'start-step', Stated<'step-started', 'stepId' | 'clearance'> & { clearance: string }>
  | Does<'log-step-happened', Stated<'step-started', 'stepId'>>
  | Does<'end-step', Stated<'step-ended'>>
  | Does<'log-charge', Stated<'batch-charged'>>
  | Does<'log-recovery', Stated<'batch-recovered'>>
  | Does<'log-stream', Stated<'stream-logged', 'streamId'> & { placements?: readonly Placement[] }>
  | Does<'log-stream-test', Stated<'stream-tested'>>
  | Does<'say-counting', Stated<'counting-said'>>
  /** `doubt`: it was found or taken over, and nobody knows what is in it; `level` is how much stands in it. */
  | Does<
      'open-container',
      Coded<'container-opened', 'containerId'> & {
        readonly doubt?: Pick<BodyOf<'container-marked'>, 'doubt' | 'note'>;
        readonly level?: BodyOf<'level-read'>['level'];
      }
    >
  | Does<'change-container', Stated<'container-changed'>>
  | Does<'place-stream', Stated<'stream-placed', 'diluted'>>
  | Does<'log-placement-happened', Stated<'stream-placed', 'diluted'>>
  | Does<'move-contents', Stated<'contents-moved', 'diluted'>>
  | Does<'log-move-happened', Stated<'contents-moved', 'diluted'>>
  /** All of it, in one go; the container is empty from then on. */
  | Does<
      'move-all',
      Pick<BodyOf<'contents-moved'>, 'fromContainerId' | 'note'> & { readonly toContainerId: string }
    >
  | Does<'mark-container', Stated<'container-marked'>>
  | Does<'log-level', Stated<'level-read'>>
  | Does<'log-water-lost', Stated<'water-lost'>>
  /** Says what is in it, as a waste that is logged for it. */
  | Does<
      'determine-contents',
      Stated<'contents-determined', 'streamId'> & {
        readonly stream: Omit<Stated<'stream-logged', 'streamId'>, 'batchId' | 'stepId'>;
      }
    >
  | Does<'answer-candidate', Stated<'candidate-answered'>>
  | Does<'log-lab-report', Stated<'lab-reported'>>
  | Does<'log-inspected', Stated<'container-inspected'>>
  | Does<'finish-walk', Stated<'walk-finished'>>
  | Does<'close-finding', Stated<'finding-closed'>>
  | Does<'begin-treatment', Begun & { clearance: string }>
  | Does<'log-treatment-happened', Begun & Pick<BodyOf<'treatment-begun'>, 'clearance'>>
  | Does<'log-dose', Stated<'dose-added'>>
  | Does<'log-pot-reading', Stated<'pot-read'>>
  | Does<'end-treatment', Stated<'treatment-ended'>>
  | Does<'log-bench-test', Stated<'bench-tested'>>
  | Does<'state-price', Stated<'price-stated'>>
  | Does<'record-paper', Stated<'paper-made', 'paperId'>>
  | Does<'log-hand-over', Stated<'handed-over', 'handOverId'>>
  | Does<'log-rejected-load', Stated<'load-rejected'>>
  | Does<'file-proof', Stated<'proof-filed'>>
  | Does<'correct-entry', Omit<BodyOf<'entry-corrected'>, 'kind' | 'v'>>
  | Does<'withdraw-entry', Omit<BodyOf<'entry-withdrawn'>, 'kind' | 'v'>>;

/** Where the stream that is logged went at the same time. */
export type Placement = Stated<'stream-placed', 'streamId' | 'diluted'>;

export type IntentionOf<D extends Intention['do']> = Extract<Intention, { do: D }>;

/** `now` is UTC with milliseconds; `newId` gives a fresh UUID at each call; `who` is a person, or null. */
export type Context = { readonly now: string; readonly newId: () => string; readonly who: string | null };
