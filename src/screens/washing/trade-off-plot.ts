/** Wash water in all against the number of washes, as a plot. */
import { type TradeOffPoint, tradeOffWashes } from '../../chemistry/wash-limit';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { PlotSpec } from '../../ui/plot/plot-spec';
import { washingWords as w } from './words';

const litres = (figure: Figure<'L'>): number => figure.value.toNumber();

/** Undefined where fewer than two numbers of washes keep the limit. */
export function tradeOffPlot(points: readonly TradeOffPoint[], sign: DecimalSign): PlotSpec | undefined {
  const usual = points.flatMap(({ washes, water }) => (water ? [[washes, water] as const] : []));
  const [first, last] = [usual.at(0), usual.at(-1)];
  if (!first || !last || first === last) return undefined;
  const text = ([, water]: readonly [number, Figure<'L'>]) => formatNumber(water.value, 2, sign);
  return {
    title: w.plot,
    summary: w.plotSummary(text(first), text(last), 'L'),
    sign,
    x: { label: w.plotX, from: 0, to: tradeOffWashes },
    y: { label: w.plotY, unit: 'L', from: 0 },
    layers: [
      {
        kind: 'line',
        name: w.plotLeast,
        word: w.plotLeast,
        // From the same number of washes on, so that one huge wash does not flatten the rest.
        points: points
          .filter(({ washes }) => washes >= first[0])
          .map(({ washes, least }) => [washes, litres(least)] as const),
      },
      {
        kind: 'line',
        name: w.plotUsual,
        word: w.plotUsual,
        points: usual.map(([washes, water]) => [washes, litres(water)] as const),
      },
    ],
  };
}
