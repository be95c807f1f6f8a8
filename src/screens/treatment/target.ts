/** The pH that is proposed, and the one that is aimed at. */
import { usualReference } from '../../chemistry/treatment/limits';
import type { PhWindow } from '../../chemistry/treatment/which-ph';
import { proposedFor } from '../../ledger/before-treatment';
import type { State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import type { ReferenceId } from '../../reference/residual-tables';
import type { FieldRead } from '../form';
import { type Aim, aimText } from './pot-plot';
import { treatmentWords as w } from './words';

/** Where no pH stands out: the usual one of the trade for copper and nickel. */
const usualPh = 9;

export type Proposed = {
  readonly pH: number;
  /** Absent where no window was found. */
  readonly window?: PhWindow | undefined;
};

/** @param reference held against where there are no local limits */
export function proposal(
  state: State,
  containerId: string,
  reference: ReferenceId = usualReference,
): Proposed {
  const window = proposedFor(state, containerId, reference);
  return { pH: window?.best ?? usualPh, window };
}

export type Target = { readonly pH: number; readonly aim: Aim };

/** What was typed; else the proposal with its window. */
export function targetOf(read: FieldRead<'1'>, { pH, window }: Proposed): Target {
  if (read.state !== 'written') return { pH, aim: window ?? { low: pH, high: pH } };
  const typed = Number(read.written.value);
  return { pH: typed, aim: { low: typed, high: typed } };
}

/** What stands under the field while it is empty. */
export function targetHint({ pH, window }: Proposed, sign: DecimalSign): string {
  const text = aimText(pH, sign);
  return window ? w.targetEmptyLeast(text) : w.targetEmpty(text);
}
