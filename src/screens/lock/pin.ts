/** What a PIN of the lock may be. */
export const pinLeast = 4;
export const pinMost = 12;

export const isPin = (text: string): boolean =>
  text.length >= pinLeast && text.length <= pinMost && /^\d+$/.test(text);
