/** Waste by month as a plot, for the screen and the paper alike. */
import type { MonthRow } from '../../ledger/year-account';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { PlotSpec } from '../../ui/plot/plot-spec';
import { monthText, shortMonth } from '../due/words';
import { yearWords as w } from './words';

type End = 'value' | 'low' | 'high';

/** A month in which nothing was logged is a dot at nothing; one in which nothing has a mass has none. */
const dots = (months: readonly MonthRow[], end: End) =>
  months.flatMap(({ mass }, x) => {
    if (mass.sum) return [{ x, y: mass.sum[end].toNumber() }];
    return mass.unweighed.length > 0 ? [] : [{ x, y: 0 }];
  });

export const hasPlot = (months: readonly MonthRow[]): boolean =>
  months.length > 1 && months.some(({ mass }) => mass.sum !== undefined);

export function monthsPlot(months: readonly MonthRow[], sign: DecimalSign): PlotSpec {
  const [first, ...rest] = months.flatMap(({ month, mass }) => (mass.sum ? [{ month, sum: mass.sum }] : []));
  const most = first && rest.reduce((a, b) => (b.sum.value.gt(a.sum.value) ? b : a), first);
  return {
    title: w.plotTitle,
    summary: most
      ? w.plotSummary(formatNumber(most.sum.value, 1, sign), monthText(most.month))
      : w.plotNothing,
    x: {
      label: w.plotMonth,
      from: 0,
      to: months.length - 1,
      format: (i) => {
        const month = months[i]?.month;
        return month === undefined ? '' : shortMonth(month);
      },
    },
    y: { label: w.plotWaste, unit: 'kg', from: 0 },
    layers: [
      { kind: 'dots', name: w.plotHigh, are: 'expected', points: dots(months, 'high') },
      { kind: 'dots', name: w.plotLikely, are: 'read', points: dots(months, 'value') },
    ],
    sign,
  };
}
