/** The words that every plot has of its own; all others come from the caller. */
export const plotSayings = {
  across: 'Across',
  upwards: 'Upwards',
  axis: (way: string, title: string, from: string, to: string, decades: boolean): string =>
    `${way}: ${title}, from ${from} to ${to}${decades ? ', in decades' : ''}.`,
  asTable: 'The figures as a table',
  linesOf: (title: string): string => `${title}, lines`,
  dotsOf: (title: string): string => `${title}, read or expected`,
  low: (name: string): string => `${name}, low`,
  high: (name: string): string => `${name}, high`,
  read: 'read',
  expected: 'expected',
  readOrExpected: 'Read or expected',
  word: 'Word',
  atMost: (value: string): string => `${value} or less`,
  none: 'none here',
  marked: 'Marked on the plot',
  /** A word that names the axis has its value in it. */
  at: (word: string, axis: string, value: string): string =>
    word.includes(`${axis} `) ? word : `${word}: ${axis} ${value}`,
  between: (word: string, axis: string, from: string, to: string): string =>
    word.includes(`${axis} `) ? word : `${word}: ${axis} ${from} to ${to}`,
  point: (word: string, x: string, y: string): string => `${word}: ${x}; ${y}`,
};
