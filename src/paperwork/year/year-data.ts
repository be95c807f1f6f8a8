/**
 * Everything that the paper of a year says, as plain data: the PDF is set from it and it lies inside the PDF as JSON. What is not
 * known is "not determined": never empty, never zero. Version 1 of the shape is read for ever; a new shape is a new `v`.
 */
import * as z from 'zod/mini';
import { hashOf } from '../../ledger/seal';
import { Day, NotDetermined, named, orNotDetermined, says, text, texts, told } from '../described';
import { WorkingLine, Workshop } from '../disposal/disposal-data';
import { figure, figureOrNot, PaperFigure } from '../disposal/paper-figure';
import { headOf, LastEntry, withHash } from '../paper-head';

/** In the place of a sum where there was nothing to add up. */
export const nothing = 'none';

const Thing = named(
  z.strictObject({
    what: says(z.enum(['waste', 'container', 'treatment', 'hand-over', 'batch']), 'What it is.'),
    id: text('Its identifier in the record.'),
    called: text('What it is called; hyphens of codes are U+2011.'),
  }),
  'Thing',
  'Something of the record, by its identifier and what it is called.',
);

const Mass = named(
  z.strictObject({
    sum: says(
      z.union([z.literal(nothing), NotDetermined, PaperFigure]),
      `Sum of what has a mass; "${nothing}" where there was nothing.`,
    ),
    noMass: says(z.array(Thing), 'What is in it and has no mass: with any, the sum is at least.'),
  }),
  'Mass',
  'A sum of masses, with what has none.',
);
const mass = (sentence: string) => says(Mass, sentence);

const Kind = z.strictObject({
  kind: text('Kind of waste, as in the record.'),
  called: text('The same in words.'),
  wastes: says(z.int(), 'How many were logged.'),
  mass: mass('Their mass.'),
});

const Month = z.strictObject({
  month: text('Year and month.'),
  mass: mass('Mass of the waste that arose in it.'),
  kinds: says(z.array(Kind), 'The same by kind.'),
  found: says(z.array(Thing), 'Containers that were found in it and of which nobody knows what is in them.'),
});

const Besides = z.strictObject({
  called: text('What it is.'),
  why: text('Why it is not counted in what arose.'),
  mass: mass('Its mass.'),
  kinds: says(z.array(Kind), 'The same by kind.'),
});

const Waste = z.strictObject({
  waste: says(Thing, 'The waste.'),
  kind: text('Kind of waste, as in the record.'),
  month: text('Year and month in which it arose.'),
  counted: says(z.boolean(), 'Whether it is counted in what arose.'),
  mass: figureOrNot('Its mass.'),
});

const Here = z.strictObject({
  thing: says(Thing, 'A container, or a waste that was in none.'),
  holds: told('Kinds of waste, in words.'),
  mass: figureOrNot('The mass of it.'),
});

const LeftContainer = z.strictObject({
  container: says(Thing, 'The container.'),
  holds: told('Kinds of waste in it as it left, in words.'),
  mass: figureOrNot('Mass of what was in it as it left, by the record.'),
  agreed: told('What the collector read or wrote.'),
  counted: says(z.boolean(), 'False where it came back within the time, or had left already.'),
  proofOn: says(orNotDetermined(Day), 'The day on which proof of disposal was filed.'),
});

const Load = z.strictObject({
  handOverId: text('Its identifier in the record.'),
  on: says(Day, 'The day on which it left.'),
  collector: text('Who took it.'),
  licence: told('Number of their licence.'),
  destination: told('Where it went.'),
  document: told('Number of the paper that went with it.'),
  treatedHow: told('What was done with it, as the proof calls it.'),
  mass: mass('Mass of the containers that are counted.'),
  containers: says(z.array(LeftContainer), 'Its containers.'),
});

const CodeLine = z.strictObject({
  law: text('The law or list that the code is of.'),
  code: told('The waste code.'),
  standing: says(
    z.enum(['accepted', 'candidate', 'open']),
    'Somebody’s word, a candidate, or a candidate that is open.',
  ),
  says: text('The same in words.'),
  collector: text('Who took it.'),
  destination: told('Where it went.'),
  mass: mass('Mass of it.'),
  containers: says(z.array(Thing), 'The containers.'),
});

const Line = z.strictObject({
  line: text('Name of the line.'),
  called: text('The same in words.'),
  means: z.optional(text('What has to be said of it; absent where nothing has.')),
  sum: figure('Its sum.'),
  parts: says(
    z.array(z.strictObject({ of: says(Thing, 'Where it is.'), amount: figure('How much of it is known.') })),
    'What it is made of.',
  ),
});

