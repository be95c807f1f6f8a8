/**
 * What the entries add up to. Never stored as truth: it can always be made again from the log.
 * Amounts are decimals in L and g; maps are keyed by the id of the thing unless said otherwise.
 */
import type { Quantity } from '../quantities/quantity';
import type { BatchCharged, BatchRecovered } from './entries/accounts';
import type { Base, BaseDescribed } from './entries/bases';
import type { BatchOpened, StepStarted } from './entries/batches';
import type { PlainBody } from './entries/body';
import type { CandidateAnswered } from './entries/candidates';
import type { ChecklistAnsweredLater, ChecklistFinished, ListChanged } from './entries/checklists';
import type { ClockStarted, ClockStopped } from './entries/clocks';
import type {
  Amount,
  Area,
  ContainerChanged,
  ContainerMarked,
  ContainerOpened,
  ContentsDetermined,
  ContentsMoved,
  LevelRead,
  StreamPlaced,
  WaterLost,
} from './entries/containers';
import type { Entry } from './entries/entry';
import type { HandedOver, LoadRejected, ProofFiled } from './entries/hand-overs';
import type { ContainerInspected, FindingClosed, Found, WalkFinished } from './entries/inspections';
import type { LabReported } from './entries/lab-reports';
import type { LocalRuleStated, RuleName } from './entries/local-rules';
import type { PaperMade } from './entries/papers';
import type { Priced, PriceStated } from './entries/prices';
import type { SilverChecked } from './entries/silver-checks';
import type { StationDescribed, VentilationChecked } from './entries/stations';
import type { CountingSaid, StreamLogged, StreamTested } from './entries/streams';
import type { BenchTested, DoseAdded, PotRead, TreatmentBegun, TreatmentEnded } from './entries/treatments';
import type { PersonAdded, WorkshopDescribed } from './entries/workshop';
import type { FoundRow } from './found-rows';

/** Where a fact comes from: its entry, when it happened, and who wrote it. */
export type Told<B> = {
  readonly entryId: string;
  readonly at: string;
  readonly who: string | null;
  readonly body: B;
};

export type Volume = Quantity<'L'>;
export type Mass = Quantity<'g'>;
/** Volume and mass are counted side by side: one cannot be turned into the other without a density. */
export type Held = { readonly volume: Volume; readonly mass: Mass };

export type StationState = Told<StationDescribed> & { readonly givenUpAt: string | null };

export type PersonState = Told<PersonAdded> & { readonly leftAt: string | null };

/** A list that was gone through, and what was answered to it since, in the order in which it happened. */
export type ChecklistState = Told<ChecklistFinished> & {
  readonly later: readonly Told<ChecklistAnsweredLater>[];
};

/** `stopped` is the first end that was told; null while it runs. */
export type ClockState = Told<ClockStarted> & { readonly stopped: Told<ClockStopped> | null };

export type StepState = Told<StepStarted> & {
  readonly endedAt: string | null;
  readonly endNote: string | null;
  /** Lists that were gone through when it had begun already, in order. */
  readonly lateLists: readonly string[];
  readonly streamIds: readonly string[];
};

/**
 * `steps` in the order they began; `checklists` holds the entry ids of finished checklists, in order; what was charged and
 * got back, in the order in which it happened.
 */
export type BatchState = Told<BatchOpened> & {
  readonly steps: readonly string[];
  readonly streamIds: readonly string[];
  readonly checklists: readonly string[];
  readonly charged: readonly Told<BatchCharged>[];
  readonly recovered: readonly Told<BatchRecovered>[];
};

/** One movement of waste, in the order it happened. */
export type Movement = Told<StreamPlaced | ContentsMoved>;

/** What befell contents: they were moved, treated, or looked at. */
export type Happening = Told<
  | StreamPlaced
  | ContentsMoved
  | WaterLost
  | LevelRead
  | ContentsDetermined
  | TreatmentBegun
  | DoseAdded
  | PotRead
  | BenchTested
  | TreatmentEnded
>;

/**
 * Part of a container's contents; `streamId` is null for what came out of a container that held less by the ledger.
 * The same stream can be in it twice: once treated, once not.
 */
export type ContentsPart = Held & {
  readonly streamId: string | null;
  /** Treatments that it went through, here or where it was before, in order; empty when it is as it was logged. */
  readonly treatedBy: readonly string[];
  /** Water has gone off some of it since it was logged. */
  readonly lessWater?: true;
};

export type TreatmentState = Told<TreatmentBegun> & {
  /** In the order in which they happened. */
  readonly doses: readonly Told<DoseAdded>[];
  readonly readings: readonly Told<PotRead>[];
  /** The last end that was told; null while it runs. */
  readonly ended: Told<TreatmentEnded> | null;
  /**
   * What the container held just before the first dose, or before it was told to have reached its end with no dose
   * told; null while nothing has been done to it.
   */
  readonly treated: readonly ContentsPart[] | null;
};

/** A trial on the bench; `staleSince` is when something was first added to what was sampled, or it was emptied. */
export type BenchTestState = Told<BenchTested> & { readonly staleSince: string | null };

