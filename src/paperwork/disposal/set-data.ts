/** What a set of disposal papers says besides its sheets: how much there is, what the generator states, what to do if it goes wrong, how it is carried. */
import * as z from 'zod/mini';
import { Day, NotDetermined, orNotDetermined, says, text, texts, told } from '../described';
import { SignatureData } from '../signature-data';
import { figure, figureOrNot, PaperFigure } from './paper-figure';

const status = () => text('How well the source is known.');
const codes = (sentence: string) => texts(`${sentence} By their codes.`);
const noneOr = (sentence: string) =>
  says(
    z.union([z.literal('none'), NotDetermined, PaperFigure]),
    `${sentence} "none" where there is none by the record.`,
  );

const amounts = {
  liquid: noneOr('Liquid that stands free.'),
  solid: noneOr('Wet solids, with the liquor that they hold.'),
  mass: figureOrNot('Mass of all that is in it, without the vessel.'),
};

/** How much a container holds. */
export const Quantity = z.strictObject(amounts);

/** How much all of them hold. */
export const Load = z.strictObject({
  containers: says(z.int(), 'How many containers there are.'),
  ...amounts,
  withoutLiquid: codes('Containers whose liquid is not determined: the sum is at least there.'),
  withoutMass: codes('Containers whose mass is not determined: the sum is at least there.'),
});

/** Two of the containers that must be kept apart. */
export const Apart = z.strictObject({
  one: codes('The containers on the one side.'),
  other: codes('The containers on the other side.'),
  oneIs: text('What the one side is.'),
  otherIs: text('What the other side is.'),
  happens: text('What happens if they meet.'),
  source: text('Where it is from.'),
  status: status(),
});

export const Statement = z.strictObject({
  says: texts('What the generator states, sentence by sentence.'),
  diluted: says(
    z.array(
      z.strictObject({
        on: says(Day, 'The day of the mixing.'),
        what: text('What was put to what.'),
        codes: texts('Codes that the mixing made disappear.'),
        laws: texts('The laws that forbid it.'),
      }),
    ),
    'Mixing by which codes disappeared, as the record tells it.',
  ),
  signature: says(
    z.union([z.literal('not signed'), SignatureData]),
    'The signature under it; "not signed" where the line waits for a pen.',
  ),
});

const Step = z.strictObject({
  do: text('What to do.'),
  more: texts('What else to know for it.'),
  source: text('Where it is from.'),
  status: status(),
});

export const Emergency = z.strictObject({
  telephones: says(
    z.array(z.strictObject({ who: text('Whose number it is.'), number: told('The number.') })),
    'Whom to call, the first first.',
  ),
  hazards: says(
    z.array(
      z.strictObject({
        title: text('What it may be.'),
        is: text('What that is, in plain words.'),
        gases: texts('Gases that may come.'),
        notUsed: texts('What must not be brought to it.'),
        containers: codes('The containers that it concerns.'),
        source: text('Where it is from.'),
        status: status(),
      }),
    ),
    'What the load may be, by the kinds of waste in it, the worst first.',
  ),
  cards: says(
    z.array(
      z.strictObject({
        title: text('What has happened.'),
        say: texts('Words to say to the emergency service.'),
        steps: says(z.array(Step), 'What to do, in this order.'),
      }),
    ),
    'First measures.',
  ),
  equipment: says(
    z.array(
      z.strictObject({
        says: text('What to wear or to have.'),
        source: text('Where it is from.'),
        status: status(),
      }),
    ),
    'Protective equipment.',
  ),
});

const TransportEntry = z.strictObject({
  number: text('UN or NA number.'),
  name: text('Proper shipping name, as the list has it.'),
  class: text('Class, with subsidiary hazards in brackets.'),
  packingGroup: text('Packing group.'),
  technicalNames: says(
    orNotDetermined(z.array(z.string()).check(z.minLength(1))),
    'Technical names, two at most.',
  ),
  adr: z.optional(
    text('Described as ADR orders it, without the tunnel code; absent of entries of the USA alone.'),
  ),
  usa: text('Described as 49 CFR orders it.'),
  standing: text('Whether it reaches its limit, came close, needs a judgement, or is not determined.'),
  said: text('Whose word there is on it, or that nobody has confirmed it.'),
});

/** What a transport document or a manifest asks for of one container, each said or "not determined". */
export const Carriage = z.strictObject({
  entries: says(z.array(TransportEntry), 'Candidates for carriage, the one that fits best first.'),
  noEntry: told('Why there is no entry, or what there is to know of it.'),
  packages: text('Kind and number of packages.'),
  wasteCodes: says(
    z.array(
      z.strictObject({
        scheme: text('The law or list that the code is of.'),
        code: text('The code.'),
        said: text('Whose word there is on it.'),
      }),
    ),
    'Waste codes.',
  ),
  reportable: says(
    z.array(
      z.strictObject({
        of: text('Waste number, or name of the substance.'),
        limit: figure('Its reportable quantity in one package.'),
        held: figureOrNot('How much of it is in this package.'),
        reached: text('"yes", "no", or "not determined".'),
      }),
    ),
    'Reportable quantities of the United States that were looked at; empty where none is.',
  ),
  heed: says(
    z.array(
      z.strictObject({ rule: text('The rule in words.'), cite: text('Where it stands.'), status: status() }),
    ),
    'What is to be heeded before it is carried at all.',
  ),
});

export type Quantity = z.infer<typeof Quantity>;
export type Load = z.infer<typeof Load>;
export type Apart = z.infer<typeof Apart>;
export type Statement = z.infer<typeof Statement>;
export type Emergency = z.infer<typeof Emergency>;
export type Carriage = z.infer<typeof Carriage>;
