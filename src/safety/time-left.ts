/** What is left of a time that runs out. */

/** Of the time between two moments what is left, 0 to 1; nothing of a time that never was. */
export const shareLeft = (from: string, due: string, now: string): number => {
  const [whole, left] = [Date.parse(due) - Date.parse(from), Date.parse(due) - Date.parse(now)];
  return whole > 0 ? Math.min(1, Math.max(0, left / whole)) : 0;
};

/** Whole minutes until `due`, rounded down; 0 when it has passed. */
export const minutesLeft = (due: string, now: string): number =>
  Math.max(0, Math.floor((Date.parse(due) - Date.parse(now)) / 60_000));
