/** Levels of which each is what a laboratory found none down to. */
import type { ElementLevels } from '../../../src/rules/element-levels';
import { levelsOf } from '../../cases/levels-input';

export function noneFoundIn(input: Parameters<typeof levelsOf>[0]): ElementLevels {
  const levels = levelsOf(input);
  const { filtered, total, tclp, wet } = levels;
  return {
    ...levels,
    noneFound: new Set([filtered, total, tclp, wet].flatMap((of) => [...of.values()])),
  };
}
