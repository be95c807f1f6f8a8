/**
 * A month's hazardous waste by the federal counting rules of the USA, and the category that it speaks for: by its value, and
 * by the high end of its range, which is the one to plan by. The category is a candidate; the workshop says its own.
 */
import type Decimal from 'decimal.js';
import { plus } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { type Arising, type Judged, judged } from './counting';
import { type Category, monthLimits } from './generator-limits';

type Kilograms = { readonly nonAcute: Decimal; readonly acute: Decimal; readonly acuteSpill: Decimal };

/**
 * By federal limits: very small up to 100 kg with it, large from 1000 kg on; acute waste apart, above 1 kg.
 * Source: 40 CFR 262.13, Table 1.
 */
export function categoryOf({ nonAcute, acute, acuteSpill }: Kilograms): Category {
  const large =
    nonAcute.gte(monthLimits.large.value) ||
    acute.gt(monthLimits.acute.value) ||
    acuteSpill.gt(monthLimits.acuteSpill.value);
  if (large) return 'LQG';
  return nonAcute.gt(monthLimits.smallest.value) ? 'SQG' : 'VSQG';
}

export type GeneratorMonth = {
  readonly month: string;
  /** Everything, in the order given, with what became of it. */
  readonly judged: readonly Judged[];
  /** What is counted; acute waste, and what is left of cleaning it up, apart. */
  readonly nonAcute: Figure<'kg'>;
  readonly acute: Figure<'kg'>;
  readonly acuteSpill: Figure<'kg'>;
  /** What is counted and has no mass: where there is any, the sums are at least, and the category may be higher. */
  readonly unweighed: readonly Arising[];
  readonly category: { readonly likely: Category; readonly atHigh: Category };
};

function sum(sentence: string, all: readonly Judged[]): Figure<'kg'> {
  const [first, ...more] = all.flatMap(({ counts, arising }) => (counts && arising.kg ? [arising.kg] : []));
  // Nothing logged is a count of nothing, not something that nobody determined.
  if (!first)
    return given({
      origin: sentence,
      sentence,
      value: 0,
      unit: 'kg',
      how: 'worked-out',
      spread: exact,
      decimals: 0,
    });
  return workedOut({ sentence, unit: 'kg', formula: plus(first, ...more) });
}

/** @param month "2026-05", in the zone of the workshop */
export function generatorMonth(arisings: readonly Arising[], month: string, zone: string): GeneratorMonth {
  const all = arisings.map((arising) => judged(arising, month, zone));
  const of = (acute: Arising['acute']) => all.filter(({ arising }) => arising.acute === acute);
  const nonAcute = sum('Hazardous waste counted for the month', of('no'));
  const acute = sum('Acute hazardous waste counted for the month', of('acute'));
  const acuteSpill = sum('Rest of cleaning up acute waste counted for the month', of('acute-spill'));
  const at = (end: 'value' | 'high'): Category =>
    categoryOf({ nonAcute: nonAcute[end], acute: acute[end], acuteSpill: acuteSpill[end] });
  return {
    month,
    judged: all,
    nonAcute,
    acute,
    acuteSpill,
    unweighed: all.flatMap(({ counts, arising }) => (counts && arising.kg === null ? [arising] : [])),
    category: { likely: at('value'), atHigh: at('high') },
  };
}
