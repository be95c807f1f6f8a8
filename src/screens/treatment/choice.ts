/** What stands on the page of a treatment for the base and the pH chosen. */
import type { BaseTo } from '../../chemistry/treatment/base-to';
import type { DoseCurve } from '../../chemistry/treatment/dose-curve';
import type { Outcome } from '../../chemistry/treatment/outcome';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import {
  type BenchFound,
  baseForPh,
  benchFor,
  comesOf,
  curveFor,
  whichPhFor,
} from '../../ledger/before-treatment';
import { containerFigures, type NoBase } from '../../ledger/container-figures';
import type { State } from '../../ledger/state';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, printed } from '../../quantities/format';
import type { ReferenceId } from '../../reference/residual-tables';
import type { BaseId } from '../../reference/tables';
import type { Aim } from './pot-plot';
import { phText } from './pot-plot';
import type { Target } from './target';
import { treatmentWords as w } from './words';

const thin = '\u202f';

/** Why nothing can be planned; null where it can. */
export const whyNot = (state: State, containerId: string): NoBase | 'empty' | null => {
  const { noBase, load } = containerFigures(state, containerId);
  return noBase ?? (load ? null : 'empty');
};

export type Chosen = {
  readonly base: BaseId;
  readonly pH: number;
  readonly aim: Aim;
  readonly to: BaseTo | undefined;
  readonly comes: Outcome | undefined;
  readonly curve: DoseCurve | undefined;
  readonly bench: BenchFound | undefined;
  readonly which: WhichPh | undefined;
};

export type Choice = { readonly base: BaseId; readonly target: Target; readonly reference: ReferenceId };

export function chosenOf(
  state: State,
  containerId: string,
  { base, target: { pH, aim }, reference }: Choice,
): Chosen {
  const to = baseForPh(state, containerId, base, pH);
  const upTo = to?.ok ? to.needed.mass.high.toNumber() : 0;
  const curve = curveFor(state, containerId, base, upTo);
  return {
    base,
    pH,
    aim,
    to,
    comes: comesOf(state, containerId, base, pH),
    curve: curve?.ok ? curve.value : undefined,
    bench: benchFor(state, containerId, base),
    which: whichPhFor(state, containerId, base, reference),
  };
}

/** Where a base ends, and where stirring and air bring it afterwards. */
function endText({ pH, aired }: { readonly pH: number; readonly aired?: number }, sign: DecimalSign): string {
  const ends = w.endsAt(phText(pH, sign));
  return aired === undefined ? ends : `${ends}, ${w.aired(phText(aired, sign))}`;
}

/** Low, likely and high in one line; the pH at which a base ends; that it is not known yet. */
export function massText(to: BaseTo | undefined, sign: DecimalSign): string {
  if (!to) return w.comes;
  if (!to.ok) return to.why.code === 'stalls' ? endText(to.why, sign) : w.failed;
  const { low, high, value, unit } = printed(to.needed.mass, sign);
  if (to.needed.openIn.length > 0) return w.atLeast(`${value}${thin}${unit}`);
  return low === undefined || high === undefined
    ? `${value}${thin}${unit}`
    : w.spread(low, high, unit, `${value}${thin}${unit}`);
}

/** The rows of what comes of it, by the name that stands in the address of their working. */
export function comesRows(
  comes: Outcome,
): readonly (readonly [key: string, title: string, figure: Figure])[] {
  const rows: readonly (readonly [string, string, Figure | undefined])[] = [
    ['heat', w.heat, comes.warming?.heat],
    ['rise', w.rise, comes.warming?.rise],
    ['gas', w.gas, comes.carbonDioxide],
    ['dry', w.dry, comes.sludge?.dry],
    ['wet', w.wet, comes.sludge?.wet],
    ['filtrate', w.filtrate, comes.filtrate],
    ['nitrate', w.nitrate, comes.nitrate.mass],
    ['goes-on', w.goesOn[comes.goesOn.element], comes.goesOn.mass],
    ['ionic-strength', w.ionicStrength[comes.holds], comes.ionicStrength],
  ];
  return rows.flatMap(([key, title, figure]) => (figure ? [[key, title, figure] as const] : []));
}
