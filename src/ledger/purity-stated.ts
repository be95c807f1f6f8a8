/** The purity of a base as the workshop described it, as chemistry takes it. */
import type { StatedPurity } from '../chemistry/base-needed';
import type { BaseId } from '../reference/tables';
import type { State } from './state';

export function purityStated(state: State, base: BaseId): StatedPurity | undefined {
  const purity = state.bases.get(base)?.body.purity;
  return purity && { purity, origin: `purity/${base}` };
}
