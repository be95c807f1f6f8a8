import type Decimal from 'decimal.js';
import { expect } from 'vitest';

/** Relative error of `computed` against a published value, as a number: 0.01 is one per cent. */
export const relativeError = (computed: Decimal | undefined, published: number): number =>
  computed === undefined ? Number.POSITIVE_INFINITY : Math.abs(computed.toNumber() / published - 1);

/** Expects a relative error of `most` at the largest. */
export const expectWithin = (computed: Decimal | undefined, published: number, most: number): void =>
  expect(relativeError(computed, published), `${computed} against ${published}`).toBeLessThanOrEqual(most);
