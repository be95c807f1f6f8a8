/** The account of a year: its balances over any year of a shelf, and one year that was worked by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll } from '../../../src/ledger/fold';
import type { State } from '../../../src/ledger/state';
import { type YearAccount, yearAccount, yearsTold } from '../../../src/ledger/year-account';
import type { Accounted, Balance, BalanceLineName } from '../../../src/ledger/year-balance';
import type { Days } from '../../../src/ledger/year-days';
import { anyLife } from './any-life';
import { anyRecord } from './any-record';
import { anyYear } from './any-year';
import { batch, liquid, rule, shelf } from './dated';
import { handOver, handYear, minutesAt, withCopper } from './hand-year';
import { begun, dose, id, potRead, pour, Scribe, tip } from './scribe';

const all: Days = { first: '2026-01-01', last: '2026-12-31' };
const [firstHalf, secondHalf]: [Days, Days] = [
  { first: '2026-01-01', last: '2026-03-02' },
  { first: '2026-03-03', last: '2026-12-31' },
];
/** Minutes ahead of UTC that let midnight fall so many minutes after eight in the morning of 2 March. */
const midnightAt = (minutes: number): string => `+${960 - minutes}`;

type Sum = { readonly value: { toNumber(): number } };
const num = (figure: Sum | undefined): number => figure?.value.toNumber() ?? 0;

const linesOf = ({ ins, outs }: Balance) => [...ins, ...outs];
const line = ({ balances }: YearAccount, of: Accounted, name: BalanceLineName): number => {
  const balance = balances.find((one) => one.of === of);
  return num(balance && linesOf(balance).find((one) => one.line === name)?.sum);
};

/** What halves must add up to: what came back takes off what left, and what was measured after off what was treated. */
const flowsAdded = (account: YearAccount, of: Accounted) => ({
  arose: line(account, of, 'arose'),
  determined: line(account, of, 'determined'),
  left: line(account, of, 'handed-over') + line(account, of, 'gone') - line(account, of, 'came-back'),
  treated: line(account, of, 'treated') - line(account, of, 'measured-after'),
  sample: line(account, of, 'sample'),
  spill: line(account, of, 'spill'),
  replaced: line(account, of, 'replaced'),
});

const runs = { numRuns: 25 };
const midnight = fc.integer({ min: 0, max: 40 });

describe('the account of any year', () => {
  it('closes to the last digit where everything is told, over any days', () => {
    fc.assert(
      fc.property(anyYear, midnight, (entries, minutes) => {
        const state = applyAll(entries);
        for (const days of [all, firstHalf, secondHalf])
          for (const { off, verdict, gaps } of yearAccount(state, days, midnightAt(minutes)).balances)
            if (gaps.length === 0) {
              expect(Math.abs(num(off))).toBeLessThan(1e-6);
              expect(verdict).toBe('closes');
            }
      }),
      runs,
    );
  });

  it('is the sum of its two halves, and its months add up', () => {
    fc.assert(
      fc.property(anyYear, midnight, (entries, minutes) => {
        const state = applyAll(entries);
        const of = (days: Days) => yearAccount(state, days, midnightAt(minutes));
        const [year, first, second] = [of(all), of(firstHalf), of(secondHalf)];
        for (const substance of ['Cu', 'acid'] as const) {
          const [a, b] = [flowsAdded(first, substance), flowsAdded(second, substance)];
          for (const [name, value] of Object.entries(flowsAdded(year, substance)))
            expect(a[name as keyof typeof a] + b[name as keyof typeof b]).toBeCloseTo(value, 6);
          expect(line(first, substance, 'end')).toBeCloseTo(line(second, substance, 'start'), 6);
          expect(line(year, substance, 'end')).toBeCloseTo(line(second, substance, 'end'), 6);
        }
        const months = year.months.reduce((sum, { mass }) => sum + num(mass.sum), 0);
        expect(months).toBeCloseTo(num(year.arose.sum), 9);
        expect(num(first.arose.sum) + num(second.arose.sum)).toBeCloseTo(num(year.arose.sum), 9);
        const kinds = year.kinds.reduce((sum, { mass }) => sum + num(mass.sum), 0);
        expect(kinds).toBeCloseTo(num(year.arose.sum), 9);
      }),
      runs,
    );
  });

  it('does not depend on the order in which entries arrive', () => {
    fc.assert(
      fc.property(anyYear, fc.infiniteStream(fc.nat(1000)), (entries, numbers) => {
        const shuffled = entries
          .map((entry): readonly [number, Entry] => [numbers.next().value ?? 0, entry])
          .sort(([a], [b]) => a - b)
          .map(([, entry]) => entry);
        const of = (state: State) => {
          const { balances, months } = yearAccount(state, all, '+0');
          const values = balances.flatMap(linesOf).map((one) => [one.line, num(one.sum)]);
          return [values, months.map(({ mass }) => num(mass.sum))];
        };
        expect(of(applyAll(shuffled))).toEqual(of(applyAll(entries)));
      }),
      { numRuns: 15 },
    );
  });

  it('has nothing below nothing on either side, whatever was written', () => {
    fc.assert(
      fc.property(fc.oneof(anyLife, anyRecord), (entries) => {
        const { balances, arose, kinds, months } = yearAccount(applyAll(entries), all, '+0');
        for (const { parts } of balances.flatMap(linesOf))
          for (const { figure } of parts) expect(num(figure)).toBeGreaterThanOrEqual(-1e-9);
        for (const { sum } of [arose, ...kinds.map(({ mass }) => mass), ...months.map(({ mass }) => mass)])
          expect(num(sum)).toBeGreaterThanOrEqual(0);
      }),
      runs,
    );
  });
});

