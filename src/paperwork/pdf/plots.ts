/**
 * A plot on a paper. Where everything lies is reckoned once, for the screen and the papers alike, and handed in: this room
 * may not import it. Here each look gets its ink. Units are pt.
 */
import type { Drawing, DrawingBlock, DrawnText, Shape, Text } from '../document';
import { hairline, ink, inkLine } from './styles';

interface Edges {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What a plot's geometry has, as far as it is drawn. */
export interface DrawnPlot {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly says: string;
  readonly paths: readonly {
    readonly look: keyof typeof inks;
    readonly path: string;
    readonly dash?: readonly number[];
  }[];
  readonly texts: readonly {
    readonly look: 'tick' | 'title' | 'word' | 'step';
    readonly x: number;
    readonly y: number;
    readonly text: string;
    readonly size: number;
    readonly anchor: 'start' | 'middle' | 'end';
    /** The text lies on a curve and needs paper under it. */
    readonly over?: Edges;
  }[];
}

const white = '#ffffff';
const curveLine = 1.4;

const line = (strokeWidth: number): Omit<Shape, 'path'> => ({ stroke: ink, strokeWidth });

const inks = {
  axis: line(inkLine),
  tick: line(hairline),
  main: line(1.8),
  curve: line(curveLine),
  hatch: line(hairline),
  limit: line(inkLine),
  edge: line(inkLine),
  bracket: line(inkLine),
  step: line(inkLine),
  leader: line(hairline),
  block: { fill: ink },
  read: { fill: ink },
  expected: { fill: white, ...line(curveLine) },
  ring: { fill: white },
  arrow: { fill: ink },
} as const satisfies Readonly<Record<string, Omit<Shape, 'path'>>>;

const paperUnder = ({ left, top, right, bottom }: Edges): Shape => ({
  path: `M${left} ${top}L${right} ${top}L${right} ${bottom}L${left} ${bottom}Z`,
  fill: white,
});

/**
 * The plot as a drawing with its words for a reader that cannot see it. Make the geometry for the width it is printed at,
 * with type of 8.5 pt or more, so that one unit is one pt.
 */
export const plotDrawing = ({ width, height, title, says, paths, texts }: DrawnPlot): Drawing => ({
  width,
  height,
  says: `${title}. ${says}`,
  shapes: [
    ...paths.map(({ look, path, dash }): Shape => ({ path, ...inks[look], ...(dash ? { dash } : {}) })),
    ...texts.flatMap(({ over }) => (over ? [paperUnder(over)] : [])),
  ],
  texts: texts.map(
    ({ look, x, y, text, size, anchor }): DrawnText => ({
      x,
      y,
      text,
      size,
      anchor,
      face: look === 'title' ? 'bold' : 'sans',
    }),
  ),
});

/** A plot with its title printed under it, or another caption. */
export const plotBlock = (plot: DrawnPlot, caption: Text = plot.title): DrawingBlock => ({
  kind: 'drawing',
  drawing: plotDrawing(plot),
  caption,
});
