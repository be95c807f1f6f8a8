/** From one piece of evidence of a metal to its amount, in all and a litre. */
import { minus, over, times } from '../quantities/expression';
import { type Figure, type How, read, workedOut } from '../quantities/figure';
import { evidence, metals } from '../reference/tables';
import { sourceOf } from './constants';
import {
  assumedBetween,
  capital,
  displacedCopper,
  type KnownMetal,
  type MetalEvidence,
  spreadFor,
  weighed,
} from './evidence';
import { stripSpread } from './strip-steps';
import { typicalMetal } from './typical';

const isPerLitre = (unit: string): unit is 'g/L' | 'mg/L' => unit.endsWith('/L');

const fromPerLitre = (perLitre: Figure<'g/L'>, volume: Figure<'L'>, name: string): KnownMetal => ({
  perLitre,
  all: workedOut({ sentence: `${name} in all`, unit: 'g', formula: times(perLitre, volume) }),
});

const fromMass = (all: Figure<'g'>, volume: Figure<'L'>, name: string): KnownMetal => ({
  all,
  perLitre: workedOut({ sentence: `${name} a litre`, unit: 'g/L', formula: over(all, volume) }),
});

type Measured = Extract<MetalEvidence, { by: 'assay' | 'photometer' | 'strip' }>;

function measured(found: Measured, name: string, origin: string): Figure<'g/L'> {
  const how: How = found.by;
  const steps = found.by === 'strip' && !found.spread ? found.steps : undefined;
  return read({
    origin,
    sentence: `${name} a litre`,
    written: found.concentration,
    unit: 'g/L',
    how,
    spread: steps ? stripSpread(steps) : spreadFor(found.spread, found.by, 'g/L'),
    sources: found.spread || (steps?.below && steps.above) ? [] : [sourceOf(evidence[found.by])],
    ...(steps
      ? { note: 'Read to the nearest step: anywhere between the middles to the steps beside it.' }
      : {}),
  });
}

/** Copper gone from the sheet, g. */
const copperGone = (found: Extract<MetalEvidence, { by: 'copper-weighed' }>, origin: string): Figure<'g'> =>
  workedOut({
    sentence: 'Copper that went into solution',
    unit: 'g',
    formula: minus(
      weighed(found.before, `${origin}/before`, 'Copper weighed in'),
      weighed(found.after, `${origin}/after`, 'Copper weighed out'),
    ),
  });

/**
 * The amount that one piece of evidence gives; undefined where it says that it is not known, or tells nothing of the metal.
 * @param origin names this piece
 * @param batch names what several pieces of one batch share: its feed
 */
export function metalFrom(
  found: MetalEvidence,
  volume: Figure<'L'>,
  origin: string,
  batch: string,
): KnownMetal | undefined {
  const name = capital(metals[found.metal].name);
  switch (found.by) {
    case 'assay':
    case 'photometer':
    case 'strip':
      return fromPerLitre(measured(found, name, origin), volume, name);
    case 'weighing':
      return fromMass(weighed(found.mass, origin, `${name} weighed`, found.spread), volume, name);
    case 'copper-weighed':
      // What the leach had dissolved before is not in it.
      return { ...fromMass(copperGone(found, origin), volume, name), atLeast: true };
    case 'metals-recovered':
      return { ...fromMass(displacedCopper(found, origin), volume, name), atLeast: true };
    case 'typical':
    case 'feed-minus-residue': {
      const told = typicalMetal(found, batch);
      return told && { ...fromMass(told.all, volume, name), ...(told.atLeast ? { atLeast: true } : {}) };
    }
    case 'assumed':
      return isPerLitre(found.low.unit)
        ? fromPerLitre(assumedBetween(found.low, found.high, 'g/L', origin, `${name} a litre`), volume, name)
        : fromMass(assumedBetween(found.low, found.high, 'g', origin, `${name} in all`), volume, name);
    case 'not-determined':
      return undefined;
  }
}
