/**
 * An amount of waste against the most that may be: of a month, or on site at once. Only a limit of the workshop's own rules
 * rules; one of the reference is shown beside it, or alone, and nothing is held against it.
 */
import type { Figure } from '../../quantities/figure';

/** `reached`: over already at the limit; `passed`: only above it. */
export type AmountLimit = { readonly limit: Figure<'kg'>; readonly over: 'reached' | 'passed' };

/** `may be over`: the high end of the range is. `not determined`: some of it has no mass, and the rest is not over. */
export type Standing = 'over' | 'may be over' | 'near' | 'under' | 'not determined';

/** From this share of the limit on it is near. Our own choice, no rule of law. */
const near = 0.8;

/** @param complete whether everything that belongs to the total has a mass */
export function standingAgainst(
  total: Figure<'kg'>,
  { limit, over }: AmountLimit,
  complete: boolean,
): Standing {
  const isOver = (end: 'value' | 'high'): boolean =>
    over === 'reached' ? total[end].gte(limit.value) : total[end].gt(limit.value);
  if (isOver('value')) return 'over';
  if (isOver('high')) return 'may be over';
  if (!complete) return 'not determined';
  return total.high.gte(limit.value.times(near)) ? 'near' : 'under';
}

export type HeldAgainst = {
  readonly total: Figure<'kg'>;
  readonly complete: boolean;
  /** By the workshop's own limit; null while none has been entered. */
  readonly own: (AmountLimit & { readonly standing: Standing }) | null;
  readonly reference: AmountLimit | null;
};

/** @param own the most that may be there, as the workshop's authority has said; just reaching it is not over */
export function heldAgainst(
  total: Figure<'kg'>,
  complete: boolean,
  own: Figure<'kg'> | null,
  reference: AmountLimit | null,
): HeldAgainst {
  const limit: AmountLimit | null = own && { limit: own, over: 'passed' };
  return {
    total,
    complete,
    own: limit && { ...limit, standing: standingAgainst(total, limit, complete) },
    reference,
  };
}
