/** A run as it waits for the person: after a reload, a call, an update. */
import * as z from 'zod/mini';
import { Run } from '../../safety/run-schema';

export const KeptRun = z.strictObject({ runId: z.uuid(), run: Run });
export type KeptRun = z.infer<typeof KeptRun>;

/** @param part what it is gone through for, as in its address */
export const runDraft = (list: string, part: string): string => `check/${list}/${part}`;

/** Where a list leads back to that had to be gone through first. */
export const ReturnTo = z.strictObject({ path: z.string(), title: z.string() });
export const returnDraft = (list: string): string => `return/${list}`;
