/** A figure as a paper prints it, and once more with every digit. */
import * as z from 'zod/mini';
import { Digits, named, orNotDetermined, says, text } from '../described';

/** `likely`, `low`, `high` as printed; `value`, `lowValue`, `highValue` with every digit. Ranges hold about 19 times in 20. */
export const PaperFigure = named(
  z.strictObject({
    likely: text('Likely value as printed: as many digits as the range allows, typographic signs.'),
    low: text('Low end as printed, rounded outwards.'),
    high: text('High end as printed, rounded outwards.'),
    unit: text('Unit of all six numbers; "1" where there is none.'),
    value: says(Digits, 'Likely value with every digit.'),
    lowValue: says(Digits, 'Low end with every digit.'),
    highValue: says(Digits, 'High end with every digit.'),
    line: z.optional(text('Line of the working that it comes from; absent where no working was asked for.')),
  }),
  'Figure',
  'A figure with its range, which holds about 19 times in 20. An exact one has its value at both ends.',
);

export type PaperFigure = z.infer<typeof PaperFigure>;

export const figure = (sentence: string) => says(PaperFigure, sentence);
export const figureOrNot = (sentence: string) => says(orNotDetermined(PaperFigure), sentence);
