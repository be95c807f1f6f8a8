/** The data of a plot as texts for tables: lines thinned to a readable number of rows, every dot, every mark in words. */
import { scalesOf } from './plot-frame';
import { plotSayings as says } from './plot-sayings';
import { axisTitle, layersOf, type PlotPoint, type PlotSpec } from './plot-spec';
import { beyond, type Scale } from './scale';
import { valueText } from './value-text';

export type FiguresTable = {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

export type PlotFigures = {
  /** Absent where the plot has no lines. */
  readonly lines?: FiguresTable;
  readonly dots?: FiguresTable;
  readonly marks: readonly string[];
};

const mostRows = 20;

/** At most `most` of a row, evenly, with the first and the last. */
export function thinned<T>(all: readonly T[], most: number): readonly T[] {
  if (all.length <= most) return all;
  const picked = Array.from({ length: most }, (_, at) => Math.round((at * (all.length - 1)) / (most - 1)));
  return all.filter((_, at) => picked.includes(at));
}

/** Where a line is at x, straight between its points on the scale of y; nothing beyond its ends. */
export function valueAt(points: readonly PlotPoint[], x: number, y: Scale): number | undefined {
  const after = points.findIndex(([at]) => at >= x);
  const to = points[after];
  if (!to) return undefined;
  if (to[0] === x) return to[1];
  const from = points[after - 1];
  if (!from) return undefined;
  const share = (x - from[0]) / (to[0] - from[0]);
  const [low, high] = [y.share(from[1]), y.share(to[1])];
  return y.valueAt(low + (high - low) * share);
}

type Column = { readonly name: string; readonly points: readonly PlotPoint[] };

const columnsOf = (spec: PlotSpec): readonly Column[] => [
  ...layersOf(spec, 'line').map(({ name, points }) => ({ name, points })),
  ...layersOf(spec, 'band').flatMap(({ name, low, high }) => [
    { name: says.low(name), points: low },
    { name: says.high(name), points: high },
  ]),
];

function linesTable(spec: PlotSpec, x: Scale, y: Scale): FiguresTable | undefined {
  const columns = columnsOf(spec);
  // A row for places of the lines; those of the hatching only where there is no line.
  const lines = layersOf(spec, 'line');
  const all = (lines.length > 0 ? lines : columns).flatMap(({ points }) => points.map(([at]) => at));
  const inside = [...new Set(all)].filter((at) => x.share(at) >= -1e-9 && x.share(at) <= 1 + 1e-9);
  if (inside.length === 0) return undefined;
  const text = (points: readonly PlotPoint[], at: number): string => {
    const value = valueAt(points, at, y);
    if (value === undefined || Number.isNaN(value)) return says.none;
    // On a logarithmic scale the plot, too, says no more than this.
    return y.kind === 'log' && beyond(y, value) === 'low'
      ? says.atMost(valueText(spec.y, y.from, spec.sign))
      : valueText(spec.y, value, spec.sign);
  };
  return {
    head: [axisTitle(spec.x), ...columns.map(({ name }) => name)],
    rows: thinned(
      inside.toSorted((a, b) => a - b),
      mostRows,
    ).map((at) => [valueText(spec.x, at, spec.sign), ...columns.map(({ points }) => text(points, at))]),
  };
}

function dotsTable(spec: PlotSpec): FiguresTable | undefined {
  const dots = layersOf(spec, 'dots').flatMap(({ are, points }) =>
    points.map((point) => ({ ...point, are })),
  );
  if (dots.length === 0) return undefined;
  const words = dots.some(({ word }) => word !== undefined);
  return {
    head: [axisTitle(spec.x), axisTitle(spec.y), says.readOrExpected, ...(words ? [says.word] : [])],
    rows: dots.map(({ x, y, are, word }) => [
      valueText(spec.x, x, spec.sign),
      valueText(spec.y, y, spec.sign),
      says[are],
      ...(words ? [word ?? says.none] : []),
    ]),
  };
}

function markTexts(spec: PlotSpec): readonly string[] {
  const value = (axis: 'x' | 'y', at: number): string => {
    const { unit } = spec[axis];
    return `${valueText(spec[axis], at, spec.sign)}${unit === undefined ? '' : `\u202f${unit}`}`;
  };
  const named = (axis: 'x' | 'y', at: number): string => `${spec[axis].label} ${value(axis, at)}`;
  return spec.layers.flatMap((layer) => {
    switch (layer.kind) {
      case 'block':
        return [says.between(layer.word, spec.x.label, value('x', layer.from), value('x', layer.to))];
      case 'window': {
        const axis = layer.axis ?? 'x';
        return [says.between(layer.word, spec[axis].label, value(axis, layer.from), value(axis, layer.to))];
      }
      case 'limit':
        return [says.at(layer.word, spec[layer.axis].label, value(layer.axis, layer.at))];
      case 'step':
        return [says.point(layer.word, named('x', layer.x), named('y', layer.y))];
      default:
        return [];
    }
  });
}

export function plotFigures(spec: PlotSpec): PlotFigures {
  const { x, y } = scalesOf(spec);
  const lines = linesTable(spec, x, y);
  const dots = dotsTable(spec);
  return { ...(lines ? { lines } : {}), ...(dots ? { dots } : {}), marks: markTexts(spec) };
}
