/** The kind of waste, and what the work is seen as, out of words that a person wrote. */
import * as z from 'zod/mini';
import { type WasteKind, type WorkView, wasteKinds, workViews } from '../../src/reference/waste-list-tables';
import kindWordsJson from './kind-words.json';

/** Beginnings of words that all have to stand in a text. */
const Words = z.array(z.array(z.string()).check(z.minLength(1)));

const { kinds, views } = z
  .strictObject({
    about: z.string(),
    kinds: z.record(
      z.enum(wasteKinds),
      z.strictObject({
        words: Words,
        /** Words that may as well say what another waste holds: they count only where nothing else names it. */
        holds: z.optional(Words),
        /** It is a thing that carries a waste: what it carries, named beside it, does not make it another kind. */
        bearer: z.optional(z.literal(true)),
        /** It is named by where it goes: only where no words say what it is or where it arises. */
        destination: z.optional(z.literal(true)),
      }),
    ),
    views: z.record(z.enum(workViews), Words),
  })
  .parse(kindWordsJson);

const begins = (text: string, stem: string): boolean =>
  new RegExp(`(^|[^a-z])${stem.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`).test(text);

/** Letters of the longest of several sets of words that all stand in the text; 0 where none does. */
const matched = (text: string, words: readonly (readonly string[])[]): number =>
  Math.max(
    0,
    ...words.map((stems) => (stems.every((stem) => begins(text, stem)) ? stems.join('').length : 0)),
  );

const best = <T>(all: readonly T[], score: (one: T) => number): T | null => {
  const scored = all.map((one) => ({ one, score: score(one) })).filter((s) => s.score > 0);
  return (
    scored.reduce<{ one: T; score: number } | null>((top, s) => (top && top.score >= s.score ? top : s), null)
      ?.one ?? null
  );
};

/**
 * Most letters of a kind's own words win; a thing that carries a waste (paper, glove, bottle) comes before what it carries,
 * what a waste is before what it holds, and where it goes comes last, as in the order of the list.
 * @returns null where no words of any kind stand in it
 * @example kindFromWords('filter papers wet with leach liquor') // 'spent-filters'
 */
export function kindFromWords(written: string): WasteKind | null {
  const text = written.toLowerCase();
  const score = (kind: WasteKind) => matched(text, kinds[kind].words);
  const bearers = wasteKinds.filter((kind) => kinds[kind].bearer);
  const bySource = wasteKinds.filter((kind) => !kinds[kind].destination);
  const byContent = (kind: WasteKind) => matched(text, kinds[kind].holds ?? []);
  return (
    best(bearers, score) ?? best(bySource, score) ?? best(bySource, byContent) ?? best(wasteKinds, score)
  );
}

/** What the work is seen as; null where the words say nothing other than what this trade does, or say what it is not. */
export const viewFromWords = (written: string): WorkView | null => {
  const text = written.toLowerCase().replaceAll(/\b(no|not|never|without)\b[^,;.]*/g, '');
  return best(workViews, (view) => matched(text, views[view]));
};
