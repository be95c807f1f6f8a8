/** What a plot says to a reader that cannot see it: the caller's summary, the ends of the axes, the marks in words. */
import type { PlotFrame } from './plot-frame';
import { plotSayings } from './plot-sayings';
import { axisTitle, type PlotAxis, type PlotSpec } from './plot-spec';
import type { Scale } from './scale';
import { valueText } from './value-text';

const axisSays = (way: string, axis: PlotAxis, scale: Scale, spec: PlotSpec): string =>
  plotSayings.axis(
    way,
    axisTitle(axis),
    valueText(axis, scale.from, spec.sign),
    valueText(axis, scale.to, spec.sign),
    scale.kind === 'log',
  );

export const plotSays = (spec: PlotSpec, { x, y }: PlotFrame): string =>
  [
    spec.summary,
    axisSays(plotSayings.across, spec.x, x, spec),
    axisSays(plotSayings.upwards, spec.y, y, spec),
  ].join(' ');
