/** What is due and what presses: in which order, told from when on, and counted from where. */
import { describe, expect, it } from 'vitest';
import { dues } from '../../../src/ledger/due';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { onSite } from '../../../src/ledger/generation';
import { nearWork } from '../../../src/ledger/near-work';
import { countingDue, dueNow, pressing, rankOf } from '../../../src/ledger/pressing';
import { monthHeld, onSiteNow } from '../../../src/ledger/quantities-now';
import type { State } from '../../../src/ledger/state';
import { withoutLimit } from '../../../src/ledger/without-limit';
import {
  area,
  batch,
  containerId,
  days,
  liquid,
  mark,
  recorded,
  rule,
  saidOf,
  shelf,
  solid,
  walked,
} from './dated';
import { begun, dose, id, pour, tip, treatmentEnd } from './scribe';

const berlin = 'Europe/Berlin';
const noon = (day: string): string => `${day}T11:00:00.000Z`;

/** Three cans filled on three days, with 90 days to stand, and one that left on the first day. */
const shelfOfThree = (...more: readonly (readonly [string, ...PlainBody[]])[]): State =>
  recorded(
    [noon('2028-01-01'), ...shelf(4), days('storage-days', '90'), days('proof-days', '45')],
    [noon('2028-01-02'), liquid(1, '40', '1.000'), pour(1, 2, '10'), mark(4, 'gone')],
    [noon('2028-01-12'), pour(1, 1, '10')],
    [noon('2028-01-22'), pour(1, 3, '10')],
    ...more,
  );

const codesOf = (state: State, day: string): string[] =>
  dues(state, noon(day), berlin).map(({ kind, containerId: one }) =>
    [kind, state.containers.get(one ?? '')?.body.code].filter(Boolean).join(' '),
  );

describe('what is due', () => {
  it('stands in the order of its careful last days', () => {
    // Walk: 2 Jan + 7. C-04, proof: 2 Jan + 45 − 1 = 15 Feb. C-02: 2 Jan + 90 − 1 = 31 Mar; C-01 and C-03 10 and 20 days later.
    expect(codesOf(shelfOfThree(), '2028-01-25')).toEqual([
      'walk',
      'proof C-04',
      'leave C-02',
      'leave C-01',
      'leave C-03',
    ]);
  });

  it('keeps its id while days pass, however full the container becomes', () => {
    const ids = (state: State, day: string) =>
      dues(state, noon(day), berlin)
        .filter(({ kind }) => kind === 'leave')
        .map((due) => due.id);
    const before = ids(shelfOfThree(), '2028-01-25');
    const after = ids(shelfOfThree([noon('2028-02-01'), pour(1, 2, '5')]), '2028-03-25');
    expect(after).toEqual(before);
  });

  it('is none of what is empty, gone, or has its proof', () => {
    const state = shelfOfThree([
      noon('2028-02-01'),
      tip(2, null, '10'),
      mark(1, 'gone'),
      mark(1, 'proof-filed', { document: 'P-1' }),
      mark(4, 'proof-filed', { document: 'P-2' }),
      ...walked(1, 3),
    ]);
    expect(codesOf(state, '2028-02-02')).toEqual(['walk', 'leave C-03']);
  });

  it('is told of before its end: a proof a week, a walk a day, storage thirty days', () => {
    const near = (day: string) =>
      dues(shelfOfThree([noon('2028-01-31'), ...walked(1, 1, 2, 3)]), noon(day), berlin)
        .filter((due) => due.near)
        .map(({ id: due }) => due);
    const [walk, proof, leave] = ['walk', `proof/${containerId(4)}`, `leave/${containerId(2)}`];
    // Walk: 31 Jan + 7 = 7 Feb. Proof: 15 Feb. C-02: 31 Mar, thirty days before is 1 Mar.
    expect(near('2028-02-05')).toEqual([]);
    expect(near('2028-02-06')).toEqual([walk]);
    expect(near('2028-02-08')).toEqual([walk, proof]);
    expect(near('2028-02-29')).toEqual([walk, proof]);
    expect(near('2028-03-01')).toEqual([walk, proof, leave]);
  });

  it('says what the last walk could not see, at once and by itself', () => {
    const missed = walked(1, 1, 2).map((body) =>
      body.kind === 'walk-finished'
        ? { ...body, notSeen: [{ containerId: containerId(3), why: 'behind others' }] }
        : body,
    );
    const state = shelfOfThree([noon('2028-01-31'), ...missed]);
    const looks = dues(state, noon('2028-02-01'), berlin).filter(({ kind }) => kind === 'look');
    // First waste on 22 January, + 7.
    expect(looks).toMatchObject([{ id: `look/${containerId(3)}`, day: '2028-01-29', near: true }]);
  });
});

