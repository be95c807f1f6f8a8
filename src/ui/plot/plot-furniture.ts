/** Axes, ticks, their texts and the two titles. */
import { straight } from './path-text';
import type { PlotFrame } from './plot-frame';
import type { PlotPath, PlotText } from './plot-geometry';
import { lineHeight, textWidth } from './text-width';

const xOf = (frame: PlotFrame, value: number): number => frame.place([value, frame.y.from])[0];
const yOf = (frame: PlotFrame, value: number): number => frame.place([frame.x.from, value])[1];

export function frameShapes(frame: PlotFrame): readonly PlotPath[] {
  const { box, tickLength } = frame;
  const ticks = [
    ...frame.xTicks.map(({ value }) =>
      straight([xOf(frame, value), box.bottom], [xOf(frame, value), box.bottom + tickLength]),
    ),
    ...frame.yTicks.map(({ value }) =>
      straight([box.left - tickLength, yOf(frame, value)], [box.left, yOf(frame, value)]),
    ),
  ];
  const axes = straight([box.left, box.top], [box.left, box.bottom]);
  return [
    { look: 'tick', path: ticks.join('') },
    { look: 'axis', path: `${axes}${straight([box.left, box.bottom], [box.right, box.bottom])}` },
  ];
}

const titleTexts = (
  lines: readonly string[],
  x: number,
  firstY: number,
  size: number,
  anchor: 'start' | 'end',
): readonly PlotText[] =>
  lines.map((text, at) => ({ look: 'title', x, y: firstY + at * size * lineHeight, text, size, anchor }));

export function frameTexts(frame: PlotFrame, size: number): readonly PlotText[] {
  const { box, tickLength } = frame;
  const tick = { look: 'tick', size } as const;
  // A long title begins at the edge of the sheet and ends after the axis.
  const xTitleEnd = Math.max(box.right, ...frame.xTitle.map((line) => textWidth(line, size)));
  const underAxis = box.bottom + tickLength + size * 1.05;
  return [
    ...frame.xTicks.map(
      ({ value, text }): PlotText => ({
        ...tick,
        x: xOf(frame, value),
        y: underAxis,
        text,
        anchor: 'middle',
      }),
    ),
    ...frame.yTicks.map(
      ({ value, text }): PlotText => ({
        ...tick,
        x: box.left - tickLength - size * 0.25,
        y: yOf(frame, value) + size * 0.36,
        text,
        anchor: 'end',
      }),
    ),
    ...titleTexts(frame.yTitle, 0, size, size, 'start'),
    ...titleTexts(frame.xTitle, xTitleEnd, underAxis + size * lineHeight, size, 'end'),
  ];
}
