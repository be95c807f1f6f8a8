/** Words of finding something in the record. */
export const findWords = {
  title: 'Find',
  second: 'A code, a batch, a metal, a day, a name, a number of a paper',
} as const;