const BalanceData = z.strictObject({
  of: text('Symbol of the element, or "acid".'),
  called: text('The substance in words.'),
  unit: says(z.enum(['g', 'mol']), 'Unit of the balance.'),
  ins: says(z.array(Line), 'What was here and came in.'),
  outs: says(z.array(Line), 'What went and is here.'),
  sumIn: figureOrNot('Sum of what came in.'),
  sumOut: figureOrNot('Sum of what went and is here.'),
  off: figureOrNot('In less out, with its range; what both sides rest on cancels.'),
  verdict: says(
    z.enum(['closes', 'more-in', 'more-out', 'cannot-be-told']),
    'Whether nothing lies within the range of in less out, as far as it is told.',
  ),
  says: text('The same in words.'),
  gaps: says(
    z.array(
      z.strictObject({ thing: says(Thing, 'What does not tell.'), says: text('What is missing of it.') }),
    ),
    'What does not tell: with any, each side is at least.',
  ),
});

const PerSilver = z.strictObject({
  called: text('What it is.'),
  all: figureOrNot('How much of it went to waste.'),
  ratio: figureOrNot('Grams of it for a gram of silver.'),
  notToldBy: says(z.array(Thing), 'Wastes that do not tell: what is given is at least.'),
});

const Silver = z.strictObject({
  weighed: figureOrNot('Silver got back, weighed dry.'),
  each: says(z.array(PerSilver), 'Copper, nickel and waste of those batches.'),
  batches: says(
    z.array(
      z.strictObject({
        batch: says(Thing, 'The batch.'),
        silver: figure('Silver got back of it.'),
        each: says(z.array(PerSilver), 'Copper, nickel and waste of it.'),
      }),
    ),
    'Batches whose silver was first weighed in the time, with all of their wastes.',
  ),
  notWeighed: says(z.array(Thing), 'Batches with barren liquor in the time whose silver nobody weighed.'),
});

const Agent = z.strictObject({
  called: text('What went in.'),
  mass: figure('How much of it, as sold.'),
  treatments: says(z.int(), 'In how many treatments.'),
});

const content = {
  ...headOf('year-paper'),
  period: says(
    z.strictObject({ first: says(Day, 'First day.'), last: says(Day, 'Last day.') }),
    'The time that it is about, both days with it.',
  ),
  over: says(z.boolean(), 'Whether the time was over when this was made.'),
  workshop: says(Workshop, 'The workshop that generated the waste.'),
  confirms: text('Who has to confirm it.'),
  counting: texts('How it was counted.'),
  notDetermined: texts('What is not determined, in short.'),
  arose: mass('Waste that arose in the time.'),
  kinds: says(z.array(Kind), 'The same by kind.'),
  months: says(z.array(Month), 'The same by month.'),
  besides: says(z.array(Besides), 'What was logged and is not counted in it.'),
  found: says(z.array(Thing), 'Containers that were found and of which nobody knows what is in them.'),
  wastes: says(z.array(Waste), 'Every waste of the time.'),
  start: mass('Waste here before the first day.'),
  end: mass('Waste here after the last day, or as it stood when this was made.'),
  hereAtStart: says(z.array(Here), 'Where it was before the first day.'),
  hereAtEnd: says(z.array(Here), 'Where it is after the last day.'),
  handedOver: mass('Waste handed over in the time.'),
  loads: says(z.array(Load), 'Each load.'),
  otherwise: says(z.array(LeftContainer), 'Containers that went some other way.'),
  codes: says(z.array(CodeLine), 'What was handed over by waste code and by who took it where.'),
  balances: says(z.array(BalanceData), 'What each substance came to.'),
  toldNowhere: texts('Substances that no waste of the time tells of.'),
  wrong: texts('What contradicts itself in the record, or could not be followed.'),
  silver: says(Silver, 'What silver cost in waste.'),
  agents: says(z.array(Agent), 'What was used for treating.'),
  working: says(
    z.array(z.omit(WorkingLine, { containerId: true })),
    'The working of every figure: each line after all the lines that it stands on.',
  ),
  lastEntry: says(orNotDetermined(LastEntry), 'The last entry of the record as it stood.'),
};

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const YearData = withHash(content);
const YearContent = z.strictObject(content);

export type YearData = z.infer<typeof YearData>;
export type YearContent = z.infer<typeof YearContent>;
export type MassData = z.infer<typeof Mass>;
export type ThingData = z.infer<typeof Thing>;

/** The data with its hash; a plain copy without undefined members, as JSON gives it back. */
export function sealedYear(told: YearContent): YearData {
  const plain: unknown = JSON.parse(JSON.stringify(told));
  return YearData.parse({ ...(plain as YearContent), contentHash: hashOf(plain) });
}

export const yearText = (data: YearData): string => `${JSON.stringify(data, null, 2)}\n`;
