import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { containerFigures } from '../../../src/ledger/container-figures';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { flags } from '../../../src/ledger/flags';
import { levelAgainst } from '../../../src/ledger/level-against';
import { at, can, grams, id, litres, pour, Scribe, tip, wash } from './scribe';

const one = id('c0', 1);

const level = (volume: string) =>
  ({ kind: 'level-read', v: 1, containerId: one, level: litres(volume) }) satisfies PlainBody;
const dried = (volume: string) =>
  ({ kind: 'water-lost', v: 1, containerId: one, amount: litres(volume) }) satisfies PlainBody;

/** 4 L of wash water in a jerrican. */
function holdingFour(): Scribe {
  const scribe = new Scribe();
  scribe.write(can(1, '10'));
  scribe.write(wash(1, '9'));
  scribe.write(pour(1, 1, '4'));
  return scribe;
}

function againstIn({ state }: Scribe) {
  const container = state.containers.get(one);
  if (!container) throw new Error('no such container');
  return levelAgainst(container);
}

const disagrees = ({ state }: Scribe): boolean => flags(state).some(({ code }) => code === 'level-disagrees');

describe('a level against the record', () => {
  test('is nothing to say until one was read', () => {
    expect(againstIn(holdingFour())).toBeNull();
  });

  test.each([
    ['4.0', true],
    ['3.8', true],
    ['2.5', false],
    ['5.5', false],
  ])('%s L read where the record has 4 L agrees: %s', (read, agrees) => {
    const scribe = holdingFour();
    scribe.write(level(read));
    expect(againstIn(scribe)?.agrees).toBe(agrees);
    expect(disagrees(scribe)).toBe(!agrees);
  });

  test('tells by how much, and whether it is less or more', () => {
    const scribe = holdingFour();
    scribe.write(level('2.5'));
    expect(againstIn(scribe)).toMatchObject({ less: true, gap: litres('1.5') });
    scribe.write(level('5.25'));
    expect(againstIn(scribe)).toMatchObject({ less: false, gap: litres('1.25') });
  });

  test('a weight is no word on what is counted in litres, nor a level where solids stand in the liquid', () => {
    const scribe = holdingFour();
    scribe.write({ ...level('1'), level: grams('4300') });
    expect(againstIn(scribe)).toBeNull();
    expect(disagrees(scribe)).toBe(false);
    scribe.write({
      ...wash(2, '1'),
      solid: {
        wetMass: grams('300'),
        moisture: { by: 'not-determined' },
        holds: { liquor: 'not-determined' },
      },
    });
    scribe.write({ ...pour(2, 1, '1'), amount: grams('300') });
    scribe.write(level('9'));
    expect(againstIn(scribe)).toBeNull();
  });

  test('a weight is set against what is counted in grams', () => {
    const scribe = new Scribe();
    scribe.write(can(1, '10'));
    scribe.write({ ...level('1'), level: grams('300') });
    expect(againstIn(scribe)).toMatchObject({ unit: 'g', less: false, agrees: false });
  });

  test.each([
    ['what was poured in', pour(1, 1, '0.5')],
    ['what was taken out', tip(1, null, '0.5')],
    ['water that went off', dried('1.5')],
  ])('is explained by %s since', (_, body) => {
    const scribe = holdingFour();
    scribe.write(level('2.5'), 10);
    expect(disagrees(scribe)).toBe(true);
    scribe.write(body, 11);
    expect(againstIn(scribe)).toBeNull();
    expect(disagrees(scribe)).toBe(false);
  });

  test('is set against what the record had at the hour it was read, also when it is told late', () => {
    const scribe = holdingFour();
    scribe.write(tip(1, null, '3'), 30);
    scribe.write(level('4.0'), 40, 20);
    expect(scribe.state.containers.get(one)?.levels.at(-1)?.held.volume.toFixed()).toBe('4');
    expect(againstIn(scribe)).toBeNull();
    scribe.write(level('1.0'), 50);
    expect(againstIn(scribe)?.agrees).toBe(true);
  });

  test('contradicts nothing where nobody knows what is in it', () => {
    const scribe = holdingFour();
    scribe.write({ kind: 'container-marked', v: 1, containerId: one, mark: 'contents-doubtful' });
    scribe.write(level('1'));
    expect(againstIn(scribe)).toBeNull();
    expect(disagrees(scribe)).toBe(false);
  });
});

