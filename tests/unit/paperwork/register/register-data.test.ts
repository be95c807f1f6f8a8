import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlainBody } from '../../../../src/ledger/entries/body';
import { applyAll } from '../../../../src/ledger/fold';
import { registerData } from '../../../../src/paperwork/register/gather-register';
import { registerText } from '../../../../src/paperwork/register/register-data';
import { begun, can, dose, id, litres, pour, Scribe, tip, wash } from '../../ledger/scribe';
import { anyCase, asked, registerOf, verdictOf } from './any-register';

const march = { firstDay: '2026-03-01', lastDay: '2026-03-31' };
const april = { firstDay: '2026-04-01', lastDay: '2026-04-30' };

/** Minutes after eight in the morning of 2 March 2026. */
const day = (n: number): number => n * 1440;
const [inApril, inMay] = [day(35), day(65)];

const handedOver = (n: number, container: number, agreed: string): PlainBody => ({
  kind: 'handed-over',
  v: 1,
  handOverId: id('40', n),
  collector: { name: 'Ostermill Waste', licence: 'L-77' },
  vehicle: 'OM 12 WX',
  document: 'CN-0042',
  containers: [{ containerId: id('c0', container), agreed: litres(agreed) }],
  signatures: {},
});

describe('the register of a period', () => {
  test('has a line for each entry that happened, was written or now counts in it, and for each later change', () => {
    fc.assert(
      fc.property(anyCase, (made) => {
        const data = registerOf(made);
        const { from, until } = data.period;
        const { history } = applyAll(made.entries);
        const within = history.flatMap(({ entry, at: counts }) =>
          [entry.happenedAt, entry.writtenAt, counts].some((at) => at >= from && at < until)
            ? [entry.id]
            : [],
        );
        const listed = data.lines.map((line) => line.id);
        expect(listed.filter((one) => within.includes(one))).toEqual(within);
        for (const { id: own } of data.lines.filter((line) => !within.includes(line.id))) {
          const body = made.entries.find((entry) => entry.id === own)?.body;
          const target =
            body?.kind === 'entry-corrected'
              ? body.corrects
              : body?.kind === 'entry-withdrawn'
                ? body.withdraws
                : '';
          expect(listed).toContain(target);
        }
        // Whatever changes a listed entry is listed too.
        for (const { changedBy } of data.lines)
          for (const { number } of changedBy) expect(data.lines.map((line) => line.number)).toContain(number);
        expect(data.counts.reduce((sum, { lines }) => sum + lines, 0)).toBe(data.lines.length);
      }),
      { numRuns: 150 },
    );
  });

  test('holds the entries of its lines whole, as they are stored', () => {
    fc.assert(
      fc.property(anyCase, (made) => {
        const data = JSON.parse(registerText(registerOf(made)));
        const { log } = applyAll(made.entries);
        for (const { number, entry } of data.entries) expect(entry).toEqual(log[number - 1]);
        const numbers = data.entries.map(({ number }: { number: number }) => number);
        for (const { number } of data.lines) expect(numbers).toContain(number);
      }),
      { numRuns: 100 },
    );
  });

  test('shows what was corrected and withdrawn after it, with what stood there before', async () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    const log = scribe.write(wash(1, '2.0'), day(1));
    const placed = scribe.write(pour(1, 1, '2.0'), day(1) + 1);
    for (let n = 2; n < 6; n += 1) scribe.write(wash(n, '1'), inApril + n);
    const corrected = scribe.write(
      { kind: 'entry-corrected', v: 1, corrects: log.id, body: wash(1, '1.5'), reason: 'misread' },
      inMay,
    );
    const withdrawn = scribe.write(
      { kind: 'entry-withdrawn', v: 1, withdraws: placed.id, reason: 'other can' },
      inMay + 1,
    );
    const data = registerData(march, asked(scribe.entries));
    expect(data.lines.map(({ number, standing }) => [number, standing])).toEqual([
      [1, 'as-written'],
      [2, 'corrected'],
      [3, 'withdrawn'],
      [8, 'as-written'],
      [9, 'as-written'],
    ]);
    const [, second, third, , last] = data.lines;
    expect(second).toMatchObject({
      amounts: [{ value: '2.0', unit: 'L' }],
      changedBy: [{ number: 8, how: 'corrected' }],
      now: {
        amounts: [{ value: '1.5', unit: 'L' }],
        changed: [{ of: 'liquid.volume', was: '2.0\u2009L', is: '1.5\u2009L' }],
      },
    });
    expect(third?.changedBy).toEqual([{ number: 9, how: 'withdrawn' }]);
    expect(last).toMatchObject({ changes: 3, says: 'withdrawal of: waste put in: other can' });
    // One of April stands beside the period in the chain, three more by their hash alone.
    expect(data.entries.map(({ number, why }) => [number, why])).toEqual([
      [1, 'period'],
      [2, 'period'],
      [3, 'period'],
      [4, 'chain'],
      [8, 'change'],
      [9, 'change'],
    ]);
    expect(data.links).toEqual([
      { device: log.device, first: 5, hashes: scribe.entries.slice(4, 7).map(({ hash }) => hash) },
    ]);
    expect(data.heads).toEqual([{ device: log.device, counter: 9, hash: withdrawn.hash }]);
    expect(corrected.hash).toBe(data.lines[3]?.hash);
    expect(await verdictOf(registerText(data))).toMatchObject({ whole: true, entries: 6, byHash: 3 });
  });

  test('shows what a correction of this period changed, though that lies before it', () => {
    const scribe = new Scribe();
    const log = scribe.write(wash(1, '2.0'));
    scribe.write(
      { kind: 'entry-corrected', v: 1, corrects: log.id, body: wash(1, '1.5'), reason: 'misread' },
      inApril,
    );
    const data = registerData(april, asked(scribe.entries));
    expect(data.lines.map(({ number, changes }) => [number, changes])).toEqual([[2, 1]]);
    expect(data.entries.map(({ why, entry }) => [why, entry.id])).toContainEqual(['changed', log.id]);
  });

  /*
   * By hand. March: 10 L logged, 6 L into C-01, 4 L into C-02. April: 2 L from C-01 to C-02, which then holds 6 L; lime into
   * C-01, which holds 4 L; C-02 leaves, 5.8 L as agreed. So at the end of April C-01 is here with 4 L, C-02 is not.
   */
  test('gives where the containers stood at both ends, and what arose, was treated and left between', () => {
    const scribe = new Scribe();
    scribe.write(can(1, '10'));
    scribe.write(can(2, '10'));
    scribe.write(wash(1, '10'));
    scribe.write(pour(1, 1, '6'));
    scribe.write(pour(1, 2, '4'));
    scribe.write(tip(1, 2, '2'), inApril);
    scribe.write(begun(1, 1), inApril + 10);
    scribe.write(dose(1, '30'), inApril + 11);
    scribe.write(handedOver(1, 2, '5.8'), inApril + 100);
    scribe.write(can(3), inMay);
    const plain = (text: string) => text.replaceAll('\u2009', ' ').replaceAll('\u2011', '-');
    const held = (at: 'opening' | 'closing') =>
      data[at].map(({ code, holds, wastes }) => [plain(code), plain(holds), ...wastes.map(plain)]);
    const data = registerData(april, asked(scribe.entries));
    expect(held('opening')).toEqual([
      ['C-01', '6.00 L', 'wash water'],
      ['C-02', '4.00 L', 'wash water'],
    ]);
    expect(held('closing')).toEqual([['C-01', '4.00 L', 'wash water']]);
    expect(
      data.waste.map((line) => [
        line.event,
        plain(line.quantity),
        plain(line.destination),
        plain(line.method),
      ]),
    ).toEqual([
      ['treated', '4.00 L', 'C-01', 'hydrated lime 30 g'],
      ['left', '6.00 L by the record, 5.8 L as agreed', 'Ostermill Waste, licence L-77', 'not determined'],
    ]);
    expect(data.waste[1]).toMatchObject({ mode: 'OM 12 WX', document: 'CN-0042', day: '2026-04-06' });
    expect(
      registerData(march, asked(scribe.entries)).waste.map((line) => [
        line.event,
        plain(line.quantity),
        plain(line.destination),
      ]),
    ).toEqual([['arose', '10 L', 'C-01, C-02']]);
    expect(data.counts.find(({ group }) => group === 'hand-overs')?.lines).toBe(1);
    expect(data.counts.find(({ group }) => group === 'treatments')?.lines).toBe(2);
  });

  test('says how much waste left nobody knows where to', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write({ kind: 'container-marked', v: 1, containerId: id('c0', 1), mark: 'gone' }, 5);
    const data = registerData(march, asked(scribe.entries));
    expect(data.waste).toMatchObject([
      { event: 'left', destination: 'not determined', document: 'not determined' },
    ]);
    expect(data.notDetermined).toContain('Where waste of 1 entry went: not said.');
  });

  test('tells of a device that wrote nothing in the period, so that nobody can leave one out', () => {
    const [a, b] = [new Scribe('a'), new Scribe('b')];
    a.write(can(1));
    a.write(can(2), inApril);
    b.write(can(3), day(3));
    b.write(can(4), inMay);
    const data = registerData(april, asked([...a.entries, ...b.entries]));
    expect(data.lines).toHaveLength(1);
    expect(
      data.entries.filter(({ entry }) => entry.device === b.entries[0]?.device).map(({ why }) => why),
    ).toEqual(['chain', 'chain']);
  });
});
