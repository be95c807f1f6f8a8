/** What stands side by side: each figure with the address of its working, or the words in its place. */
import type { BillLine, Money, NoSum } from '../../ledger/money';
import { namedFigures, type TwoWays } from '../../ledger/two-ways';
import type { Figure } from '../../quantities/figure';
import { pricedText } from '../record/treatment-words';
import type { Line, Side } from './side-by-side';
import { twoWaysWords as w } from './words';

const none: Side = { words: w.none };
const notWorkedOut: Side = { words: w.notWorkedOut };

/** @param base address before the name of a figure */
const sideFrom = (two: TwoWays, base: string) => {
  const figures = namedFigures(two);
  const side = (name: string): Side => {
    const figure = figures.get(name);
    return figure ? { figure, href: `${base}/${name}` } : none;
  };
  return { side, treated: (name: string): Side => (two.treated ? side(name) : notWorkedOut) };
};

/** What leaves the workshop either way. */
export function handedLines(two: TwoWays, base: string): readonly Line[] {
  const { side, treated } = sideFrom(two, base);
  return [
    { name: w.liquid, second: w.liquidSecond, asItIs: side('volume'), treated: treated('filtrate-volume') },
    { name: w.liquidMass, asItIs: side('mass'), treated: treated('filtrate') },
    { name: w.sludge, asItIs: none, treated: treated('sludge') },
    { name: w.inAll, second: w.inAllSecond, asItIs: side('mass'), treated: treated('treated-mass') },
  ];
}

const isPractice = (figure: Figure | undefined): boolean => figure?.how !== 'stated';

/** What treating takes; as it is takes none of it. */
export function takenLines(two: TwoWays, base: string): readonly Line[] {
  const { treated } = sideFrom(two, base);
  const standing = two.counted.length > 1 ? w.standingAll : w.standing;
  const lines: readonly (readonly [name: string, key: string, second?: string | undefined])[] = [
    [w.buy, 'base'],
    [w.water, 'water'],
    ...(two.treated?.gas ? [[w.gas, 'gas'] as const] : []),
    [w.atThePot, 'at-the-pot', isPractice(two.treated?.atThePot) ? w.practice : undefined],
    [standing, 'standing', w.practice],
  ];
  return lines.map(([name, key, second]) => ({ name, second, asItIs: none, treated: treated(key) }));
}

const noSum = (why: NoSum): string =>
  why.code === 'no-price' ? w.notAdded(why.of.map(pricedText)) : w.notOneCurrency(w.and(why.of));

function moneySide(money: Money | undefined, line: BillLine | 'sum', href: string): Side {
  if (!money) return notWorkedOut;
  if (line === 'sum')
    return money.sum.ok ? { figure: money.sum.cost, href } : { words: noSum(money.sum.why) };
  const found = money.lines.find((one) => one.line === line);
  if (!found) return none;
  return found.cost ? { figure: found.cost, href } : { words: w.noPrice };
}

const billLines: readonly BillLine[] = ['base', 'liquid', 'sludge', 'visit'];

/** What either way costs by the prices that were entered. */
export const moneyLines = (two: TwoWays, base: string): readonly Line[] =>
  [...billLines, 'sum' as const].map((line) => ({
    name: line === 'sum' ? w.sum : w.lines[line],
    asItIs: moneySide(two.asItIs?.money, line, `${base}/as-it-is-${line}`),
    treated: moneySide(two.treated?.money, line, `${base}/treated-${line}`),
  }));

export type Days = { readonly since: string | undefined; readonly last: string | undefined };

/** What of it counts in a month, and from when its days run. */
export function monthLines(two: TwoWays, base: string, days: Days): readonly Line[] {
  const { side, treated } = sideFrom(two, base);
  const since: Side = { words: days.since ?? w.none };
  const last: Side = { words: days.last ?? w.lastDayUnknown };
  return [
    { name: w.monthArose, asItIs: side('mass'), treated: side('mass') },
    { name: w.monthHanded, asItIs: side('mass'), treated: treated('treated-mass') },
    { name: two.counted.length > 1 ? w.sinceOldest : w.since, asItIs: since, treated: since },
    { name: w.lastDay, asItIs: last, treated: last },
  ];
}
