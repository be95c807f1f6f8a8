/** All that a state tells, as text: what stands in another order is another text, which it is not to `toEqual`. */
import Decimal from 'decimal.js';

function plainly(this: Record<string, unknown>, key: string, value: unknown): unknown {
  const one = this[key];
  if (one instanceof Decimal) return one.toFixed();
  return one instanceof Map || one instanceof Set ? [...one] : value;
}

export const exactly = (told: unknown): string => JSON.stringify(told, plainly, 1);
