/** When two ways of knowing one thing cannot both be true, and which one is used. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { disagreements } from '../../../src/chemistry/disagreement';
import type { MetalEvidence, StatedSpread } from '../../../src/chemistry/evidence';
import type { AcidEvidence } from '../../../src/chemistry/free-acid';
import { liquorFrom, type WrittenLiquor } from '../../../src/chemistry/liquor';
import { contradictionsIn } from '../../../src/ledger/disagreements';
import { width } from '../../../src/quantities/figure';

const g = <const U extends string>(value: string, unit: U) => ({ value, unit });
type Volume = Pick<WrittenLiquor, 'volume' | 'volumeSpread'>;
const twoLitres: Volume = { volume: g('2.00', 'L') };

const liquor = (
  findings: readonly MetalEvidence[],
  freeAcid: readonly AcidEvidence[] = [],
  volume: Volume = twoLitres,
) => liquorFrom({ origin: 'test', ...volume, findings, freeAcid });
const found = (findings: readonly MetalEvidence[], volume?: Volume) => {
  const known = liquor(findings, [], volume).metals.get('Cu');
  if (!known) throw new Error('not determined');
  return { known, against: disagreements<'g'>(known) };
};

const measured = (
  by: 'assay' | 'photometer' | 'strip',
  value: string,
  spread?: StatedSpread,
): MetalEvidence => ({ by, metal: 'Cu', concentration: g(value, 'g/L'), spread });
const weighed = (value: string): MetalEvidence => ({ by: 'weighing', metal: 'Cu', mass: g(value, 'g') });
const sheet = (before: string, after: string): MetalEvidence => ({
  by: 'copper-weighed',
  metal: 'Cu',
  before: g(before, 'g'),
  after: g(after, 'g'),
});

describe('two ways of knowing', () => {
  // Assay ± 5 % and photometer ± 10 %: 10 ± 0.5 and x ± 0.1 x, beyond √(0.5² + (0.1 x)²).
  it.each([
    ['11.2', false],
    ['11.3', true],
    ['8.95', true],
    ['9.00', false],
  ])('10.0 g/L by assay and %s by photometer disagree: %s', (value, disagree) => {
    expect(found([measured('assay', '10.0'), measured('photometer', value)]).against.length > 0).toBe(
      disagree,
    );
  });

  it('are told with the difference and its range, which does not reach nothing', () => {
    const [against] = found([measured('assay', '10.0'), measured('photometer', '12.0')]).against;
    expect([against?.more.by, against?.less.by]).toEqual(['photometer', 'assay']);
    // 2 L × 2 g/L = 4 g ± 2 L × √(0.5² + 1.2²), and the volume's 5 % of 4.
    expect(against?.difference.value.toNumber()).toBeCloseTo(4, 9);
    expect(against?.difference.high.toNumber()).toBeCloseTo(4 + Math.hypot(2 * 1.3, 0.2), 9);
  });

  const wide: Volume = { volume: g('2.00', 'L'), volumeSpread: { plusMinus: g('50', '%'), as: 'k2' } };

  it('a volume that is hardly known hides no disagreement between two concentrations', () => {
    const two = [measured('assay', '10.0'), measured('assay', '13.0')];
    const { known, against } = found(two, wide);
    expect(known.best.all.high.gt(known.others[0]?.all.low ?? 0)).toBe(true);
    expect(against).toHaveLength(1);
  });

  it('but between a concentration and a mass it counts', () => {
    const two = [measured('assay', '10.0'), weighed('26.0')];
    expect(found(two, wide).against).toHaveLength(0);
    expect(found(two).against).toHaveLength(1);
  });

  it('evidence of a part says nothing against more, and against less it does', () => {
    expect(found([measured('assay', '10.0'), sheet('110.0', '100.0')]).against).toHaveLength(0);
    expect(found([measured('assay', '10.0'), sheet('130.0', '100.0')]).against).toHaveLength(1);
    const parts: MetalEvidence = {
      by: 'metals-recovered',
      metal: 'Cu',
      silver: g('10.0', 'g'),
      palladium: g('0', 'g'),
    };
    expect(found([sheet('130.0', '100.0'), parts]).against).toHaveLength(0);
  });
});

const value = fc.integer({ min: 100, max: 4000 }).map((n) => (n / 100).toFixed(2));
const piece: fc.Arbitrary<MetalEvidence> = fc.oneof(
  fc
    .tuple(fc.constantFrom('assay' as const, 'photometer' as const, 'strip' as const), value)
    .map(([by, v]) => measured(by, v)),
  value.map(weighed),
  value.map(
    (v): MetalEvidence => ({ by: 'assumed', metal: 'Cu', low: g(v, 'g/L'), high: g('41.00', 'g/L') }),
  ),
);
const pieces = fc.array(piece, { minLength: 1, maxLength: 5 });
const told = (findings: readonly MetalEvidence[], volume?: Volume) =>
  found(findings, volume)
    .against.map(({ difference }) => difference.value.toFixed(6))
    .sort();

describe('whatever the evidence', () => {
  it('the order in which it was written changes neither what is used nor what disagrees', () => {
    fc.assert(
      fc.property(pieces, (all) => {
        const back = all.toReversed();
        expect(told(back)).toEqual(told(all));
        expect(width(found(back).known.best.all).toFixed(9)).toBe(
          width(found(all).known.best.all).toFixed(9),
        );
      }),
    );
  });

  it('units change nothing', () => {
    const milli = (one: MetalEvidence): MetalEvidence => {
      if (!('concentration' in one)) return one;
      const mg = String(Math.round(Number(one.concentration.value) * 1000));
      return { ...one, concentration: g(mg, 'mg/L') };
    };
    fc.assert(
      fc.property(pieces, (all) => {
        expect(told(all.map(milli), { volume: g('2000', 'mL') })).toEqual(told(all));
      }),
    );
  });

  it('one more piece never widens the best, unless it is against it', () => {
    fc.assert(
      fc.property(pieces, piece, (all, more) => {
        const after = found([...all, more]);
        fc.pre(after.against.length === 0);
        expect(width(after.known.best.all).lte(width(found(all).known.best.all))).toBe(true);
      }),
    );
  });

  it('nothing is lost: as many pieces stand as were written, each with its place', () => {
    fc.assert(
      fc.property(pieces, (all) => {
        const { best, others } = found(all).known;
        expect([best, ...others].map(({ index }) => index).sort()).toEqual(all.map((_, i) => i));
      }),
    );
  });
});

it('a coarse strip that came out far too low is narrow in grams, and is still not the one used', () => {
  const { known } = found([measured('strip', '0.20'), measured('photometer', '2.60')]);
  expect(width(known.others[0]?.all ?? known.best.all).lt(width(known.best.all))).toBe(true);
  expect(known.best.by).toBe('photometer');
});

describe('acid charged less consumed', () => {
  const charged = (litres: string): AcidEvidence => ({
    by: 'charged-minus-consumed',
    volume: g(litres, 'L'),
    strength: g('2.00', 'mol/L'),
  });

  // 63.5 g of copper take 8/3 mol in dilute acid.
  it('that cannot have been enough is said, with by how much', () => {
    const found = contradictionsIn(liquor([weighed('63.546')], [charged('1.00')]));
    expect(found.short?.value.toNumber()).toBeCloseTo(8 / 3 - 2, 3);
    expect(liquor([weighed('63.546')], [charged('1.00')]).freeAcid?.best.all.value.isZero()).toBe(true);
  });

  it('that was about enough is no contradiction, and that was plenty is not short at all', () => {
    const about = liquor([weighed('63.546')], [charged('1.30')]);
    expect(about.freeAcid?.best.short?.value.gt(0)).toBe(true);
    expect(contradictionsIn(about).short).toBeUndefined();
    expect(liquor([weighed('63.546')], [charged('3.00')]).freeAcid?.best.short).toBeUndefined();
  });

  it('is held against a titration', () => {
    const two = liquor([], [charged('1.00'), { by: 'titration', result: g('0.50', 'mol/L') }]);
    expect(contradictionsIn(two).acid).toHaveLength(1);
    const one = liquor([], [charged('1.00'), { by: 'titration', result: g('1.00', 'mol/L') }]);
    expect(contradictionsIn(one).acid).toHaveLength(0);
  });
});
