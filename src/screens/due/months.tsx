/** The last twelve months, drawn and in rows. */
import { useMemo } from 'preact/hooks';
import { lastMonths, type MonthHeld } from '../../ledger/quantities-now';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { monthOf } from '../../rules/clocks/calendar-day';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import type { PlotSpec } from '../../ui/plot/plot-spec';
import { Row, Rows } from '../../ui/row';
import { shown } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { monthText, shortMonth, dueWords as w } from './words';

/** @param months the latest first */
function plotOf(months: readonly MonthHeld[], sign: DecimalSign): PlotSpec {
  const inOrder = months.toReversed();
  const dots = (end: 'value' | 'high') =>
    inOrder.map(({ month }, x) => ({ x, y: month.nonAcute[end].toNumber() }));
  const most = inOrder.reduce((a, b) => (b.month.nonAcute.value.gt(a.month.nonAcute.value) ? b : a));
  const limit = months[0]?.against.own?.limit;
  const nameOf = (i: number): string => inOrder[i]?.month.month ?? '';
  return {
    title: w.plotTitle,
    summary: w.plotSummary(formatNumber(most.month.nonAcute.value, 1, sign), monthText(most.month.month)),
    x: {
      label: w.plotMonth,
      from: 0,
      to: inOrder.length - 1,
      format: (i) => (nameOf(i) === '' ? '' : shortMonth(nameOf(i))),
    },
    y: { label: w.plotWaste, unit: 'kg', from: 0 },
    layers: [
      { kind: 'dots', name: w.plotHigh, are: 'expected', points: dots('high') },
      { kind: 'dots', name: w.plotLikely, are: 'read', points: dots('value') },
      ...(limit
        ? [{ kind: 'limit', axis: 'y', at: limit.value.toNumber(), word: w.plotLimit } as const]
        : []),
    ],
    sign,
  };
}

export function MonthsScreen() {
  const { state, now, zone, sign } = useShell();
  const latest = monthOf(now.value, zone);
  const months = useMemo(() => lastMonths(state.value, latest, zone), [state.value, latest, zone]);
  const spec = useMemo(() => plotOf(months, sign.value), [months, sign.value]);
  const some = months.some(({ month }) => !month.nonAcute.value.isZero());
  return (
    <Frame title={w.monthsTitle} second={w.monthsSecond} ways={[{ label: words.back, href: '#/due' }]}>
      {some && (
        <Part>
          <Plot spec={spec} />
        </Part>
      )}
      <Part rule width="edge">
        <Rows label={w.monthsTitle}>
          {months.map(({ month, against }) => (
            <Row
              key={month.month}
              title={monthText(month.month)}
              second={[
                against.own && against.own.standing !== 'under' ? w.standing[against.own.standing] : '',
                month.unweighed.length > 0 ? w.atLeast(month.unweighed.length) : '',
              ]
                .filter(Boolean)
                .join('. ')}
              figure={<FigureValue {...shown(month.nonAcute, sign.value)} />}
              href={`#/due/months/${month.month}`}
            />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
