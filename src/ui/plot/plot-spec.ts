/** What a plot shows, as plain data in the units of its axes: no place on a screen, no domain. */
import type { DecimalSign } from '../../quantities/format';

/** In the units of the axes. Points of a line are in order of x, or in order along the line where it rises upright. */
export type PlotPoint = readonly [x: number, y: number];

export type PlotAxis = {
  /** What is measured, e.g. "pH" or "left in solution". */
  readonly label: string;
  /** Stands after the label; leave it out for a number without one. */
  readonly unit?: string;
  /** 'log': decades; what lies at or below `from` is drawn there with an arrow. Linear when absent. */
  readonly scale?: 'linear' | 'log';
  /** Ends of the axis; round ones that hold all the data when absent. `from` of a logarithmic axis is above 0. */
  readonly from?: number;
  readonly to?: number;
  /** How a value of this axis reads in ticks, table and description; three digits when absent. */
  readonly format?: (value: number) => string;
};

export type PlotLayer =
  /** `word` stands where the line ends; without it the line has a name in the table only. */
  | {
      readonly kind: 'line';
      readonly name: string;
      readonly word?: string;
      readonly points: readonly PlotPoint[];
    }
  /** Hatched between two lines, each with points of its own. */
  | {
      readonly kind: 'band';
      readonly name: string;
      readonly low: readonly PlotPoint[];
      readonly high: readonly PlotPoint[];
    }
  /** Read dots are filled, expected ones hollow. */
  | {
      readonly kind: 'dots';
      readonly name: string;
      readonly are: 'read' | 'expected';
      readonly points: readonly { readonly x: number; readonly y: number; readonly word?: string }[];
    }
  /** A portion on the axis of x. */
  | { readonly kind: 'block'; readonly from: number; readonly to: number; readonly word: string }
  /** A dashed line across the plot; it lies at a value of the axis named. */
  | { readonly kind: 'limit'; readonly axis: 'x' | 'y'; readonly at: number; readonly word: string }
  /** What is aimed at, from one value to another; on the axis of x when none is named. */
  | {
      readonly kind: 'window';
      readonly axis?: 'x' | 'y';
      readonly from: number;
      readonly to: number;
      readonly word: string;
    }
  /** A word at a place of a curve, with a short line across it. */
  | { readonly kind: 'step'; readonly x: number; readonly y: number; readonly word: string };

export type PlotSpec = {
  readonly title: string;
  /** In words what is to be seen: lowest, highest, where a curve crosses a limit. The kit adds the ends of the axes. */
  readonly summary: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly layers: readonly PlotLayer[];
  /** Decimal sign of the reader. */
  readonly sign?: DecimalSign;
};

/** Width and height of the type in px on a screen, in pt on a paper; the height follows when absent. */
export type PlotSize = { readonly width: number; readonly text: number; readonly height?: number };

type Kind = PlotLayer['kind'];

/** The layers of one kind, in order. */
export const layersOf = <K extends Kind>(spec: PlotSpec, kind: K): Extract<PlotLayer, { kind: K }>[] =>
  spec.layers.filter((layer): layer is Extract<PlotLayer, { kind: K }> => layer.kind === kind);

/** A label with its unit. */
export const axisTitle = ({ label, unit }: PlotAxis): string =>
  unit === undefined ? label : `${label}, ${unit}`;
