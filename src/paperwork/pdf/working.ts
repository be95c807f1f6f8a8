import type { Working, WorkingLine } from '../document';
import { type Line, linesOf } from './lines';
import { type Item, type Place, slice } from './slices';
import {
  body,
  bodyStrong,
  hairline,
  hairlineInk,
  ink,
  inkLine,
  type Style,
  small,
  stepNumber,
} from './styles';
import { drawLine } from './text';

/** Where the text begins, right of the number; white above and below a step; in pt. */
const indent = 22;
const padding = 4;

/** Results take this share of the width at most, so that the formula has the rest. */
const resultShare = 0.4;

interface Row {
  readonly left: Line | undefined;
  readonly leftStyle: Style;
  readonly right: Line | undefined;
}

const resultText = (step: WorkingLine) => {
  const { text, unit } = step.result;
  if (text.trim() === '') throw new Error(`the result of "${step.sentence}" says nothing`);
  const figure = { text: step.formula === undefined ? text : `=\u2009${text}`, strong: true };
  return unit === undefined ? [figure] : [figure, { text: `\u2009${unit}` }];
};

/** Left: sentence, formula, source below each other. Right: the result, beside the formula, or beside the sentence of a total. */
function rowsOf(place: Place, step: WorkingLine): readonly Row[] {
  const measure = place.pen.widthOf;
  const width = place.width - indent;
  const right = linesOf(resultText(step), width * resultShare, body, measure);
  const beside = width - Math.max(...right.map((line) => line.width)) - 12;
  const left = (text: string | undefined, room: number, leftStyle: Style): Row[] =>
    text === undefined
      ? []
      : linesOf(text, room, leftStyle, measure).map((line) => ({
          left: line,
          leftStyle,
          right: undefined,
        }));
  const total = step.formula === undefined;
  const above = total ? [] : left(step.sentence, width, bodyStrong);
  const main = total ? left(step.sentence, beside, bodyStrong) : left(step.formula, beside, body);
  const paired = Array.from({ length: Math.max(main.length, right.length) }, (_, index) => ({
    left: main[index]?.left,
    leftStyle: total ? bodyStrong : body,
    right: right[index],
  }));
  return [...above, ...paired, ...left(step.source, width, small)];
}

function stepItems(
  outer: Place,
  step: WorkingLine,
  number: number | undefined,
  heavy: boolean,
): readonly Item[] {
  const { pen, width } = outer;
  const tag = pen.tag(outer.tag, 'LI');
  const label = number === undefined ? undefined : pen.tag(tag, 'Lbl');
  const words = pen.tag(tag, 'LBody');
  const rows = rowsOf(outer, step);
  return rows.map((row, index) => {
    const first = index === 0;
    const ends = index === rows.length - 1;
    const top = first ? padding : 0;
    const line = heavy ? inkLine : hairline;
    const height = top + row.leftStyle.leading + (ends ? padding + line : 0);
    const draw = (x: number, y: number) => {
      const at = y + top;
      if (first && label !== undefined) pen.inside(label, () => numberAt(outer, number, x, at));
      pen.inside(words, () => {
        if (row.left) drawLine(pen, row.left, row.leftStyle, x + indent, at);
        if (row.right) drawLine(pen, row.right, body, x + width - row.right.width, at);
      });
      const from = heavy ? 0 : indent;
      if (ends)
        pen.aside(() => pen.rule(x + from, y + height - line, width - from, line, heavy ? ink : hairlineInk));
    };
    return slice(height, draw, { keep: !ends });
  });
}

function numberAt(place: Place, number: number | undefined, x: number, y: number): void {
  for (const line of linesOf(String(number), indent, stepNumber, place.pen.widthOf))
    drawLine(place.pen, line, stepNumber, x, y);
}

/** A line of ink stands over a total and under the last step. */
const endsSum = (next: WorkingLine | undefined): boolean => next === undefined || next.formula === undefined;

/** Numbered steps; a total, which has no formula, has no number. */
export function workingItems(outer: Place, working: Working): readonly Item[] {
  const place = { ...outer, tag: outer.pen.tag(outer.tag, 'L') };
  let number = 0;
  return working.lines.flatMap((step, index) => {
    const own = step.formula === undefined ? undefined : ++number;
    return stepItems(place, step, own, endsSum(working.lines[index + 1]));
  });
}
