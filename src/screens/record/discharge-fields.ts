/** The two rules of an authorised discharge as their form holds them, what is wrong with them, and what is written. */
import * as z from 'zod/mini';
import type { DischargeRule, LocalRule, LocalRuleStated } from '../../ledger/entries/local-rules';
import type { IntentionOf } from '../../ledger/intention';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import type { Written } from '../../quantities/written';
import { type Metal, metalSymbols } from '../../reference/tables';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { given } from '../tried';
import { words } from '../words';
import { saidFaults, saidOf, saidShape } from './said-fields';
import { dischargeFormWords as w } from './words';

export const DischargeFields = z.object({
  /** One line a metal, in the order in which they were added; a line left empty is no limit. */
  limits: z.array(z.object({ metal: z.string(), most: Typed })),
  low: Typed,
  high: Typed,
  ...saidShape,
});
export type DischargeFields = z.infer<typeof DischargeFields>;

const dischargeRules: readonly DischargeRule[] = ['discharge-limits', 'discharge-ph'];
export const isDischargeRule = (name: string): name is DischargeRule =>
  (dischargeRules as readonly string[]).includes(name);

/** As stated before, or empty. */
export function dischargeFieldsOf(body: LocalRuleStated | undefined, sign: DecimalSign): DischargeFields {
  const stated = body?.stated;
  const shown = (written: Written): Typed => ({ typed: formatWritten(written, sign), unit: written.unit });
  const limits = stated?.rule === 'discharge-limits' ? Object.entries(stated.value) : [];
  const ph = stated?.rule === 'discharge-ph' ? stated.value : undefined;
  return {
    limits: limits.map(([metal, most]) => ({ metal, most: shown(most) })),
    low: ph ? shown(ph.low) : typed('1'),
    high: ph ? shown(ph.high) : typed('1'),
    ...saidOf(body),
  };
}

export const readMost = (most: Typed): FieldRead<'mg/L'> => readTyped(most, { aboveZero: true });
export const readPh = (ph: Typed): FieldRead<'1'> => readTyped(ph, { most: 14 });

/** Metals that have no line yet. */
export const metalsLeft = ({ limits }: DischargeFields): readonly Metal[] =>
  metalSymbols.filter((symbol) => limits.every(({ metal }) => metal !== symbol));

function limitsFault({ limits }: DischargeFields): string | undefined {
  const reads = limits.map(({ most }) => readMost(most).state);
  if (reads.includes('wrong')) return words.number.look;
  return reads.includes('written') ? undefined : w.noMetal;
}

function phFault({ low, high }: DischargeFields): string | undefined {
  const [from, to] = [readPh(low), readPh(high)];
  if (from.state !== 'written' || to.state !== 'written') return words.number.look;
  return Number(from.written.value) < Number(to.written.value) ? undefined : w.wrongWay;
}

export const dischargeFaults = (rule: DischargeRule, fields: DischargeFields, today: string) => ({
  value: rule === 'discharge-limits' ? limitsFault(fields) : phFault(fields),
  ...saidFaults(fields, today),
});

function statedDischarge(rule: DischargeRule, fields: DischargeFields): LocalRule | null {
  if (rule === 'discharge-limits') {
    const written = fields.limits.flatMap(({ metal, most }) => {
      const read = readMost(most);
      return read.state === 'written' ? [[metal, read.written] as const] : [];
    });
    return written.length > 0 ? { rule, value: Object.fromEntries(written) } : null;
  }
  const [low, high] = [readPh(fields.low), readPh(fields.high)];
  if (low.state !== 'written' || high.state !== 'written') return null;
  return { rule, value: { low: low.written, high: high.written } };
}

/** Null while the value is not there. */
export function dischargeIntention(
  rule: DischargeRule,
  fields: DischargeFields,
): IntentionOf<'state-local-rule'> | null {
  const stated = statedDischarge(rule, fields);
  return (
    stated && {
      do: 'state-local-rule',
      stated,
      saidBy: fields.saidBy,
      saidOn: fields.saidOn,
      ...given('document', fields.document),
    }
  );
}