const year: Days = { first: '2028-01-01', last: '2028-12-31' };

describe('a year worked by hand', () => {
  const state = handYear();
  const account = yearAccount(state, year, 'Europe/Berlin');
  const copper = account.balances.find(({ of }) => of === 'Cu');

  it('has the copper at the start as it was corrected later, and closes', () => {
    const expected: readonly (readonly [BalanceLineName, number])[] = [
      ['start', 60],
      ['arose', 50],
      ['treated', 37.35],
      ['handed-over', 70],
      ['sample', 2.5],
      ['end', 0.15],
    ];
    expect(copper && linesOf(copper).map((one) => [one.line, num(one.sum)])).toEqual(
      expected.map(([name, value]) => [name, expect.closeTo(value, 9)]),
    );
    expect([num(copper?.sumIn), num(copper?.sumOut), num(copper?.off)]).toEqual([
      expect.closeTo(110, 9),
      expect.closeTo(110, 9),
      0,
    ]);
    expect([copper?.verdict, copper?.gaps]).toEqual([
      'closes',
      [{ why: 'held', of: { of: 'stream', id: id('50', 4) } }],
    ]);
  });

  it('gives the range of what arose, and cancels what both sides rest on', () => {
    const arose = copper?.ins.find((one) => one.line === 'arose')?.sum;
    expect(arose?.low.toNumber()).toBeCloseTo(50 - 2.915, 3);
    expect(arose?.high.toNumber()).toBeCloseTo(50 + 2.915, 3);
    expect([copper?.off?.low.toNumber(), copper?.off?.high.toNumber()]).toEqual([0, 0]);
  });

  it('has the masses of its months and of what left, the rejected load once', () => {
    const months = account.months.map(({ month, mass }) => [month, num(mass.sum)]);
    expect(months.filter(([, kg]) => kg !== 0)).toEqual([
      ['2028-02', expect.closeTo(20, 9)],
      ['2028-03', expect.closeTo(8.8, 9)],
    ]);
    expect(months).toHaveLength(12);
    expect(num(account.arose.sum)).toBeCloseTo(28.8, 9);
    expect(num(account.heldAtStart.sum)).toBeCloseTo(11, 9);
    expect(num(account.handedOver.sum)).toBeCloseTo(31, 9);
    expect(account.went.loads.map(({ parts }) => parts.map(({ counts }) => counts))).toEqual([
      [false],
      [true, true],
    ]);
    expect(account.besides.map(({ as, mass }) => [as, num(mass.sum)])).toEqual([['left-of-treating', 1.5]]);
  });

  it('has copper and waste for a gram of silver', () => {
    expect(account.silver.each.map(({ what, ratio }) => [what, num(ratio)])).toEqual([
      ['Cu', expect.closeTo(1, 9)],
      ['Ni', 0],
      ['waste', expect.closeTo(220, 9)],
    ]);
    expect(account.silver.each.find(({ what }) => what === 'Ni')?.openIn).toEqual([id('50', 3)]);
    // Where nobody weighed silver there is no such number.
    const next = yearAccount(state, { first: '2029-01-01', last: '2029-12-31' }, 'Europe/Berlin');
    expect(next.silver.each.every(({ ratio }) => ratio === undefined)).toBe(true);
  });

  it('counts the turn of the year where the workshop is', () => {
    expect(account.wastes.map(({ streamId }) => streamId)).not.toContain(id('50', 5));
    const overseas = yearAccount(state, year, 'America/New_York');
    expect(overseas.wastes.map(({ streamId }) => streamId)).toContain(id('50', 5));
  });

  it('names what does not tell, and what nobody knows', () => {
    const untold = new Scribe();
    for (const body of [
      ...shelf(2),
      withCopper([1, '2.0', '1.000', 'wash-water'], '1.0'),
      liquid(2, '1.0', '1.000'),
    ])
      untold.write(body);
    untold.write(pour(2, 1, '1.0'));
    untold.write({
      kind: 'container-marked',
      v: 1,
      containerId: id('c0', 2),
      mark: 'contents-doubtful',
      doubt: 'found',
    });
    const { balances, toldNowhere, found } = yearAccount(untold.state, all, '+0');
    expect(balances.map(({ of, gaps }) => [of, gaps])).toEqual([
      [
        'Cu',
        [
          { why: 'not-told', of: { of: 'stream', id: id('50', 2) } },
          { why: 'unknown', of: { of: 'container', id: id('c0', 2) } },
        ],
      ],
    ]);
    expect(toldNowhere).toContain('Ni');
    expect(found).toEqual([id('c0', 2)]);
  });

  it('has what was measured in a pot after the year in which it was treated as coming in', () => {
    const scribe = new Scribe();
    for (const body of [...shelf(1), withCopper([1, '2.0', '1.000', 'wash-water'], '3.0'), pour(1, 1, '2.0')])
      scribe.write(body, 0);
    scribe.write(begun(1, 1), 1);
    scribe.write(dose(1, '20'), 2);
    const findings = [
      {
        by: 'photometer',
        metal: 'Cu',
        concentration: { value: '0.5', unit: 'g/L' },
        reference: 'x',
      } as const,
    ];
    const nextYear = minutesAt('2027-01-04T08:00:00.000Z');
    scribe.write(potRead(1, '9', { findings }), nextYear);
    const of = (days: Days) => flowsAdded(yearAccount(scribe.state, days, '+0'), 'Cu').treated;
    expect(of(all)).toBeCloseTo(6, 9);
    const next = yearAccount(scribe.state, { first: '2027-01-01', last: '2027-12-31' }, '+0');
    expect([
      line(next, 'Cu', 'measured-after'),
      line(next, 'Cu', 'treated'),
      line(next, 'Cu', 'end'),
    ]).toEqual([expect.closeTo(1, 9), 0, expect.closeTo(1, 9)]);
  });

  it('says by how much it is off where more was put in than was logged', () => {
    const over = new Scribe();
    for (const body of [...shelf(2), withCopper([1, '2.0', '1.000', 'wash-water'], '1.0')]) over.write(body);
    over.write(pour(1, 1, '2.0'));
    over.write(pour(1, 2, '1.0'));
    const { balances, overPlaced } = yearAccount(over.state, all, '+0');
    const [copper] = balances;
    expect([num(copper?.off), copper?.verdict]).toEqual([expect.closeTo(-1, 9), 'more-out']);
    expect(overPlaced).toEqual([id('50', 1)]);
  });

  it('counts a determined waste for what the record held before, and what was found once', () => {
    const scribe = new Scribe();
    for (const body of [...shelf(2), withCopper([1, '2.0', '1.000', 'wash-water'], '1.0'), pour(1, 1, '2.0')])
      scribe.write(body);
    const determine = (n: number, can: number) => {
      scribe.write(withCopper([n, '2.0', '1.000', 'wash-water'], '3.0'));
      scribe.write({
        kind: 'contents-determined',
        v: 1,
        containerId: id('c0', can),
        streamId: id('50', n),
        how: 'tests',
        saidBy: 'Maren',
      });
    };
    determine(2, 1);
    determine(3, 2);
    const told = yearAccount(scribe.state, all, '+0');
    // 2.0 logged and 2.0 found; what replaced the first is told of beside it.
    expect(num(told.arose.sum)).toBeCloseTo(4, 9);
    expect(told.besides.map(({ as, mass }) => [as, num(mass.sum)])).toEqual([
      ['determined', expect.closeTo(2, 9)],
    ]);
    expect([line(told, 'Cu', 'determined'), line(told, 'Cu', 'replaced'), line(told, 'Cu', 'end')]).toEqual([
      expect.closeTo(6, 9),
      expect.closeTo(2, 9),
      expect.closeTo(12, 9),
    ]);
  });
});

