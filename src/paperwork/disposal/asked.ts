/** What a disposal paper is asked for. Time, zone and names are given: nothing here reads a clock. */
import type { Amount } from '../../ledger/entries/containers';
import type { Signature } from '../../ledger/entries/signatures';
import type { Held, State } from '../../ledger/state';
import { type DecimalSign, formatNumber, formatWritten } from '../../quantities/format';

export type Asked = {
  readonly state: State;
  /** UTC with milliseconds. */
  readonly now: string;
  readonly zone: string;
  /** Name of the person who makes it; null when nobody said who. */
  readonly madeBy: string | null;
  readonly sign: DecimalSign;
  readonly demo: boolean;
};

/** What a set of disposal papers is asked for besides. */
export type SetAsked = Asked & {
  /** Where the book stands, for the pattern of each label; without it a sheet has none. */
  readonly appAddress?: string | undefined;
  /** Under the statement of the generator; null where a pen will sign it. */
  readonly signature?: Signature | null;
};

const thin = '\u2009';

export const amountText = (amount: Amount, sign: DecimalSign): string =>
  `${formatWritten(amount, sign)}${thin}${amount.unit}`;

export const massText = (mass: Held['mass'], sign: DecimalSign): string =>
  `${formatNumber(mass, 0, sign)}${thin}g`;

/** What is held by the ledger: "6.70 L", "6.70 L, 820 g". */
export function heldText({ volume, mass }: Held, sign: DecimalSign): string {
  const litres = `${formatNumber(volume, 2, sign)}${thin}L`;
  if (mass.isZero()) return litres;
  return volume.isZero() ? massText(mass, sign) : `${litres}, ${massText(mass, sign)}`;
}
