/** From the values of an axis to places along it: evenly, or in decades. */
import type { PlotAxis } from './plot-spec';
import { niceStep } from './ticks';

export type Scale = {
  readonly kind: 'linear' | 'log';
  readonly from: number;
  readonly to: number;
  /** 0 at `from`, 1 at `to`, outside of these beyond the ends; a logarithmic scale has nothing below its floor. */
  readonly share: (value: number) => number;
  /** The value at a share. */
  readonly valueAt: (share: number) => number;
};

/** Which end of the scale a value lies beyond; on a logarithmic one, at the floor is beyond it. */
export function beyond(scale: Scale, value: number): 'low' | 'high' | undefined {
  const share = scale.share(value);
  if (share > 1 + 1e-9) return 'high';
  return share < -1e-9 || (scale.kind === 'log' && share <= 0) ? 'low' : undefined;
}

export function linearScale(from: number, to: number): Scale {
  const span = to - from;
  return {
    kind: 'linear',
    from,
    to,
    share: (value) => (value - from) / span,
    valueAt: (share) => from + share * span,
  };
}

/** @param from the floor, above 0; what is at or below it has the share 0 */
export function logScale(from: number, to: number): Scale {
  const [low, span] = [Math.log10(from), Math.log10(to) - Math.log10(from)];
  return {
    kind: 'log',
    from,
    to,
    share: (value) => (value <= from ? 0 : (Math.log10(value) - low) / span),
    valueAt: (share) => 10 ** (low + share * span),
  };
}

/** Ends that differ, whatever the data: an axis without length has no places. */
const apart = (from: number, to: number): readonly [number, number] =>
  to > from ? [from, to] : [from, from === 0 ? 1 : from + Math.abs(from)];

function roundEnds(axis: PlotAxis, low: number, high: number): readonly [number, number] {
  if (axis.scale === 'log')
    return [10 ** Math.floor(Math.log10(low) + 1e-9), 10 ** Math.ceil(Math.log10(high) - 1e-9)];
  const step = niceStep(high - low, 5);
  return [Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step];
}

/** The scale of an axis whose data are `values`: its own ends where it names them, else round ones around the data. */
export function scaleOf(axis: PlotAxis, values: readonly number[]): Scale {
  const held = values.filter((value) => Number.isFinite(value) && (axis.scale !== 'log' || value > 0));
  const least = axis.scale === 'log' ? 1 : 0;
  const data = apart(axis.from ?? Math.min(...held, Infinity), axis.to ?? Math.max(...held, -Infinity));
  const [low, high] = data.every(Number.isFinite) ? data : apart(axis.from ?? least, axis.to ?? least + 1);
  const [from, to] = roundEnds(axis, low, high);
  const ends = apart(axis.from ?? from, axis.to ?? to);
  return axis.scale === 'log' ? logScale(...ends) : linearScale(...ends);
}
