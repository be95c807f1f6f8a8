import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given, within } from '../../../src/quantities/figure';
import { quantity } from '../../../src/quantities/quantity';
import { reactivity, type Trait } from '../../../src/reference/reactivity-tables';
import { emergencyCards } from '../../../src/safety/emergency-cards';
import { acidPercent } from '../../../src/safety/must-not-meet/acid-percent';
import {
  goesWith,
  isWaste,
  type Matter,
  materialNamed,
  materialOf,
  nameOfThing,
  thingIds,
  wettedBy,
} from '../../../src/safety/must-not-meet/matter';
import {
  type How,
  type Meeting,
  meetings,
  meetingsWithin,
  refusedMeeting,
} from '../../../src/safety/must-not-meet/meetings';
import {
  codesText,
  effectOf,
  insteadOf,
  moreOf,
  rulingName,
  saidBy,
} from '../../../src/safety/must-not-meet/words';
import { StreamKind } from '../../../src/safety/stream-kind';

const of = (...things: readonly string[]): Matter[] => things.map((thing) => ({ thing }));
const refusedBy = (a: Matter[], b: Matter[], how?: How): string | undefined =>
  refusedMeeting(meetings(a, b, how))?.by;

/** A meeting without saying which side was named first. */
const told = ({ by, severity, a, b }: Meeting) => `${by} ${severity} ${[a, b].sort().join(' ')}`;
const traits: readonly Trait[] = [
  'acid',
  'nitric',
  'chloride',
  'ammonia',
  'base',
  'silver',
  'organic',
  'metal',
];
const percent = fc.integer({ min: 0, max: 70 }).map(String);
const matter: fc.Arbitrary<Matter> = fc.oneof(
  fc.record({ thing: fc.constantFrom(...thingIds) }),
  fc.record({
    thing: fc.constantFrom(...thingIds),
    also: fc.uniqueArray(fc.constantFrom(...traits), { maxLength: 2 }),
  }),
  fc.record({
    thing: fc.constantFrom(...thingIds),
    acid: percent.map((value) => ({ percent: value, high: value })),
  }),
);
const side = fc.array(matter, { maxLength: 4 });
const how = fc.constantFrom<How>('mixing', 'treatment');

describe('whatever meets', () => {
  it('meets the same whichever side is named first', () => {
    fc.assert(
      fc.property(side, side, how, (a, b, as) => {
        const [one, other] = [meetings(a, b, as), meetings(b, a, as)];
        expect(one.map(told).sort()).toEqual(other.map(told).sort());
      }),
    );
  });

  it('meets no less when something is added to a side', () => {
    fc.assert(
      fc.property(side, side, matter, how, (a, b, more, as) => {
        const after = meetings([...a, more], b, as);
        // One thing may be in it twice, known differently: then the worse counts.
        for (const { by, a: one, b: other, severity } of meetings(a, b, as)) {
          const found = after.find((m) => m.by === by && m.a === one && m.b === other);
          expect([severity, 'refuse']).toContain(found?.severity);
        }
      }),
    );
  });

  it('stands worst first', () => {
    fc.assert(
      fc.property(side, side, (a, b) => {
        const severities = meetings(a, b).map(({ severity }) => severity);
        expect(severities.lastIndexOf('refuse')).toBeLessThan(
          severities.includes('mind') ? severities.indexOf('mind') : Number.POSITIVE_INFINITY,
        );
      }),
    );
  });

  it('within one vessel is found as it is between two', () => {
    fc.assert(
      fc.property(matter, matter, (a, b) => {
        expect(meetingsWithin([a, b]).map(told).sort()).toEqual(meetings([a], [b]).map(told).sort());
      }),
    );
  });

  it('says what happens, where that is from and which card to open, each in words', () => {
    fc.assert(
      fc.property(side, side, how, (a, b, as) => {
        for (const meeting of meetings(a, b, as)) {
          expect(effectOf(meeting).length).toBeGreaterThan(4);
          expect(saidBy(meeting.by).length).toBeGreaterThan(4);
          expect(rulingName(meeting)).toMatch(/^(Rule |Chart, |Materials )/);
          expect(meeting.cited.source.length).toBeGreaterThan(4);
          expect(emergencyCards.has(meeting.card), meeting.card).toBe(true);
          const all = [effectOf(meeting), moreOf(meeting), insteadOf(meeting), codesText(meeting.codes)].join(
            ' ',
          );
          expect(all).not.toMatch(/\b(safe|compliant|undefined)\b/);
        }
      }),
    );
  });
});