/** A movement as one container saw it: `amount` as written. */
export type ContainerMovement = {
  readonly entryId: string;
  readonly at: string;
  readonly way: 'in' | 'out';
  readonly amount: Amount;
  readonly purpose: 'placed' | 'evaporated' | 'determined' | ContentsMoved['purpose'];
  readonly streamId: string | null;
  /** The container at the other end. */
  readonly otherId: string | null;
  /** What the container held afterwards. */
  readonly after: Held;
};

/** A level as it was read, with what the record said it held just then. */
export type LevelState = Told<LevelRead> & { readonly held: Held };

/** A word on a candidate; `staleSince` is when other contents came in or they were treated. */
export type AnswerState = Told<CandidateAnswered> & { readonly staleSince: string | null };

/** A laboratory's report; `staleSince` is when other contents came in, they were treated, or water went off. */
export type ReportState = Told<LabReported> & { readonly staleSince: string | null };

/** What a walk found at a container, or at the place as a whole (`containerId` null). */
export type FindingState = {
  readonly entryId: string;
  readonly at: string;
  readonly containerId: string | null;
  readonly found: Found;
  readonly closed: Told<FindingClosed> | null;
};

/** A walk, as far as it went: `finished` is null while it is under way or was left. */
export type WalkState = {
  readonly walkId: string;
  readonly inspected: readonly Told<ContainerInspected>[];
  readonly finished: Told<WalkFinished> | null;
};

/**
 * A container of a hand-over. `held` is what it held by the record just then, `asItLeft` that nothing has gone in or out since;
 * null where it has not come back, or no proof is filed.
 */
export type HandedOverPart = HandedOver['containers'][number] & {
  readonly held: Held;
  readonly asItLeft: boolean;
  readonly backAt: string | null;
  readonly proofAt: string | null;
};

/** What came of it in the order in which it happened. */
export type HandOverState = Told<HandedOver> & {
  readonly rejected: readonly Told<LoadRejected>[];
  readonly proofs: readonly Told<ProofFiled>[];
  readonly parts: readonly HandedOverPart[];
};

/** `body` is the vessel as it is now. */
export type ContainerState = Told<ContainerOpened> & {
  /** As they were told, in the order in which they happened. */
  readonly changes: readonly Told<ContainerChanged>[];
  /** In the order in which they were made, with those that hand-overs and rejected loads say of it. */
  readonly marks: readonly Told<ContainerMarked>[];
  readonly movements: readonly ContainerMovement[];
  readonly holds: Held;
  readonly contents: readonly ContentsPart[];
  /** Treatments begun in it, in the order in which they began. */
  readonly treatmentIds: readonly string[];
  /** In the order in which they were made. */
  readonly benchTests: readonly BenchTestState[];
  readonly levels: readonly LevelState[];
  /** Who said what is in it, the last one; null where it is what was poured in. */
  readonly determined: Told<ContentsDetermined> | null;
  /** The last word on each candidate. */
  readonly answers: readonly AnswerState[];
  /** In the order in which they were told. */
  readonly reports: readonly ReportState[];
  readonly inspections: readonly Told<ContainerInspected>[];
  /** Where it stood, beside the work or in the store, one after the other; empty where nobody said. */
  readonly areas: readonly { readonly is: Area; readonly since: string }[];
  readonly heldSince: string | null;
  readonly leavingSince: string | null;
  readonly goneSince: string | null;
  /** The hand-over that it left with; null while it is here, or where it went some other way. */
  readonly handOverId: string | null;
  readonly damagedSince: string | null;
  readonly proofFiledAt: string | null;
  /**
   * When the oldest waste in it first went into a container: carried over by a transfer, begun anew after the
   * container was empty; null while it is empty.
   */
  readonly firstWasteIn: string | null;
  readonly closedAt: string | null;
  /** Since when it is not known what is in it (the mark's note says why); null when it is known. */
  readonly doubtfulSince: string | null;
};

/** `body` has the evidence that was found later among its own. */
export type StreamState = Told<StreamLogged> & {
  readonly tests: readonly Told<StreamTested>[];
  /** The last word on whether its month counts it. */
  readonly counting: Told<CountingSaid> | null;
  /** As logged. */
  readonly amount: Held;
  readonly placed: Held;
  /** What is in no container yet; never below zero. */
  readonly unplaced: Held;
  /** Containers it was placed in, with their amounts, in order. */
  readonly placements: readonly {
    readonly entryId: string;
    readonly containerId: string;
    readonly amount: Amount;
  }[];
};

/** An entry that does not fit the others: what fits of it counts, the rest is kept in the history and flagged. */
export type Trouble = {
  readonly entryId: string;
  readonly code: 'refers-to-unknown' | 'opened-twice' | 'corrects-another-kind';
  /** The id that is unknown, opened again or corrected. */
  readonly subject: string;
};

