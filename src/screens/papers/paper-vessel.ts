/** A container as a drawing for a paper: the drawn vessel in ink, its level, its filling limit. Units are pt. */
import { fillLimitPercent } from '../../ledger/fill';
import type { ContainerState, State } from '../../ledger/state';
import type { Drawing, DrawnText, Shape } from '../../paperwork/document';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { unbroken } from '../../ui/figure-value';
import type { VesselDrawing } from '../../ui/vessel';
import { type VesselGeometry, vesselGeometry } from '../../ui/vessel-geometry';
import { vesselKind } from '../../ui/vessel-kinds';
import { heldText } from '../amounts';
import { vesselDrawing } from '../vessel-drawing';
import { paperWords as w } from './words';

/** The most a vessel takes on the sheet, and the room for words at its right. */
const most = { width: 68, height: 112 };
const roomRight = 54;
const ink = '#000000';
const pad = 1.5;

type Point = readonly [number, number];

/** Corners of a path of straight lines, as `liquid` and `solids` are. */
const corners = (path: string): readonly Point[] =>
  [...path.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

/** Lines at 45 degrees through a polygon, `gap` apart: a paper has no pattern to fill with. */
function hatch(path: string, gap: number): string {
  const points = corners(path);
  const sums = points.map(([x, y]) => x + y);
  const strokes: string[] = [];
  for (let sum = Math.ceil(Math.min(...sums) / gap) * gap; sum < Math.max(...sums); sum += gap) {
    const cuts = points.flatMap(([x, y], at): number[] => {
      const [px, py] = points.at(at - 1) ?? [x, y];
      const [a, b] = [px + py - sum, x + y - sum];
      return a > 0 === b > 0 ? [] : [px + ((x - px) * a) / (a - b)];
    });
    cuts.sort((a, b) => a - b);
    for (let at = 0; at + 1 < cuts.length; at += 2) {
      const [from = 0, to = 0] = [cuts[at], cuts[at + 1]];
      strokes.push(
        `M${from.toFixed(2)} ${(sum - from).toFixed(2)}L${to.toFixed(2)} ${(sum - to).toFixed(2)}`,
      );
    }
  }
  return strokes.join('');
}

const isColour = (tint: string): boolean => tint.startsWith('#');

function contentsOf(drawn: VesselGeometry, vessel: VesselDrawing): Shape[] {
  if (drawn.liquid === '') return [];
  const known = vessel.volumeL !== undefined;
  const { tint } = vessel;
  const lines = isColour(tint) ? '' : hatch(drawn.liquid, tint === 'unknown' ? 9 : 6);
  return [
    ...(isColour(tint) ? [{ path: drawn.liquid, fill: tint }] : []),
    ...(lines === '' ? [] : [{ path: lines, stroke: ink, strokeWidth: tint === 'unknown' ? 1.2 : 0.6 }]),
    ...(drawn.solids === '' ? [] : [{ path: drawn.solids, fill: '#c8cfcc', stroke: ink, strokeWidth: 0.6 }]),
    { path: drawn.levelLine, stroke: ink, strokeWidth: 1.6, ...(known ? {} : { dash: [4, 3] }) },
  ];
}

const tab = (drawn: VesselGeometry, code: string): { shapes: Shape[]; texts: DrawnText[] } => {
  // A long code in smaller letters: no wider than the vessel, beside which its level stands.
  const [wanted, height] = [Math.max(34, code.length * 6.4 + 10), 18];
  const width = Math.min(wanted, drawn.widthPx);
  const size = (10.5 * width) / wanted;
  const x = (drawn.widthPx - width) / 2;
  const y = drawn.heightPx - Math.max(height + 8, 0.3 * drawn.shoulderPx + height / 2);
  return {
    shapes: [
      { path: `M${x} ${y}h${width}v${height}h${-width}Z`, fill: '#ffffff', stroke: ink, strokeWidth: 1 },
    ],
    texts: [
      { x: drawn.widthPx / 2, y: y + 12.8, text: unbroken(code), size, anchor: 'middle', face: 'bold' },
    ],
  };
};

/** The vessel with its words. @param sign decimal sign of the reader */
export function paperVessel(state: State, container: ContainerState, sign: DecimalSign): Drawing {
  const vessel = vesselDrawing(state, container);
  const kind = vesselKind(vessel.family, vessel.capacityL);
  const scale = Math.min(most.width / kind.widthMm, most.height / (kind.heightMm * 1.04));
  const drawn = vesselGeometry({
    kind,
    fillShare: vessel.volumeL === undefined ? 0.45 : vessel.volumeL / vessel.capacityL,
    solidsShare: vessel.solidsShare,
    limitShare: vessel.limitShare,
    scale,
    gapPx: 2.4,
    tickEveryL: vessel.capacityL >= 4 ? 1 : 0.25,
  });
  const { code, cap, capacity } = container.body;
  const label = tab(drawn, code);
  const limit = fillLimitPercent(state).percent;
  const edge = drawn.widthPx;
  const levelText = vessel.volumeL === undefined ? w.levelUnknown : heldText(container.holds, sign);
  const [levelLine = '', ...more] = levelText.split(', ');
  // Words of the limit and of the level keep clear of each other.
  const below = Math.abs(drawn.levelPx - drawn.limitPx) < 24 ? drawn.limitPx + 26 : drawn.levelPx + 4;
  const levelY = Math.min(below, drawn.heightPx - 11 * (more.length + 1) - 2);
  const shapes: Shape[] = [
    { path: drawn.outline, fill: '#ffffff' },
    ...contentsOf(drawn, vessel),
    ...(drawn.hole === undefined ? [] : [{ path: drawn.hole, stroke: ink, strokeWidth: 1.4 }]),
    ...drawn.ticks.map((tick) => ({
      path: `M${tick.xPx} ${tick.yPx}h${tick.long ? 10 : 6}`,
      stroke: ink,
      strokeWidth: 0.8,
    })),
    { path: drawn.outline, stroke: ink, strokeWidth: 1.6 },
    { path: `M${drawn.limitXPx} ${drawn.limitPx}h8`, stroke: ink, strokeWidth: 1.6 },
    { path: drawn.cap, stroke: ink, strokeWidth: 1.6, fill: vessel.cap === 'tight' ? ink : '#ffffff' },
    ...(cap === 'vented' ? [{ path: drawn.stem, fill: ink }] : []),
    ...label.shapes,
  ];
  const texts: DrawnText[] = [
    ...label.texts,
    {
      x: edge + 11,
      y: drawn.limitPx + 3,
      text: w.limit(formatWritten({ value: limit, unit: '%' }, sign)),
      size: 9,
    },
    { x: edge + 11, y: levelY, text: levelLine, size: 11, face: 'bold' },
    ...[...more, w.ofCapacity(`${formatWritten(capacity, sign)}\u2009${capacity.unit}`)].map(
      (text, at): DrawnText => ({ x: edge + 11, y: levelY + 11 * (at + 1), text, size: 9 }),
    ),
  ];
  return {
    width: edge + roomRight + pad * 2,
    height: drawn.heightPx + pad * 2,
    says: w.drawingSays(unbroken(code), levelText),
    shapes,
    texts,
  };
}