describe('a kind of waste', () => {
  it.each(StreamKind.options)('%s is never refused its own kind, and has a place', (kind) => {
    expect(meetings(of(kind), of(kind))).toEqual([]);
    expect(goesWith(kind)?.text).toMatch(/\.$/);
  });

  it('is in the tables, each of them, and nothing else is', () => {
    expect(Object.keys(reactivity.wastes).sort()).toEqual([...StreamKind.options].sort());
  });

  it.each(StreamKind.options.filter((kind) => kind !== 'ammonia-test-waste'))(
    'ammonia-test waste is refused to %s',
    (kind) => {
      expect(refusedBy(of(kind), of('ammonia-test-waste'))).toBeDefined();
    },
  );

  it.each([
    ['leach-liquor', 'ammonia-test-waste', 'AG-NH3'],
    ['barren-liquor', 'chloride-test-waste', 'HNO3-HCL'],
    ['wash-water', 'chloride-test-waste', 'HNO3-HCL'],
    ['ceramic-residue', 'chloride-test-waste', 'HNO3-HCL'],
    ['spent-filters', 'chloride-test-waste', 'HNO3-HCL'],
    ['leach-liquor', 'spent-filters', 'NO3-ORG'],
    ['wash-water', 'soiled-ppe', 'NO3-ORG'],
    ['spent-filters', 'soiled-ppe', '2-101'],
    ['spent-filters', 'acetone', '2-19'],
    ['spent-filters', 'oil', '2-29'],
    ['ceramic-residue', 'soiled-ppe', '2-101'],
    ['leach-liquor', 'hypochlorite', 'ACID-HYPO'],
    ['chloride-test-waste', 'hypochlorite', 'ACID-HYPO'],
    ['ammonia-test-waste', 'hypochlorite', 'NH3-HYPO'],
    ['barren-liquor', 'sulfide', 'ACID-SULF'],
    ['chloride-test-waste', 'cyanide', 'ACID-CN'],
    ['leach-liquor', 'azide', 'AZIDE-ACET'],
    ['leach-liquor', 'ethanol', 'AG-ETOH'],
    ['barren-liquor', 'acetone', 'NO3-ORG'],
    ['leach-liquor', 'copper-sheet', 'ACID-METAL'],
    ['chloride-test-waste', 'iron', 'ACID-METAL'],
    ['leach-liquor', 'nitrite', 'NITRITE-ACID'],
    ['nitric-acid', 'sulfuric-acid', 'OTHER-ACID'],
    ['leach-liquor', 'reducers', '2-105'],
    ['sand', 'carbide', '107-*'],
    ['reducers', 'peroxide', '104-105'],
  ])('%s and %s are kept apart by %s', (a, b, by) => {
    expect(refusedBy(of(a), of(b))).toBe(by);
  });

  it.each([
    ['leach-liquor', 'barren-liquor'],
    ['leach-liquor', 'wash-water'],
    ['barren-liquor', 'ceramic-residue'],
    ['treated-slurry', 'hydroxide-sludge'],
    ['nitric-acid', 'water'],
    ['leach-liquor', 'limestone'],
  ])('%s and %s are to be minded at most', (a, b) => {
    expect(refusedBy(of(a), of(b))).toBeUndefined();
  });
});

describe('in a treatment that was planned', () => {
  it('iron, lime and limestone go into acid liquor with care', () => {
    for (const agent of ['iron', 'hydrated-lime', 'limestone', 'quicklime', 'caustic-soda']) {
      const found = meetings(of('barren-liquor'), of(agent), 'treatment');
      expect(found.length, agent).toBeGreaterThan(0);
      expect(refusedMeeting(found), agent).toBeNull();
    }
    expect(meetings(of('leach-liquor'), of('limestone'), 'treatment')[0]?.by).toBe('ACID-CARB');
  });

  it('no base goes onto ammonia waste, nor onto filters that hold it', () => {
    for (const base of ['hydrated-lime', 'caustic-soda', 'soda-ash', 'sodium-bicarbonate'])
      expect(refusedBy(of('ammonia-test-waste'), of(base), 'treatment'), base).toBe('NH3-BASE');
    const filters = { thing: 'spent-filters', also: wettedBy('ammonia-test-waste') };
    expect(refusedBy([filters], of('hydrated-lime'), 'treatment')).toBe('NH3-BASE');
    expect(refusedBy([filters], of('spent-filters'))).toBe('AG-NH3');
  });
});

describe('a silence', () => {
  it('of the chart is no meeting, and nothing calls it leave', () => {
    expect(meetings(of('sand'), of('leach-liquor'))).toEqual([]);
    expect(meetings(of('barren-liquor'), of('peroxide'))).toEqual([]);
  });
});

