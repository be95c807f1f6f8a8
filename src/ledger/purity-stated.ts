/** The purity of a base as the workshop described it, as chemistry takes it. */
import type { StatedPurity } from '../chemistry/base-needed';
import type { BaseId } from '../reference/tables';
import type { State } from './state';

export function purityStated(state: State, base: BaseId): StatedPurity | undefined {
  const { purity, basicity } = state.bases.get(base)?.body ?? {};
  const origin = `purity/${base}`;
  if (basicity) return { basicity, origin };
  return purity && { purity, origin };
}
