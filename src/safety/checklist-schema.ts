/** What a checklist file may say. The fields are told for people in `checklists/README.md`. */
import * as z from 'zod/mini';
import { itemsFaults, walkFaults } from './checklist-faults';
import { Item } from './checklist-item';
import { Line, Slug } from './cited';

export const Step = z.enum([
  'acid-dilution',
  'leach',
  'filtration',
  'cementation',
  'chloride-test',
  'ammonia-test',
  'washing-drying-weighing',
  'transfer',
  'neutralisation',
  'sludge-filtering',
  'hand-over',
  'inspection',
  'readiness',
]);

const hours = z.int().check(z.gte(1), z.lte(168));

/** The form of a list, before what is wrong in it is looked for. */
export const ListShape = z.strictObject({
  /** Schema file that helps an editor; it says nothing to the app. */
  $schema: z.optional(z.string()),
  id: Slug,
  version: z.int().check(z.gte(1)),
  title: Line,
  purpose: Line,
  step: Step,
  moment: z.enum(['start', 'running']),
  validHours: hours,
  /** Longest validity when a time of return is stated; absent: a stated time never lengthens it. */
  longestHours: z.optional(hours),
  mode: z.enum(['read-do', 'do-confirm', 'challenge-response']),
  secondPerson: z.boolean(),
  /** It needs a place that carries fume away: the questions of `checklists/at-a-place/station.json` come first. */
  station: z.optional(z.literal(true)),
  requires: z.array(Slug),
  begin: Line,
  mayStart: Line,
  hang: Line,
  already: Line,
  items: z.array(Item).check(z.minLength(1)),
});

export type Step = z.infer<typeof Step>;
export type Checklist = z.infer<typeof ListShape>;

/** The list of the walk along the containers: never gone through as a whole, its looks are asked one by one. */
export const isWalk = ({ step }: { readonly step: string }): boolean => step === 'inspection';

const names = (item: Item): boolean => item.kind === 'choice' && item.choices.some((choice) => choice.names);

export const Checklist = ListShape.check(({ value: list, issues }) => {
  const faults = [...itemsFaults(list.items), ...walkFaults(list.items, isWalk(list))];
  if (list.secondPerson && !list.items.some(names))
    faults.push({ path: ['secondPerson'], code: 'nobody-named' });
  if (list.longestHours !== undefined && list.longestHours < list.validHours)
    faults.push({ path: ['longestHours'], code: 'shorter-than-valid' });
  for (const { path, code } of faults)
    issues.push({ code: 'custom', message: code, path: [...path], input: list });
});
