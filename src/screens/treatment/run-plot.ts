/** The run as a plot: what was read as dots, the line of the model with its range, the next portion, what is aimed at. */
import Decimal from 'decimal.js';
import type { Outlook } from '../../ledger/run-outlook';
import type { RunningStage } from '../../ledger/treatment-run';
import { type DecimalSign, formatNumber, formatWritten } from '../../quantities/format';
import type { PlotLayer, PlotPoint, PlotSpec } from '../../ui/plot/plot-spec';
import { agentName } from '../record/treatment-words';
import { runWords as w } from './run-words';

/** pH where nothing is read or worked out yet. */
const [lowestPh, highestPh] = [0, 14];

export type RunPlotAsked = {
  readonly stage: RunningStage;
  /** Null where nothing is worked out, or not yet. */
  readonly outlook: Outlook | null;
  readonly sign: DecimalSign;
};

export const gramsText = (grams: Decimal, sign: DecimalSign): string => {
  const rounded = grams.toSignificantDigits(3);
  return formatNumber(rounded, rounded.decimalPlaces(), sign);
};

function modelLayers({ curve }: Outlook): readonly PlotLayer[] {
  if (!curve) return [];
  return [
    { kind: 'band', name: w.plotRange, low: curve.latest, high: curve.soonest },
    { kind: 'line', name: w.plotLine, points: curve.line },
  ];
}

function nextLayers({ next, stage }: Outlook, sign: DecimalSign): readonly PlotLayer[] {
  if (!next) return [];
  const from = stage.grams.toNumber();
  const to = stage.grams.plus(next.grams).toNumber();
  const expected = next.expected && { x: to, y: next.expected.likely };
  return [
    { kind: 'block', from, to, word: w.plotNext(gramsText(next.grams, sign)) },
    ...(expected
      ? [{ kind: 'dots' as const, name: w.plotExpected, are: 'expected' as const, points: [expected] }]
      : []),
  ];
}

const dotsOf = ({ points }: RunningStage) =>
  points.map(({ reading, grams }) => ({
    x: grams.toNumber(),
    y: Number(reading.body.ph.value.value),
  }));

function summaryOf({ stage: { points, grams }, sign }: RunPlotAsked): string {
  const [first, last] = [points.at(0), points.at(-1)].map((point) => point?.reading.body.ph.value);
  const text = (ph: typeof first) => (ph ? formatWritten(ph, sign) : '');
  return w.plotSummary(points.length, text(first), text(last), gramsText(grams, sign));
}

/** Room on the axis of grams: all that is in and planned; a little where nothing is. */
function widest({ stage, outlook }: RunPlotAsked): number {
  const planned = outlook ? outlook.planned.needed.high.toNumber() : 0;
  const next = outlook?.next ? stage.grams.plus(outlook.next.grams).toNumber() : 0;
  const most = Math.max(planned, next, stage.grams.toNumber());
  return most > 0 ? most * 1.1 : 1;
}

/** Nothing to the right of what is drawn: the curve goes on far beyond what is needed. */
const upTo = (points: readonly PlotPoint[], most: number): readonly PlotPoint[] => {
  const beyond = points.findIndex(([x]) => x > most);
  return beyond < 0 ? points : points.slice(0, beyond);
};

const cut = (layer: PlotLayer, most: number): PlotLayer => {
  if (layer.kind === 'line') return { ...layer, points: upTo(layer.points, most) };
  if (layer.kind === 'band') return { ...layer, low: upTo(layer.low, most), high: upTo(layer.high, most) };
  return layer;
};

export function runPlot(asked: RunPlotAsked): PlotSpec {
  const { stage, outlook, sign } = asked;
  const agent = agentName(stage.agent).toLowerCase();
  const most = widest(asked);
  const dots = dotsOf(stage);
  const layers: readonly PlotLayer[] = [
    ...(outlook ? modelLayers(outlook).map((layer) => cut(layer, most)) : []),
    ...(stage.targetPh === null
      ? []
      : [
          {
            kind: 'limit' as const,
            axis: 'y' as const,
            at: Number(stage.targetPh),
            word: w.plotAim(stage.targetPh.replace('.', sign)),
          },
        ]),
    ...(outlook ? nextLayers(outlook, sign) : []),
    ...(dots.length > 0
      ? [{ kind: 'dots' as const, name: w.plotRead, are: 'read' as const, points: dots }]
      : []),
  ];
  return {
    title: w.plotTitle(agent),
    summary: summaryOf(asked),
    sign,
    x: {
      label: agent,
      unit: 'g',
      from: 0,
      to: Math.ceil(new Decimal(most).toSignificantDigits(2, Decimal.ROUND_UP).toNumber()),
    },
    y: { label: 'pH', from: lowestPh, to: highestPh },
    layers,
  };
}
