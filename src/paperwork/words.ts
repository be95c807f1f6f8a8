/** Words that papers and labels share, and how they are joined. Nothing is worded where a paper is built: another language is other such files. */
import type { StreamKind } from '../safety/stream-kind';

export const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

export const streamWords: Readonly<Record<StreamKind, string>> = {
  'leach-liquor': 'leach liquor',
  'barren-liquor': 'barren liquor',
  'wash-water': 'wash water',
  'chloride-test-waste': 'chloride-test waste',
  'ammonia-test-waste': 'ammonia-test waste',
  'ceramic-residue': 'ceramic residue',
  'spent-filters': 'spent filters',
  'soiled-ppe': 'soiled PPE and wipes',
  'spill-absorbent': 'spill absorbent',
  'treated-slurry': 'treated slurry',
  filtrate: 'filtrate',
  'hydroxide-sludge': 'hydroxide sludge',
};

/** What each waste is, for somebody who was not there. */
export const streamMeaning: Readonly<Record<StreamKind, string>> = {
  'leach-liquor': 'nitric acid that has dissolved metals out of ceramic capacitors',
  'barren-liquor': 'nitrates after cementation on copper',
  'wash-water': 'water that rinsed metal, residue or vessels',
  'chloride-test-waste': 'liquor to which chloride was added to test for silver',
  'ammonia-test-waste': 'liquor to which ammonia was added as a test',
  'ceramic-residue': 'undissolved ceramic with the liquor it holds',
  'spent-filters': 'filter papers wet with liquor',
  'soiled-ppe': 'gloves and wipes that met the liquor',
  'spill-absorbent': 'absorbent that took up a spill',
  'treated-slurry': 'liquor with the solids that a base brought down',
  filtrate: 'liquid that ran off treated slurry',
  'hydroxide-sludge': 'metal hydroxides and salts brought down by a base',
};

export const statusWords: Readonly<Record<string, string>> = {
  verified: 'read in the source or a public copy',
  memory: 'from memory, not checked',
  computed: 'worked out here',
  'common practice': 'common practice, no source',
  reasoned: 'reasoned from the source',
};

/** What is not known. Never an empty place, never zero. */
export const notDetermined = 'not determined';
/** In the place of the day by which a container must leave: it is gone, or its waste has stood beside the work alone. */
export const noTimeRuns = 'no time runs';

export const between = (from: string, to: string): string => `${from} to ${to}`;

/** "B-16, B-17 and B-18" */
export function joined(parts: readonly string[]): string {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

/** First letter large, but "pH" stays. */
export const capital = (text: string): string =>
  /^\p{Ll}\p{Lu}/u.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);

/** Keeps codes such as C-07 on one line. */
export const unbroken = (code: string): string => code.replaceAll('-', '\u2011');

export const withUnit = (text: string, unit: string): string => `${text}\u2009${unit}`;
