/**
 * Everything a disposal paper says, as plain data: the PDF is set from it and it lies inside the PDF as JSON, so the two
 * cannot differ. What is not known is the text "not determined": never empty, never zero. Figures are given as printed
 * and once more with every digit. Version 1 of the shape is read for ever; a new shape is a new `v`.
 */
import * as z from 'zod/mini';
import { hashOf } from '../../ledger/seal';
import { noTimeRuns, notDetermined } from '../words';

const Text = z.string().check(z.minLength(1));
const Digits = z.string().check(z.regex(/^-?\d+(\.\d+)?$/));
const Hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));
const Instant = z.iso.datetime({ precision: 3 });
const Day = z.iso.date();
const NotDetermined = z.literal(notDetermined);
const orNotDetermined = <S extends z.ZodMiniType>(schema: S) => z.union([NotDetermined, schema]);
/** Text that is "not determined" where nobody said. */
const Said = Text;

/** `likely`, `low`, `high` as printed; `value`, `lowValue`, `highValue` with every digit. Ranges hold about 19 times in 20. */
export const PaperFigure = z.strictObject({
  likely: Text,
  low: Text,
  high: Text,
  unit: Text,
  value: Digits,
  lowValue: Digits,
  highValue: Digits,
  /** Line of the working; absent where no working was asked for. */
  line: z.optional(Text),
});

const Substance = z.strictObject({
  name: Text,
  symbol: Text,
  aLitre: orNotDetermined(PaperFigure),
  inAll: orNotDetermined(PaperFigure),
  howKnown: Said,
  /** Wastes in it that do not tell: what is given is at least there. */
  notToldBy: z.array(Text),
});

const BaseLine = z.strictObject({
  base: Text,
  formula: Text,
  purity: z.strictObject({ percent: Text, saidBy: Text }),
  mass: orNotDetermined(PaperFigure),
  heat: orNotDetermined(PaperFigure),
  rise: orNotDetermined(PaperFigure),
  sludgeDry: orNotDetermined(PaperFigure),
  sludgeDrained: orNotDetermined(PaperFigure),
  carbonDioxide: z.union([z.literal('none'), NotDetermined, PaperFigure]),
  doesNotBringDown: z.array(Text),
  notToldBy: z.array(Text),
});

const NeverLine = z.strictObject({
  rule: Text,
  never: Text,
  happens: Text,
  source: Text,
  status: Text,
});

const Candidate = z.strictObject({ what: Text, says: Text, confirms: Text });

/** A candidate of a law: its code with what it means, how it stands, its numbers, its rule and whose word there is. */
const CandidateLine = z.strictObject({
  scheme: Text,
  code: Text,
  means: z.optional(Text),
  standing: Text,
  numbers: z.array(z.strictObject({ sentence: Text, figure: PaperFigure, limit: PaperFigure })),
  lacks: z.array(Text),
  rule: Text,
  cite: Text,
  status: Text,
  said: Text,
});

const Laws = z.strictObject({
  candidates: z.array(CandidateLine),
  /** Codes that somebody gave and the rules did not propose. */
  given: z.array(z.strictObject({ scheme: Text, code: Text, said: Text })),
  /** What is not determined, with the codes that wait for it. */
  lacking: z.array(z.strictObject({ what: z.array(Text), decides: z.array(Text) })),
  dilution: z.array(z.strictObject({ rule: Text, cite: Text, status: Text })),
});

const Residue = z.strictObject({
  name: Text,
  wetMass: PaperFigure,
  heldLiquor: orNotDetermined(PaperFigure),
});

const EntryLine = z.strictObject({
  number: z.int().check(z.minimum(1)),
  id: Text,
  hash: Hash,
  happenedAt: Instant,
  kind: Text,
  says: Text,
  who: Said,
});

