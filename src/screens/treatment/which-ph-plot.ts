/** What of each metal stays against pH, in decades, with limits and the window of least. */
import type { Limits } from '../../chemistry/treatment/limits';
import type { ResidualPoint } from '../../chemistry/treatment/residual-curve';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import type { DecimalSign } from '../../quantities/format';
import { bases, type Metal } from '../../reference/tables';
import type { PlotLayer, PlotPoint, PlotSpec } from '../../ui/plot/plot-spec';
import { phText } from './pot-plot';
import { treatmentWords as w } from './words';

/** mg/L; below it fine solids decide, and every band ends above. */
const floor = 0.1;

const end = (points: readonly ResidualPoint[], metal: Metal, which: 'low' | 'high'): readonly PlotPoint[] =>
  points.flatMap(({ pH, bands }) => {
    const band = bands.get(metal);
    return band ? [[pH, band[which]] as const] : [];
  });

/** The upper end as a line; hatched down to the lower one where the metal has a limit, so that few hatchings cross. */
const bandsOf = ({ curve, limits }: WhichPh): readonly PlotLayer[] =>
  curve.metals
    .filter((metal) => !curve.unpredicted.has(metal))
    .flatMap((metal): PlotLayer[] => [
      ...(limits.values.has(metal)
        ? [
            {
              kind: 'band' as const,
              name: w.bandOf(metal),
              low: end(curve.points, metal, 'low'),
              high: end(curve.points, metal, 'high'),
            },
          ]
        : []),
      { kind: 'line', name: w.mostOf(metal), word: metal, points: end(curve.points, metal, 'high') },
    ]);

/** Limits of the metals that are there; those that lie close together are one window. */
function limitLayers({ curve }: WhichPh, limits: Limits): readonly PlotLayer[] {
  const values = curve.metals.flatMap((metal) => limits.values.get(metal)?.value.toNumber() ?? []);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (values.length === 0) return [];
  return low === high
    ? [{ kind: 'limit', axis: 'y', at: low, word: w.limits }]
    : [{ kind: 'window', axis: 'y', from: low, to: high, word: w.limits }];
}

function summaryOf({ window, base }: WhichPh, sign: DecimalSign): string {
  const name = bases[base].name;
  return window
    ? w.whichSummary(name, phText(window.best, sign), phText(window.low, sign), phText(window.high, sign))
    : w.whichNone;
}

export function whichPhPlot(which: WhichPh, sign: DecimalSign): PlotSpec {
  const { window, limits, curve } = which;
  return {
    title: w.whichPlot,
    summary: summaryOf(which, sign),
    sign,
    x: {
      label: w.plotPh,
      from: Math.floor(curve.points.at(0)?.pH ?? 4),
      to: Math.ceil(curve.points.at(-1)?.pH ?? 12),
    },
    y: { label: w.whichPlotY, unit: 'mg/L', scale: 'log', from: floor },
    layers: [
      ...(window
        ? [
            {
              kind: 'window' as const,
              axis: 'x' as const,
              from: window.low,
              to: window.high,
              word: w.leastHere,
            },
          ]
        : []),
      ...limitLayers(which, limits),
      ...bandsOf(which),
    ],
  };
}
