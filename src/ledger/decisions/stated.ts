/** What the person stated, without the name of the intention. */
import type { Intention } from '../intention';

export function stated<I extends Intention>(intention: I): Omit<I, 'do'> {
  const { do: _, ...rest } = intention;
  return rest;
}
