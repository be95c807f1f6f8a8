/** The bases that a workshop keeps: those whose bag it described, or, where it described none, the usual ones. */
import { type BaseId, baseIds } from '../reference/tables';
import type { State } from './state';

const usual: readonly BaseId[] = ['hydrated-lime', 'limestone', 'caustic-soda'];

export function basesKept(state: State): readonly BaseId[] {
  const kept = baseIds.filter((base) => state.bases.has(base));
  return kept.length > 0 ? kept : usual;
}
