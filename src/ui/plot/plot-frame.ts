/** The two axes: where the plot begins and ends on its sheet, and which ticks there is room for. */
import type { Box, Place } from './box';
import {
  axisTitle,
  type PlotAxis,
  type PlotLayer,
  type PlotPoint,
  type PlotSize,
  type PlotSpec,
} from './plot-spec';
import { type Scale, scaleOf } from './scale';
import { lineHeight, textWidth, wrapped } from './text-width';
import { decadeTicks, niceTicks } from './ticks';
import { tickTexts } from './value-text';

export type Tick = { readonly value: number; readonly text: string };

export type PlotFrame = {
  readonly box: Box;
  readonly x: Scale;
  readonly y: Scale;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  /** Lines of the titles: that of y above the plot at the left, that of x under it, ending where the axis ends. */
  readonly yTitle: readonly string[];
  readonly xTitle: readonly string[];
  readonly tickLength: number;
  /** Room right of the plot for words of lines that end there; 0: these words stand inside. */
  readonly column: number;
  /** Not cut at the ends; a logarithmic scale has nothing below its floor. */
  readonly place: (point: PlotPoint) => Place;
};

const both = (from: number, to: number): readonly PlotPoint[] => [
  [from, Number.NaN],
  [to, Number.NaN],
];

/** Every place of a layer, NaN where it has none on that axis. */
function pointsOf(layer: PlotLayer): readonly PlotPoint[] {
  switch (layer.kind) {
    case 'line':
      return layer.points;
    case 'band':
      return [...layer.low, ...layer.high];
    case 'dots':
      return layer.points.map(({ x, y }): PlotPoint => [x, y]);
    case 'block':
      return both(layer.from, layer.to);
    case 'limit':
      return layer.axis === 'x' ? both(layer.at, layer.at) : [[Number.NaN, layer.at]];
    case 'window':
      return layer.axis === 'y'
        ? both(layer.from, layer.to).map(([at, none]): PlotPoint => [none, at])
        : both(layer.from, layer.to);
    case 'step':
      return [[layer.x, layer.y]];
  }
}

/** Scales that hold everything a plot shows, or as far as its axes say. */
export function scalesOf(spec: PlotSpec): { readonly x: Scale; readonly y: Scale } {
  const points = spec.layers.flatMap(pointsOf);
  return {
    x: scaleOf(
      spec.x,
      points.map(([x]) => x),
    ),
    y: scaleOf(
      spec.y,
      points.map(([, y]) => y),
    ),
  };
}

const ticksOf = (
  axis: PlotAxis,
  scale: Scale,
  most: number,
  spec: PlotSpec,
  short = false,
): readonly Tick[] => {
  const values = (scale.kind === 'log' ? decadeTicks : niceTicks)(scale.from, scale.to, most);
  const texts = tickTexts(axis, values, spec.sign, short);
  return values.map((value, at) => ({ value, text: texts[at] ?? '' }));
};

const widest = (ticks: readonly Tick[], text: number): number =>
  Math.max(0, ...ticks.map((tick) => textWidth(tick.text, text)));

/** As many ticks as stand beside each other with white between them. */
function ticksAcross(spec: PlotSpec, scale: Scale, room: number, text: number): readonly Tick[] {
  for (let most = 7; most > 2; most -= 1) {
    const ticks = ticksOf(spec.x, scale, most, spec);
    if (ticks.length * (widest(ticks, text) + text) <= room + text) return ticks;
  }
  return ticksOf(spec.x, scale, 2, spec);
}

/** Ticks of the axis of y; in short where their texts would take too much of the width. */
function ticksUp(spec: PlotSpec, scale: Scale, room: number, { width, text }: PlotSize): readonly Tick[] {
  const most = Math.max(2, Math.min(7, Math.floor(room / (text * 1.7))));
  const ticks = ticksOf(spec.y, scale, most, spec);
  return widest(ticks, text) > width * 0.22 ? ticksOf(spec.y, scale, most, spec, true) : ticks;
}

/** @param column room right of the plot for the words of lines that end there */
export function plotFrame(
  spec: PlotSpec,
  size: PlotSize & { readonly height: number },
  column: number,
): PlotFrame {
  const { width, height, text } = size;
  const { x, y } = scalesOf(spec);
  const tickLength = text * 0.4;
  const yTitle = wrapped(axisTitle(spec.y), text, width);
  const xTitle = wrapped(axisTitle(spec.x), text, width);
  const top = text * (lineHeight * yTitle.length + 0.9);
  const bottom = height - tickLength - text * (lineHeight * (1 + xTitle.length) + 0.5);
  const yTicks = ticksUp(spec, y, bottom - top, size);
  const left = widest(yTicks, text) + tickLength + text * 0.3;
  const lastWidth = widest(ticksOf(spec.x, x, 4, spec), text);
  const box: Box = {
    left,
    top,
    bottom,
    right: Math.max(left + text, width - Math.max(column, lastWidth / 2, text * 0.3)),
  };
  return {
    box,
    x,
    y,
    xTicks: ticksAcross(spec, x, box.right - box.left, text),
    yTicks,
    yTitle,
    xTitle,
    tickLength,
    column,
    place: ([atX, atY]) => [
      box.left + x.share(atX) * (box.right - box.left),
      box.bottom - y.share(atY) * (box.bottom - box.top),
    ],
  };
}
