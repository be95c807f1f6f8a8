/** A run as it waits for the person: after a reload, a call, an update. */
import * as z from 'zod/mini';
import { Run } from '../../safety/run-schema';

export const KeptRun = z.strictObject({ runId: z.uuid(), run: Run });
export type KeptRun = z.infer<typeof KeptRun>;

/** Name of the draft; "-" for a list that belongs to no batch. */
export const runDraft = (list: string, batch: string): string => `check/${list}/${batch}`;

/** Where a list leads back to that had to be gone through first. */
export const ReturnTo = z.strictObject({ path: z.string(), title: z.string() });
export const returnDraft = (list: string): string => `return/${list}`;

/** The part of an address that stands for the batch. */
export const batchPart = (batchId: string | null): string => batchId ?? '-';

/** Where a person goes who leaves the list. */
export const homeOf = (batchId: string | null): string => (batchId === null ? 'today' : `batches/${batchId}`);
