/**
 * Everything a disposal paper says, as plain data: the PDF is set from it and it lies inside the PDF as JSON, so the two
 * cannot differ. What is not known is the text "not determined": never empty, never zero. Figures are given as printed
 * and once more with every digit. Version 1 of the shape is read for ever; a new shape is a new `v`.
 */
import * as z from 'zod/mini';
import { hashOf } from '../../ledger/seal';
import {
  Day,
  Digits,
  Hash,
  Instant,
  NotDetermined,
  orNotDetermined,
  says,
  text,
  texts,
  told,
} from '../described';
import { pictogramIds } from '../labels/pictograms';
import { headOf, LastEntry, withHash } from '../paper-head';
import { noTimeRuns } from '../words';
import { LabReportData } from './lab-data';
import { figure, figureOrNot, PaperFigure } from './paper-figure';
import { Apart, Carriage, Emergency, Load, Quantity, Statement } from './set-data';

const dayOrNot = (sentence: string) => says(orNotDetermined(Day), sentence);

/** What is counted by the ledger, without a range. */
const amount = (sentence: string) =>
  says(z.strictObject({ value: says(Digits, 'The number.'), unit: text('Its unit.') }), sentence);

const Evidence = z.strictObject({
  how: text('What it was determined by, e.g. "photometer".'),
  on: says(z.array(Day), 'The days that it was determined on.'),
});

const Substance = z.strictObject({
  name: text('Name of the substance.'),
  symbol: text('Symbol of the element, or formula.'),
  aLitre: figureOrNot('In a litre of liquid.'),
  inAll: figureOrNot('In the whole container.'),
  byMass: figureOrNot('Its share of all that is in the container, by mass.'),
  howKnown: told('What the amount goes back to, and of which day, in words.'),
  evidence: z.optional(
    says(
      z.array(Evidence),
      'What the amount goes back to, as data; absent in papers made before it was told, and where there is none.',
    ),
  ),
  notToldBy: texts('Wastes in it that do not tell: what is given is at least there.'),
});

const BaseLine = z.strictObject({
  base: text('Name of the base.'),
  formula: text('Its formula.'),
  purity: says(
    z.strictObject({ percent: text('Per cent by mass.'), saidBy: text('Who or what says so.') }),
    'Purity that was reckoned with.',
  ),
  mass: figureOrNot('Mass of it that neutralising the whole container would take.'),
  heat: figureOrNot('Heat that it would give off.'),
  rise: figureOrNot('Rise of temperature, all at once and no heat lost.'),
  sludgeDry: figureOrNot('Mass of what it would bring down, dry.'),
  sludgeDrained: figureOrNot('Mass of what it would bring down, drained and still wet.'),
  carbonDioxide: says(
    z.union([z.literal('none'), NotDetermined, PaperFigure]),
    'Carbon dioxide that it would give off; "none" of a base that gives none.',
  ),
  doesNotBringDown: texts('Metals in it that this base leaves dissolved.'),
  notToldBy: texts('Wastes in it that do not tell: they are not counted.'),
});

const NeverLine = z.strictObject({
  rule: text('The rule in short.'),
  never: text('What must not meet.'),
  happens: text('What happens if it does.'),
  source: text('Where the rule is from.'),
  status: text('How well the source is known.'),
});

const Candidate = z.strictObject({
  what: text('Hazard class, waste code or transport entry.'),
  says: told('The codes, each with who confirmed it or as a candidate.'),
  confirms: text('Who has to confirm it before anything moves.'),
});

const Ground = z.strictObject({
  sentence: text('What the number is.'),
  figure: figure('The number of this container.'),
  limit: figure('The limit that it was held against.'),
});

/** A candidate of a law: its code with what it means, how it stands, its numbers, its rule and whose word there is. */
const CandidateLine = z.strictObject({
  scheme: text('The law or list that the code is of.'),
  code: text('The code.'),
  means: z.optional(text('What the code means; absent where the code says it.')),
  standing: text('Whether it reaches its limit, came close, needs a judgement, or is not determined.'),
  numbers: says(z.array(Ground), 'The numbers behind it.'),
  lacks: texts('What is not determined and would decide it.'),
  rule: text('The rule in words.'),
  cite: text('Where the rule stands.'),
  status: text('How well the source is known.'),
  said: text('Whose word there is on it, or that nobody has confirmed it.'),
});

