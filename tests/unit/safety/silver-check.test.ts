import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsed, reaction } from '../../../src/chemistry/formula';
import { silverCheck } from '../../../src/reference/silver-check-tables';
import {
  ammoniaAge,
  ammoniaStands,
  canTakeBack,
  ceilingMinutes,
  destroyBy,
  due,
  isDestroyed,
  type Looked,
  lookTakenBack,
  minutesTaken,
  nextInTest,
  type SilverTest,
  sightsAt,
  silverLooks,
  silverVerdict,
  withAmmonia,
  withLook,
} from '../../../src/safety/silver-check';
import { testVolume } from '../../../src/safety/test-volume';
import { minutesLeft } from '../../../src/safety/time-left';

const at = '2026-05-12T08:00:00.000Z';
const looked = (seen: Readonly<Record<string, string>>): readonly Looked[] =>
  Object.entries(seen).map(([look, one]) => ({ look, seen: one, at }));

/** As the test makes them: nothing is looked at where it has ended. */
const made = (seen: Readonly<Record<string, string>>): readonly Looked[] => {
  const all = looked(seen);
  return all.filter(({ look }) => due(all).some((one) => one.look === look));
};

/** Silver nitrate of a textbook, on a clean plate. */
const textbook = {
  before: 'clear',
  blank: 'clear',
  known: 'curd',
  chloride: 'white-curd',
  'hot-water': 'stays',
  light: 'darkens',
  alkaline: 'alkaline',
  ammonia: 'gone',
  colour: 'none',
  strip: 'acid',
  acid: 'curd',
} as const;

/** One sight in place of that of the textbook, and what it makes of the test. */
const rows: readonly (readonly [look: string, seen: string, outcome: string])[] = [
  ['before', 'clear', 'silver'],
  ['before', 'strong-colour', 'not-conclusive'],
  ['before', 'cloudy', 'not-conclusive'],
  ['blank', 'clear', 'silver'],
  ['blank', 'cloud', 'not-conclusive'],
  ['blank', 'not-done', 'not-conclusive'],
  ['known', 'curd', 'silver'],
  ['known', 'early-cloud', 'not-conclusive'],
  ['known', 'nothing', 'not-conclusive'],
  ['known', 'not-done', 'silver'],
  ['chloride', 'white-curd', 'silver'],
  ['chloride', 'faint-cloud', 'not-conclusive'],
  ['chloride', 'none', 'not-silver'],
  ['chloride', 'crystals', 'not-conclusive'],
  ['chloride', 'other-colour', 'not-conclusive'],
  ['hot-water', 'stays', 'silver'],
  ['hot-water', 'in-part', 'not-conclusive'],
  ['hot-water', 'gone', 'not-silver'],
  ['hot-water', 'not-tried', 'silver'],
  ['light', 'darkens', 'silver'],
  ['light', 'stays-white', 'silver'],
  ['light', 'not-tried', 'silver'],
  ['alkaline', 'alkaline', 'silver'],
  ['alkaline', 'not-alkaline', 'not-conclusive'],
  ['alkaline', 'not-looked', 'not-conclusive'],
  ['ammonia', 'gone', 'silver'],
  ['ammonia', 'in-part', 'not-conclusive'],
  ['ammonia', 'stays', 'not-conclusive'],
  ['ammonia', 'black', 'not-conclusive'],
  ['colour', 'none', 'silver'],
  ['colour', 'blue', 'silver'],
  ['colour', 'too-blue', 'not-conclusive'],
  ['colour', 'other', 'not-conclusive'],
  ['strip', 'acid', 'silver'],
  ['strip', 'not-acid', 'not-conclusive'],
  ['strip', 'not-looked', 'not-conclusive'],
  ['acid', 'curd', 'silver'],
  ['acid', 'cloud', 'silver'],
  ['acid', 'never-left', 'not-conclusive'],
  ['acid', 'none', 'not-conclusive'],
  ['acid', 'other', 'not-conclusive'],
];

/** Mostly as the textbook has it, so that what is asked of a yes is really asked. */
const anySights = fc.record(
  Object.fromEntries(
    silverLooks.map(({ look, seen }) => [
      look,
      fc.oneof(
        { weight: 9, arbitrary: fc.constant<string>(textbook[look]) },
        { weight: 1, arbitrary: fc.constantFrom(...seen.map((one) => one.seen)) },
      ),
    ]),
  ),
);

