/** What is in a liquor that a step gave: volume, metals, free acid, each with all its evidence. */
import type { Figure } from '../quantities/figure';
import { read } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import type { Written } from '../quantities/written';
import { evidence, type Metal } from '../reference/tables';
import { sourceOf } from './constants';
import { bestOf } from './disagreement';
import { type KnownMetal, type MetalEvidence, type StatedSpread, spreadFor, usualSpread } from './evidence';
import { acidFault, metalFault } from './evidence-faults';
import { type AcidEvidence, acidFrom, type KnownAcid } from './free-acid';
import { metalFrom } from './metal-from';

/** A liquor as it was written down. `origin` names it, so that figures made from it twice stay one thing. */
export type WrittenLiquor = {
  readonly origin: string;
  /** Names the batch it is of, whose feed two of its liquors share; its own origin where it is of none. */
  readonly batch?: string | undefined;
  readonly volume: Written<'L' | 'mL' | 'US gal'>;
  readonly volumeSpread?: StatedSpread | undefined;
  readonly density?: Written<'kg/L' | 'g/mL'> | undefined;
  readonly findings: readonly MetalEvidence[];
  readonly freeAcid: readonly AcidEvidence[];
};

/** What one piece of evidence comes to: which way of knowing, and the how manieth in the list it was written in. */
export type Piece<K> = K & { readonly by: string; readonly index: number };

/** The evidence used, and the other evidence of the same thing. */
export type Evidenced<K> = { readonly best: Piece<K>; readonly others: readonly Piece<K>[] };

export type Liquor = {
  readonly volume: Figure<'L'>;
  /** As measured; absent where it must be worked out from what is dissolved. */
  readonly density?: Figure<'kg/L'>;
  readonly metals: ReadonlyMap<Metal, Evidenced<KnownMetal>>;
  /** Metals that were named, and of which nothing that was written tells: not determined, or it contradicts itself. */
  readonly open: readonly Metal[];
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
 * Works out a liquor from what was written down. Nothing that is not known is guessed: it is absent, and open where it was
 * named. So is what evidence that contradicts itself tells, and everything about a liquor of no volume: of that, nothing is
 * so much a litre.
 */
export function liquorFrom(w: WrittenLiquor): Liquor {
  const volume = volumeRead(w.volume, `${w.origin}/volume`, 'Volume of the liquor', w.volumeSpread);
  const named = [...new Set(w.findings.map((f) => f.metal))];
  if (volume.value.lte(0)) return { volume, metals: new Map(), open: named };
  const metals = new Map<Metal, Evidenced<KnownMetal>>();
  for (const metal of named) {
    const chosen = bestOf(
      pieces(w.findings, (f, i) =>
        f.metal === metal && !metalFault(f)
          ? metalFrom(f, volume, `${w.origin}/${metal}/${i}`, w.batch ?? w.origin)
          : undefined,
      ),
    );
    if (chosen) metals.set(metal, chosen);
  }
  const dissolved = new Map([...metals].map(([metal, { best }]) => [metal, best]));
  const freeAcid = bestOf(
    pieces(w.freeAcid, (f, i) =>
      acidFault(f) ? undefined : acidFrom(f, volume, dissolved, `${w.origin}/acid/${i}`),
    ),
  );
  return {
    volume,
    ...(w.density ? { density: measuredDensity(w.density, w.origin) } : {}),
    metals,
    open: named.filter((metal) => !metals.has(metal)),
    ...(freeAcid ? { freeAcid } : {}),
  };
}

/** What of the evidence tells something, each with its place in the list. */
const pieces = <E extends { readonly by: string }, K>(
  found: readonly E[],
  known: (one: E, index: number) => K | undefined,
): readonly Piece<K>[] =>
  found.flatMap((one, index) => {
    const it = known(one, index);
    return it === undefined ? [] : [{ ...it, by: one.by, index }];
  });

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
