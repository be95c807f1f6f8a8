/** Every figure of a year's account under a name, so that a page and a paper show the same ones. */
import type { Figure } from '../quantities/figure';
import type { YearAccount } from './year-account';
import type { Balance } from './year-balance';
import type { SilverYield } from './year-silver';

type Pair = readonly [string, Figure | undefined];

const ofBalance = ({ of, ins, outs, sumIn, sumOut, off }: Balance): readonly Pair[] => [
  [`${of}-in`, sumIn],
  [`${of}-out`, sumOut],
  [`${of}-off`, off],
  ...[...ins, ...outs].flatMap(({ line, sum, parts }): Pair[] => [
    [`${of}-${line}`, sum],
    ...parts.map(({ figure }, i): Pair => [`${of}-${line}-${i + 1}`, figure]),
  ]),
];

const ofSilver = ({ silver, each, batches }: SilverYield): readonly Pair[] => [
  ['silver', silver],
  ...each.flatMap(({ what, all, ratio }): Pair[] => [
    [`silver-${what}`, ratio],
    [`silver-${what}-all`, all],
  ]),
  ...batches.flatMap(({ batchId, silver: got, each: own }): Pair[] => [
    [`batch-${batchId}`, got],
    ...own.map(({ what, ratio }): Pair => [`batch-${batchId}-${what}`, ratio]),
  ]),
];

/**
 * "arose", "handed-over", "held-start", "held-end"; a kind ("kind-wash-water"), a month ("month-2028-02"), what is told of
 * beside ("besides-determined"), a load, an agent; of a balance its sides, lines and parts ("Cu-in", "Cu-arose", "Cu-arose-1",
 * "Cu-off"); of silver "silver", "silver-Cu", and of each batch ("batch-…-Cu"); rows of codes ("code-1").
 */
export function yearFigures(account: YearAccount): ReadonlyMap<string, Figure> {
  const pairs: readonly Pair[] = [
    ['arose', account.arose.sum],
    ['handed-over', account.handedOver.sum],
    ['held-start', account.heldAtStart.sum],
    ['held-end', account.heldAtEnd.sum],
    ...account.kinds.map(({ kind, mass }): Pair => [`kind-${kind}`, mass.sum]),
    ...account.months.map(({ month, mass }): Pair => [`month-${month}`, mass.sum]),
    ...account.besides.map(({ as, mass }): Pair => [`besides-${as}`, mass.sum]),
    ...account.went.loads.map(({ handOver, mass }): Pair => [`load-${handOver.body.handOverId}`, mass.sum]),
    ...account.agents.map(({ agent, mass }): Pair => [`agent-${agent}`, mass]),
    ...account.balances.flatMap(ofBalance),
    ...ofSilver(account.silver),
    ...account.codes.map(({ mass }, i): Pair => [`code-${i + 1}`, mass.sum]),
  ];
  return new Map(pairs.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}
