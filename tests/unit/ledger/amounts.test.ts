import { describe, expect, test } from 'vitest';
import type { Body } from '../../../src/ledger/entries/body';
import { flags } from '../../../src/ledger/flags';
import { at, can, grams, id, pour, Scribe, tip, wash } from './scribe';

const holding = (scribe: Scribe, n: number) => scribe.state.containers.get(id('c0', n));
const volumeIn = (scribe: Scribe, n: number) => holding(scribe, n)?.holds.volume.toFixed();
const codes = (scribe: Scribe) => flags(scribe.state).map(({ code }) => code);

const started = (...bodies: readonly Body[]) => {
  const scribe = new Scribe();
  for (const body of bodies) scribe.write(body);
  return scribe;
};

describe('what is in a container', () => {
  test('volumes written in different units add up exactly', () => {
    const gallon = { ...pour(1, 1, '1'), amount: { value: '1', unit: 'US gal' } } as const;
    const millilitres = { ...pour(1, 1, '1'), amount: { value: '250', unit: 'mL' } } as const;
    expect(volumeIn(started(can(1), wash(1, '9'), gallon, millilitres), 1)).toBe('4.035411784');
  });

  test('what was placed is no longer left over', () => {
    const scribe = started(can(1), wash(1, '3.40'), pour(1, 1, '1.15'));
    const stream = scribe.state.streams.get(id('50', 1));
    expect(stream?.unplaced.volume.toFixed()).toBe('2.25');
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({ code: 'stream-not-placed', volume: '2.25', mass: '0' }),
    );
  });

  test('3.5 L placed of a stream of 3.40 L is written down and flagged with the 0.1 L', () => {
    const scribe = started(can(1), wash(1, '3.40'), pour(1, 1, '3.5'));
    expect(volumeIn(scribe, 1)).toBe('3.5');
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({
        code: 'placed-more-than-logged',
        volume: '0.1',
        about: { streamId: id('50', 1) },
      }),
    );
  });

  test('a transfer takes its share of each stream that is mixed in', () => {
    const scribe = started(
      can(1),
      can(2),
      wash(1, '3'),
      wash(2, '1'),
      pour(1, 1, '3'),
      pour(2, 1, '1'),
      tip(1, 2, '2'),
    );
    const parts = holding(scribe, 2)?.contents.map(({ streamId, volume }) => [streamId, volume.toFixed()]);
    expect(parts).toEqual([
      [id('50', 1), '1.5'],
      [id('50', 2), '0.5'],
    ]);
    expect(volumeIn(scribe, 1)).toBe('2');
  });

  test('more poured out than the ledger holds leaves zero, and the surplus has no origin', () => {
    const scribe = started(can(1), can(2), wash(1, '1'), pour(1, 1, '1'), tip(1, 2, '1.25'));
    expect(volumeIn(scribe, 1)).toBe('0');
    expect(volumeIn(scribe, 2)).toBe('1.25');
    expect(
      holding(scribe, 2)
        ?.contents.find(({ streamId }) => streamId === null)
        ?.volume.toFixed(),
    ).toBe('0.25');
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({ code: 'more-taken-than-held', held: '1', taken: '1.25', unit: 'L' }),
    );
  });

  test('the first waste in is the earliest that happened, though it was logged late', () => {
    const scribe = started(can(1), wash(1, '2'), pour(1, 1, '1'));
    scribe.write(pour(1, 1, '1'), 50, 1);
    expect(holding(scribe, 1)?.firstWasteIn).toBe(at(1));
  });

  test('a container that received older waste is as old as that waste', () => {
    const scribe = started(can(1), can(2), wash(1, '2'), pour(1, 1, '1'), pour(1, 2, '1'), tip(1, 2, '1'));
    expect(holding(scribe, 2)?.firstWasteIn).toBe(at(3));
    expect(holding(scribe, 1)?.firstWasteIn).toBeNull();
  });

  test('a placement that did not happen gives the volume back', () => {
    const scribe = started(can(1), wash(1, '2'));
    const placed = scribe.write(pour(1, 1, '2'));
    scribe.write({ kind: 'entry-withdrawn', v: 1, withdraws: placed.id, reason: 'other can' });
    expect(volumeIn(scribe, 1)).toBe('0');
    expect(scribe.state.streams.get(id('50', 1))?.unplaced.volume.toFixed()).toBe('2');
  });

  test('a wet solid is counted in grams beside the liquid', () => {
    const residue: Body = {
      kind: 'stream-logged',
      v: 1,
      streamId: id('50', 5),
      batchId: null,
      stepId: null,
      stream: 'ceramic-residue',
      solid: {
        wetMass: grams('640'),
        moisture: { by: 'not-determined' },
        holds: { liquor: 'not-determined' },
      },
    };
    const placed: Body = { ...pour(5, 1, '1'), amount: { value: '0.64', unit: 'kg' } };
    const scribe = started(can(1), residue, placed);
    expect(holding(scribe, 1)?.holds.mass.toFixed()).toBe('640');
    expect(volumeIn(scribe, 1)).toBe('0');
  });

  test('a weighed liquid is turned into a volume by its measured density, and flagged without one', () => {
    const weighed: Body = { ...pour(1, 1, '1'), amount: { value: '1.2', unit: 'kg' } };
    const plain = wash(1, '2');
    const dense: Body = { ...plain, liquid: { ...plain.liquid, density: { value: '1.20', unit: 'kg/L' } } };
    expect(volumeIn(started(can(1), dense, weighed), 1)).toBe('1');
    expect(codes(started(can(1), plain, weighed))).toContain('placed-in-another-unit');
  });
});