const Laws = z.strictObject({
  candidates: says(z.array(CandidateLine), 'What the rules propose. A candidate is no classification.'),
  given: says(
    z.array(
      z.strictObject({
        scheme: text('The law or list that the code is of.'),
        code: text('The code.'),
        said: text('Whose word it is.'),
      }),
    ),
    'Codes that somebody gave and the rules did not propose.',
  ),
  lacking: says(
    z.array(
      z.strictObject({
        what: texts('What is not determined.'),
        decides: texts('The codes that wait for it.'),
      }),
    ),
    'What is not determined, with the codes that wait for it.',
  ),
  dilution: says(
    z.array(
      z.strictObject({
        rule: text('The rule in words.'),
        cite: text('Where the rule stands.'),
        status: text('How well the source is known.'),
      }),
    ),
    'What each law says on diluting.',
  ),
});

const Residue = z.strictObject({
  name: text('What the solid is.'),
  wetMass: figure('Its mass, wet.'),
  heldLiquor: figureOrNot('Volume of the liquor that it holds.'),
});

const EntryLine = z.strictObject({
  number: says(z.int().check(z.minimum(1)), 'Place in the record, from 1.'),
  id: text('Identifier of the entry.'),
  hash: says(Hash, 'Hash of the entry, as the record has it.'),
  happenedAt: says(Instant, 'When it happened.'),
  kind: text('Kind of entry.'),
  says: text('What it is about, in a few words.'),
  who: told('Who made it.'),
});

const Source = z.strictObject({
  title: text('The source.'),
  status: text('How well it is known.'),
});

export const WorkingLine = z.strictObject({
  id: text('E and a number for evidence, P for a published value, W for what was worked out.'),
  containerId: text('Container for whose sake it was worked out first.'),
  kind: says(
    z.enum(['evidence', 'published', 'worked-out']),
    'Read, measured or said here; out of a publication; or worked out from other lines.',
  ),
  sentence: text('What the line gives.'),
  formula: z.optional(text('The formula with the numbers put in; only of what was worked out.')),
  from: texts('Lines that it is worked out from.'),
  result: figure('The result, with as many digits as a hand calculation needs.'),
  howKnown: text('How it is known.'),
  sources: says(z.array(Source), 'Where it is from.'),
  note: z.optional(text('What stays to be said about it.')),
});

const MustLeave = z.strictObject({
  day: says(
    Day,
    'The careful day by which it must have left; in papers without `otherDay`, the only one reckoned.',
  ),
  otherDay: z.optional(says(Day, 'The day by the longer count.')),
  from: z.optional(says(Day, 'The day that the time began.')),
  days: text('How long it may stand, in words.'),
  saidBy: text('Who said so.'),
  saidOn: says(Day, 'When they said so.'),
});

const Fill = z.strictObject({
  holds: text('What is in it, by volume and mass.'),
  capacity: text('What it can hold.'),
  percent: text('How full it is.'),
  limit: text('How full it may be, and whose word that is.'),
  amounts: z.optional(
    says(
      z.strictObject({
        volume: amount('Volume of the liquid in it.'),
        mass: amount('Mass of the wet solids in it.'),
        capacity: amount('What it can hold.'),
        percent: amount('How full it is.'),
        limit: amount('How full it may be.'),
      }),
      'The same as numbers; absent in papers made before they were told.',
    ),
  ),
});