export const WorkingLine = z.strictObject({
  id: Text,
  /** Container for whose sake it was worked out first. */
  containerId: Text,
  kind: z.enum(['evidence', 'published', 'worked-out']),
  sentence: Text,
  /** With the numbers put in. */
  formula: z.optional(Text),
  from: z.array(Text),
  /** With as many digits as a hand calculation needs. */
  result: PaperFigure,
  howKnown: Text,
  sources: z.array(z.strictObject({ title: Text, status: Text })),
  note: z.optional(Text),
});

export const ContainerData = z.strictObject({
  containerId: Text,
  code: Text,
  empty: z.boolean(),
  vessel: Text,
  capacity: Text,
  material: Text,
  cap: Text,
  place: Said,
  tray: Said,
  whatItIs: Said,
  howItArose: z.array(Text),
  /** What was done to it, and what follows; absent where nothing was. */
  treated: z.optional(z.array(Text)),
  state: Said,
  colour: Said,
  layers: Said,
  ph: Said,
  fill: z.strictObject({ holds: Text, capacity: Text, percent: Text, limit: Text }),
  firstWasteIn: orNotDetermined(Day),
  mustLeaveBy: z.union([
    NotDetermined,
    z.literal(noTimeRuns),
    z.strictObject({
      /** The careful one; in papers without the other day, the other one. */
      day: Day,
      /** By the longer count. */
      otherDay: z.optional(Day),
      from: z.optional(Day),
      days: Text,
      saidBy: Text,
      saidOn: Day,
    }),
  ]),
  substances: z.array(Substance),
  ammonia: Said,
  chloride: Said,
  liquor: orNotDetermined(PaperFigure),
  density: orNotDetermined(PaperFigure),
  residues: z.array(Residue),
  bases: z.array(BaseLine),
  /** Why no base is given, or what stays to be said about it. */
  basesNote: Text,
  mustNotMeet: z.array(NeverLine),
  candidates: z.array(Candidate),
  /** What the laws make of it; absent where nobody knows what is in it, and in papers made before they were told. */
  laws: z.optional(Laws),
  /** What is wrong or doubtful by the record. */
  flags: z.array(Text),
  entries: z.array(EntryLine),
});

const RuleLine = z.strictObject({
  rule: Text,
  value: Said,
  saidBy: Said,
  saidOn: orNotDetermined(Day),
  document: Said,
});

const Workshop = z.strictObject({
  name: Said,
  address: Said,
  generatorNumber: Said,
  emergencyNumber: Said,
  authority: Said,
  collector: Said,
  hazardousWasteCounter: Said,
});

const told = {
  v: z.literal(1),
  kind: z.literal('disposal-paper'),
  language: z.literal('en'),
  demo: z.boolean(),
  madeAt: Instant,
  zone: Text,
  madeBy: Said,
  workshop: Workshop,
  localRules: z.array(RuleLine),
  treatment: Text,
  cautions: z.array(Text).check(z.minLength(1)),
  containers: z.array(ContainerData).check(z.minLength(1)),
  working: z.array(WorkingLine),
  /** The record as it stood. */
  lastEntry: z.strictObject({ number: z.int(), id: Text, hash: Hash, writtenAt: Instant }),
};

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const DisposalData = z.strictObject({ ...told, contentHash: Hash });
const DisposalContent = z.strictObject(told);

export type PaperFigure = z.infer<typeof PaperFigure>;
export type WorkingLine = z.infer<typeof WorkingLine>;
export type ContainerData = z.infer<typeof ContainerData>;
export type DisposalData = z.infer<typeof DisposalData>;
export type DisposalContent = z.infer<typeof DisposalContent>;

/** The data with its hash; a plain copy without undefined members, as JSON gives it back. */
export function sealed(content: DisposalContent): DisposalData {
  const plain: unknown = JSON.parse(JSON.stringify(content));
  return DisposalData.parse({ ...(plain as DisposalContent), contentHash: hashOf(plain) });
}

/** As a file: readable, two spaces deep. The hash is over the canonical form, not over this one. */
export const jsonText = (data: DisposalData): string => `${JSON.stringify(data, null, 2)}\n`;