describe('where no limit was entered', () => {
  const bare = recorded(
    [noon('2028-01-01'), ...shelf(3)],
    [noon('2028-01-02'), liquid(1, '40', '1.000'), pour(1, 1, '10')],
    [noon('2028-01-12'), pour(1, 2, '10'), mark(3, 'gone')],
  );

  it('days are counted up, the longest first, with the strictest of the laws beside and nothing called in time', () => {
    // From 2 January: 29 to the end of the month, 12 more. 40 CFR 262.17: 90 days. 40 CFR 262.42: 45 days.
    expect(withoutLimit(bare, noon('2028-02-12'), berlin)).toMatchObject([
      { kind: 'leave', containerId: containerId(1), days: 41, reference: { value: '90', unit: 'days' } },
      { kind: 'leave', containerId: containerId(2), days: 31 },
      { kind: 'proof', containerId: containerId(3), days: 31, reference: { value: '45' } },
    ]);
    expect(dues(bare, noon('2028-02-12'), berlin).map(({ kind }) => kind)).toEqual(['walk']);
  });

  it('compares with the laws that hold here alone', () => {
    const here = (...value: ('us-california' | 'eu')[]) =>
      withoutLimit(
        recorded(
          [noon('2028-01-01'), ...shelf(1), rule({ rule: 'laws', value })],
          [noon('2028-01-02'), liquid(1, '10', '1.000'), pour(1, 1, '10')],
        ),
        noon('2028-02-12'),
        berlin,
      )[0]?.reference?.value;
    expect([here('us-california'), here('eu'), here('eu', 'us-california')]).toEqual(['90', '365', '90']);
  });

  it('a proof that came is awaited no more', () => {
    const filed = recorded(
      [noon('2028-01-01'), ...shelf(1)],
      [noon('2028-01-12'), mark(1, 'gone')],
      [noon('2028-01-20'), mark(1, 'proof-filed')],
    );
    expect(withoutLimit(filed, noon('2028-02-12'), berlin)).toEqual([]);
  });

  it('ends with the limit', () => {
    expect(withoutLimit(shelfOfThree(), noon('2028-02-12'), berlin)).toEqual([]);
  });
});

describe('beside the work', () => {
  const known = [
    days('near-work-days', '3'),
    rule({ rule: 'near-work-limit', value: { value: '20', unit: 'L' } }),
  ] as const;

  it('counts the level of what nobody knows, and the days run from when it was read', () => {
    const level: PlainBody = {
      kind: 'level-read',
      v: 1,
      containerId: containerId(1),
      level: { value: '25', unit: 'L' },
    };
    const state = recorded(
      [noon('2028-01-01'), ...shelf(1), ...known, area(1, 'near-work')],
      [noon('2028-01-02'), mark(1, 'contents-doubtful', { doubt: 'found' })],
      [noon('2028-01-03'), level],
    );
    const excess = dues(state, noon('2028-01-03'), berlin).find(({ kind }) => kind === 'move-excess');
    expect(excess).toMatchObject({ from: '2028-01-03', day: '2028-01-05', lastDay: '2028-01-06' });
  });

  it('counts a level on one that is empty by the record, and no level from before all of it went out', () => {
    const level: PlainBody = {
      kind: 'level-read',
      v: 1,
      containerId: containerId(1),
      level: { value: '25', unit: 'L' },
    };
    const read = [
      [noon('2028-01-01'), ...shelf(1), ...known, area(1, 'near-work')],
      [noon('2028-01-03'), level],
    ] as const;
    const excessOf = (state: State) =>
      dues(state, noon('2028-01-05'), berlin).find(({ kind }) => kind === 'move-excess');
    expect(excessOf(recorded(...read))?.from).toBe('2028-01-03');
    expect(excessOf(recorded(...read, [noon('2028-01-04'), tip(1, null, '25')]))).toBeUndefined();
  });

  it('adds up what stands there, each by its own reading, and no more of what was brought to the store', () => {
    const state = recorded(
      [noon('2028-01-01'), ...shelf(3), ...known, area(1, 'near-work'), area(2, 'near-work')],
      [noon('2028-01-02'), liquid(1, '60', '1.000'), pour(1, 1, '3'), pour(1, 2, '4'), pour(1, 3, '20')],
    );
    const now = (one: State) => nearWork(one, noon('2028-01-05'), berlin)?.now?.volume;
    const level = now(state);
    expect(level?.inputs.map(({ value }) => value.toNumber())).toEqual([3, 4]);
    // Each to 5 %, apart from the other: 7 ± √(0.15² + 0.20²) = 7 ± 0.25.
    expect([level?.value, level?.low, level?.high].map(Number)).toEqual([7, 6.75, 7.25]);
    const moved = recorded(
      [noon('2028-01-01'), ...shelf(3), ...known, area(1, 'near-work'), area(2, 'near-work')],
      [noon('2028-01-02'), liquid(1, '60', '1.000'), pour(1, 1, '3'), pour(1, 2, '4')],
      [noon('2028-01-04'), area(2, 'store')],
    );
    expect(now(moved)?.value.toNumber()).toBe(3);
  });

  it('gives no days while nobody has said how many: due on the day itself, and not before it', () => {
    const state = recorded(
      [noon('2028-01-01'), ...shelf(1), known[1], area(1, 'near-work')],
      [noon('2028-01-03'), liquid(1, '30', '1.000'), pour(1, 1, '30')],
    );
    const excess = dues(state, noon('2028-01-03'), berlin).find(({ kind }) => kind === 'move-excess');
    expect(excess).toMatchObject({ day: '2028-01-03', lastDay: '2028-01-03', daysLeft: 0, shareLeft: 0 });
    expect(excess?.limit).toEqual({ days: 0, rule: 'near-work-days', stated: false });
  });
});

