/**
 * What the entries add up to. Never stored as truth: it can always be made again from the log.
 * Amounts are decimals in L and g; maps are keyed by the id of the thing unless said otherwise.
 */
import type { Quantity } from '../quantities/quantity';
import type { Base, BaseDescribed } from './entries/bases';
import type { BatchOpened, StepStarted } from './entries/batches';
import type { PlainBody } from './entries/body';
import type { ChecklistFinished } from './entries/checklists';
import type {
  Amount,
  ContainerMarked,
  ContainerOpened,
  ContentsMoved,
  StreamPlaced,
} from './entries/containers';
import type { Entry } from './entries/entry';
import type { LocalRuleStated, RuleName } from './entries/local-rules';
import type { PaperMade } from './entries/papers';
import type { StreamLogged } from './entries/streams';
import type { PersonAdded, WorkshopDescribed } from './entries/workshop';

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

export type PersonState = Told<PersonAdded> & { readonly leftAt: string | null };

export type StepState = Told<StepStarted> & {
  readonly endedAt: string | null;
  readonly endNote: string | null;
  readonly streamIds: readonly string[];
};

/** `steps` in the order they began; `checklists` holds the entry ids of finished checklists, in order. */
export type BatchState = Told<BatchOpened> & {
  readonly steps: readonly string[];
  readonly streamIds: readonly string[];
  readonly checklists: readonly string[];
};

/** One movement of waste, in the order it happened. */
export type Movement = Told<StreamPlaced | ContentsMoved>;

/** Part of a container's contents; `streamId` is null for what came out of a container that held less by the ledger. */
export type ContentsPart = Held & { readonly streamId: string | null };

/** A movement as one container saw it: `amount` as written. */
export type ContainerMovement = {
  readonly entryId: string;
  readonly at: string;
  readonly way: 'in' | 'out';
  readonly amount: Amount;
  readonly purpose: 'placed' | ContentsMoved['purpose'];
  readonly streamId: string | null;
  /** The container at the other end. */
  readonly otherId: string | null;
  /** What the container held afterwards. */
  readonly after: Held;
};

export type ContainerState = Told<ContainerOpened> & {
  /** In the order in which they were made. */
  readonly marks: readonly Told<ContainerMarked>[];
  readonly movements: readonly ContainerMovement[];
  readonly holds: Held;
  readonly contents: readonly ContentsPart[];
  /**
   * When the oldest waste in it first went into a container: carried over by a transfer, begun anew after the
   * container was empty; null while it is empty.
   */
  readonly firstWasteIn: string | null;
  readonly closedAt: string | null;
  /** Since when it is not known what is in it (the mark's note says why); null when it is known. */
  readonly doubtfulSince: string | null;
};

export type StreamState = Told<StreamLogged> & {
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
  /** Containers in which some of it is now. */
  readonly whereNow: readonly string[];
};

/** An entry that does not fit the others: what fits of it counts, the rest is kept in the history and flagged. */
export type Trouble = {
  readonly entryId: string;
  readonly code: 'refers-to-unknown' | 'opened-twice' | 'corrects-another-kind';
  /** The id that is unknown, opened again or corrected. */
  readonly subject: string;
};

/** A movement that the ledger cannot follow. `L` or `g`, as decimals. */
export type Upset =
  | {
      readonly code: 'more-taken-than-held';
      readonly entryId: string;
      readonly containerId: string;
      readonly held: Volume | Mass;
      readonly taken: Volume | Mass;
      readonly unit: 'L' | 'g';
    }
  | { readonly code: 'added-while-closed'; readonly entryId: string; readonly containerId: string }
  | {
      readonly code: 'placed-in-another-unit';
      readonly entryId: string;
      readonly containerId: string;
      readonly streamId: string;
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

export type State = {
  /** Every entry once, in order. */
  readonly log: readonly Entry[];
  readonly history: readonly HistoryLine[];
  readonly workshop: Told<WorkshopDescribed> | null;
  readonly people: ReadonlyMap<string, PersonState>;
  readonly rules: ReadonlyMap<RuleName, Told<LocalRuleStated>>;
  readonly bases: ReadonlyMap<Base, Told<BaseDescribed>>;
  readonly batches: ReadonlyMap<string, BatchState>;
  readonly steps: ReadonlyMap<string, StepState>;
  /** Keyed by entry id, since that is what a step names as its clearance. */
  readonly checklists: ReadonlyMap<string, Told<ChecklistFinished>>;
  readonly streams: ReadonlyMap<string, StreamState>;
  readonly containers: ReadonlyMap<string, ContainerState>;
  readonly papers: ReadonlyMap<string, Told<PaperMade>>;
  /** In the order in which they happened. */
  readonly movements: readonly Movement[];
  readonly troubles: readonly Trouble[];
  readonly upsets: readonly Upset[];
};

export const emptyState: State = {
  log: [],
  history: [],
  workshop: null,
  people: new Map(),
  rules: new Map(),
  bases: new Map(),
  batches: new Map(),
  steps: new Map(),
  checklists: new Map(),
  streams: new Map(),
  containers: new Map(),
  papers: new Map(),
  movements: [],
  troubles: [],
  upsets: [],
};

/** A plain body that stands, with where it comes from. */
export type Fact = Told<PlainBody>;
