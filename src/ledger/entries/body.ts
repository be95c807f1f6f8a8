/** What an entry can say. `kind` tells the bodies apart; `v` is the version of a body's shape, read for ever. */
import * as z from 'zod/mini';
import { BatchCharged, BatchRecovered } from './accounts';
import { BaseDescribed } from './bases';
import { BatchOpened, StepEnded, StepStarted } from './batches';
import { CandidateAnswered } from './candidates';
import { ChecklistAnsweredLater, ChecklistFinished, ListChanged } from './checklists';
import { ClockStarted, ClockStopped } from './clocks';
import {
  ContainerChanged,
  ContainerMarked,
  ContainerOpened,
  ContentsDetermined,
  ContentsMoved,
  LevelRead,
  StreamPlaced,
  WaterLost,
} from './containers';
import { HandedOver, LoadRejected, ProofFiled } from './hand-overs';
import { TimedId } from './identity';
import { ContainerInspected, FindingClosed, WalkFinished } from './inspections';
import { LabReported } from './lab-reports';
import { LocalRuleStated } from './local-rules';
import { Instant } from './moments';
import { PaperMade } from './papers';
import { PriceStated } from './prices';
import { SilverChecked } from './silver-checks';
import { StationDescribed, StationGivenUp, VentilationChecked } from './stations';
import { CountingSaid, StreamLogged, StreamTested } from './streams';
import { Note } from './text';
import { BenchTested, DoseAdded, PotRead, TreatmentBegun, TreatmentEnded } from './treatments';
import { PersonAdded, PersonLeft, WorkshopDescribed } from './workshop';

/** A body that tells of the workshop itself; each can be corrected. */
export const PlainBody = z.discriminatedUnion('kind', [
  WorkshopDescribed,
  PersonAdded,
  PersonLeft,
  LocalRuleStated,
  BaseDescribed,
  BatchOpened,
  ChecklistFinished,
  ChecklistAnsweredLater,
  ListChanged,
  StepStarted,
  StepEnded,
  BatchCharged,
  BatchRecovered,
  StreamLogged,
  StreamTested,
  CountingSaid,
  ContainerOpened,
  ContainerChanged,
  StreamPlaced,
  ContentsMoved,
  WaterLost,
  LevelRead,
  ContentsDetermined,
  ContainerMarked,
  CandidateAnswered,
  LabReported,
  ContainerInspected,
  WalkFinished,
  FindingClosed,
  PaperMade,
  HandedOver,
  LoadRejected,
  ProofFiled,
  TreatmentBegun,
  DoseAdded,
  PotRead,
  ClockStarted,
  ClockStopped,
  SilverChecked,
  StationDescribed,
  StationGivenUp,
  VentilationChecked,
  BenchTested,
  TreatmentEnded,
  PriceStated,
]);

/** The whole body as it should have been, of the same kind; `happenedAt` when the time was wrong. The last one counts. */
export const EntryCorrected = z.strictObject({
  kind: z.literal('entry-corrected'),
  v: z.literal(1),
  corrects: TimedId,
  body: PlainBody,
  happenedAt: z.optional(Instant),
  reason: Note,
});

/** It did not happen. Withdrawing a correction or a withdrawal undoes that one. */
export const EntryWithdrawn = z.strictObject({
  kind: z.literal('entry-withdrawn'),
  v: z.literal(1),
  withdraws: TimedId,
  reason: Note,
});

export const Body = z.discriminatedUnion('kind', [...PlainBody.def.options, EntryCorrected, EntryWithdrawn]);

export type PlainBody = z.infer<typeof PlainBody>;
export type EntryCorrected = z.infer<typeof EntryCorrected>;
export type EntryWithdrawn = z.infer<typeof EntryWithdrawn>;
export type Body = z.infer<typeof Body>;
export type BodyOf<K extends Body['kind']> = Extract<Body, { kind: K }>;
