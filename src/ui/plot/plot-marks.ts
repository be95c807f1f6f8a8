/** Everything that is not a curve: dots, portions, limits, what is aimed at, short lines where something happens. */
import { type Box, boxAround, type Place } from './box';
import { arrowText, boxText, circleText, straight } from './path-text';
import type { PlotFrame } from './plot-frame';
import type { PlotPath } from './plot-geometry';
import { layersOf, type PlotSpec } from './plot-spec';
import { beyond } from './scale';

type MarkShapes = { readonly under: readonly PlotPath[]; readonly over: readonly PlotPath[] };

/** Heights over the axis in heights of the type. */
const blockHeight = 0.5;
export const bracketHeight = 1.1;

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);

/** A dot beyond the ends stands at the end, and an arrow says which way it lies. */
export type Dot = { readonly at: Place; readonly way: 'up' | 'down' | undefined };

export const dotRadius = (text: number): number => text * 0.3;

export function dotAt(x: number, y: number, { box, place, y: scale }: PlotFrame): Dot {
  const [left, top] = place([x, y]);
  const end = beyond(scale, y);
  return {
    at: [clamp(left, box.left, box.right), clamp(top, box.top, box.bottom)],
    way: end === undefined ? undefined : end === 'low' ? 'down' : 'up',
  };
}

/** A straight line across the plot at a value of one axis; nothing where the axis does not reach it. */
export function across(axis: 'x' | 'y', at: number, frame: PlotFrame): readonly [Place, Place] | undefined {
  const { box, x, y, place } = frame;
  const share = (axis === 'x' ? x : y).share(at);
  if (share < -1e-9 || share > 1 + 1e-9) return undefined;
  const [left, top] = place(axis === 'x' ? [at, y.from] : [x.from, at]);
  return axis === 'x'
    ? [
        [left, box.bottom],
        [left, box.top],
      ]
    : [
        [box.left, top],
        [box.right, top],
      ];
}

const acrossText = (axis: 'x' | 'y', at: number, frame: PlotFrame): string => {
  const ends = across(axis, at, frame);
  return ends ? straight(...ends) : '';
};

function dotShapes(spec: PlotSpec, frame: PlotFrame, text: number): readonly PlotPath[] {
  const radius = dotRadius(text);
  const layers = layersOf(spec, 'dots').map(({ are, points }) => ({
    are,
    dots: points.map(({ x, y }) => dotAt(x, y, frame)),
  }));
  const circles = (are: 'read' | 'expected', size: number): string =>
    layers
      .filter((layer) => layer.are === are)
      .flatMap(({ dots }) => dots.map(({ at }) => circleText(at, size)))
      .join('');
  const arrows = layers.flatMap(({ dots }) =>
    dots.map(({ at: [x, y], way }) =>
      way === undefined
        ? ''
        : arrowText([x, y + (way === 'down' ? 1 : -1) * (radius + text * 0.55)], text * 0.45, way),
    ),
  );
  return [
    { look: 'ring', path: circles('read', radius + text * 0.12) },
    { look: 'expected', path: circles('expected', radius) },
    { look: 'read', path: circles('read', radius) },
    { look: 'arrow', path: arrows.join('') },
  ];
}

/** The box of a portion over the axis, kept to the frame. */
export function blockBox(from: number, to: number, { box, place, y }: PlotFrame, height: number): Box {
  const [left, right] = [from, to].map((value) => clamp(place([value, y.from])[0], box.left, box.right));
  return { left: left ?? box.left, right: right ?? box.left, top: box.bottom - height, bottom: box.bottom };
}

function blockShapes(spec: PlotSpec, frame: PlotFrame, text: number): readonly PlotPath[] {
  const boxes = layersOf(spec, 'block').map(({ from, to }) => blockBox(from, to, frame, text * blockHeight));
  const sides = boxes.flatMap(({ left, right, bottom }) =>
    [left, right].map((x) => straight([x, bottom], [x, bottom - text * bracketHeight])),
  );
  return [
    { look: 'block', path: boxes.map(boxText).join('') },
    { look: 'bracket', path: sides.join('') },
  ];
}

/** Both ends of what is aimed at, dotted, with a bar across the top of an upright one. */
function windowShapes(spec: PlotSpec, frame: PlotFrame, text: number): readonly PlotPath[] {
  const windows = layersOf(spec, 'window');
  const edges = windows.flatMap(({ axis = 'x', from, to }) =>
    [from, to].map((at) => acrossText(axis, at, frame)),
  );
  const bars = windows
    .filter(({ axis }) => axis !== 'y')
    .map(({ from, to }) => {
      const { left, right } = blockBox(from, to, frame, 0);
      return straight([left, frame.box.top], [right, frame.box.top]);
    });
  const dash = [text * 0.12, text * 0.3];
  return [
    { look: 'edge', path: edges.join(''), dash },
    { look: 'bracket', path: bars.join('') },
  ];
}

const stepShape = (at: Place, text: number): string => {
  const { left, top, bottom } = boxAround(at, 0, text * 1.1);
  return straight([left, top], [left, bottom]);
};

export function markShapes(spec: PlotSpec, frame: PlotFrame, text: number): MarkShapes {
  const limits = layersOf(spec, 'limit').map(({ axis, at }) => acrossText(axis, at, frame));
  const steps = layersOf(spec, 'step').map(({ x, y }) => stepShape(dotAt(x, y, frame).at, text));
  return {
    under: [
      ...windowShapes(spec, frame, text),
      { look: 'limit', path: limits.join(''), dash: [text * 0.45, text * 0.28] },
    ],
    over: [
      ...blockShapes(spec, frame, text),
      { look: 'step', path: steps.join('') },
      ...dotShapes(spec, frame, text),
    ],
  };
}