describe('what the looks come to', () => {
  it.each(rows)('%s: %s is %s', (look, seen, outcome) => {
    expect(silverVerdict(made({ ...textbook, [look]: seen })).outcome).toBe(outcome);
  });

  it('has a row for every sight that the test knows', () => {
    const known = silverLooks.flatMap(({ look, seen }) => seen.map((one) => `${look} ${one.seen}`));
    expect(rows.map(([look, seen]) => `${look} ${seen}`).toSorted()).toEqual(known.toSorted());
  });

  it('a no is worth what the known silver solution is worth', () => {
    for (const no of [{ chloride: 'none' }, { chloride: 'crystals', 'hot-water': 'gone' }])
      for (const known of ['not-done', 'nothing', 'early-cloud'])
        expect(silverVerdict(made({ ...textbook, ...no, known })).outcome).toBe('not-conclusive');
  });

  it('is never silver unless chloride, ammonia and acid all fit', () => {
    fc.assert(
      fc.property(anySights, (sights) => {
        if (silverVerdict(looked(sights)).outcome !== 'silver') return;
        expect(sights.chloride).toBe('white-curd');
        expect(sights.ammonia).toBe('gone');
        expect(['curd', 'cloud']).toContain(sights.acid);
      }),
    );
  });

  it('is never silver, nor a no, where the blank clouded or the water brought chloride', () => {
    fc.assert(
      fc.property(anySights, fc.boolean(), (sights, plate) => {
        const spoilt = plate ? { blank: 'cloud' } : { known: 'early-cloud' };
        expect(silverVerdict(made({ ...textbook, ...sights, ...spoilt })).outcome).toBe('not-conclusive');
      }),
    );
  });

  it('is not conclusive while any look that is due is not made', () => {
    fc.assert(
      fc.property(anySights, fc.nat(), (sights, which) => {
        const all = made({ ...textbook, ...sights });
        const wanted = due(all);
        const left = wanted[which % wanted.length]?.look;
        const rest = all.filter(({ look }) => look !== left);
        const verdict = silverVerdict(rest);
        expect(verdict.outcome).toBe('not-conclusive');
        expect(verdict.unlooked.map(({ look }) => look)).toContain(left);
      }),
    );
  });

  it('is not conclusive where sights contradict each other', () => {
    for (const no of [{ chloride: 'none' }, { chloride: 'crystals', 'hot-water': 'gone' }])
      expect(silverVerdict(looked({ ...textbook, ...no })).outcome).toBe('not-conclusive');
  });

  it('names every sight that leaves it open, and what to do about it', () => {
    fc.assert(
      fc.property(anySights, (sights) => {
        const verdict = silverVerdict(looked(sights));
        if (verdict.doubts.length > 0) expect(verdict.outcome).toBe('not-conclusive');
        for (const { seen } of verdict.doubts) expect(seen.next).toBeDefined();
      }),
    );
  });
});

/** Goes through a test, seeing what is told, until it ends or needs a sight that is not told. */
function gone(sights: Readonly<Record<string, string>>): { test: SilverTest; way: readonly string[] } {
  let test: SilverTest = { looks: [], ammoniaAt: null, hurried: false };
  const way: string[] = [];
  for (let next = nextInTest(test); next.do !== 'end'; next = nextInTest(test)) {
    way.push(next.do === 'look' ? next.look.look : 'ammonia goes in');
    if (next.do === 'ammonia') test = { ...test, ammoniaAt: at };
    else {
      const seen = sights[next.look.look];
      if (seen === undefined) break;
      test = withLook(test, { look: next.look.look, seen, at });
    }
  }
  return { test, way };
}

describe('the way through the test', () => {
  it('makes every look once, and the ammonia goes in before the looks that need it', () => {
    const { way } = gone(textbook);
    const names = silverLooks.map(({ look }) => look as string);
    const first = names.indexOf(withAmmonia[0] as string);
    expect(way).toEqual([...names.slice(0, first), 'ammonia goes in', ...names.slice(first)]);
  });

  it('opens no ammonia where chloride brings nothing, nor for what hot water takes away', () => {
    for (const sights of [
      { ...textbook, chloride: 'none' },
      { ...textbook, 'hot-water': 'gone' },
    ])
      expect(gone(sights).way).not.toContain('ammonia goes in');
  });

  it('goes straight to the acid when that must go in at once', () => {
    const { test } = gone({ ...textbook, alkaline: 'alkaline' });
    const early: SilverTest = { looks: test.looks.slice(0, 6), ammoniaAt: at, hurried: true };
    expect(nextInTest(early)).toMatchObject({ do: 'look', look: { look: 'strip' } });
    const after = withLook(withLook(early, { look: 'strip', seen: 'acid', at }), {
      look: 'acid',
      seen: 'curd',
      at,
    });
    expect(nextInTest(after)).toEqual({ do: 'end' });
    expect(silverVerdict(after.looks).outcome).toBe('not-conclusive');
  });

  it('looks at the strip again until it is acid', () => {
    const base: SilverTest = { looks: looked(textbook).slice(0, 9), ammoniaAt: at, hurried: false };
    const above = withLook(base, { look: 'strip', seen: 'not-acid', at });
    expect(nextInTest(above)).toMatchObject({ do: 'look', look: { look: 'strip' } });
    const acid = withLook(above, { look: 'strip', seen: 'acid', at });
    expect(acid.looks).toHaveLength(10);
    expect(nextInTest(acid)).toMatchObject({ do: 'look', look: { look: 'acid' } });
  });

  it('what dissolved is not offered as white all the time', () => {
    const acid = silverLooks.find(({ look }) => look === 'acid');
    if (!acid) throw new Error('no look at what came back');
    const offered = (ammonia: string) =>
      sightsAt(looked({ ...textbook, ammonia }), acid).map(({ seen }) => seen);
    expect(offered('gone')).not.toContain('never-left');
    expect(offered('stays')).toContain('never-left');
    expect(sightsAt([], acid)).toHaveLength(acid.seen.length);
  });

  it('takes a look back, but not past what went into the well', () => {
    const before: SilverTest = { looks: looked(textbook).slice(0, 6), ammoniaAt: null, hurried: false };
    expect(lookTakenBack(before).looks).toHaveLength(5);
    const wet = { ...before, ammoniaAt: at };
    expect(canTakeBack(wet)).toBe(false);
    expect(lookTakenBack(wet)).toEqual(wet);
    expect(canTakeBack(withLook(wet, { look: 'alkaline', seen: 'alkaline', at }))).toBe(true);
  });
});

