/** The account of the year in an address. */
import { useMemo } from 'preact/hooks';
import {
  knownYear,
  type MonthRow,
  type YearAccount,
  yearAccount,
  yearDays,
  yearsTold,
} from '../../ledger/year-account';
import { monthOf } from '../../rules/clocks/calendar-day';
import { useShell } from '../shell';
import { useLater } from '../treatment/use-worked-out';

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

/** Null where the address names no year that the record tells of; "later" while a long record is gone through. */
export function useYear(at: Readonly<Record<string, string>>): YearAt | 'later' | null {
  const { state, now, zone } = useShell();
  const record = state.value;
  const years = yearsTold(record, now.value, zone);
  const [latest = ''] = years;
  const year = at.year ?? latest;
  const told = years.includes(year);
  const days = useMemo(() => yearDays(year), [year]);
  const basis = useMemo(() => ({ record, days }), [record, days]);
  const later = useLater(() => (told ? yearAccount(record, days, zone) : undefined), basis);
  // What stood there before may be of another year.
  const before = later?.days.first === days.first ? later : undefined;
  const account = told ? (knownYear(record, days, zone) ?? before) : undefined;
  const month = monthOf(now.value, zone);
  const months = useMemo(() => (account?.months ?? []).filter((one) => one.month <= month), [account, month]);
  if (!told) return null;
  return account ? { year, years, account, months, running: year === latest } : 'later';
}
