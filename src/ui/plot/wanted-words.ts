/** Which words ask for a place beside what they name, where they would like to stand, and what they keep clear of. */
import { type Box, boxAround, type Place } from './box';
import { endsOutside } from './end-words';
import { along, type Occupied } from './occupied';
import type { Curve, CurveShapes } from './plot-curves';
import type { PlotFrame } from './plot-frame';
import { across, blockBox, bracketHeight, dotAt, dotRadius } from './plot-marks';
import { layersOf, type PlotSpec } from './plot-spec';
import { type PlotWord, wordLines } from './word-lines';

type Wanting = { readonly spec: PlotSpec; readonly frame: PlotFrame; readonly text: number };

const linesIn = (said: string, { frame: { box }, text }: Wanting) => {
  const width = box.right - box.left;
  return wordLines(said, text, width * 0.72, width - text * 0.6);
};

const worded = (wanting: Wanting, owner: string, said: string, anchors: readonly Place[]): PlotWord => ({
  owner,
  look: 'word',
  anchors,
  ...linesIn(said, wanting),
});

/** Beside a straight line across the plot: at its beginning, or further along it. */
function onStraight(wanting: Wanting, owner: string, said: string, axis: 'x' | 'y', at: number): PlotWord[] {
  const ends = across(axis, at, wanting.frame);
  if (!ends) return [];
  const { width, height } = linesIn(said, wanting);
  const [[fromX, fromY], [toX, toY]] = ends;
  const inset = axis === 'y' ? width / 2 + wanting.text * 0.5 : height / 2;
  const anchors = [0, 0.25, 0.5, 0.75, 1].map(
    (share): Place =>
      axis === 'y'
        ? [fromX + inset + (toX - fromX - 2 * inset) * share, fromY]
        : [fromX, toY + inset + (fromY - toY - 2 * inset) * share],
  );
  return [worded(wanting, owner, said, anchors)];
}

const windowWords = (wanting: Wanting): PlotWord[] =>
  layersOf(wanting.spec, 'window').flatMap(({ axis = 'x', from, to, word }, index) => {
    const owner = `window ${index}`;
    if (axis === 'y') return onStraight(wanting, owner, word, 'y', to);
    const { box } = wanting.frame;
    const { left, right, top } = blockBox(from, to, wanting.frame, box.bottom - box.top);
    const beside = top + wanting.text;
    return [
      worded(wanting, owner, word, [
        [(left + right) / 2, top],
        [right, beside],
        [left, beside],
      ]),
    ];
  });

const markWords = (wanting: Wanting): PlotWord[] => {
  const { spec, frame, text } = wanting;
  return [
    ...layersOf(spec, 'limit').flatMap(({ axis, at, word }, index) =>
      onStraight(wanting, `limit ${index}`, word, axis, at),
    ),
    ...layersOf(spec, 'block').map(({ from, to, word }, index) => {
      const { left, right, top } = blockBox(from, to, frame, text * bracketHeight);
      return worded(wanting, `block ${index}`, word, [[(left + right) / 2, top]]);
    }),
    ...layersOf(spec, 'step').map(({ x, y, word }, index): PlotWord => {
      const [left, top] = dotAt(x, y, frame).at;
      const ends: readonly Place[] = [
        [left, top - text * 0.45],
        [left, top + text * 0.45],
      ];
      return { ...worded(wanting, `step ${index}`, word, ends), look: 'step' };
    }),
  ];
};

/** From where a line ends, or comes down to the floor, backwards; what the floor hides has no words. */
function curveAnchors({ pieces }: Curve, { box }: PlotFrame, text: number): readonly Place[] {
  const places = pieces.flatMap((piece) => along(piece, text));
  const seen = places.filter(([, y]) => y < box.bottom - text);
  const spaced: Place[] = [];
  for (const place of (seen.length > 0 ? seen : places).toReversed()) {
    const last = spaced.at(-1);
    if (!last || Math.hypot(last[0] - place[0], last[1] - place[1]) >= text * 1.2) spaced.push(place);
    if (spaced.length === 16) break;
  }
  return spaced;
}

const curveWords = (wanting: Wanting, curves: readonly Curve[]): PlotWord[] =>
  curves.flatMap((curve): PlotWord[] =>
    curve.word === undefined || endsOutside(curve, wanting.frame)
      ? []
      : [
          {
            ...worded(wanting, curve.name, curve.word, curveAnchors(curve, wanting.frame, wanting.text)),
            onCurve: true,
          },
        ],
  );

const dotWords = (wanting: Wanting): PlotWord[] =>
  layersOf(wanting.spec, 'dots').flatMap(({ name, points }) =>
    points.flatMap(({ x, y, word }) =>
      word === undefined ? [] : [worded(wanting, name, word, [dotAt(x, y, wanting.frame).at])],
    ),
  );

/** Those with the least choice first. */
export const wantedWords = (wanting: Wanting, curves: readonly Curve[]): readonly PlotWord[] => [
  ...windowWords(wanting),
  ...markWords(wanting),
  ...curveWords(wanting, curves),
  ...dotWords(wanting),
];

/** What no word may lie on. */
export const takenBoxes = ({ spec, frame, text }: Wanting): readonly Box[] => {
  const across = 2 * dotRadius(text);
  return [
    ...layersOf(spec, 'dots').flatMap(({ points }) =>
      points.map(({ x, y }) => boxAround(dotAt(x, y, frame).at, across, across)),
    ),
    ...layersOf(spec, 'block').map(({ from, to }) => blockBox(from, to, frame, text * bracketHeight)),
  ];
};

/** Places of everything drawn that words keep clear of where they can. */
export function drawnPlaces({ spec, frame, text }: Wanting, shapes: CurveShapes): readonly Occupied[] {
  const apart = text / 3;
  const owned = (owner: string, places: readonly Place[]): Occupied[] => places.map((at) => ({ owner, at }));
  const line = (owner: string, axis: 'x' | 'y', at: number): Occupied[] => {
    const ends = across(axis, at, frame);
    return ends ? owned(owner, along(ends, apart)) : [];
  };
  return [
    ...shapes.curves.flatMap(({ name, pieces }) =>
      pieces.flatMap((piece) => owned(name, along(piece, apart))),
    ),
    ...shapes.hatchLines.flatMap((ends) =>
      along(ends, text / 2).map((at) => ({ owner: 'hatching', at, light: true })),
    ),
    ...layersOf(spec, 'limit').flatMap(({ axis, at }, index) => line(`limit ${index}`, axis, at)),
    ...layersOf(spec, 'window').flatMap(({ axis = 'x', from, to }, index) =>
      [from, to].flatMap((at) => line(`window ${index}`, axis, at)),
    ),
    ...layersOf(spec, 'step').flatMap(({ x, y }, index) => {
      const [left, top] = dotAt(x, y, frame).at;
      return owned(
        `step ${index}`,
        along(
          [
            [left, top - text * 0.5],
            [left, top + text * 0.5],
          ],
          apart,
        ),
      );
    }),
  ];
}
