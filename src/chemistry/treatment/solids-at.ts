/**
 * The solids of a pot at its target, as sludge takes them: what share of each metal is in which. The base itself is all dissolved
 * there, since the dose is the least that reaches the target; what of it is coated is grit.
 */
import { equilibrium } from '../../reference/equilibrium-tables';
import { type Metal, metals } from '../../reference/tables';
import { componentOfMetal } from '../equilibrium/reaction';
import type { Equilibrium } from '../equilibrium/solve';
import { dissolved, inSolids } from '../equilibrium/told';
import { parsed } from '../formula';
import { type Load, metalsPresent } from '../load';
import type { SolidShare } from '../sludge';
import { modelTells } from './model-tells';

/** As formulas are written here: "PbO:0.33H2O" in the databases is PbO·0.33H2O. */
const formulas = new Map(equilibrium.solids.map(({ id, formula }) => [id, formula.replace(':', '·')]));

/** Smaller shares than this are not told. */
const hardly = 1e-6;

/** Metals of a load with what of it is iron(II), which is one iron in the pot. */
const partsOf = (load: Load): readonly (readonly [SolidShare['of'], Metal])[] => [
  ...metalsPresent(load).map((metal) => [metal, metal] as const),
  ...(load.ironTwo ? [['iron(II)', 'Fe'] as const] : []),
];

const nameOf = (of: SolidShare['of']): string => (of === 'iron(II)' ? of : metals[of].name);

export function solidsAt(load: Load, at: Equilibrium): readonly SolidShare[] {
  return partsOf(load).flatMap(([of, metal]) => {
    const component = componentOfMetal(metal);
    const all = dissolved(at, component) + inSolids(at, component);
    return [...at.solids].flatMap(([id, n]): SolidShare[] => {
      const solid = formulas.get(id);
      const atoms = solid === undefined ? undefined : parsed(solid).get(metal);
      if (solid === undefined || atoms === undefined || all <= 0) return [];
      const share = (n * atoms) / all;
      return share < hardly
        ? []
        : [
            {
              of,
              solid,
              share: modelTells({
                sentence: `Share of ${nameOf(of)} that goes into ${solid}`,
                pH: at.pH,
                value: share,
                unit: '1',
              }),
            },
          ];
    });
  });
}

/** Share of a metal that is still dissolved at the target. */
export const dissolvedShare = (at: Equilibrium, metal: Metal): number => {
  const component = componentOfMetal(metal);
  const left = dissolved(at, component);
  const all = left + inSolids(at, component);
  return all > 0 ? left / all : 0;
};
