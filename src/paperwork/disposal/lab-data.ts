/** What laboratories found in a container, as a disposal paper tells it. */
import * as z from 'zod/mini';
import { Day, Digits, says, text } from '../described';
import { figure } from './paper-figure';

const LabResult = z.strictObject({
  element: text('Name of the element.'),
  symbol: text('Its symbol.'),
  in: says(
    z.enum(['total', 'filtered', 'tclp', 'wet']),
    'What it was found in: total, a kilogram of the waste as it is; filtered, the liquid that passes a filter; tclp, the extract of the federal leaching test of the United States; wet, that of California.',
  ),
  level: text('The level as printed, with its unit.'),
  amount: says(
    z.strictObject({ value: says(Digits, 'The number as reported.'), unit: text('Its unit.') }),
    'The same as a number.',
  ),
  noneFound: says(z.boolean(), 'Whether none was found, down to that level.'),
  byWastes: z.optional(
    figure('What was logged of its wastes comes to, where that and the report contradict each other.'),
  ),
});

/** One report of a sample of all that is in a container. */
export const LabReportData = z.strictObject({
  laboratory: text('The laboratory.'),
  number: z.optional(text('Number of the report; absent where nobody wrote it down.')),
  sampledOn: says(Day, 'The day that the sample was taken.'),
  ofNow: says(
    z.boolean(),
    'Whether it is of what is in the container now; false where something else came in, or water went off, after the sample.',
  ),
  ph: z.optional(text('The pH that it found.')),
  results: says(z.array(LabResult), 'What it found, as the report has it.'),
});
export type LabReportData = z.infer<typeof LabReportData>;
