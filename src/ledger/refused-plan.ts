/** A plan that is refused may have been carried out all the same: then the record takes it as it happened. */
import type { Refusal } from './refusal';

/** Refused for how it is written, not for what it would do: there is nothing yet that could have happened. */
const unwritable: readonly Refusal['code'][] = ['does-not-fit', 'unknown', 'same-container'];

export const mayHaveHappened = ({ code }: Refusal): boolean => !unwritable.includes(code);