export const ContainerData = z.strictObject({
  containerId: text('Identifier of the container in the record.'),
  code: text('Code that stands on the container; hyphens are U+2011, so that it stays on one line.'),
  link: z.optional(
    text('The address in the pattern on its label; absent where nobody told where the book stands.'),
  ),
  empty: says(z.boolean(), 'Whether it is empty by the record.'),
  vessel: text('Kind of vessel.'),
  capacity: text('What it can hold.'),
  material: told('What it is made of.'),
  cap: text('How it is closed.'),
  place: told('Where it stands.'),
  tray: told('The tray under it.'),
  name: told('What is in it, in a few words.'),
  whatItIs: told('What is in it, and what that is.'),
  howItArose: texts('How it came about: batches, steps, days.'),
  treated: z.optional(texts('What was done to it, and what follows; absent where nothing was.')),
  state: told('Liquid, solid, slurry.'),
  colour: told('Its colour.'),
  layers: told('Its layers.'),
  ph: told('Its pH, by what and when.'),
  fill: says(Fill, 'How full it is.'),
  quantity: says(Quantity, 'How much is in it.'),
  firstWasteIn: dayOrNot('The day that the first waste was put in.'),
  mustLeaveBy: says(
    z.union([NotDetermined, z.literal(noTimeRuns), MustLeave]),
    `By when it must have left; "${noTimeRuns}" where none does.`,
  ),
  substances: says(
    z.array(Substance),
    'What is dissolved: copper and nickel first, then other metals, acid, nitrate.',
  ),
  labReports: z.optional(
    says(
      z.array(LabReportData),
      'What laboratories found in samples of all of it, the newest first; absent in papers made before it was told.',
    ),
  ),
  ammonia: told('Whether waste with ammonia was logged in it.'),
  chloride: told('Whether waste with chloride was logged in it.'),
  liquor: figureOrNot('Volume of the liquid.'),
  density: figureOrNot('Density of the liquid.'),
  residues: says(z.array(Residue), 'Wet solids in it.'),
  bases: says(z.array(BaseLine), 'What neutralising it would take, by each base that the workshop keeps.'),
  basesNote: text('Why no base is given, or what stays to be said about it.'),
  mustNotMeet: says(z.array(NeverLine), 'What must not meet it.'),
  pictograms: says(
    z.array(z.enum(pictogramIds)),
    'Symbols of hazard by the candidates, and by what somebody confirmed.',
  ),
  candidates: says(z.array(Candidate), 'Class, code and transport entry for the first page.'),
  laws: z.optional(
    says(
      Laws,
      'What the laws make of it; absent where nobody knows what is in it, and in papers made before they were told.',
    ),
  ),
  notDetermined: texts('All that is not determined of it, in one place.'),
  carriage: says(Carriage, 'What a transport document or a manifest asks for of it.'),
  flags: texts('What is wrong or doubtful by the record.'),
  entries: says(z.array(EntryLine), 'The entries of the record that stand behind it.'),
});

const RuleLine = z.strictObject({
  rule: text('The rule.'),
  value: told('What it says here.'),
  saidBy: told('Who said so.'),
  saidOn: dayOrNot('When they said so.'),
  document: told('The document that it stands in.'),
});

export const Workshop = z.strictObject({
  name: told('Name of the workshop.'),
  address: told('Its address.'),
  generatorNumber: told('Its number as a generator of waste.'),
  emergencyNumber: told('Telephone for an emergency.'),
  telephone: told('Telephone of somebody who knows the waste.'),
  authority: told('Its authority, and how to reach it.'),
  collector: told('Its collector, and how to reach it.'),
  collectorLicence: told('Number of the collector’s licence.'),
  hazardousWasteCounter: told('The counter that takes hazardous waste.'),
});

const content = {
  ...headOf('disposal-paper'),
  workshop: says(Workshop, 'The workshop that generated the waste.'),
  localRules: says(z.array(RuleLine), 'The local rules as somebody stated them.'),
  treatment: text('Whether treatment is allowed here.'),
  load: says(Load, 'How much there is in all.'),
  apart: says(z.array(Apart), 'Which of the containers must be kept apart, the worst first.'),
  statement: says(Statement, 'The statement of the generator.'),
  emergency: says(Emergency, 'What to know and to do if something goes wrong with the load.'),
  containers: says(z.array(ContainerData).check(z.minLength(1)), 'The containers, in the order asked for.'),
  working: says(
    z.array(WorkingLine),
    'The working of every figure: each line after all the lines that it stands on.',
  ),
  lastEntry: says(LastEntry, 'The last entry of the record as it stood.'),
};

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const DisposalData = withHash(content);
const DisposalContent = z.strictObject(content);

export type { PaperFigure } from './paper-figure';
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