describe('what a container is made of', () => {
  const acid = (value: string, high = value): Matter[] => [
    { thing: 'leach-liquor', acid: { percent: value, high } },
  ];
  const why = (vessel: string, inside: Matter[]) =>
    meetings(of(vessel), inside).flatMap(({ severity, ruling }) =>
      ruling.kind === 'material' ? [`${severity}: ${ruling.held.why}`] : [],
    );

  it.each([
    ['hdpe', '25', []],
    ['hdpe', '25.1', ['mind: limited-life']],
    ['hdpe', '50', ['mind: limited-life']],
    ['hdpe', '50.1', ['refuse: too-strong']],
    ['polypropylene', '30', ['mind: limited-life']],
    ['polypropylene', '30.1', ['refuse: too-strong']],
    ['ldpe', '25.1', ['refuse: too-strong']],
    ['pvc', '20', []],
    ['pvc', '50.1', ['refuse: too-strong']],
    ['glass', '70', []],
    ['fluoropolymer', '70', []],
  ] as const)('%s with %s %% nitric acid', (vessel, strength, said) => {
    expect(why(vessel, acid(strength))).toEqual(said);
  });

  it('is not determined where nobody told the strength, or knows it only roughly', () => {
    expect(why('hdpe', of('leach-liquor'))).toEqual(['mind: strength-open']);
    expect(why('hdpe', acid('48', '52'))).toEqual(['mind: strength-open']);
    expect(why('hdpe', acid('51', '56'))).toEqual(['refuse: too-strong']);
  });

  it('metal, drinks bottles and cardboard never hold nitrate liquor, however weak', () => {
    for (const vessel of ['steel', 'aluminium', 'copper-vessel', 'drinks-bottle', 'cardboard'])
      expect(refusedMeeting(meetings(of(vessel), acid('0.1'))), vessel).not.toBeNull();
  });

  it('glass holds no ammonia with silver and no caustic, stainless steel no chloride, aluminium no sludge', () => {
    expect(refusedBy(of('glass'), of('ammonia-test-waste'))).toBe('glass');
    expect(refusedBy(of('glass'), of('caustic-soda'), 'treatment')).toBe('glass');
    expect(refusedBy(of('glass'), of('hydrated-lime'), 'treatment')).toBeUndefined();
    expect(refusedBy(of('stainless-steel'), of('chloride-test-waste'))).toBe('stainless-steel');
    expect(refusedBy(of('stainless-steel'), of('wash-water'))).toBeUndefined();
    expect(refusedBy(of('aluminium'), of('hydroxide-sludge'))).toBe('aluminium');
    expect(refusedBy(of('hdpe'), of('ammonia-test-waste'))).toBeUndefined();
  });

  it('is known by the words that people use, and by its own name', () => {
    for (const text of ['Stainless-steel pot', 'pot, stainless steel', 'INOX'])
      expect(materialNamed(text), text).toBe('stainless-steel');
    expect(materialNamed('high-density polyethylene')).toBe('hdpe');
    expect(materialNamed('old steel can')).toBe('steel');
    expect(materialNamed('HDPE')).toBe('hdpe');
    expect(materialNamed('PP')).toBe('polypropylene');
    expect(materialNamed('petrol tank')).toBeUndefined();
    expect(materialNamed('')).toBeUndefined();
    for (const thing of thingIds.filter((id) => materialOf(id)))
      expect(materialNamed(nameOfThing(thing) ?? ''), thing).toBe(thing);
  });

  it('counts acid in % by mass by the table of densities: 50 % is 1.3100 kg/L, 10.39 mol/L', () => {
    const acidOf = (value: string) =>
      acidPercent(
        given({
          origin: 'titration',
          sentence: 'Free acid',
          value: quantity(value, 'mol/L'),
          unit: 'mol/L',
          how: 'stated',
          spread: within('0.5'),
        }),
      );
    const { percent: found, high } = acidOf('10.39');
    expect(Number(found)).toBeCloseTo((10.39 * 63.012) / (10 * 1.31), 1);
    expect(Number(high)).toBeGreaterThan(Number(found));
    expect(acidOf('20').percent, 'the table ends').toBe('70');
  });
});

describe('the tables', () => {
  it('name everything once', () => {
    const names = thingIds.filter((id) => !isWaste(id)).map((id) => nameOfThing(id));
    expect(names).not.toContain(undefined);
    expect(new Set(names).size).toBe(names.length);
    expect(new Set(thingIds).size).toBe(thingIds.length);
  });

  it('speak only of groups that have a name, and of cells that the chart prints', () => {
    const { groups, chart, suspected, rules, wastes, things, materials } = reactivity;
    const known = (group: number | string) =>
      expect(Object.keys(groups), String(group)).toContain(String(group));
    for (const cell of [...Object.keys(chart.cells), ...Object.keys(suspected)])
      cell.split('-').forEach(known);
    for (const one of [wastes, things, materials].flatMap((all) => Object.values(all)))
      one.groups.forEach(known);
    for (const { cells = [] } of rules)
      for (const cell of cells) expect(chart.cells, cell).toHaveProperty(cell);
    for (const cell of Object.keys(suspected)) expect(chart.cells).not.toHaveProperty(cell);
  });

  it('have a thing on either side for every rule', () => {
    const found = thingIds.flatMap((one) => thingIds.flatMap((other) => meetings(of(one), of(other))));
    const fired = new Set(found.map(({ by }) => by));
    expect(reactivity.rules.map(({ id }) => id).filter((id) => !fired.has(id))).toEqual([]);
  });
});
