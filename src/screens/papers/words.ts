/** Words of the papers. */
export const paperWords = {
  limit: (percent: string) => `${percent} % limit`,
  ofCapacity: (capacity: string) => `of ${capacity}`,
  levelUnknown: 'not known',
  drawingSays: (code: string, level: string) => `${code} drawn as a vessel filled to its level: ${level}`,
} as const;
