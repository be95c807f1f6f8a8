/** Containers that leave with somebody, a load that comes back, and the proof of what became of it. */
import * as z from 'zod/mini';
import { Amount } from './containers';
import { Files } from './files';
import { Id } from './identity';
import { Day } from './moments';
import { Photos } from './photos';
import { Signature } from './signatures';
import { Address, Line, Note } from './text';

const papers = { photos: z.optional(Photos), files: z.optional(Files), note: z.optional(Note) };

const ContainerIds = z.array(Id).check(z.minLength(1), z.maxLength(500));

/** `agreed` is what the collector read or wrote, where that is told; what the record says it held is worked out. */
const Taken = z.strictObject({ containerId: Id, agreed: z.optional(Amount), note: z.optional(Line) });

export const HandedOver = z.strictObject({
  kind: z.literal('handed-over'),
  v: z.literal(1),
  handOverId: Id,
  collector: z.strictObject({
    name: Line,
    licence: z.optional(Line),
    contact: z.optional(Address),
  }),
  driver: z.optional(Line),
  vehicle: z.optional(Line),
  /** Number of the collector's paper, as a manifest or consignment note bears it. */
  document: z.optional(Line),
  /** Where the load goes. */
  destination: z.optional(Line),
  containers: z.array(Taken).check(z.minLength(1), z.maxLength(500)),
  /** The set of papers that went with them. */
  paperId: z.optional(Id),
  signatures: z.strictObject({ generator: z.optional(Signature), collector: z.optional(Signature) }),
  ...papers,
});

/** The load, or some of it, was refused and is here again. */
export const LoadRejected = z.strictObject({
  kind: z.literal('load-rejected'),
  v: z.literal(1),
  handOverId: Id,
  containerIds: ContainerIds,
  saidBy: z.optional(Line),
  why: Note,
  document: z.optional(Line),
  ...papers,
});

/** Somebody states in writing what became of containers that were handed over. */
export const ProofFiled = z.strictObject({
  kind: z.literal('proof-filed'),
  v: z.literal(1),
  handOverId: Id,
  containerIds: ContainerIds,
  saidBy: z.optional(Line),
  document: z.optional(Line),
  /** What was done with it, as the paper calls it. */
  treatedHow: z.optional(Line),
  datedOn: z.optional(Day),
  ...papers,
});

export type HandedOver = z.infer<typeof HandedOver>;
export type LoadRejected = z.infer<typeof LoadRejected>;
export type ProofFiled = z.infer<typeof ProofFiled>;
