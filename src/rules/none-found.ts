/**
 * What a laboratory found none of says that there is less than it could have seen. Where it could not have seen the limit that
 * says nothing: a rule that asks for so much "or more" (40 CFR 261.24(a)) neither fires on it nor is it past, and stays open
 * until somebody looks more closely. For some organic substances that table puts the limit of quantitation in the place of its
 * own (its footnote 3); for a metal it does not. Status: memory.
 */
import type { Figure } from '../quantities/figure';
import { type Ground, standingOf } from './candidate';
import type { ElementLevels } from './element-levels';

type NoneFound = Pick<ElementLevels, 'noneFound'>;

/** Grounds by what they make of a limit: `tooCoarse` those that could not have seen it. */
export function weighed(grounds: readonly Ground[], { noneFound }: NoneFound) {
  const reached = (standing: 'fires' | 'close') =>
    grounds.filter((ground) => standingOf(ground) === standing);
  const none = ({ figure }: Ground): boolean => noneFound?.has(figure) ?? false;
  return {
    fires: reached('fires').filter((ground) => !none(ground)),
    tooCoarse: reached('fires').filter(none),
    close: reached('close'),
  };
}

/** What is lacking then. @example finer('TCLP of Pb', limit) // 'TCLP of Pb to below 5 mg/L' */
export const finer = (measurement: string, limit: Figure): string =>
  `${measurement} to below ${limit.value.toFixed()} ${limit.unit}`;

/** The two parts of such a lack; null of any other. */
export function finerOf(lack: string): { readonly measurement: string; readonly below: string } | null {
  const [, measurement, below] = /^(.+) to below (\d[\d.]* \S+)$/.exec(lack) ?? [];
  return measurement === undefined || below === undefined ? null : { measurement, below };
}
