import fc from 'fast-check';
import { expect, test } from 'vitest';
import { containerFigures } from '../../../src/ledger/container-figures';
import type { Contents } from '../../../src/ledger/container-load';
import { massOf } from '../../../src/ledger/container-mixture';
import { changesOf, contentsBefore, contentsOf } from '../../../src/ledger/contents-followed';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll, fold } from '../../../src/ledger/fold';
import { emptyState, type State } from '../../../src/ledger/state';
import { anyLife } from './any-life';
import { anyRecord } from './any-record';
import { can, id, litres, pour, Scribe, tip, wash } from './scribe';

/** As far as two ways of following could differ: what is known of each part, and how much there is. */
const told = ({ liquid, residues, unaccounted }: Contents) => ({
  litres: liquid?.volume.value.toFixed(),
  acid: [liquid?.freeAcid.figure?.value.toFixed(), liquid?.freeAcid.openIn],
  metals: [...(liquid?.metals ?? [])].map(([metal, { figure, openIn }]) => [
    metal,
    figure?.value.toFixed(),
    figure?.low.toFixed(),
    openIn,
  ]),
  residues: residues.map(({ streamId, wetMass, held }) => [
    streamId,
    wetMass.value.toFixed(),
    held?.volume.value.toFixed(),
  ]),
  unaccounted,
});

const inAll = (state: State) => ({
  now: [...state.containers.keys()].map((container) => told(contentsOf(state, container))),
  before: [...state.treatments.keys()].map((treatment) => told(contentsBefore(state, treatment))),
});

/** The same entries, and no object of them. */
const copied = (entries: readonly Entry[]): Entry[] => JSON.parse(JSON.stringify(entries));

test('what is remembered of an older state never tells: entry by entry, asked each time, it is as from anew', () => {
  const property = fc.property(fc.oneof(anyLife, anyRecord), (entries) => {
    let state = emptyState;
    for (const entry of entries) {
      state = fold(state, entry);
      inAll(state);
    }
    expect(inAll(state)).toEqual(inAll(applyAll(copied(entries))));
  });
  fc.assert(property, { numRuns: 60 });
});

test('asked of one container alone it is what the whole list of changes comes to', () => {
  const property = fc.property(fc.oneof(anyLife, anyRecord), (entries) => {
    const state = applyAll(entries);
    const last = new Map(changesOf(state).map(({ containerId, after }) => [containerId, told(after)]));
    const fresh = applyAll(copied(entries));
    for (const container of [...fresh.containers.keys()].toReversed())
      if (last.has(container)) expect(told(contentsOf(fresh, container))).toEqual(last.get(container));
  });
  fc.assert(property, { numRuns: 60 });
});

test('an entry makes anew only what comes of it', () => {
  const scribe = new Scribe();
  for (const body of [wash(1, '4'), can(1), can(2), can(3), pour(1, 1, '2'), pour(1, 2, '2'), tip(1, 3, '1')])
    scribe.write(body);
  const before = scribe.state;
  const held = [1, 2, 3].map((n) => contentsOf(before, id('c0', n)));
  const entry = scribe.write({
    kind: 'level-read',
    v: 1,
    containerId: id('c0', 1),
    level: litres('1'),
  });
  const level = fold(before, entry);
  expect([1, 2, 3].map((n) => contentsOf(level, id('c0', n)))).toEqual(held);
  for (const [i, contents] of held.entries()) expect(contentsOf(level, id('c0', i + 1))).toBe(contents);
  const moved = fold(level, scribe.write(tip(1, 3, '0.5')));
  expect(contentsOf(moved, id('c0', 2))).toBe(held[1]);
  expect(contentsOf(moved, id('c0', 3)).liquid?.volume.value.toFixed()).toBe('1.5');
});

test('an entry elsewhere makes no figure of a container anew', () => {
  const scribe = new Scribe();
  const acid = { by: 'titration', result: { value: '0.5', unit: 'mol/L' } } as const;
  const liquid = { volume: litres('4'), findings: [], freeAcid: [acid] };
  for (const body of [{ ...wash(1, '4'), liquid }, can(1), can(2), pour(1, 1, '2'), pour(1, 2, '2')])
    scribe.write(body);
  const figures = (state: State) => {
    const container = state.containers.get(id('c0', 1));
    const { acidPerLitre, density } = containerFigures(state, id('c0', 1));
    return [acidPerLitre, density, container && massOf(state, container)];
  };
  const before = figures(scribe.state);
  expect(before.every((figure) => typeof figure === 'object')).toBe(true);
  const after = figures(fold(scribe.state, scribe.write(tip(2, null, '1'))));
  for (const [i, figure] of before.entries()) expect(after[i]).toBe(figure);
});

test('what was found of a waste later counts in all that it went into', () => {
  const scribe = new Scribe();
  for (const body of [wash(1, '4'), can(1), can(2), pour(1, 1, '4'), tip(1, 2, '2')]) scribe.write(body);
  const before = scribe.state;
  expect(contentsOf(before, id('c0', 2)).liquid?.metals.get('Cu')?.figure).toBeUndefined();
  const test = {
    kind: 'stream-tested',
    v: 1,
    streamId: id('50', 1),
    findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '3', unit: 'g/L' } }],
    freeAcid: [],
  } as const;
  const after = fold(before, scribe.write({ ...test, findings: [...test.findings], freeAcid: [] }));
  expect(contentsOf(after, id('c0', 2)).liquid?.metals.get('Cu')?.figure?.value.toFixed()).toBe('6');
});

test('a drop that went through thousands of vessels is followed', () => {
  const vessels = 4000;
  const scribe = new Scribe();
  scribe.write(wash(1, '5'));
  const vessel = (n: number) => ({ ...can(1, '9'), containerId: id('c0', n), code: `C-${n}` });
  for (let n = 1; n <= vessels; n += 1) scribe.write(vessel(n), n);
  scribe.write(pour(1, 1, '5'), vessels + 1);
  for (let n = 1; n < vessels; n += 1)
    scribe.write({ ...tip(n, n + 1, '5'), fromContainerId: id('c0', n) }, vessels + 1 + n);
  const { liquid } = contentsOf(applyAll(scribe.entries), id('c0', vessels));
  expect(liquid?.volume.value.toFixed()).toBe('5');
});
