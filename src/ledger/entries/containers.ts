/** Vessels that hold waste, and what went in and out of them. */
import * as z from 'zod/mini';
import { WrittenMass, WrittenVolume } from '../../quantities/written';
import { AmountSpread } from './findings';
import { Code, Id } from './identity';
import { Law } from './local-rules';
import { Day } from './moments';
import { Photos } from './photos';
import { Line, Note } from './text';

/** A volume or a mass, as it was read. */
export const Amount = z.union([WrittenVolume, WrittenMass]);

const Material = z.enum(['HDPE', 'PP', 'glass', 'other']);
const Cap = z.enum(['vented', 'tight', 'lid', 'open']);
const Area = z.enum(['near-work', 'store']);

export const ContainerOpened = z.strictObject({
  kind: z.literal('container-opened'),
  v: z.literal(1),
  containerId: Id,
  code: Code,
  vessel: z.enum(['jerrican', 'bottle', 'tub', 'drum']),
  capacity: WrittenVolume,
  material: Material,
  otherMaterial: z.optional(Line),
  cap: Cap,
  place: z.optional(Line),
  /** The tray it stands in. */
  tray: z.optional(Line),
  /** Beside the work, under the eyes of whoever makes the waste, or where waste is stored; absent where nobody said. */
  area: z.optional(Area),
  photos: z.optional(Photos),
  /** When it was taken into use; storage time is counted from the first waste in, which is worked out. */
  openedOn: Day,
});

/** What is other about a vessel from then on; `null` where there is none any more. What is absent stays as it was. */
export const ContainerChanged = z
  .strictObject({
    kind: z.literal('container-changed'),
    v: z.literal(1),
    containerId: Id,
    capacity: z.optional(WrittenVolume),
    material: z.optional(Material),
    otherMaterial: z.optional(z.nullable(Line)),
    cap: z.optional(Cap),
    place: z.optional(z.nullable(Line)),
    tray: z.optional(z.nullable(Line)),
    area: z.optional(Area),
    /** All of its pictures, not only new ones. */
    photos: z.optional(Photos),
    note: z.optional(Note),
  })
  .check(
    z.refine(
      ({ kind: _, v: __, containerId: ___, note: ____, ...changes }) => Object.keys(changes).length > 0,
      'nothing is changed',
    ),
  );

/** Codes that mixing made disappear by what was known then, and the laws that forbid it. The ledger adds it. */
const Diluted = z.strictObject({
  codes: z.array(Line).check(z.minLength(1), z.maxLength(60)),
  laws: z.array(Law).check(z.minLength(1), z.maxLength(5)),
});

export const StreamPlaced = z.strictObject({
  kind: z.literal('stream-placed'),
  v: z.literal(1),
  streamId: Id,
  containerId: Id,
  amount: Amount,
  spread: z.optional(AmountSpread),
  diluted: z.optional(Diluted),
});

/** `toContainerId` is null when it left the shelf: a sample, a spill, a treatment pot that is no container. */
export const ContentsMoved = z.strictObject({
  kind: z.literal('contents-moved'),
  v: z.literal(1),
  fromContainerId: Id,
  toContainerId: z.nullable(Id),
  amount: Amount,
  spread: z.optional(AmountSpread),
  purpose: z.enum(['transfer', 'sample', 'spill', 'treatment']),
  diluted: z.optional(Diluted),
  note: z.optional(Note),
});

/** What somebody saw or did to a container as a whole. `full` is what a person says; the fill is worked out. */
export const ContainerMarked = z.strictObject({
  kind: z.literal('container-marked'),
  v: z.literal(1),
  containerId: Id,
  mark: z.enum([
    'closed',
    'reopened',
    'contents-doubtful',
    'contents-known',
    'held',
    'let-go',
    'leaving',
    'staying',
    'gone',
    'came-back',
    'emptied',
    'damaged',
    'mended',
    'proof-filed',
  ]),
  /** Of doubtful contents: how the doubt came. */
  doubt: z.optional(z.enum(['found', 'inherited', 'label-gone', 'mixed-up', 'other'])),
  /** Of contents that are known again: who says so. How they know is the note. */
  saidBy: z.optional(Line),
  /** Where it went, when it is gone, and the number of the paper, when its proof is filed. */
  to: z.optional(Line),
  document: z.optional(Line),
  photos: z.optional(Photos),
  note: z.optional(Note),
});

/** How much is in it by its gauge, a dip or the scale: set against what the record says it holds. */
export const LevelRead = z.strictObject({
  kind: z.literal('level-read'),
  v: z.literal(1),
  containerId: Id,
  level: Amount,
  spread: z.optional(AmountSpread),
  photos: z.optional(Photos),
  note: z.optional(Note),
});

/** Water that went off, as measured: what is dissolved stays, in less liquid. */
export const WaterLost = z.strictObject({
  kind: z.literal('water-lost'),
  v: z.literal(1),
  containerId: Id,
  amount: WrittenVolume,
  spread: z.optional(AmountSpread),
  note: z.optional(Note),
});

/** From then on all that is in it is this stream, which was logged for it: somebody says what it is and how they know. */
export const ContentsDetermined = z.strictObject({
  kind: z.literal('contents-determined'),
  v: z.literal(1),
  containerId: Id,
  streamId: Id,
  how: z.enum(['assay', 'tests', 'papers', 'witness']),
  saidBy: Line,
  document: z.optional(Line),
  photos: z.optional(Photos),
  note: z.optional(Note),
});

export type Amount = z.infer<typeof Amount>;
export type Area = z.infer<typeof Area>;
export type ContainerOpened = z.infer<typeof ContainerOpened>;
export type ContainerChanged = z.infer<typeof ContainerChanged>;
export type StreamPlaced = z.infer<typeof StreamPlaced>;
export type ContentsMoved = z.infer<typeof ContentsMoved>;
export type ContainerMarked = z.infer<typeof ContainerMarked>;
export type LevelRead = z.infer<typeof LevelRead>;
export type WaterLost = z.infer<typeof WaterLost>;
export type ContentsDetermined = z.infer<typeof ContentsDetermined>;
