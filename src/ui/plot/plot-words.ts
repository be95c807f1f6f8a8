/** All words of a plot: in the column where lines end, and beside what they name. */

import { endWords } from './end-words';
import { straight } from './path-text';
import { placeWords } from './place-words';
import type { CurveShapes } from './plot-curves';
import type { PlotFrame } from './plot-frame';
import type { PlotSize, PlotSpec } from './plot-spec';
import { drawnPlaces, takenBoxes, wantedWords } from './wanted-words';
import { type PlotWords, wordTexts } from './word-lines';

function wordsInside(spec: PlotSpec, frame: PlotFrame, text: number, shapes: CurveShapes): PlotWords {
  const wanting = { spec, frame, text };
  const wanted = wantedWords(wanting, shapes.curves);
  const { left, top, right, bottom } = frame.box;
  const placed = placeWords(wanted, {
    frame: { left: left + text * 0.3, top: top + text * 0.1, right, bottom: bottom - text * 0.2 },
    curves: drawnPlaces(wanting, shapes),
    taken: takenBoxes(wanting),
    text,
  });
  const found = wanted.flatMap((word, at) => {
    const place = placed[at];
    return place ? [{ word, place }] : [];
  });
  const leaders = found.map(({ place }) => (place.leader ? straight(...place.leader) : ''));
  return {
    shapes: [{ look: 'leader', path: leaders.join('') }],
    texts: found.flatMap(({ word, place }) => wordTexts(word, place, text)),
    boxes: found.map(({ place }) => place.box),
    leftOut: wanted.filter((_, at) => !placed[at]).map(({ lines }) => lines.join(' ')),
  };
}

export function plotWords(spec: PlotSpec, frame: PlotFrame, size: PlotSize, shapes: CurveShapes): PlotWords {
  const parts = [endWords(frame, size, shapes.curves), wordsInside(spec, frame, size.text, shapes)];
  return {
    shapes: parts.flatMap(({ shapes: drawn }) => drawn),
    texts: parts.flatMap(({ texts }) => texts),
    boxes: parts.flatMap(({ boxes }) => boxes),
    leftOut: parts.flatMap(({ leftOut }) => leftOut),
  };
}
