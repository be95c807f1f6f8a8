/** What a rule found, before it becomes a candidate. */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import { type ClpRuleId, clp } from '../../reference/clp-tables';
import { type Constant, sources } from '../../reference/tables';
import { type Citation, type Ground, standingOf } from '../candidate';
import type { Hazard } from './hazard';

export type Found = {
  readonly hazard: Hazard;
  readonly standing: 'fires' | 'close';
  readonly rule: ClpRuleId;
  readonly grounds: readonly Ground[];
};

export const citationOf = (id: ClpRuleId): Citation => {
  const { rule, cite, status, source } = clp.rules[id];
  const { title, edition } = sources[source];
  return { rule, cite, status, readIn: `${title}, ${edition}` };
};

/** A published limit that no range widens. */
export const limitOf = <U extends Unit>(sentence: string, limit: Constant, unit: U): Figure<U> =>
  constant(`clp/${sentence}`, sentence, limit, unit);

export const whole: Figure<'1'> = constant(
  'clp/whole',
  'All of the limit',
  { value: '1', unit: '1', uncertainty: '0', source: 'clp-2019', status: 'verified' },
  '1',
);

/** One step of a family, the worst first: a hazard and what is held against its limit; null where nothing counts towards it. */
export type Step = { readonly hazard: Hazard; readonly ground: Ground | null };

/**
 * Of a family of steps, the worst that fires, and the next worse one where it comes near; where none fires, the worst that
 * comes near.
 */
export function worstOf(rule: ClpRuleId, steps: readonly Step[]): Found[] {
  const found: Found[] = [];
  for (const { hazard, ground } of steps) {
    const standing = ground && standingOf(ground);
    if (!ground || !standing) continue;
    found.push({ hazard, standing, rule, grounds: [ground] });
    if (standing === 'fires') break;
  }
  const fires = found.filter((f) => f.standing === 'fires');
  const close = found.filter((f) => f.standing === 'close');
  return [...(fires.length > 0 ? close.slice(-1) : close.slice(0, 1)), ...fires];
}
