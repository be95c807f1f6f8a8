/** The kind of waste, and what the work is seen as, out of words that a person wrote. */
import {
  type WasteKind,
  type WorkView,
  wasteKinds,
  wasteList,
  workViews,
} from '../../reference/waste-list-tables';

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
  const score = (kind: WasteKind) => matched(text, wasteList.kinds[kind].words);
  const bearers = wasteKinds.filter((kind) => wasteList.kinds[kind].bearer);
  const bySource = wasteKinds.filter((kind) => !wasteList.kinds[kind].destination);
  const byContent = (kind: WasteKind) => matched(text, wasteList.kinds[kind].holds ?? []);
  return (
    best(bearers, score) ?? best(bySource, score) ?? best(bySource, byContent) ?? best(wasteKinds, score)
  );
}

/** What the work is seen as; null where the words say nothing other than what this trade does, or say what it is not. */
export const viewFromWords = (written: string): WorkView | null => {
  const text = written.toLowerCase().replaceAll(/\b(no|not|never|without)\b[^,;.]*/g, '');
  return best(workViews, (view) => matched(text, wasteList.views[view].words));
};
