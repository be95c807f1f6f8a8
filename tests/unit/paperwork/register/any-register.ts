/** Registers of made-up records that go on for weeks, on two devices, with corrections, withdrawals and late entries. */
import fc from 'fast-check';
import type { Entry } from '../../../../src/ledger/entries/entry';
import { applyAll } from '../../../../src/ledger/fold';
import { hashOf } from '../../../../src/ledger/seal';
import { registerData } from '../../../../src/paperwork/register/gather-register';
import type { Days } from '../../../../src/paperwork/register/period';
import { type RegisterData, registerText } from '../../../../src/paperwork/register/register-data';
import { verifyFile } from '../../../../src/paperwork/register/verify-file';
import { anyRecord } from '../../ledger/any-record';
import { Scribe } from '../../ledger/scribe';

export const asked = (entries: readonly Entry[]) => ({
  state: applyAll(entries),
  now: '2026-12-01T09:00:00.000Z',
  zone: 'Europe/Paris',
  madeBy: 'Maren',
  sign: '.' as const,
  demo: false,
});

/** The same record, some hours between its entries; what is told late, is told days late. */
const stretched = (entries: readonly Entry[], hours: readonly number[], late: readonly number[]): Entry[] => {
  const scribes = new Map<string, Scribe>();
  return entries.map(({ device, body }, at) => {
    const letter = device.charAt(1);
    const scribe = scribes.get(letter) ?? new Scribe(letter);
    scribes.set(letter, scribe);
    const minutes = hours.slice(0, at + 1).reduce((sum, h) => sum + h * 60, 0);
    return scribe.write(body, minutes, minutes - (late[at] ?? 0) * 1440);
  });
};

const day = (n: number): string => new Date(Date.UTC(2026, 2, 1 + n)).toISOString().slice(0, 10);

type Case = { readonly entries: readonly Entry[]; readonly days: Days };

/** A record with at least one entry, and days that lie in it, around it or beside it. */
export const anyCase: fc.Arbitrary<Case> = fc
  .record({
    record: anyRecord.filter(({ length }) => length > 0),
    hours: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 30, maxLength: 30 }),
    late: fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.integer({ min: 1, max: 12 })), {
      minLength: 30,
      maxLength: 30,
    }),
    from: fc.integer({ min: -2, max: 25 }),
    length: fc.integer({ min: 0, max: 20 }),
  })
  .map(({ record, hours, late, from, length }) => ({
    entries: stretched(record, hours, late),
    days: { firstDay: day(from), lastDay: day(from + length) },
  }));

export const registerOf = ({ entries, days }: Case): RegisterData => registerData(days, asked(entries));

const noPdf = () => Promise.reject(new Error('no PDF here'));

export async function verdictOf(file: string | Uint8Array) {
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  const [checked] = await verifyFile('register.json', bytes, noPdf);
  if (!checked) throw new Error('nothing was checked');
  return checked.verdict;
}

/** What is wrong with it, the first first; null where it is whole. */
export async function wrongWith(file: string | Uint8Array) {
  const verdict = await verdictOf(file);
  if (verdict.whole === null) return { of: 'unreadable', ...verdict.why } as const;
  return verdict.whole ? null : verdict.wrong[0];
}

/** Changed by somebody who knows of the content hash and makes it fit again. */
export function forged(data: RegisterData, change: (copy: RegisterData) => void): string {
  const copy: RegisterData = JSON.parse(JSON.stringify(data));
  change(copy);
  const { contentHash: _, ...rest } = copy;
  return registerText({ ...copy, contentHash: hashOf(rest) });
}
