/** Words of what must not meet: the refused transfer, what has met, and looking a pair up. */
import type { Severity } from '../../reference/reactivity-tables';

export const apartWords = {
  // The refused transfer
  refused: 'Transfer refused',
  mustNotMeet: (one: string, other: string) => `${one} must not meet ${other}.`,
  mustNotStand: (one: string, vessel: string) => `${one} must not stand in ${vessel}.`,
  is: (code: string, what: string) => `${code} is ${what}.`,
  isMade: (code: string, material: string) => `${code} is made of ${material}.`,
  holds: (code: string, what: string) => `${code} holds ${what}.`,
  drawing: (one: string, other: string) => `A wall between ${one} and ${other}`,
  noCode: 'the waste',
  described: 'the new container',
  putInto: (code: string) => `Put it in ${code}`,
  empty: 'empty',
  newContainer: 'Put it in a new container',
  places: 'Where it belongs',
  fitsToo: 'These would take it, too',
  already: 'Already done? Write it down.',

  rule: 'Rule and source',
  // Rule and source
  ruleTitle: 'Why they are kept apart',
  instead: 'What is right',
  source: 'Source',
  seen: 'What was read of it',
  cells: (n: number) => (n === 1 ? 'Cell of the chart: source' : `${n} cells of the chart: source`),
  codes: (text: string) => `By the codes of the chart: ${text}.`,
  // What has met
  met: (one: string, other: string) => `${one} has met ${other}. They must not.`,
  doesNotHold: (vessel: string, what: string) => `${vessel} does not hold ${what}.`,
  notDetermined: 'Whether it holds the acid is not determined.',
  lacks: {
    strength: 'Nobody told how strong the acid is.',
    material: 'What the container is made of is not told, or is not known here.',
  },
  whatNow: 'What to do now',
  lookUp: 'May it meet …?',
  lookUpSecond: 'Look a pair up before anything is poured',
  onToRecord: (code: string) => `Then: ${code} in the record`,
  // Looking up
  title: 'May these two meet?',
  titleSecond: 'Look before you pour. A blank is no leave.',
  one: 'The one',
  other: 'The other',
  groups: {
    containers: 'Your containers',
    waste: 'Wastes',
    acid: 'Acids',
    base: 'Bases and ammonia',
    metal: 'Metals',
    reagent: 'Salts and reagents',
    burns: 'What burns',
    other: 'Other',
    material: 'What containers are made of',
  },
  doubted: 'contents not known',
  container: (code: string, contents: string) =>
    contents === '' ? `${code}, empty` : `${code}: ${contents}`,
  unlisted: 'Something that is not on this list',
  pick: 'Pick two things.',
  answer: {
    refuse: 'They must not meet.',
    mind: 'Mind what comes of it.',
    none: 'The chart says nothing: that is no leave.',
    same: 'It is the same thing twice: the chart does not speak of that.',
    unknown: 'Not determined: nobody knows what is in it. It meets nothing.',
    unlisted:
      'Not determined: nothing here speaks of it. Ask the safety data sheet before it meets anything.',
  },
  noneSecond:
    'No rule here and no cell of the chart speaks of them. Ask the safety data sheet and the collector.',
  mindSecond: 'This is no leave either. The safety data sheet goes first.',
  severity: { refuse: 'not to be done', mind: 'to be minded' } satisfies Record<Severity, string>,
} as const;