/** Something that the ledger cannot follow, or that should not have happened. `L` or `g`, as decimals. */
export type Upset =
  | {
      readonly code: 'more-taken-than-held';
      readonly entryId: string;
      readonly containerId: string;
      readonly held: Volume | Mass;
      readonly taken: Volume | Mass;
      readonly unit: 'L' | 'g';
    }
  | {
      readonly code:
        | 'added-while-closed'
        | 'added-while-held'
        | 'added-while-gone'
        | 'handed-over-while-gone';
      readonly entryId: string;
      readonly containerId: string;
    }
  | {
      readonly code: 'placed-in-another-unit';
      readonly entryId: string;
      readonly containerId: string;
      readonly streamId: string;
    }
  | {
      /** Before it began or after it had ended; begun while another ran; waste put in while it ran. */
      readonly code: 'dose-outside-treatment' | 'treatment-while-another-runs' | 'added-during-treatment';
      readonly entryId: string;
      readonly containerId: string;
      readonly treatmentId: string;
    };

/** One line of the history with what became of it: `body` and `at` are what counts now, null when withdrawn. */
export type HistoryLine = {
  readonly entry: Entry;
  readonly standing: 'as-written' | 'corrected' | 'withdrawn';
  readonly body: Entry['body'] | null;
  readonly at: string;
  /** Entries that corrected or withdrew it, in order, whether or not they count themselves. */
  readonly changedBy: readonly string[];
};

/** What a state that was gone on from an opening knows of what came before. */
export type Earlier = {
  /** Entries of the record that the opening was worked out from. */
  readonly entries: number;
  /** Place in the record, from 1, of each entry that the opening holds: the first of the log. */
  readonly places: readonly number[];
  readonly last: Entry | undefined;
  /** What happened before is at hand only where it still mattered: what is told of it now reaches behind. */
  readonly from: string;
  /** Entries of the opening that name what nobody told of, in the whole record. */
  readonly unknown: ReadonlySet<string>;
  /** Batches, containers and hand-overs that are over, of which only this is at hand. */
  readonly putAway: () => readonly FoundRow[];
  /** Codes of those of them that what is at hand names, by id. */
  readonly named: ReadonlyMap<string, string>;
  /** Hand-overs that are told of for one of their containers, and are put away all the same: not all of them is at hand. */
  readonly inPart: ReadonlySet<string>;
  /** Something was told since that changes what came before: the whole record must be read to say what holds now. */
  readonly reachedBehind: boolean;
};

export type State = {
  /** Every entry once, in order; of a state that was gone on from an opening, those at hand. */
  readonly log: readonly Entry[];
  /** Null where the whole record is at hand. */
  readonly earlier: Earlier | null;
  readonly history: readonly HistoryLine[];
  readonly workshop: Told<WorkshopDescribed> | null;
  readonly people: ReadonlyMap<string, PersonState>;
  readonly rules: ReadonlyMap<RuleName, Told<LocalRuleStated>>;
  readonly bases: ReadonlyMap<Base, Told<BaseDescribed>>;
  readonly batches: ReadonlyMap<string, BatchState>;
  readonly steps: ReadonlyMap<string, StepState>;
  /** Keyed by entry id, since that is what a step names as its clearance. */
  readonly checklists: ReadonlyMap<string, ChecklistState>;
  /** In the order of the record. */
  readonly listChanges: readonly Told<ListChanged>[];
  readonly stations: ReadonlyMap<string, StationState>;
  /** In the order in which they were made. */
  readonly ventilationChecks: ReadonlyMap<string, Told<VentilationChecked>>;
  readonly clocks: ReadonlyMap<string, ClockState>;
  readonly silverChecks: ReadonlyMap<string, Told<SilverChecked>>;
  readonly streams: ReadonlyMap<string, StreamState>;
  readonly containers: ReadonlyMap<string, ContainerState>;
  readonly walks: ReadonlyMap<string, WalkState>;
  readonly findings: ReadonlyMap<string, FindingState>;
  readonly treatments: ReadonlyMap<string, TreatmentState>;
  /** In the order in which they happened. */
  readonly handOvers: ReadonlyMap<string, HandOverState>;
  readonly prices: ReadonlyMap<Priced, Told<PriceStated>>;
  readonly papers: ReadonlyMap<string, Told<PaperMade>>;
  /** In the order in which they happened. */
  readonly movements: readonly Movement[];
  /** Movements, doses and looks in one list, in the order in which they happened. */
  readonly happenings: readonly Happening[];
  readonly troubles: readonly Trouble[];
  readonly upsets: readonly Upset[];
};

export const emptyState: State = {
  log: [],
  earlier: null,
  history: [],
  workshop: null,
  people: new Map(),
  rules: new Map(),
  bases: new Map(),
  batches: new Map(),
  steps: new Map(),
  checklists: new Map(),
  listChanges: [],
  stations: new Map(),
  ventilationChecks: new Map(),
  clocks: new Map(),
  silverChecks: new Map(),
  streams: new Map(),
  containers: new Map(),
  walks: new Map(),
  findings: new Map(),
  treatments: new Map(),
  handOvers: new Map(),
  prices: new Map(),
  papers: new Map(),
  movements: [],
  happenings: [],
  troubles: [],
  upsets: [],
};

/** A plain body that stands, with where it comes from. */
export type Fact = Told<PlainBody>;
