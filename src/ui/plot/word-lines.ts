/** A word of a plot, cut into lines, and its texts once it has a place. */
import type { Box } from './box';
import type { WordPlaced, WordWanted } from './place-words';
import type { PlotPath, PlotText } from './plot-geometry';
import { lineHeight, textWidth, wrapped } from './text-width';

export type PlotWord = WordWanted & { readonly lines: readonly string[]; readonly look: 'word' | 'step' };

export type PlotWords = {
  readonly shapes: readonly PlotPath[];
  readonly texts: readonly PlotText[];
  readonly boxes: readonly Box[];
  /** Words that found no room. */
  readonly leftOut: readonly string[];
};

/** Lines no wider than `room`, a single word up to `most`, and the box around them. */
export const wordLines = (word: string, text: number, room: number, most: number) => {
  const longest = Math.max(...word.split(' ').map((one) => textWidth(one, text)));
  const lines = wrapped(word, text, Math.min(Math.max(room, longest), most));
  return {
    lines,
    width: Math.max(...lines.map((line) => textWidth(line, text))),
    height: lines.length * lineHeight * text,
  };
};

/** Set so that the side that is next to the thing keeps its place, however wide the font is. */
export const wordTexts = (
  { lines, look }: Pick<PlotWord, 'lines' | 'look'>,
  { box, align, covers }: Pick<WordPlaced, 'box' | 'align' | 'covers'>,
  text: number,
): readonly PlotText[] => {
  const x = { start: box.left, middle: (box.left + box.right) / 2, end: box.right }[align];
  return lines.map((line, at) => ({
    look,
    x,
    y: box.top + (at * lineHeight + 0.9) * text,
    text: line,
    size: text,
    anchor: align,
    ...(covers ? { over: box } : {}),
  }));
};
