/** What a container holds as rules of classification take it. */
import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { mixtureOf } from '../../../src/ledger/container-mixture';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { State } from '../../../src/ledger/state';
import { solid } from './dated';
import { begun, can, dose, id, litres, potRead, pour, put, Scribe, tip, written } from './scribe';

type Logged = Extract<PlainBody, { kind: 'stream-logged' }>;
type Liquid = NonNullable<Logged['liquid']>;

const liquor = (n: number, liquid: Partial<Liquid>, stream: Logged['stream'] = 'barren-liquor'): Logged => ({
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', n),
  batchId: null,
  stepId: null,
  stream,
  liquid: { volume: litres('2.00'), findings: [], freeAcid: [], ...liquid },
});

const assay = (metal: 'Cu' | 'Ni' | 'Ag', value: string): Liquid['findings'][number] => ({
  by: 'assay',
  metal,
  concentration: { value, unit: 'g/L' },
});

/** Copper 20, nickel 5, silver 1.5 g/L; nitric acid 160 g/L; 1.10 kg/L. */
const silvery = liquor(1, {
  density: { value: '1.10', unit: 'kg/L' },
  findings: [assay('Cu', '20'), assay('Ni', '5'), assay('Ag', '1.5')],
  freeAcid: [{ by: 'titration', result: { value: '2.5391', unit: 'mol/L' } }],
});

function inCan(state: State, n = 1) {
  const container = state.containers.get(id('c0', n));
  if (!container) throw new Error('no such container');
  return mixtureOf(state, container);
}

function known(state: State, n = 1) {
  const found = inCan(state, n);
  if (typeof found === 'string') throw new Error(found);
  return found;
}

