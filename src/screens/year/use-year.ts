/** The account of the year in an address. */
import { useMemo } from 'preact/hooks';
import { type MonthRow, type YearAccount, yearAccount, yearDays, yearsTold } from '../../ledger/year-account';
import { monthOf } from '../../rules/clocks/calendar-day';
import { useShell } from '../shell';

export type YearAt = {
  readonly year: string;
  /** The latest first. */
  readonly years: readonly string[];
  readonly account: YearAccount;
  /** Those that have begun. */
  readonly months: readonly MonthRow[];
  /** It is not over. */
  readonly running: boolean;
};

/** Null where the address names no year that the record tells of. */
export function useYear(at: Readonly<Record<string, string>>): YearAt | null {
  const { state, now, zone } = useShell();
  const record = state.value;
  const [latest = ''] = yearsTold(record, now.value, zone);
  const years = useMemo(() => yearsTold(record, now.value, zone), [record, latest, zone]);
  const year = at.year ?? latest;
  const told = years.includes(year);
  const account = useMemo(
    () => (told ? yearAccount(record, yearDays(year), zone) : null),
    [record, year, zone, told],
  );
  const month = monthOf(now.value, zone);
  const months = useMemo(() => (account?.months ?? []).filter((one) => one.month <= month), [account, month]);
  return account && { year, years, account, months, running: year === latest };
}
