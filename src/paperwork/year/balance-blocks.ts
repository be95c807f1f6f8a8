/** The balances of a year and what silver cost in waste, as blocks of its paper. */

import { rangeText } from '../disposal/printed';
import { type Block, table } from '../document';
import { notDetermined } from '../words';
import { called, figureCells, figureColumns, heading, small } from './cells';
import type { YearData } from './year-data';
import { yearPaperWords as w } from './year-words';

type Balance = YearData['balances'][number];

const isOff = ({ verdict }: Balance): boolean => verdict === 'more-in' || verdict === 'more-out';

const overview = (balances: readonly Balance[]): Block =>
  table(
    [
      { key: 'of', head: w.substance, share: 26 },
      { key: 'in', head: w.in, share: 34 },
      { key: 'out', head: w.out, share: 34 },
      { key: 'off', head: w.off, share: 30 },
      { key: 'how', head: w.how, share: 40 },
    ],
    balances.map((balance) => ({
      kind: 'cells' as const,
      cells: {
        of: { text: balance.called, strong: true },
        in: rangeText(balance.sumIn),
        out: rangeText(balance.sumOut),
        off: rangeText(balance.off),
        how: { text: balance.says, strong: isOff(balance) },
      },
    })),
  );

/** What does not tell, by what is missing of it. */
function gapLines({ gaps }: Balance): Block[] {
  return [...new Set(gaps.map(({ says }) => says))].map((says) => {
    const own = gaps.filter((gap) => gap.says === says);
    return small(w.gaps(says, called(own.map(({ thing }) => thing))));
  });
}

function lines(balance: Balance): Block[] {
  const rows = [
    ...balance.ins.map((line) => ({ ...line, strong: false })),
    { called: w.sumIn, sum: balance.sumIn, strong: true },
    ...balance.outs.map((line) => ({ ...line, strong: false })),
    { called: w.sumOut, sum: balance.sumOut, strong: true },
    { called: w.off, sum: balance.off, strong: true },
  ];
  return [
    heading(2, balance.called),
    {
      kind: 'mark',
      mark: isOff(balance) ? 'wrong' : balance.gaps.length > 0 ? 'unknown' : 'candidate',
      text: `${balance.says}.`,
    },
    table(
      [{ key: 'what', head: w.line, share: 68 }, ...figureColumns(w.amount)],
      rows.map(({ called: name, sum, strong }) => ({
        kind: 'cells' as const,
        cells: { what: { text: name, strong }, ...figureCells(sum) },
      })),
    ),
    ...gapLines(balance),
  ];
}

/** Said once under the balances: the same lines stand in each. */
function meanings(balances: readonly Balance[]): Block[] {
  const all = new Map(
    balances.flatMap(({ ins, outs }) =>
      [...ins, ...outs].flatMap(({ called: name, means }) =>
        means === undefined ? [] : [[name, means] as const],
      ),
    ),
  );
  return [...all].map(([name, means]) => small(`${name}: ${means}`));
}

export function balanceBlocks({ balances, toldNowhere, wrong }: YearData): Block[] {
  return [
    heading(1, w.balances),
    ...(balances.length === 0
      ? [small(w.noBalances)]
      : [
          small(w.balancesNote),
          overview(balances),
          ...(toldNowhere.length > 0 ? [small(w.toldNowhere(toldNowhere))] : []),
        ]),
    ...(wrong.length > 0 ? [heading(2, w.wrong), { kind: 'list', items: wrong } as const] : []),
    ...balances.map((balance): Block => ({ kind: 'together', parts: lines(balance) })),
    ...meanings(balances),
  ];
}

type Silver = YearData['silver'];

const openLines = (each: Silver['each'], of: string): Block[] =>
  each.flatMap(({ called: name, ratio, notToldBy }) =>
    notToldBy.length > 0
      ? [small(w.openIn(`${of}, ${name}`, ratio !== notDetermined, called(notToldBy)))]
      : [],
  );

export function silverBlocks({ silver, agents }: YearData): Block[] {
  const { weighed, each, batches, notWeighed } = silver;
  const rows = [
    ...batches.map((one) => ({ name: one.batch.called, silver: one.silver, each: one.each, strong: false })),
    ...(weighed === notDetermined ? [] : [{ name: w.allBatches, silver: weighed, each, strong: true }]),
  ];
  const ratio = (of: Silver['each'], at: number): string => {
    const found = of[at]?.ratio ?? notDetermined;
    return found === notDetermined ? found : rangeText({ ...found, unit: 'g' });
  };
  return [
    heading(1, w.silver),
    ...(rows.length === 0
      ? [small(w.noSilver)]
      : [
          small(w.silverNote),
          table(
            [
              { key: 'batch', head: w.batch, share: 24 },
              { key: 'silver', head: w.silverGrams, share: 34 },
              { key: 'copper', head: w.perSilver.Cu, share: 36 },
              { key: 'nickel', head: w.perSilver.Ni, share: 36 },
              { key: 'waste', head: w.perSilver.waste, share: 34 },
            ],
            rows.map(({ name, silver: got, each: of, strong }) => ({
              kind: 'cells' as const,
              cells: {
                batch: { text: name, strong },
                silver: rangeText(got),
                copper: ratio(of, 0),
                nickel: ratio(of, 1),
                waste: ratio(of, 2),
              },
            })),
          ),
          ...batches.flatMap((one) => openLines(one.each, one.batch.called)),
        ]),
    ...(notWeighed.length > 0 ? [small(w.notWeighed(called(notWeighed)))] : []),
    ...(agents.length > 0
      ? [
          heading(2, w.agents),
          table(
            [
              { key: 'what', head: w.agent, share: 52 },
              { key: 'in', head: w.treatments, share: 16, align: 'right' },
              ...figureColumns(w.kg),
            ],
            agents.map(({ called: name, mass, treatments }) => ({
              kind: 'cells' as const,
              cells: { what: name, in: String(treatments), ...figureCells(mass) },
            })),
          ),
        ]
      : []),
  ];
}