describe('what was handed over by codes', () => {
  it('has somebody’s word before what the rules propose, with who took it where', () => {
    const scribe = new Scribe();
    for (const body of [
      ...shelf(1),
      withCopper([1, '8.0', '1.100', 'barren-liquor'], '5.0'),
      pour(1, 1, '8.0'),
    ])
      scribe.write(body);
    scribe.write(rule({ rule: 'laws', value: ['eu'] }));
    scribe.write({
      kind: 'candidate-answered',
      v: 1,
      containerId: id('c0', 1),
      scheme: 'waste-list',
      code: '11 01 05*',
      answer: 'accepted',
      saidBy: 'Fen Carriers',
      saidOn: '2026-03-02',
    });
    scribe.write(handOver(1, 1));
    const { codes } = yearAccount(scribe.state, all, '+0');
    expect(codes.map(({ mass, ...row }) => [row, num(mass.sum)])).toEqual([
      [
        {
          scheme: 'waste-list',
          code: '11 01 05*',
          standing: 'accepted',
          collector: 'Fen Carriers',
          destination: 'Salt Quay works',
          containerIds: [id('c0', 1)],
        },
        expect.closeTo(8.8, 9),
      ],
    ]);
  });

  const answer = (code: string, as: 'accepted' | 'refused'): PlainBody => ({
    kind: 'candidate-answered',
    v: 1,
    containerId: id('c0', 1),
    scheme: 'rcra',
    code,
    answer: as,
    saidBy: 'Fen Carriers',
    saidOn: '2026-03-02',
  });
  const back: PlainBody = {
    kind: 'load-rejected',
    v: 1,
    handOverId: id('40', 1),
    containerIds: [id('c0', 1)],
    why: 'no room',
  };
  const wash2 = [withCopper([2, '1.0', '1.000', 'wash-water'], '0.1'), pour(2, 1, '1.0')];
  /** Codes with their standing under which the can left; 8 L of liquor of so much nitric acid that D002 fires. */
  const codesAfter = (...bodies: readonly (PlainBody | readonly [nextYear: PlainBody])[]) => {
    const scribe = new Scribe();
    const liquor = withCopper([1, '8.0', '1.100', 'barren-liquor'], '5.0');
    if (liquor.kind !== 'stream-logged' || !liquor.liquid) throw new Error('no liquor');
    const freeAcid = [{ by: 'titration', result: { value: '2', unit: 'mol/L' } } as const];
    const acid = { ...liquor, liquid: { ...liquor.liquid, freeAcid } };
    for (const body of [rule({ rule: 'laws', value: ['us-federal'] }), ...shelf(1), acid, pour(1, 1, '8.0')])
      scribe.write(body);
    for (const body of bodies)
      if ('kind' in body) scribe.write(body);
      else scribe.write(body[0], 400 * 24 * 60);
    return yearAccount(scribe.state, all, '+0').codes.map(({ code, standing }) => [code, standing]);
  };

  it('has what fires while nobody said a word, less what somebody refused', () => {
    expect(codesAfter(handOver(1, 1))).toContainEqual(['D002', 'candidate']);
    const refused = codesAfter(answer('D002', 'refused'), handOver(1, 1));
    expect(refused.map(([code]) => code)).not.toContain('D002');
  });

  it('has none of a load that came back, and once more of the one it left with then', () => {
    expect(codesAfter(handOver(1, 1), back)).toEqual([]);
    expect(codesAfter(answer('D002', 'accepted'), handOver(1, 1), back, handOver(2, 1))).toEqual([
      ['D002', 'accepted'],
    ]);
  });

  it('has no code of what left before something else went into the same container', () => {
    expect(codesAfter(handOver(1, 1))).toContainEqual(['D002', 'candidate']);
    // It fires for what is in it now all the same: that is not what left.
    expect(codesAfter(handOver(1, 1), ...[back, ...wash2].map((body) => [body] as const))).toEqual([
      [null, 'open'],
    ]);
  });
});

