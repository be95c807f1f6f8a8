/** Wastes that must not be poured together, by the never-rule that forbids it. */
import { type NeverRule, neverRules } from './never-rules';
import type { StreamKind } from './stream-kind';

type Family = 'ammonia' | 'chloride' | 'nitric' | 'other';

const familyOf = (kind: StreamKind): Family => {
  if (kind === 'ammonia-test-waste') return 'ammonia';
  if (kind === 'chloride-test-waste') return 'chloride';
  const nitric: readonly StreamKind[] = [
    'leach-liquor',
    'barren-liquor',
    'wash-water',
    'ceramic-residue',
    'spent-filters',
  ];
  return nitric.includes(kind) ? 'nitric' : 'other';
};

/** Which rule forbids a pair of families; ammonia waste meets nothing but itself. */
function ruleFor(a: Family, b: Family): string | null {
  if (a === b) return null;
  if (a === 'ammonia' || b === 'ammonia') return 'ammonia-on-nitrate';
  const pair = [a, b];
  return pair.includes('chloride') && pair.includes('nitric') ? 'nitric-with-hydrochloric' : null;
}

/** The never-rule that forbids lime, caustic or soda on one of these; null when none is known to, which does not make it harmless. */
export function mustNotBeMadeAlkaline(
  there: readonly StreamKind[],
): { readonly rule: NeverRule; readonly there: StreamKind } | null {
  const kind = there.find((one) => familyOf(one) === 'ammonia');
  const rule = neverRules.find(({ id }) => id === 'lime-on-ammonia-silver');
  return kind && rule ? { rule, there: kind } : null;
}

export type Meeting = { readonly rule: NeverRule; readonly there: StreamKind; readonly added: StreamKind };

/** The first pair that must not meet; null when none is known to be forbidden, which does not make it harmless. */
export function mustNotMeet(there: readonly StreamKind[], added: readonly StreamKind[]): Meeting | null {
  for (const a of there)
    for (const b of added) {
      const id = ruleFor(familyOf(a), familyOf(b));
      const rule = neverRules.find((r) => r.id === id);
      if (rule) return { rule, there: a, added: b };
    }
  return null;
}
