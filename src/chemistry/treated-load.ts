/** A liquor that something was added to: what was known of what is dissolved holds no more, until it is measured again. */
import type { Figure } from '../quantities/figure';
import { type Metal, metalSymbols } from '../reference/tables';
import { type KnownMetal, type MetalEvidence, narrowest } from './evidence';
import { metalFault } from './evidence-faults';
import type { Load } from './load';
import { metalFrom } from './metal-from';

/**
 * The same volume, with everything that is dissolved in it open. What carried the agent, and what the agent takes up, is
 * not counted: the volume stays the one that was read.
 * @param name what does not tell: the treatment
 */
export const treatedLoad = (load: Load, name: string): Load => ({
  volume: load.volume,
  metals: new Map(metalSymbols.map((metal) => [metal, { openIn: [name] }])),
  freeAcid: { openIn: [name] },
});

/**
 * With what was measured in the clear liquid since. It is taken for the whole volume, solids included: a little too much.
 * @param origin names the reading
 */
export function measuredLoad(load: Load, findings: readonly MetalEvidence[], origin: string): Load {
  const metals = new Map(load.metals);
  for (const metal of new Set(findings.map((f) => f.metal))) {
    const best = bestOf(metal, findings, load.volume, origin);
    if (best) metals.set(metal, { figure: best.all, openIn: [] });
  }
  return { ...load, metals };
}

function bestOf(
  metal: Metal,
  findings: readonly MetalEvidence[],
  volume: Figure<'L'>,
  origin: string,
): KnownMetal | undefined {
  const known = findings.flatMap((f, i) => {
    const found =
      f.metal === metal && !metalFault(f)
        ? metalFrom(f, volume, `${origin}/${metal}/${i}`, origin)
        : undefined;
    return found ?? [];
  });
  return narrowest(known)?.best;
}
