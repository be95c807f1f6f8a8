/** What things cost here, as an invoice or an offer says. The last statement of a price counts. */
import * as z from 'zod/mini';
import { Digits } from '../../quantities/written';
import { type BaseId, baseIds } from '../../reference/tables';
import { Line } from './text';

const others = ['iron', 'collection-per-litre', 'collection-per-kilogram', 'collection-visit'] as const;

/** A base or iron by the kilogram as sold; a collection by the litre, by the kilogram, or by the visit. */
export const Priced = z.enum([...others, ...(baseIds as [BaseId, ...BaseId[]])]);

/** Three letters of ISO 4217; which of them are in use is not checked, since that changes. */
const Currency = z.string().check(z.regex(/^[A-Z]{3}$/));

export const PriceStated = z.strictObject({
  kind: z.literal('price-stated'),
  v: z.literal(1),
  what: Priced,
  amount: z.strictObject({ value: Digits, unit: Currency }),
  saidBy: z.optional(Line),
});

export type Priced = z.infer<typeof Priced>;
export type PriceStated = z.infer<typeof PriceStated>;
