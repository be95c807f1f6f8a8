/** What the month counts, what stands on site, and from when on storage time counts. */
import { describe, expect, it } from 'vitest';
import { accumulationStart } from '../../../src/ledger/accumulation';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { arisings, onSite } from '../../../src/ledger/generation';
import type { State } from '../../../src/ledger/state';
import { generatorMonth } from '../../../src/rules/quantities/generator-month';
import { area, liquid, mark, rule, solid } from './dated';
import { at, begun, can, dose, grams, id, litres, pour, Scribe, tip, treatmentEnd, written } from './scribe';

type Kind = Extract<PlainBody, { kind: 'stream-logged' }>['stream'];

const liquor = (n: number, volume: string, stream: Kind = 'barren-liquor', batch: number | null = null) =>
  liquid(n, volume, '1.100', stream, batch);

const sludge = (n: number, mass: string) => solid(n, mass, 'hydroxide-sludge');

const nearWork = rule({ rule: 'near-work-limit', value: { value: '200', unit: 'L' } });

const month = (state: State) => generatorMonth(arisings(state), '2026-03', 'Europe/Paris');
const counted = (state: State) =>
  month(state)
    .judged.filter(({ counts }) => counts)
    .map(({ arising }) => arising.id);

describe('wastes of a month', () => {
  it('are counted by mass as they were logged, wherever they are poured', () => {
    const state = written(
      liquor(1, '10.0'),
      liquor(2, '5.0'),
      can(1, '20'),
      can(2, '20'),
      pour(1, 1, '10.0'),
      tip(1, 2, '10.0'),
    );
    expect(counted(state)).toEqual([id('50', 1), id('50', 2)]);
    expect(month(state).nonAcute.value.toNumber()).toBeCloseTo(16.5, 9);
    expect(month(state).nonAcute.high.gt(16.5)).toBe(true);
  });

  it('leave out the sludge of what was counted, and count sludge that came of nobody knows what', () => {
    const treated = [
      liquor(1, '10.0'),
      can(1, '20'),
      pour(1, 1, '10.0'),
      begun(1, 1),
      dose(1, '500'),
      treatmentEnd(1),
    ];
    expect(counted(written(...treated, sludge(2, '900')))).toEqual([id('50', 1)]);
    const lone = written(sludge(2, '900'));
    expect(counted(lone)).toEqual([id('50', 2)]);
    expect(month(lone).judged[0]?.lacks).not.toEqual([]);
  });

  it('count the sludge of a batch where waste of another, that was never counted, was in the same pot', () => {
    const [a, b] = [1, 2];
    const sludgeOf = (batch: number) => solid(9, '900', 'hydroxide-sludge', batch);
    const uncounted: PlainBody = {
      kind: 'counting-said',
      v: 1,
      streamId: id('50', 2),
      counted: 'not-hazardous',
      saidBy: 'State agency',
    };
    const wastes = [
      liquor(1, '10.0', 'barren-liquor', a),
      liquor(2, '1.0', 'wash-water', b),
      uncounted,
      can(1, '20'),
      can(2, '20'),
      pour(1, 1, '10.0'),
    ];
    const treated = (can: number) => [begun(can, can), dose(can, '500'), treatmentEnd(can)];
    const one = written(...wastes, pour(2, 1, '1.0'), ...treated(1), sludgeOf(a));
    expect(counted(one)).toEqual([id('50', 1), id('50', 9)]);
    const apart = written(...wastes, pour(2, 2, '1.0'), ...treated(1), ...treated(2), sludgeOf(a));
    expect(counted(apart)).toEqual([id('50', 1)]);
    const before = written(...wastes, sludgeOf(a), ...treated(1));
    expect(counted(before)).toEqual([id('50', 1), id('50', 9)]);
  });

  it('take somebody’s word, and count all the same while it is not known to be only corrosive', () => {
    const said = (as: 'straight-into-neutralisation' | 'not-hazardous'): PlainBody => ({
      kind: 'counting-said',
      v: 1,
      streamId: id('50', 1),
      counted: as,
      saidBy: 'State agency',
    });
    expect(counted(written(liquor(1, '10.0'), said('not-hazardous')))).toEqual([]);
    const acid = {
      ...liquor(1, '10.0'),
      liquid: {
        volume: litres('10.0'),
        findings: [],
        freeAcid: [{ by: 'titration', result: { value: '1.31', unit: 'mol/L' } }],
      },
    } as PlainBody;
    const straight = written(acid, said('straight-into-neutralisation'));
    expect(counted(straight)).toEqual([id('50', 1)]);
    // That it is corrosive rules nothing out: what else it is has to be known.
    expect(month(straight).judged[0]).toMatchObject({
      rule: 'straight-into-unit',
      lacks: [expect.stringContaining('nothing but its corrosivity')],
    });
  });
});

describe('a liquor of which nobody determined anything', () => {
  it('is not weighed as water: the high end is that of the heaviest such liquor', () => {
    const unknown: PlainBody = {
      kind: 'stream-logged',
      v: 1,
      streamId: id('50', 1),
      batchId: null,
      stepId: null,
      stream: 'leach-liquor',
      liquid: { volume: litres('4.00'), findings: [], freeAcid: [] },
    };
    const { nonAcute } = month(written(unknown));
    expect(nonAcute.high.gte(5.2)).toBe(true);
    const state = written(unknown, can(1), pour(1, 1, '4.00'));
    expect(onSite(state).total?.high.gte(5.2)).toBe(true);
  });
});

