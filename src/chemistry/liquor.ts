/** What is in a liquor that a step gave: volume, metals, free acid, each with all its evidence. */
import type { Figure } from '../quantities/figure';
import { read } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import type { Written } from '../quantities/written';
import { evidence, type Metal } from '../reference/tables';
import { sourceOf } from './constants';
import {
  type KnownMetal,
  type MetalEvidence,
  metalFrom,
  narrowest,
  type StatedSpread,
  spreadFor,
  usualSpread,
} from './evidence';
import { acidFault, metalFault } from './evidence-faults';
import { type AcidEvidence, acidFrom, type KnownAcid } from './free-acid';

/** A liquor as it was written down. `origin` names it, so that figures made from it twice stay one thing. */
export type WrittenLiquor = {
  readonly origin: string;
  readonly volume: Written<'L' | 'mL' | 'US gal'>;
  readonly volumeSpread?: StatedSpread | undefined;
  readonly density?: Written<'kg/L' | 'g/mL'> | undefined;
  readonly findings: readonly MetalEvidence[];
  readonly freeAcid: readonly AcidEvidence[];
};

/** The evidence used, and the other evidence of the same thing. */
export type Evidenced<K> = { readonly best: K; readonly others: readonly K[] };

export type Liquor = {
  readonly volume: Figure<'L'>;
  /** As measured; absent where it must be worked out from what is dissolved. */
  readonly density?: Figure<'kg/L'>;
  readonly metals: ReadonlyMap<Metal, Evidenced<KnownMetal>>;
  readonly freeAcid?: Evidenced<KnownAcid>;
};

/** A volume read on a vessel. `origin` names the reading. */
export const volumeRead = (
  written: WrittenLiquor['volume'],
  origin: string,
  sentence: string,
  stated?: StatedSpread,
): Figure<'L'> =>
  read({
    origin,
    sentence,
    written,
    unit: 'L',
    how: 'reading',
    spread: spreadFor(stated, 'vessel-scale', 'L'),
    sources: stated ? [] : [sourceOf(evidence['vessel-scale'])],
  });

/**
 * Works out a liquor from what was written down. Nothing that is not known is guessed: it is absent. So is what evidence
 * that contradicts itself tells, and everything about a liquor of no volume: of that, nothing is so much a litre.
 */
export function liquorFrom(w: WrittenLiquor): Liquor {
  const volume = volumeRead(w.volume, `${w.origin}/volume`, 'Volume of the liquor', w.volumeSpread);
  if (volume.value.lte(0)) return { volume, metals: new Map() };
  const metals = new Map<Metal, Evidenced<KnownMetal>>();
  for (const metal of new Set(w.findings.map((f) => f.metal))) {
    const known = w.findings
      .map((f, i) =>
        f.metal === metal && !metalFault(f) ? metalFrom(f, volume, `${w.origin}/${metal}/${i}`) : undefined,
      )
      .filter((k) => k !== undefined);
    const chosen = narrowest(known);
    if (chosen) metals.set(metal, chosen);
  }
  const dissolved = new Map([...metals].map(([metal, { best }]) => [metal, best]));
  const freeAcid = narrowest(
    w.freeAcid
      .map((f, i) => (acidFault(f) ? undefined : acidFrom(f, volume, dissolved, `${w.origin}/acid/${i}`)))
      .filter((k) => k !== undefined),
  );
  return {
    volume,
    ...(w.density ? { density: measuredDensity(w.density, w.origin) } : {}),
    metals,
    ...(freeAcid ? { freeAcid } : {}),
  };
}

const measuredDensity = (written: Written<Unit>, origin: string): Figure<'kg/L'> =>
  read({
    origin: `${origin}/density`,
    sentence: 'Density as measured',
    written,
    unit: 'kg/L',
    how: 'reading',
    spread: usualSpread('density'),
    sources: [sourceOf(evidence.density)],
  });
