/** Classes that one substance alone brings: sensitisers, CMR, organs after one or many exposures (CLP Annex I, Tables 3.4.5 to 3.9.4). */
import { sourceOf } from '../../chemistry/constants';
import { exact, type Figure, given } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import type { HazardClassName } from '../../reference/substances-tables';
import { type Found, worstOf } from './found';
import { type Hazard, hazardText } from './hazard';
import { ownLimit, type Part } from './parts';

type Rung = { readonly hazard: Hazard; readonly limit: Figure<'%'> };

const singles = new Set<HazardClassName>(clp.single.map((row) => row.class));

const genericRow = (name: HazardClassName, category: string) =>
  clp.single.find((row) => row.class === name && row.categories.includes(category));

const genericLimit = (hazard: Hazard, from: string, row: (typeof clp.single)[number]): Figure<'%'> =>
  given({
    origin: `constant/clp/generic/${hazard.class} ${hazard.category} of ${row.categories[0]}`,
    sentence: `Generic limit for ${hazard.class} ${hazard.category}`.trim(),
    value: from,
    unit: '%',
    how: 'constant',
    spread: exact,
    sources: [sourceOf(row)],
  });

/**
 * The classes that a part may bring within one class, the worst first: its own, with its own limit or the generic one; the
 * milder category that less of it brings; and what its own limits say besides.
 */
function rungs(part: Part, { class: name, category, code }: Omit<Hazard, 'route'>): Rung[] {
  const row = genericRow(name, category);
  if (!row) return [];
  const hazard: Hazard = { class: name, category, code };
  const all: Rung[] = [];
  const limits = part.substance.limits ?? [];
  const own = limits.some((l) => l.class === name && l.category === category && l.code === code);
  const limit = own ? ownLimit(part, name, category) : undefined;
  all.push({ hazard, limit: limit ?? genericLimit(hazard, row.from, row) });
  for (const l of limits.filter((one) => one.class === name && one.code !== code)) {
    const besides = ownLimit(part, name, l.category);
    if (besides) all.push({ hazard: { class: name, category: l.category, code: l.code }, limit: besides });
  }
  if (row.below && !all.some((r) => r.hazard.category === row.below?.category)) {
    const milder: Hazard = { class: name, category: row.below.category, code: row.below.code };
    all.push({ hazard: milder, limit: genericLimit(milder, row.below.from, row) });
  }
  return all;
}

/** One finding a hazard; the substances that bring it are its grounds. */
export function single(all: readonly Part[]): Found[] {
  const found = new Map<string, Found>();
  for (const part of all)
    for (const entry of part.substance.classes.filter((c) => singles.has(c.class))) {
      const steps = rungs(part, entry).map(({ hazard, limit }) => ({
        hazard,
        ground: { figure: part.share, limit },
      }));
      for (const one of worstOf('single', steps)) {
        const text = hazardText(one.hazard);
        const before = found.get(text);
        if (!before || (before.standing === 'close' && one.standing === 'fires')) found.set(text, one);
        else if (before.standing === one.standing)
          found.set(text, { ...before, grounds: [...before.grounds, ...one.grounds] });
      }
    }
  return [...found.values()];
}

/** Limit from which on a part counts as a sensitiser of this class, %; absent where it is none. */
export function sensitisingFrom(part: Part, name: 'Resp. Sens.' | 'Skin Sens.'): Figure<'%'> | undefined {
  const entry = part.substance.classes.find((c) => c.class === name);
  return entry && rungs(part, entry)[0]?.limit;
}