describe('what was found and nobody knows', () => {
  it('is counted in the month in which it was found, without a mass, until somebody says what it is', () => {
    const doubt: PlainBody = {
      kind: 'container-marked',
      v: 1,
      containerId: id('c0', 1),
      mark: 'contents-doubtful',
      doubt: 'found',
    };
    const { unweighed } = month(written(can(1), doubt));
    expect(unweighed.map(({ id: of }) => of)).toEqual([id('c0', 1)]);
    // Waste that was counted as it was logged is not counted again because somebody doubts it.
    expect(month(written(liquor(1, '2.0'), can(1), pour(1, 1, '2.0'), doubt)).unweighed).toEqual([]);
  });
});

describe('what stands on site', () => {
  it('is what is in containers and what is in none, less what is gone', () => {
    const poured = [liquor(1, '10.0'), can(1, '20'), pour(1, 1, '4.0')];
    expect(onSite(written(...poured)).total?.value.toNumber()).toBeCloseTo(11, 6);
    expect(onSite(written(...poured, mark(1, 'gone'))).total?.value.toNumber()).toBeCloseTo(6.6, 6);
    const back = written(...poured, mark(1, 'gone'), mark(1, 'came-back'));
    expect(onSite(back).total?.value.toNumber()).toBeCloseTo(11, 6);
  });

  it('counts the mud of a slurry of which only the liquid was poured into a container', () => {
    const slurry = {
      ...liquor(1, '1.0', 'treated-slurry'),
      solid: {
        wetMass: grams('300'),
        moisture: { by: 'not-determined' },
        holds: { liquor: 'not-determined' },
      },
    } as PlainBody;
    const { total } = onSite(written(slurry, can(1), pour(1, 1, '1.0')));
    // 1.0 L of 1.100 kg/L, and 300 g.
    expect(total.value.toNumber()).toBeCloseTo(1.4, 6);
  });

  it('is at least so much where something was read in a container that is empty by the record', () => {
    const read = (level: string): PlainBody => ({
      kind: 'level-read',
      v: 1,
      containerId: id('c0', 1),
      level: litres(level),
    });
    expect(onSite(written(can(1), read('3')))).toMatchObject({ unweighed: [id('c0', 1)] });
    expect(onSite(written(can(1), read('0')))).toMatchObject({ unweighed: [] });
  });

  it('is at least so much where nobody knows what is in a container', () => {
    const doubt: PlainBody = {
      kind: 'container-marked',
      v: 1,
      containerId: id('c0', 2),
      mark: 'contents-doubtful',
    };
    const state = written(liquor(1, '10.0'), can(1, '20'), pour(1, 1, '10.0'), can(2), doubt, {
      kind: 'level-read',
      v: 1,
      containerId: id('c0', 2),
      level: litres('3'),
    });
    expect(onSite(state)).toMatchObject({ unweighed: [id('c0', 2)] });
  });
});

describe('storage time', () => {
  const container = (state: State) => {
    const found = state.containers.get(id('c0', 1));
    if (!found) throw new Error('no container');
    return accumulationStart(state, found);
  };

  it('counts from the first waste where nobody said where it stands, and where no rule for beside the work is in', () => {
    expect(container(written(liquor(1, '2'), can(1), pour(1, 1, '2')))).toBe(at(2));
    expect(container(written(liquor(1, '2'), can(1), area(1, 'near-work'), pour(1, 1, '2')))).toBe(at(3));
  });

  it('counts from the day it was brought to the store where it stood beside the work, and not before', () => {
    const near = [nearWork, liquor(1, '2'), can(1), area(1, 'near-work'), pour(1, 1, '1')];
    expect(container(written(...near))).toBeNull();
    expect(container(written(...near, area(1, 'store')))).toBe(at(5));
    // Said again of the same place it is one stand.
    const again = written(...near, area(1, 'store'), area(1, 'store'), area(1, 'near-work'));
    expect(again.containers.get(id('c0', 1))?.areas.map(({ is }) => is)).toEqual([
      'near-work',
      'store',
      'near-work',
    ]);
    // Filling up again does not start it anew, nor does carrying it back to the work.
    expect(container(written(...near, area(1, 'store'), pour(1, 1, '1')))).toBe(at(5));
    expect(container(written(...near, area(1, 'store'), area(1, 'near-work')))).toBe(at(5));
  });

  it('counts what stood somewhere before anybody said where', () => {
    expect(container(written(nearWork, liquor(1, '2'), can(1), pour(1, 1, '2'), area(1, 'near-work')))).toBe(
      at(3),
    );
  });

  it('counts from the first waste where it was said in the same minute where it stands, and where it was carried away then', () => {
    const scribe = new Scribe();
    for (const body of [nearWork, liquor(1, '4'), can(1)]) scribe.write(body);
    scribe.write(pour(1, 1, '2'), 10, 10);
    scribe.write(area(1, 'near-work'), 11, 10);
    expect(container(scribe.state)).toBeNull();
    const carried = new Scribe();
    for (const body of [nearWork, liquor(1, '4'), can(1), area(1, 'store')]) carried.write(body);
    carried.write(area(1, 'near-work'), 10, 10);
    carried.write(pour(1, 1, '2'), 11, 10);
    expect(container(carried.state)).toBeNull();
  });

  it('begins anew for other waste once it was empty, and ends when it is gone', () => {
    const emptied = [nearWork, liquor(1, '4'), can(1), area(1, 'store'), pour(1, 1, '2'), tip(1, null, '2')];
    expect(container(written(...emptied))).toBeNull();
    expect(container(written(...emptied, pour(1, 1, '2')))).toBe(at(6));
    expect(container(written(...emptied, pour(1, 1, '2'), mark(1, 'gone')))).toBeNull();
  });
});
