/**
 * The nine hazard pictograms, drawn here after what the Globally Harmonized System says stands in each: a black symbol on
 * white in a red square set on its point (UN, GHS, section 1.4.10.4; CLP Annex V). memory: names and contents of the symbols
 * are the rule's, every line is ours. Box of 100 by 100 units, corners of the square at the middle of its sides.
 */
import type { Drawing, Shape } from '../document';

export const pictogramIds = [
  'GHS01',
  'GHS02',
  'GHS03',
  'GHS04',
  'GHS05',
  'GHS06',
  'GHS07',
  'GHS08',
  'GHS09',
] as const;

export type PictogramId = (typeof pictogramIds)[number];

const black = '#000000';
const white = '#ffffff';
/** A strong red that a grey printer still prints darker than half. */
const red = '#d0021b';

type Point = readonly [x: number, y: number];

const digits = (value: number): string => String(Math.round(value * 100) / 100);
const polygon = (points: readonly Point[]): string =>
  `M${points.map(([x, y]) => `${digits(x)} ${digits(y)}`).join('L')}Z`;

const circle = (cx: number, cy: number, r: number): string =>
  `M${digits(cx - r)} ${digits(cy)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** Points given about (0, 0), turned clockwise and moved to (x, y). */
function turned(points: readonly Point[], degrees: number, x: number, y: number): readonly Point[] {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return points.map(([px, py]) => [x + px * cos - py * sin, y + px * sin + py * cos]);
}

/** A star with `count` points, the first upwards; radii of the points come in turn. */
function star(cx: number, cy: number, count: number, outer: readonly number[], inner: number): string {
  const points = Array.from({ length: 2 * count }, (_, at): Point => {
    const radius = at % 2 === 0 ? (outer[(at / 2) % outer.length] ?? 0) : inner;
    const angle = (at * Math.PI) / count;
    return [cx + radius * Math.sin(angle), cy - radius * Math.cos(angle)];
  });
  return polygon(points);
}

/** A flame about 34 wide and 40 high that stands on (50, y), with a tongue of paper in it. */
const flame = (y: number, scale = 1): readonly Shape[] => {
  const at = (x: number, up: number) => `${digits(50 + x * scale)} ${digits(y - up * scale)}`;
  const outer = [
    `M${at(-3, 0)}`,
    `C${at(-13, 2)} ${at(-17, 11)} ${at(-13, 20)}`,
    `C${at(-12, 17)} ${at(-11, 15)} ${at(-9, 14)}`,
    `C${at(-11, 24)} ${at(-6, 33)} ${at(3, 41)}`,
    `C${at(1, 34)} ${at(4, 30)} ${at(8, 25)}`,
    `C${at(9, 27)} ${at(9, 29)} ${at(9, 31)}`,
    `C${at(16, 24)} ${at(19, 14)} ${at(15, 7)}`,
    `C${at(13, 2)} ${at(8, 0)} ${at(3, 0)}Z`,
  ].join('');
  const inner = [
    `M${at(-2, 1.5)}`,
    `C${at(-8, 4)} ${at(-8, 11)} ${at(-3, 16)}`,
    `C${at(-3, 13)} ${at(-2, 12)} ${at(-1, 11)}`,
    `C${at(0, 16)} ${at(4, 18)} ${at(4, 23)}`,
    `C${at(9, 17)} ${at(10, 6)} ${at(4, 1.5)}Z`,
  ].join('');
  return [
    { path: outer, fill: black },
    { path: inner, fill: white },
  ];
};

const bar = (y: number, half: number, height = 3.6): Shape => ({
  path: `M${50 - half} ${y}H${50 + half}V${y + height}H${50 - half}Z`,
  fill: black,
});

/** A shard thrown from the middle of the burst: `from` and `to` are distances from (50, 58). */
const shard = (degrees: number, from: number, to: number, width: number): string =>
  polygon(
    turned(
      [
        [0, -to],
        [width, -from],
        [-width, -from],
      ],
      degrees,
      50,
      58,
    ),
  );

const bomb: readonly Shape[] = [
  // The lower shell, still whole, with its broken edge.
  {
    path: 'M36.4 56L41.4 52.5L45 57.5L49.5 51.5L54 57L58 52L63.6 56A14.6 14.6 0 1 1 36.4 56Z',
    fill: black,
  },
  {
    path: [
      shard(-78, 18, 32, 1.9),
      shard(-50, 14, 32, 2.6),
      shard(-22, 12, 31, 2.1),
      shard(4, 11, 38, 2.8),
      shard(30, 13, 32, 2.2),
      shard(55, 14, 34, 2.7),
      shard(82, 18, 33, 1.9),
    ].join(''),
    fill: black,
  },
  {
    path: [
      polygon([
        [31, 38],
        [35.5, 35.5],
        [36, 40],
      ]),
      polygon([
        [43, 27.5],
        [47, 25],
        [47.5, 29.5],
      ]),
      polygon([
        [61, 30],
        [65.5, 31],
        [62, 34.5],
      ]),
      polygon([
        [74.5, 43],
        [78.5, 45.5],
        [74, 47.5],
      ]),
    ].join(''),
    fill: black,
  },
];

/** A bottle of gas, leaning. */
const cylinder: readonly Shape[] = [
  {
    path: polygon(
      turned(
        [
          [-23, -7],
          [-24.5, -5],
          [-25, 0],
          [-24.5, 5],
          [-23, 7],
          [13, 7],
          [17, 6],
          [20, 3],
          [24, 3],
          [24, 5.6],
          [29, 5.6],
          [29, -5.6],
          [24, -5.6],
          [24, -3],
          [20, -3],
          [17, -6],
          [13, -7],
        ],
        -35,
        48,
        51,
      ),
    ),
    fill: black,
  },
  {
    path: polygon(
      turned(
        [
          [-19, -3.9],
          [11, -3.9],
          [11, -1.7],
          [-19, -1.7],
        ],
        -35,
        48,
        51,
      ),
    ),
    fill: white,
  },
];

/** A tube that pours towards the middle: its mouth lies at (x, y). */
const tube = (degrees: number, x: number, y: number): readonly Shape[] => {
  const outline: readonly Point[] = [
    [0, -4.4],
    [-2, -4.4],
    [-2, -3.6],
    [-18, -3.6],
    [-20.4, -2.2],
    [-21, 0],
    [-20.4, 2.2],
    [-18, 3.6],
    [-2, 3.6],
    [-2, 4.4],
    [0, 4.4],
  ];
  const air: readonly Point[] = [
    [-1, -2],
    [-17.6, -2],
    [-18.9, -0.8],
    [-1, 0.9],
  ];
  const side = degrees > 90 ? -1 : 1;
  return [
    { path: polygon(turned(outline, degrees, x, y)), fill: black },
    {
      path: polygon(
        turned(
          air.map(([px, py]): Point => [px, py * side]),
          degrees,
          x,
          y,
        ),
      ),
      fill: white,
    },
  ];
};

const drop = (x: number, y: number): string =>
  `M${x} ${y}C${x + 2.4} ${y + 3.4} ${x + 2.2} ${y + 6.4} ${x} ${y + 6.4}C${x - 2.2} ${y + 6.4} ${x - 2.4} ${y + 3.4} ${x} ${y}Z`;

const corrosion: readonly Shape[] = [
  ...tube(24, 46.5, 42.5),
  ...tube(153, 53, 42.6),
  { path: drop(44, 46.5) + drop(38.6, 46) + drop(55.6, 46) + drop(60.6, 45), fill: black },
  // The metal, with a hollow eaten into it and fume over it.
  {
    path: 'M26.4 57.6H34.5L36.5 60.8L39 59.8L41 62.4L43.5 60.2L45 57.6H48V66H26.4Z',
    fill: black,
  },
  {
    path: 'M33.4 55.6C32.4 54 34.4 53.2 33.4 51.6M46.6 55.6C45.6 54 47.6 53.2 46.6 51.6',
    stroke: black,
    strokeWidth: 1,
  },
  // The hand, with a hollow eaten into its back, the fingers to the left.
  {
    path: [
      'M73 56.6H68L66 59.2L63.8 58.6L62 60.9L60 59L58.4 60.2L54.9 60',
      'C52.4 60.2 51.8 62.4 54 63L59 63.8L53.9 64.8C52 65.4 52.4 67.6 54.4 67.6',
      'L60 68L57.4 69.4C56.2 70.6 57.2 71.8 58.8 71.4L66.6 70C69.4 69.4 70.6 66.6 73 65.4Z',
    ].join(''),
    fill: black,
  },
  {
    path: 'M58.6 56.8C57.6 55.2 59.6 54.4 58.6 52.8M66.6 55.6C65.6 54 67.6 53.2 66.6 51.6',
    stroke: black,
    strokeWidth: 1,
  },
];

const bone = (x1: number, y1: number, x2: number, y2: number): readonly Shape[] => {
  const long = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = [(x2 - x1) / long, (y2 - y1) / long];
  const knobs = (x: number, y: number): string =>
    circle(x + uy * 2.5, y - ux * 2.5, 2.9) + circle(x - uy * 2.5, y + ux * 2.5, 2.9);
  return [
    { path: `M${x1} ${y1}L${x2} ${y2}`, stroke: black, strokeWidth: 4.4 },
    { path: knobs(x1, y1) + knobs(x2, y2), fill: black },
  ];
};

const skull: readonly Shape[] = [
  ...bone(30, 56, 63.4, 70.8),
  ...bone(36.6, 70.8, 70, 56),
  // Paper between the bones and the skull.
  {
    path: 'M50 20.3C37.4 20.3 33.7 28.9 34.2 37C34.5 43.1 37.6 45.7 40.2 46.9V55.1C40.2 59 59.8 59 59.8 55.1V46.9C62.4 45.7 65.5 43.1 65.8 37C66.3 28.9 62.6 20.3 50 20.3Z',
    fill: white,
  },
  {
    path: 'M50 22C39.7 22 35.9 29.2 36.2 36.6C36.6 41.8 39.2 44.2 42.3 45.4V53.8C44.8 56.1 55.2 56.1 57.7 53.8V45.4C60.8 44.2 63.4 41.8 63.8 36.6C64.1 29.2 60.3 22 50 22Z',
    fill: black,
  },
  { path: circle(44.3, 37.2, 3.8) + circle(55.7, 37.2, 3.8), fill: white },
  { path: 'M50 41.3L52.6 46.1H47.4Z', fill: white },
  { path: 'M46 49V55M50 49.3V55.5M54 49V55', stroke: white, strokeWidth: 1.1 },
];

const exclamation: readonly Shape[] = [
  { path: 'M44.2 29C43.6 25 46 22.4 50 22.4C54 22.4 56.4 25 55.8 29L52.8 57.6H47.2Z', fill: black },
  { path: circle(50, 68, 5.6), fill: black },
];

const bust: readonly Shape[] = [
  { path: circle(50, 29.6, 8.4), fill: black },
  {
    path: 'M45 40.4H55C65 40.4 70.6 46 71 56.4V60H65.4V73.4H34.6V60H29V56.4C29.4 46 35 40.4 45 40.4Z',
    fill: black,
  },
  { path: star(50, 57.6, 8, [13.4, 10.4], 4.4), fill: white },
];

const environment: readonly Shape[] = [
  // A bare tree.
  {
    path: 'M37.5 66L38.7 54.5L32.3 47.2L33.7 45.8L38.8 50.6L39.4 44.3L33.7 37.8L35 36.4L39.6 40.7L40.2 31.8L36.4 26.8L37.7 25.7L40.6 28.8L41.7 24.1L43.5 24.5L42.5 32L42.9 38.7L47.5 33.9L48.8 35.3L43.3 42.6L43.5 47.4L48.6 43.3L49.8 44.7L43.6 52L44.8 66Z',
    fill: black,
  },
  // A fish, belly up.
  {
    path: 'M48.2 58.3C53.3 51.9 62.2 50.7 68.5 55.9L74.8 50.9C73.8 55.7 74 59.3 75.5 64L68.3 60C61.9 65 53.3 64.4 48.2 58.3Z',
    fill: black,
  },
  { path: 'M51.4 56.4L53.9 58.9M53.9 56.4L51.4 58.9', stroke: white, strokeWidth: 1 },
  { path: 'M57.5 54.3C58.8 56.6 58.8 59.7 57.5 61.9', stroke: white, strokeWidth: 1 },
  { path: 'M28 66H47C51 68.2 54.6 70.6 60 71H38.4C34 70.8 31.6 69.4 28 66Z', fill: black },
];

const symbols: Readonly<Record<PictogramId, readonly Shape[]>> = {
  GHS01: bomb,
  GHS02: [...flame(66), bar(69.4, 17)],
  GHS03: [
    ...flame(50.6, 0.78).slice(0, 1),
    { path: circle(50, 59, 10), fill: white, stroke: black, strokeWidth: 4.2 },
    bar(73.6, 12.6, 3.2),
  ],
  GHS04: cylinder,
  GHS05: corrosion,
  GHS06: skull,
  GHS07: exclamation,
  GHS08: bust,
  GHS09: environment,
};

/** Frames are red by rule; `black` is for a printer that has no red, and a label then says so. */
export type FrameColour = 'red' | 'black';

/** A pictogram. @param says its name in words, for a reader that cannot see it */
export const pictogram = (id: PictogramId, says: string, frame: FrameColour = 'red'): Drawing => ({
  width: 100,
  height: 100,
  says,
  shapes: [
    { path: 'M50 0L100 50L50 100L0 50Z', fill: frame === 'red' ? red : black },
    { path: 'M50 8L92 50L50 92L8 50Z', fill: white },
    ...symbols[id],
  ],
});
