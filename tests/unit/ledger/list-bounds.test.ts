import { describe, expect, test } from 'vitest';
import {
  bandOf,
  basesOf,
  containersOnPaper,
  fillForBase,
  neutraliserFor,
  oldestIn,
} from '../../../src/ledger/list-bounds';
import { at, can, id, litres, pour, Scribe, wash } from './scribe';

const ph = (value: string) => ({ value, unit: '1' }) as const;
const lime = { agent: 'hydrated-lime', targetPh: ph('9.2') } as const;
const limestone = { agent: 'limestone', targetPh: ph('5') } as const;

const half = (): Scribe => {
  const scribe = new Scribe();
  for (const body of [can(1), wash(1, '2'), pour(1, 1, '2')]) scribe.write(body);
  return scribe;
};

describe('a plan', () => {
  test('with a carbonate leaves two thirds of the vessel for foam, any other half of it for stirring', () => {
    const { state } = half();
    expect(fillForBase(state, id('c0', 1), { stages: [lime] })).toEqual({
      max: '50',
      foaming: false,
      byRecord: '40',
    });
    expect(fillForBase(state, id('c0', 1), { stages: [limestone, lime] })).toMatchObject({
      max: '33',
      foaming: true,
    });
  });

  test('gives the band about the pH that it goes to, and none where it goes to none', () => {
    expect(bandOf({ stages: [lime], targetPh: ph('9.2') })).toEqual({ min: '8.7', max: '9.7', aim: '9.2' });
    expect(bandOf({ stages: [{ agent: 'iron' }] })).toBeUndefined();
  });

  test('names each base once, and not the iron', () => {
    expect(basesOf({ stages: [{ agent: 'iron' }, limestone, lime, lime] })).toEqual([
      'limestone',
      'hydrated-lime',
    ]);
  });
});

describe('baking soda in reach', () => {
  const running = (...volumes: string[]): Scribe => {
    const scribe = new Scribe();
    const [opened] = scribe.does({
      do: 'open-batch',
      feed: { capacitors: 'mixed', era: 'unknown', mass: { value: '1', unit: 'kg' } },
    });
    const batchId = opened?.body.kind === 'batch-opened' ? opened.body.batchId : '';
    const strength = { value: '70', unit: '%' } as const;
    for (const volume of volumes)
      scribe.does({
        do: 'log-charge',
        batchId,
        charge: { what: 'acid', volume: litres(volume), strength },
      });
    scribe.does({ do: 'log-step-happened', step: 'leach', batchId, clearance: null });
    return scribe;
  };

  test('is enough for the acid of a batch that runs: 1.319 kg for each litre of 15.7 mol/L, by molar masses', () => {
    const kit = neutraliserFor(running('2.00').state);
    // High end of the volume and of the table of nitric acid, a little over twice 1.319 kg.
    expect(Number(kit?.min)).toBeGreaterThanOrEqual(2.7);
    expect(Number(kit?.min)).toBeLessThan(2.9);
  });

  test('is enough for all that was poured into one batch, a litre now and a litre later', () => {
    const kit = neutraliserFor(running('1.00', '1.00').state);
    expect(Number(kit?.min)).toBeGreaterThanOrEqual(2.7);
    expect(Number(kit?.min)).toBeLessThan(2.9);
  });

  test('is what is kept in any case while no more acid is known, and once the step has ended', () => {
    expect(neutraliserFor(running('0.50').state)).toBeNull();
    const scribe = running('2.00');
    const [stepId = ''] = scribe.state.steps.keys();
    scribe.does({ do: 'end-step', stepId });
    expect(neutraliserFor(scribe.state)).toBeNull();
  });
});

test('nothing in a step that runs is older than the step, and what is in order is never cut off', () => {
  const scribe = new Scribe();
  const [opened] = scribe.does({
    do: 'open-batch',
    feed: { capacitors: 'mixed', era: 'unknown', mass: { value: '1', unit: 'kg' } },
  });
  const batchId = opened?.body.kind === 'batch-opened' ? opened.body.batchId : '';
  const oldest = (minutes: number) => oldestIn(scribe.state, batchId, 'leach', at(minutes), 60)?.max;
  expect(oldest(5)).toBeUndefined();
  scribe.does({ do: 'log-step-happened', step: 'leach', batchId, clearance: null }, 5);
  expect([oldest(6), oldest(65), oldest(125)]).toEqual(['60', '70', '130']);
});

test('as many containers as stand on the newest paper, while they are all there', () => {
  const scribe = half();
  const paper = (containerIds: string[]) => ({
    do: 'record-paper' as const,
    containerIds,
    contentHash: 'a'.repeat(64),
    fileName: 'set.pdf',
    format: 'pdf' as const,
  });
  expect(containersOnPaper(scribe.state)).toBeNull();
  scribe.does(paper([id('c0', 1)]));
  expect(containersOnPaper(scribe.state)).toEqual({ count: '1', fileName: 'set.pdf' });
  scribe.write(can(2));
  scribe.does(paper([id('c0', 1), id('c0', 2)]));
  expect(containersOnPaper(scribe.state)).toBeNull();
});