const monthLimit = (value: string) => rule({ rule: 'month-limit', value: { value, unit: 'kg' } });
const siteLimit = (value: string) => rule({ rule: 'on-site-limit', value: { value, unit: 'kg' } });

describe('what presses', () => {
  const ranksOf = (state: State, day: string) =>
    pressing(state, noon(day), berlin)
      .filter((one) => rankOf(one) !== 'know')
      .map((one) => [
        rankOf(one),
        one.what === 'flag' ? one.flag.code : one.what === 'due' ? one.due.kind : one.amount.of,
      ]);

  it('is in order: who may get hurt, what is over, what is due today, what is wrong, what is near', () => {
    const state = shelfOfThree(
      // 60 L are its limit; 9 in 10 of it hold.
      [noon('2028-01-23'), liquid(2, '60', '1.000'), pour(2, 1, '48'), monthLimit('100.0')],
      [noon('2028-03-24'), ...walked(1, 1, 2, 3)],
    );
    // On 31 March the walk (24 + 7) and C-02 are due; C-01 on 10 April, C-03 on 20 April; the proof was on 15 February.
    expect(ranksOf(state, '2028-03-31')).toEqual([
      ['hurt', 'over-fill-limit'],
      ['over', 'proof'],
      ['today', 'walk'],
      ['today', 'leave'],
      ['wrong', 'stream-not-placed'],
      ['wrong', 'stream-not-placed'],
      ['near', 'leave'],
      ['near', 'leave'],
    ]);
  });

  it('holds the month and the site against own limits alone, and is quiet well under them', () => {
    const month = (limit: string, mass = '80000') => {
      const lines = [noon('2028-01-02'), solid(1, mass), monthLimit(limit), siteLimit(limit)] as const;
      return pressing(recorded(lines), noon('2028-01-20'), berlin).flatMap((one) =>
        one.what === 'amount' ? [`${one.amount.of} ${one.amount.standing}`] : [],
      );
    };
    // 80 kg, weighed to 0.5 % or the last digit written.
    expect(month('200')).toEqual([]);
    expect(month('99')).toEqual(['month near', 'on-site near']);
    expect(month('80')).toEqual(['month may be over', 'on-site may be over']);
    expect(month('79')).toEqual(['month over', 'on-site over']);
    const none = recorded([noon('2028-01-02'), solid(1, '80000')]);
    expect(pressing(none, noon('2028-01-20'), berlin).filter(({ what }) => what === 'amount')).toEqual([]);
  });

  it('says not determined where something on site has no mass, and never nothing', () => {
    const state = recorded(
      [noon('2028-01-01'), ...shelf(1), siteLimit('100')],
      [noon('2028-01-02'), mark(1, 'contents-doubtful', { doubt: 'found' })],
    );
    expect(onSite(state)).toMatchObject({ unweighed: [containerId(1)] });
    expect(onSiteNow(state).against.own?.standing).toBe('not determined');
  });

  it('is counted for the icon: what is due today or over, and nothing that is only near or wrong', () => {
    const state = shelfOfThree([noon('2028-03-24'), ...walked(1, 1, 2, 3)]);
    const count = (day: string) => {
      const counting = countingDue(state, noon(day), berlin);
      let step = counting.next();
      while (!step.done) step = counting.next();
      expect(step.value).toBe(dueNow(state, noon(day), berlin));
      return step.value;
    };
    expect(dueNow(recorded([noon('2028-01-01'), ...shelf(1)]), noon('2028-02-01'), berlin)).toBe(0);
    // The proof since 15 February; the walk and C-02 on 31 March; C-01 on 10 April.
    expect([count('2028-03-30'), count('2028-03-31'), count('2028-04-10')]).toEqual([1, 3, 4]);
  });
});

