/** The limits that a residual is held against: those of the local rules, or none. */
import { type Limits, referenceLimits } from '../chemistry/treatment/limits';
import { exact, type Figure, given } from '../quantities/figure';
import type { Written } from '../quantities/written';
import type { ReferenceId } from '../reference/residual-tables';
import { metalSymbols, metals } from '../reference/tables';
import type { LocalRuleStated } from './entries/local-rules';
import type { State } from './state';

const saidIn = ({ saidBy, saidOn, document }: LocalRuleStated): string =>
  [`Said by ${saidBy} on ${saidOn}`, document].filter((part) => part !== undefined).join(', ');

const asStated = <U extends 'mg/L' | '1'>(
  origin: string,
  sentence: string,
  { value, unit }: Written<U>,
  note: string,
): Figure<U> =>
  given({
    origin: `local-rule/${origin}`,
    sentence,
    value,
    unit,
    how: 'stated',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
    note,
  });

/**
 * What local rules say of a discharge that is authorised; undefined where they name no metal. A pH alone is no limit for a
 * metal: see `dischargePh`.
 */
export function localLimits(state: State): Limits | undefined {
  const body = state.rules.get('discharge-limits')?.body;
  if (body?.stated.rule !== 'discharge-limits') return undefined;
  const { value } = body.stated;
  const note = saidIn(body);
  const values = new Map(
    metalSymbols.flatMap((metal) => {
      const most = value[metal];
      if (!most) return [];
      const sentence = `Most of ${metals[metal].name} by the local rules`;
      return [[metal, asStated(`discharge-limits/${metal}`, sentence, most, note)] as const];
    }),
  );
  const pH = dischargePh(state);
  return { of: 'local', title: note, values, ...(pH ? { pH } : {}) };
}

/** The local rules' limits, or named reference values with the local rules' pH beside them, if there is one. */
export function limitsOf(state: State, reference?: ReferenceId): Limits {
  const pH = dischargePh(state);
  return localLimits(state) ?? { ...referenceLimits(reference), ...(pH ? { pH } : {}) };
}

/** pH of what may be let out where it is authorised; shown beside, and nobody's word that this is fit for a drain. */
export function dischargePh(state: State): Limits['pH'] {
  const body = state.rules.get('discharge-ph')?.body;
  if (body?.stated.rule !== 'discharge-ph') return undefined;
  const { low, high } = body.stated.value;
  const note = saidIn(body);
  return {
    low: asStated('discharge-ph/low', 'Lowest pH by the local rules', low, note),
    high: asStated('discharge-ph/high', 'Highest pH by the local rules', high, note),
  };
}