describe('the ammonia in the well', () => {
  it('counts as destroyed once the strip is acid and the well was looked at, and not before', () => {
    const wet = (sights: Readonly<Record<string, string>>) => ({
      looks: looked(sights),
      ammoniaAt: at,
      hurried: false,
    });
    const { acid: _, ...notLooked } = textbook;
    expect(ammoniaStands(wet(textbook))).toBe(false);
    expect(ammoniaStands(wet(notLooked))).toBe(true);
    expect(ammoniaStands(wet({ ...textbook, strip: 'not-looked' }))).toBe(true);
    expect(ammoniaStands({ ...wet({}), ammoniaAt: null })).toBe(false);
    expect(isDestroyed({ looks: looked({ ...textbook, strip: 'not-acid' }) })).toBe(false);
  });

  it('stood from the ammonia to the acid strip, in whole minutes rounded up', () => {
    const taken = (strip: string, seen = 'acid') =>
      minutesTaken({ looks: [{ look: 'strip', seen, at: strip }], ammoniaAt: at, hurried: false });
    expect(taken('2026-05-12T08:15:00.000Z')).toBe(15);
    expect(taken('2026-05-12T08:15:00.001Z')).toBe(16);
    expect(taken('2026-05-12T08:05:00.000Z', 'not-acid')).toBeNull();
    expect(taken('2026-05-12T07:59:00.000Z'), 'a clock that was set back').toBe(0);
  });

  it('is due as the list asks, and never later than the published two hours', () => {
    expect(destroyBy(at, 15)).toBe('2026-05-12T08:15:00.000Z');
    expect(destroyBy(at, 600)).toBe('2026-05-12T10:00:00.000Z');
    expect(ceilingMinutes).toBe(120);
  });

  it.each([
    ['2026-05-12T08:15:00.000Z', 'in-time', 0],
    ['2026-05-12T08:15:00.001Z', 'overdue', 0],
    ['2026-05-12T10:00:00.000Z', 'overdue', 0],
    ['2026-05-12T10:00:00.001Z', 'old', 0],
    ['2026-05-12T08:01:30.000Z', 'in-time', 13],
  ] as const)('at %s it is %s, %i minutes left', (now, age, left) => {
    const by = destroyBy(at, 15);
    expect(ammoniaAge(at, by, now)).toBe(age);
    expect(minutesLeft(by, now)).toBe(left);
  });
});

describe('what stands behind the test', () => {
  const equations = [
    silverCheck.destroys.equation,
    ...silverLooks.flatMap(({ seen }) => seen.flatMap(({ equation }) => equation ?? [])),
  ];
  it.each([...new Set(equations)])('%s is balanced', (text) => {
    const atoms = new Map<string, number>();
    let charge = 0;
    for (const [species, n] of reaction(text)) {
      const sign = /([+-])(\d*)$/.exec(species);
      if (sign) charge += n * (sign[1] === '+' ? 1 : -1) * Number(sign[2] || 1);
      for (const [element, count] of parsed(species))
        atoms.set(element, (atoms.get(element) ?? 0) + n * count);
    }
    expect([...atoms.values()].every((n) => n === 0)).toBe(true);
    expect(charge).toBe(0);
  });

  it('sample and drops make the waste', () => {
    const waste = testVolume({ value: '0.5', unit: 'mL' }, 30);
    expect(waste.value.toNumber()).toBeCloseTo(2, 9);
    expect(waste.low.toNumber()).toBeGreaterThan(1.3);
    expect(waste.high.toNumber()).toBeLessThan(2.7);
    expect(testVolume({ value: '0.0005', unit: 'L' }, 30).value.toNumber()).toBeCloseTo(2, 9);
  });
});
