/** The density of a liquor for weighing it in thought: also of one of which nobody determined anything, which is not water. */
import type { Figure } from '../quantities/figure';
import { liquor } from '../reference/tables';
import { ranged } from './constants';
import { densityOf } from './density';
import type { Load } from './load';

const isTold = ({ density, freeAcid, metals }: Load): boolean =>
  density !== undefined ||
  freeAcid.figure !== undefined ||
  [...metals.values()].some(({ figure }) => figure !== undefined);

/** @param kinds the wastes in it by their names in reference/liquor.json; the first that has a usual density counts */
export function densityToWeigh(load: Load, kinds: readonly string[]): Figure<'kg/L'> {
  const kind = kinds.find((one) => liquor.usualDensity[one]);
  const usual = kind === undefined ? undefined : liquor.usualDensity[kind];
  return isTold(load) || !usual
    ? densityOf(load)
    : ranged(`density/${kind}`, 'Density, usual for such a liquor', usual, 'kg/L');
}