describe('a month counts', () => {
  const judgedIn = (state: State, n: number) =>
    monthHeld(state, '2028-02', berlin).month.judged.find(({ arising }) => arising.id === id('50', n));

  /** A liquor that is treated, and the sludge of it. */
  const treated = (...more: readonly PlainBody[]): State =>
    recorded(
      [noon('2028-02-01'), ...shelf(2), batch(1), batch(2)],
      [noon('2028-02-02'), liquid(1, '10', '1.100', 'barren-liquor', 1), pour(1, 1, '10')],
      [noon('2028-02-03'), ...more],
      [noon('2028-02-04'), begun(1, 1), dose(1, '500'), treatmentEnd(1)],
      [noon('2028-02-05'), solid(3, '900', 'hydroxide-sludge', 1)],
    );

  it('no sludge of waste that was counted, and the sludge of waste that was left out', () => {
    expect(judgedIn(treated(), 3)).toMatchObject({ counts: false, rule: 'residue-of-counted' });
    for (const said of ['straight-into-water-treatment', 'not-hazardous', 'recycled-at-once'] as const)
      expect(judgedIn(treated(saidOf(1, said)), 3)).toMatchObject({ counts: true, rule: 'generated' });
    // Left out, and counted once all the same: as that of which it is left.
    expect(judgedIn(treated(saidOf(1, 'residue-of-counted')), 3)).toMatchObject({ counts: false });
  });

  it('the sludge of a mixture of which a part was left out', () => {
    const other = [liquid(2, '5', '1.100', 'barren-liquor', 1), pour(2, 1, '5')];
    expect(judgedIn(treated(...other), 3)).toMatchObject({ counts: false });
    expect(judgedIn(treated(...other, saidOf(2, 'straight-into-water-treatment')), 3)).toMatchObject({
      counts: true,
    });
  });

  it('the sludge of a batch of which nothing was treated: whose it is is not determined', () => {
    const state = recorded([noon('2028-02-05'), batch(2), solid(3, '900', 'hydroxide-sludge', 2)]);
    expect(judgedIn(state, 3)).toMatchObject({
      counts: true,
      lacks: ['whether what was treated was counted before'],
    });
  });

  it('two wastes each told of as left of the other, and comes to an end', () => {
    const state = recorded(
      [noon('2028-02-01'), ...shelf(2)],
      [noon('2028-02-02'), liquid(1, '5', '1.1', 'filtrate'), liquid(2, '5', '1.1', 'filtrate')],
      [noon('2028-02-02'), pour(1, 1, '5'), pour(2, 1, '5'), begun(1, 1), dose(1, '50'), treatmentEnd(1)],
    );
    expect([judgedIn(state, 1)?.counts, judgedIn(state, 2)?.counts]).toEqual([true, true]);
  });

  it('what goes into neutralisation, unless it is known to be hazardous for nothing but its acid', () => {
    const silver = (value: string): PlainBody => {
      const body = liquid(1, '10', '1.000', 'wash-water');
      if (body.kind !== 'stream-logged' || !body.liquid) throw new Error('no liquid');
      const findings = [
        { by: 'assay', metal: 'Ag', concentration: { value, unit: 'mg/L' }, reference: 'Lab 1' } as const,
      ];
      return { ...body, liquid: { ...body.liquid, findings } };
    };
    const said = saidOf(1, 'straight-into-neutralisation');
    // D011 from 5 mg/L on (40 CFR 261.24).
    expect(judgedIn(recorded([noon('2028-02-02'), silver('12'), said]), 1)).toMatchObject({
      counts: true,
      rule: 'generated',
      lacks: [],
    });
    expect(judgedIn(recorded([noon('2028-02-02'), silver('0.1'), said]), 1)).toMatchObject({
      counts: true,
      rule: 'straight-into-unit',
      lacks: ['whether it is hazardous for nothing but its corrosivity'],
    });
  });
});
