/** What a container is made of, against what is to stand in it. */
import Decimal from 'decimal.js';
import type { Material, Severity } from '../../reference/reactivity-tables';
import type { Cited } from '../cited';
import { hasAny, type Matter, traitsOf } from './matter';

export type Held = {
  readonly severity: Severity;
  /** `strength-open`: it hangs on a strength that is not determined, or known too roughly. */
  readonly why: 'never' | 'too-strong' | 'limited-life' | 'strength-open' | 'not-this';
  readonly says: string;
  readonly cited: Cited;
};

const isNitricAcid = (matter: Matter): boolean => traitsOf(matter).includes('nitric');

/** Liquor that has given acid away is weaker than what it came from: only what may be strong needs its strength. */
const mayBeStrong = (matter: Matter): boolean => traitsOf(matter).includes('strong-acid');

function againstNitric({ nitric }: Material, matter: Matter): Pick<Held, 'severity' | 'why'> | null {
  if (nitric === 'any' || !isNitricAcid(matter)) return null;
  if (nitric === 'never') return { severity: 'refuse', why: 'never' };
  const { acid } = matter;
  if (!acid) return mayBeStrong(matter) ? { severity: 'mind', why: 'strength-open' } : null;
  const [percent, high] = [new Decimal(acid.percent), new Decimal(acid.high)];
  if (percent.gt(nitric.most)) return { severity: 'refuse', why: 'too-strong' };
  if (high.gt(nitric.most)) return { severity: 'mind', why: 'strength-open' };
  return high.gt(nitric.good) ? { severity: 'mind', why: 'limited-life' } : null;
}

/** Everything that speaks against it; none known is no promise that it holds. */
export function standsAgainst(material: Material, matter: Matter): readonly Held[] {
  const { says, source, status, seen } = material;
  const traits = traitsOf(matter);
  const nitric = againstNitric(material, matter);
  return [
    ...(nitric
      ? [{ ...nitric, says, cited: { source, status, ...(seen === undefined ? {} : { seen }) } }]
      : []),
    ...(material.not ?? [])
      .filter((one) => hasAny(traits, one.traits))
      .map(({ severity, says: sentence, traits: _, ...cited }) => ({
        severity,
        why: 'not-this' as const,
        says: sentence,
        cited,
      })),
  ];
}