describe('water that went off', () => {
  const copper = (n: number, volume: string, gramsPerLitre: string) =>
    ({
      ...wash(n, volume, 'leach-liquor'),
      liquid: {
        volume: litres(volume),
        findings: [{ by: 'photometer', metal: 'Cu', concentration: { value: gramsPerLitre, unit: 'g/L' } }],
        freeAcid: [{ by: 'titration', result: { value: '1.00', unit: 'mol/L' } }],
      },
    }) satisfies PlainBody;

  const copperIn = ({ state }: Scribe): number => {
    const found = containerFigures(state, one).metals.find(({ metal }) => metal === 'Cu');
    return found?.all?.value.toNumber() ?? Number.NaN;
  };
  const acidIn = ({ state }: Scribe): number =>
    containerFigures(state, one).acid.figure?.value.toNumber() ?? Number.NaN;
  const litresIn = ({ state }: Scribe): number =>
    containerFigures(state, one).load?.volume.value.toNumber() ?? Number.NaN;

  const tenths = (n: number): string => (n / 10).toFixed(1);

  test('takes volume and leaves the metals and the acid, also when more is poured in after it', () => {
    const any = fc.record({
      volume: fc.integer({ min: 10, max: 40 }),
      lost: fc.integer({ min: 1, max: 9 }),
      strength: fc.integer({ min: 1, max: 300 }),
      more: fc.integer({ min: 1, max: 30 }),
    });
    fc.assert(
      fc.property(any, ({ volume, lost, strength, more }) => {
        const scribe = new Scribe();
        scribe.write(can(1, '20'));
        scribe.write(copper(1, tenths(volume), tenths(strength)));
        scribe.write(pour(1, 1, tenths(volume)));
        const [before, acid] = [copperIn(scribe), acidIn(scribe)];
        expect(before).toBeCloseTo((volume * strength) / 100, 9);
        scribe.write(dried(tenths(lost)));
        expect(copperIn(scribe)).toBeCloseTo(before, 9);
        expect(acidIn(scribe)).toBeCloseTo(acid, 9);
        expect(litresIn(scribe)).toBeCloseTo((volume - lost) / 10, 9);
        expect(scribe.state.containers.get(one)?.holds.volume.toNumber()).toBeCloseTo(
          (volume - lost) / 10,
          9,
        );
        scribe.write(copper(2, tenths(more), '1.0'));
        scribe.write(pour(2, 1, tenths(more)));
        expect(copperIn(scribe)).toBeCloseTo(before + more / 10, 9);
        expect(litresIn(scribe)).toBeCloseTo((volume - lost + more) / 10, 9);
      }),
      { numRuns: 60 },
    );
  });

  test('what is poured off after it is stronger by as much', () => {
    const scribe = new Scribe();
    scribe.write(can(1, '10'));
    scribe.write(copper(1, '4.0', '10.0'));
    scribe.write(pour(1, 1, '4.0'));
    scribe.write(dried('2.0'));
    scribe.write(tip(1, null, '1.0'));
    expect(copperIn(scribe)).toBeCloseTo(20, 9);
  });

  test('more than was in it leaves nothing, and is said', () => {
    const scribe = holdingFour();
    scribe.write(dried('5'));
    expect(scribe.state.containers.get(one)?.holds.volume.toFixed()).toBe('0');
    expect(flags(scribe.state).some(({ code }) => code === 'more-taken-than-held')).toBe(true);
  });

  test('does not make its contents younger', () => {
    const scribe = holdingFour();
    scribe.write(dried('1'), 90);
    expect(scribe.state.containers.get(one)?.firstWasteIn).toBe(at(2));
  });
});