describe('a load that came back within the year', () => {
  it('has left and come in where something was taken out of it on its way, and nowhere else', () => {
    const of = (...between: readonly PlainBody[]) => {
      const scribe = new Scribe();
      for (const body of [
        ...shelf(1),
        withCopper([1, '8.0', '1.100', 'barren-liquor'], '5.0'),
        pour(1, 1, '8.0'),
        handOver(1, 1),
        ...between,
      ])
        scribe.write(body);
      scribe.write({
        kind: 'load-rejected',
        v: 1,
        handOverId: id('40', 1),
        containerIds: [id('c0', 1)],
        why: 'no room',
      });
      const account = yearAccount(scribe.state, all, '+0');
      return (['handed-over', 'came-back', 'end'] as const).map((name) => line(account, 'Cu', name));
    };
    expect(of()).toEqual([0, 0, expect.closeTo(40, 9)]);
    // 5.0 g/L: 2 L of 8 stayed with the collector.
    expect(of(tip(1, null, '2.0'))).toEqual([
      expect.closeTo(40, 9),
      expect.closeTo(30, 9),
      expect.closeTo(30, 9),
    ]);
  });
});

describe('the years that a record tells of', () => {
  it('begin where the workshop is: an evening in New York is of the old year', () => {
    const scribe = new Scribe();
    scribe.write(batch(1), minutesAt('2026-01-01T03:00:00.000Z'));
    const told = (zone: string) => yearsTold(scribe.state, '2026-05-01T00:00:00.000Z', zone);
    expect(told('America/New_York')).toEqual(['2026', '2025']);
    expect(told('Europe/Berlin')).toEqual(['2026']);
  });
});
