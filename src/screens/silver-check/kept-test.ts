/** A test for silver as it waits for the person: after a reload, a list in between, a call. */
import * as z from 'zod/mini';
import { emptyInto, IntoDraft } from '../batches/into-container';
import { Typed, typed } from '../form';

const WasteDraft = z.object({ volume: Typed, into: IntoDraft });
export type WasteDraft = z.infer<typeof WasteDraft>;

export const KeptTest = z.object({
  looks: z.array(z.object({ look: z.string(), seen: z.string(), at: z.string() })),
  ammoniaAt: z.nullable(z.string()),
  /** When the acid must be in; stands with `ammoniaAt`. */
  dueAt: z.nullable(z.string()),
  hurried: z.boolean(),
  /** How late it was when the person last said that the acid goes in. */
  urged: z.enum(['in-time', 'overdue', 'old']),
  /** The person broke it off. */
  broken: z.boolean(),
  /** Its waste is asked for. */
  atWaste: z.boolean(),
  sample: Typed,
  drops: Typed,
  'ammonia-test-waste': WasteDraft,
  'chloride-test-waste': WasteDraft,
  /** What is in the record already, where the phone gave out in between. */
  written: z.record(z.string(), z.string()),
});
export type KeptTest = z.infer<typeof KeptTest>;

const emptyWaste = (): WasteDraft => {
  const into = emptyInto('bottle');
  return { volume: typed('mL'), into: { ...into, vessel: { ...into.vessel, capacity: typed('L') } } };
};

export const noTest = (): KeptTest => ({
  looks: [],
  ammoniaAt: null,
  dueAt: null,
  hurried: false,
  urged: 'in-time',
  broken: false,
  atWaste: false,
  sample: typed('mL'),
  drops: typed('1'),
  'ammonia-test-waste': emptyWaste(),
  'chloride-test-waste': emptyWaste(),
  written: {},
});

export const testDraft = (batchId: string): string => `silver-check/${batchId}`;
