/** Waste by month as a plot, for the screen and the paper alike. */
import type { MetalMonths, MonthRow } from '../../ledger/year-account';
import { months as monthsInShort } from '../../paperwork/words';
import { substanceName } from '../../paperwork/year/account-words';
import { yearPaperWords } from '../../paperwork/year/year-words';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { PlotSpec } from '../../ui/plot/plot-spec';
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

const monthAxis = (months: readonly { readonly month: string }[]): PlotSpec['x'] => ({
  label: w.plotMonth,
  from: 0,
  to: months.length - 1,
  format: (i) => {
    const month = months[i]?.month;
    return month === undefined ? '' : (monthsInShort[Number(month.slice(5)) - 1] ?? '');
  },
});

export function monthsPlot(months: readonly MonthRow[], sign: DecimalSign): PlotSpec {
  const [first, ...rest] = months.flatMap(({ month, mass }) => (mass.sum ? [{ month, sum: mass.sum }] : []));
  const most = first && rest.reduce((a, b) => (b.sum.value.gt(a.sum.value) ? b : a), first);
  return {
    title: w.plotTitle,
    summary: most
      ? w.plotSummary(formatNumber(most.sum.value, 1, sign), yearPaperWords.monthText(most.month))
      : w.plotNothing,
    x: monthAxis(months),
    y: { label: w.plotWaste, unit: 'kg', from: 0 },
    layers: [
      { kind: 'dots', name: w.plotHigh, are: 'expected', points: dots(months, 'high') },
      { kind: 'dots', name: w.plotLikely, are: 'read', points: dots(months, 'value') },
    ],
    sign,
  };
}

/** Copper and nickel in the waste that arose; undefined where no waste tells of either. */
export function metalsPlot(metals: readonly MetalMonths[], sign: DecimalSign): PlotSpec | undefined {
  const [first] = metals;
  if (!first || first.months.length < 2) return undefined;
  const name = (of: MetalMonths['of']) => substanceName(of).toLowerCase();
  return {
    title: w.metalsTitle,
    summary: metals
      .map(({ of, most }) => w.metalsSummary(substanceName(of), most && yearPaperWords.monthText(most)))
      .join(' '),
    x: monthAxis(first.months),
    y: { label: w.plotMetal, unit: 'g', from: 0 },
    layers: metals.map(({ of, months }) => ({
      kind: 'line' as const,
      name: name(of),
      word: name(of),
      points: months.map(({ sum }, x) => [x, sum?.value.toNumber() ?? 0] as const),
    })),
    sign,
  };
}