describe('flags on the shelf', () => {
  test('90 % full is no fault, one millilitre more is', () => {
    expect(codes(started(can(1), wash(1, '9'), pour(1, 1, '4.5')))).not.toContain('over-fill-limit');
    expect(codes(started(can(1), wash(1, '9'), pour(1, 1, '4.501')))).toContain('over-fill-limit');
    expect(codes(started(can(1), wash(1, '9'), pour(1, 1, '5.001')))).toContain('over-capacity');
  });

  test('a fill limit that the collector stated takes the place of the usual one', () => {
    const rule: Body = {
      kind: 'local-rule-stated',
      v: 1,
      stated: { rule: 'fill-limit', value: { value: '80', unit: '%' } },
      saidBy: 'collector',
      saidOn: '2026-03-01',
    };
    const scribe = started(rule, can(1), wash(1, '9'), pour(1, 1, '4.2'));
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({ code: 'over-fill-limit', limit: '4', limitPercent: '80', limitStated: true }),
    );
  });

  test('a tight cap on leach liquor is the most pressing, an empty tight can is nothing', () => {
    expect(codes(started(can(1, '5', 'tight')))).not.toContain('tight-cap-on-gassing-waste');
    const scribe = started(can(1, '5', 'tight'), wash(1, '1', 'leach-liquor'), pour(1, 1, '1'));
    expect(flags(scribe.state)[0]).toMatchObject({ code: 'tight-cap-on-gassing-waste', pressing: 'now' });
  });

  test('nor may what took up a spill be shut tight: baking soda in it goes on foaming', () => {
    const sand = { ...wash(1, '1'), stream: 'spill-absorbent' } as const;
    expect(codes(started(can(1, '5', 'tight'), sand, pour(1, 1, '1')))).toContain(
      'tight-cap-on-gassing-waste',
    );
  });

  test('waste put into a closed container is flagged, after reopening it is not', () => {
    const mark = (word: 'closed' | 'reopened'): Body => ({
      kind: 'container-marked',
      v: 1,
      containerId: id('c0', 1),
      mark: word,
    });
    expect(codes(started(can(1), wash(1, '2'), mark('closed'), pour(1, 1, '1')))).toContain(
      'added-while-closed',
    );
    expect(
      codes(started(can(1), wash(1, '2'), mark('closed'), mark('reopened'), pour(1, 1, '1'))),
    ).not.toContain('added-while-closed');
    const sameMinute = started(can(1), wash(1, '2'));
    sameMinute.write(mark('closed'), 10, 10);
    sameMinute.write(pour(1, 1, '1'), 11, 10);
    expect(codes(sameMinute)).not.toContain('added-while-closed');
  });

  test('without local rules treatment is for planning only and nothing is fit for a drain', () => {
    expect(codes(new Scribe())).toEqual([
      'workshop-not-described',
      'local-rules-missing',
      'treatment-for-planning-only',
      'nothing-fit-for-drain',
    ]);
  });

  test('two devices that gave the same code are flagged', () => {
    const other = { ...can(2), code: 'c-01' };
    expect(codes(started(can(1), other))).toContain('code-used-twice');
  });

  test('a placement into a container nobody opened stays in the history and is flagged', () => {
    const scribe = started(wash(1, '2'), pour(1, 1, '1'));
    expect(codes(scribe)).toContain('entry-does-not-add-up');
    expect(scribe.state.history).toHaveLength(2);
  });
});