describe('what a container holds, for rules of classification', () => {
  it('is the share of each metal as its nitrate, and of the acid', () => {
    const { mixture, mass } = known(written(silvery, can(1), pour(1, 1, '2.00')));
    // Worked outside: 20 g/L × 2.9515 ÷ 1.10 kg/L and so on.
    const expected = { 'Cu(NO3)2': 5.36636, 'Ni(NO3)2': 1.41491, AgNO3: 0.21475, HNO3: 14.54545 };
    for (const [substance, percent] of Object.entries(expected)) {
      const share = mixture.shares.get(substance as 'HNO3');
      expect(share?.value.div(percent).minus(1).abs().toNumber()).toBeLessThan(1e-3);
      expect(share?.high.gt(share.value)).toBe(true);
    }
    expect(mass.value.toNumber()).toBeCloseTo(2.2, 6);
    expect(mixture.state).toBe('liquid');
  });

  it('leaves open what nobody determined, and takes none of it for nothing', () => {
    const { mixture, levels } = known(written(silvery, can(1), pour(1, 1, '2.00')));
    expect(mixture.open).toEqual(expect.arrayContaining(['Pb(NO3)2', 'Ba(NO3)2', 'Zn(NO3)2']));
    expect(mixture.open).not.toContain('Cu(NO3)2');
    expect(levels.open).toEqual(expect.arrayContaining(['Pb', 'Ba', 'Cd', 'Hg']));
    expect(levels.filtered.get('Ag')?.value.toNumber()).toBeCloseTo(1500, 6);
    expect(levels.filtered.has('Pb')).toBe(false);
  });

  it('keeps a metal open when one of two liquors does not tell of it, though the sum is shown', () => {
    const silent = liquor(2, { findings: [assay('Cu', '3')] });
    const { mixture } = known(written(silvery, silent, can(1), pour(1, 1, '2.00'), pour(2, 1, '2.00')));
    expect(mixture.shares.has('Ni(NO3)2')).toBe(true);
    expect(mixture.open).toContain('Ni(NO3)2');
    expect(mixture.open).toContain('HNO3');
    expect(mixture.open).not.toContain('Cu(NO3)2');
  });

  it('has the pH of its acid where none was read, and the one that was read where it was', () => {
    const worked = known(written(silvery, can(1), pour(1, 1, '2.00'))).mixture.pH;
    // −log10 of 2.5391 is −0.4047.
    expect(worked?.value.toNumber()).toBeCloseTo(-0.4047, 3);
    const read = liquor(1, { ph: { value: { value: '1.5', unit: '1' }, instrument: 'paper' } });
    const { pH } = known(written(read, can(1), pour(1, 1, '2.00'))).mixture;
    expect(pH?.value.toString()).toBe('1.5');
    expect(pH?.low.toString()).toBe('1');
    expect(known(written(liquor(1, {}), can(1), pour(1, 1, '2.00'))).mixture.pH).toBeUndefined();
  });

  it('has no pH where there is no acid to take it from', () => {
    const none = liquor(1, { freeAcid: [{ by: 'titration', result: { value: '0', unit: 'mol/L' } }] });
    expect(known(written(none, can(1), pour(1, 1, '2.00'))).mixture.pH).toBeUndefined();
  });

  it('takes a pH that was read in the pot only while nothing was added after it', () => {
    const limed = [silvery, can(1, '5'), pour(1, 1, '2.00'), begun(1, 1), dose(1, '200'), potRead(1, '9.1')];
    expect(known(written(...limed)).mixture.pH?.value.toString()).toBe('9.1');
    expect(known(written(...limed, dose(1, '5'))).mixture.pH).toBeUndefined();
    expect(known(written(...limed)).mixture.open).toContain('Ca(NO3)2');
  });

  it('takes no pH from before other contents came over, or somebody said what it is', () => {
    const limed = [
      silvery,
      can(1),
      can(2),
      pour(1, 1, '1.00'),
      begun(1, 1),
      dose(1, '200'),
      potRead(1, '9.1'),
    ];
    const other = [liquor(2, {}), pour(2, 2, '2.00')];
    expect(known(written(...limed, ...other, tip(2, 1, '0.10'))).mixture.pH).toBeUndefined();
    expect(known(written(...limed, ...other, tip(1, 2, '0.10'))).mixture.pH?.value.toString()).toBe('9.1');
    const determined: PlainBody = {
      kind: 'contents-determined',
      v: 1,
      containerId: id('c0', 1),
      streamId: id('50', 2),
      how: 'assay',
      saidBy: 'Laboratory',
    };
    expect(known(written(...limed, ...other, determined)).mixture.pH).toBeUndefined();
  });

  it('says nothing of contents that somebody doubts, or that no log accounts for', () => {
    const doubted = written(silvery, can(1), pour(1, 1, '2.00'), {
      kind: 'container-marked',
      v: 1,
      containerId: id('c0', 1),
      mark: 'contents-doubtful',
    });
    expect(inCan(doubted)).toBe('not-determined');
    expect(inCan(written(can(1)))).toBe('empty');
  });

  it('holds more of each salt by share when water has gone off, and the same mass of it', () => {
    const poured = [silvery, can(1), pour(1, 1, '2.00')];
    const lost: PlainBody = { kind: 'water-lost', v: 1, containerId: id('c0', 1), amount: litres('0.50') };
    const [before, after] = [known(written(...poured)), known(written(...poured, lost))];
    const silver = (of: typeof before) => of.levels.filtered.get('Ag')?.value ?? new Decimal(0);
    expect(silver(after).div(silver(before)).toNumber()).toBeCloseTo(2 / 1.5, 9);
    const copper = (of: typeof before) => of.mixture.shares.get('Cu(NO3)2')?.value.times(of.mass.value);
    expect(copper(after)?.toNumber()).toBeCloseTo(copper(before)?.toNumber() ?? 0, 9);
    // The density that was measured is not that of what is left, which is heavier.
    expect(after.mass.value.div('1.5').toNumber()).toBeGreaterThan(1.13);
  });

  const lost = (volume: string): PlainBody => ({
    kind: 'water-lost',
    v: 1,
    containerId: id('c0', 1),
    amount: litres(volume),
  });

  it('is known no better than the water that went off was measured', () => {
    const widthOf = (more: Partial<Extract<PlainBody, { kind: 'water-lost' }>>) => {
      const water = { ...lost('0.50'), ...more } as PlainBody;
      const silver = known(written(silvery, can(1), pour(1, 1, '2.00'), water)).levels.filtered.get('Ag');
      return silver?.high.minus(silver.low).toNumber() ?? Number.NaN;
    };
    const half = { plusMinus: { value: '0.25', unit: 'L' }, as: 'k2' } as const;
    expect(widthOf({ spread: half })).toBeGreaterThan(widthOf({}) * 2);
  });

  it('is not determined once all its water went off: what was dissolved lies in it, and nobody weighed that', () => {
    for (const volume of ['2.00', '3.00']) {
      const state = written(silvery, can(1), pour(1, 1, '2.00'), lost(volume));
      expect(inCan(state)).toBe('not-determined');
      expect(state.containers.get(id('c0', 1))?.contents.map(({ streamId }) => streamId)).toContain(null);
    }
  });

  it('has no pH from before water went off, but that of the acid in less liquid', () => {
    const read = { ph: { value: { value: '2.5', unit: '1' }, instrument: 'meter' } } as const;
    const acid = { freeAcid: [{ by: 'titration', result: { value: '0.01', unit: 'mol/L' } }] } as const;
    const dried = (of: Partial<Liquid>) =>
      known(written(liquor(1, of), can(1), pour(1, 1, '2.00'), lost('1.00'))).mixture.pH;
    expect(dried(read)).toBeUndefined();
    // 0.01 mol/L in half the liquid is 0.02 mol/L: 1.70.
    expect(dried({ ...read, freeAcid: [...acid.freeAcid] })?.value.toNumber()).toBeCloseTo(1.699, 3);
    const carried = written(
      liquor(1, read),
      can(1),
      can(2),
      pour(1, 1, '2.00'),
      lost('1.00'),
      tip(1, 2, '1.00'),
      pour(1, 2, '0.10'),
    );
    expect(known(carried, 2).mixture.pH).toBeUndefined();
    const pot = [silvery, can(1), pour(1, 1, '2.00'), begun(1, 1), dose(1, '200'), potRead(1, '9.1')];
    expect(known(written(...pot, lost('0.50'))).mixture.pH).toBeUndefined();
  });

  it('of a reading and a dose in the same minute believes the one that was told last', () => {
    const scribe = new Scribe();
    for (const body of [silvery, can(1), pour(1, 1, '2.00'), begun(1, 1)]) scribe.write(body);
    scribe.write(dose(1, '200'), 10, 10);
    scribe.write(potRead(1, '9.1'), 11, 10);
    expect(known(scribe.state).mixture.pH?.value.toString()).toBe('9.1');
    scribe.write(dose(1, '5'), 12, 10);
    expect(known(scribe.state).mixture.pH).toBeUndefined();
  });

  it('has no pH from its acid where something in it takes acid up', () => {
    const ammonia = liquor(
      2,
      { freeAcid: [{ by: 'ph', ph: { value: '10', unit: '1' }, instrument: 'paper' }] },
      'ammonia-test-waste',
    );
    const state = written(silvery, ammonia, can(1), pour(1, 1, '2.00'), pour(2, 1, '2.00'));
    expect(known(state).mixture.pH).toBeUndefined();
  });

  it('has a pH at most where acid enough for it is known, and none where it is not', () => {
    const untold = liquor(2, {}, 'wash-water');
    const weak = liquor(1, { freeAcid: [{ by: 'titration', result: { value: '0.004', unit: 'mol/L' } }] });
    const both = (first: Logged) =>
      known(written(first, untold, can(1), pour(1, 1, '2.00'), pour(2, 1, '2.00'))).mixture.pH;
    // 2.5391 mol/L in twice the liquid: −0.10.
    expect(both(silvery)).toMatchObject({ sentence: expect.stringContaining('at most') });
    expect(both(silvery)?.value.toNumber()).toBeCloseTo(-0.1037, 3);
    expect(both(weak)).toBeUndefined();
    // 0.016 mol/L in all: 1.8, and with what strong salt makes of it perhaps above 2.
    const near = liquor(1, { freeAcid: [{ by: 'titration', result: { value: '0.032', unit: 'mol/L' } }] });
    expect(both(near)).toBeUndefined();
  });

  it('leaves acid and metals open beside a residue of which nobody said what it holds', () => {
    const residue = solid(2, '300', 'ceramic-residue');
    const { mixture, levels } = known(
      written(silvery, residue, can(1), pour(1, 1, '2.00'), put(2, 1, '300')),
    );
    expect(mixture.open).toEqual(expect.arrayContaining(['HNO3', 'Cu(NO3)2']));
    expect(mixture.shares.has('HNO3')).toBe(true);
    expect(levels.open).toEqual(expect.arrayContaining(['Cu', 'Ag']));
  });

  it('stays what the record has of it where the waste that somebody said it is was withdrawn', () => {
    const scribe = new Scribe();
    for (const body of [silvery, can(1), pour(1, 1, '2.00')]) scribe.write(body);
    const [logged] = scribe.does({
      do: 'determine-contents',
      containerId: id('c0', 1),
      stream: { stream: 'wash-water', liquid: { volume: litres('2.1'), findings: [], freeAcid: [] } },
      how: 'tests',
      saidBy: 'Maren',
    });
    scribe.does({ do: 'withdraw-entry', withdraws: logged?.id ?? '', reason: 'another container' });
    expect(known(scribe.state).mixture.shares.get('AgNO3')?.value.toNumber()).toBeCloseTo(0.21475, 4);
  });
});
