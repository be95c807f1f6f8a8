/** Every way of knowing, with numbers worked out by hand. Two litres unless a line says otherwise. */
import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../../src/chemistry/base-needed';
import { sourceOf } from '../../../src/chemistry/constants';
import type { MetalEvidence, StatedSpread } from '../../../src/chemistry/evidence';
import type { AcidEvidence } from '../../../src/chemistry/free-acid';
import { liquorFrom, type WrittenLiquor } from '../../../src/chemistry/liquor';
import { loadOf } from '../../../src/chemistry/load';
import { moistureFrom, type WrittenMoisture } from '../../../src/chemistry/residue';
import type { Figure } from '../../../src/quantities/figure';
import { potReadings } from '../../../src/reference/pot-readings-tables';
import type { Metal } from '../../../src/reference/tables';

const g = <const U extends string>(value: string, unit: U) => ({ value, unit });
const twoLitres = g('2.00', 'L');

const liquor = (
  findings: readonly MetalEvidence[],
  freeAcid: readonly AcidEvidence[] = [],
  volume: WrittenLiquor['volume'] = twoLitres,
) => liquorFrom({ origin: 'test', volume, findings, freeAcid });

const copper = (found: MetalEvidence, volume = twoLitres as WrittenLiquor['volume']) =>
  liquor([found], [], volume).metals.get(found.metal)?.best;
const acid = (found: AcidEvidence, metals: readonly MetalEvidence[] = []) =>
  liquor(metals, [found]).freeAcid?.best;

/** Low end, value, high end, each to one part in ten thousand. */
function meets(figure: Figure | undefined, expected: readonly [number, number, number]) {
  if (!figure) throw new Error('not determined');
  for (const [i, end] of [figure.low, figure.value, figure.high].entries())
    expect(Math.abs(end.toNumber() - (expected[i] ?? 0)), `${i}: ${end}`).toBeLessThanOrEqual(
      Math.abs(expected[i] ?? 0) * 1e-4,
    );
}

const measured = (
  by: 'assay' | 'photometer' | 'strip',
  concentration: { readonly value: string; readonly unit: 'g/L' | 'mg/L' },
  spread?: StatedSpread,
): MetalEvidence => ({ by, metal: 'Cu', concentration, spread });
const weighed = (
  metal: Metal,
  value: string,
  unit: 'g' | 'mg' | 'lb' | 'kg' = 'g',
): Extract<MetalEvidence, { by: 'weighing' }> => ({ by: 'weighing', metal, mass: { value, unit } });

describe('a metal a litre', () => {
  it.each<readonly [string, MetalEvidence, readonly [number, number, number]]>([
    ['assay, ± 5 %', measured('assay', g('10.0', 'g/L')), [9.5, 10, 10.5]],
    ['photometer in mg/L, ± 10 %', measured('photometer', g('500', 'mg/L')), [0.45, 0.5, 0.55]],
    ['strip, a factor of 2', measured('strip', g('1.0', 'g/L')), [0.5, 1, 2]],
    [
      'k = 2 as stated',
      measured('assay', g('10.0', 'g/L'), { plusMinus: g('0.3', 'g/L'), as: 'k2' }),
      [9.7, 10, 10.3],
    ],
    // 300 mg/L are 0.3 g/L.
    [
      'k = 2 in mg/L',
      measured('assay', g('10.0', 'g/L'), { plusMinus: g('300', 'mg/L'), as: 'k2' }),
      [9.7, 10, 10.3],
    ],
    [
      'k = 2 in per cent',
      measured('strip', g('10.0', 'g/L'), { plusMinus: g('3', '%'), as: 'k2' }),
      [9.7, 10, 10.3],
    ],
    // 0.3 × 2 ÷ √3 = 0.34641
    [
      'limits',
      measured('assay', g('10.0', 'g/L'), { plusMinus: g('0.3', 'g/L'), as: 'limits' }),
      [9.65359, 10, 10.34641],
    ],
    // The last digit hides 0.5 g/L, more than 5 % of 2.
    ['few digits', measured('assay', g('2', 'g/L')), [1.5, 2, 2.5]],
    [
      'assumed between',
      { by: 'assumed', metal: 'Cu', low: g('5', 'g/L'), high: g('15', 'g/L') },
      [5, 10, 15],
    ],
    [
      'assumed in two units',
      { by: 'assumed', metal: 'Cu', low: g('500', 'mg/L'), high: g('1.5', 'g/L') },
      [0.5, 1, 1.5],
    ],
  ])('%s', (_, found, range) => meets(copper(found)?.perLitre, range));

  it('is so much in all by the volume: 2.00 L, 250 mL, 1.00 US gal = 3.785411784 L', () => {
    const ten = measured('assay', g('10.0', 'g/L'));
    expect(copper(ten)?.all.value.toNumber()).toBeCloseTo(20, 9);
    expect(copper(ten, g('250', 'mL'))?.all.value.toNumber()).toBeCloseTo(2.5, 9);
    expect(copper(ten, g('1.00', 'US gal'))?.all.value.toNumber()).toBeCloseTo(37.85411784, 7);
  });
});

describe('a metal in all', () => {
  it.each<readonly [string, MetalEvidence, readonly [number, number, number]]>([
    // 0.5 % of each.
    ['weighed', weighed('Cu', '20.00'), [19.9, 20, 20.1]],
    ['weighed in mg', weighed('Cu', '20500', 'mg'), [20.3975, 20.5, 20.6025]],
    // 0.500 lb × 453.59237
    ['weighed in lb', weighed('Cu', '0.500', 'lb'), [225.6622, 226.796185, 227.93017]],
    ['weighed in kg', weighed('Cu', '0.0500', 'kg'), [49.75, 50, 50.25]],
    // 150.0 ± 0.75 less 30.0 ± 0.15: √(0.75² + 0.15²) = 0.764853
    [
      'copper in and out',
      { by: 'copper-weighed', metal: 'Cu', before: g('150.0', 'g'), after: g('0.0300', 'kg') },
      [119.235147, 120, 120.764853],
    ],
    ['assumed mass', { by: 'assumed', metal: 'Cu', low: g('10', 'g'), high: g('0.030', 'kg') }, [10, 20, 30]],
  ])('%s', (_, found, range) => {
    meets(copper(found)?.all, range);
    expect(copper(found)?.perLitre.value.toNumber()).toBeCloseTo(range[1] / 2, 4);
  });

  it('silver and palladium recovered: 10.0 g ÷ 107.8682 ÷ 2 and 2.0 g ÷ 106.42, × 63.546', () => {
    const found: MetalEvidence = {
      by: 'metals-recovered',
      metal: 'Cu',
      silver: g('10.0', 'g'),
      palladium: g('2.0', 'g'),
    };
    expect(copper(found)?.all.value.toNumber()).toBeCloseTo(2.94554 + 1.19425, 3);
  });

  it('not determined is nothing known', () => {
    expect(copper({ by: 'not-determined', metal: 'Cu' })).toBeUndefined();
  });
});

describe('free acid a litre', () => {
  it.each<readonly [string, AcidEvidence, readonly [number, number, number]]>([
    ['titration, ± 5 %', { by: 'titration', result: g('0.500', 'mol/L') }, [0.475, 0.5, 0.525]],
    [
      'titration as stated',
      { by: 'titration', result: g('0.500', 'mol/L'), spread: { plusMinus: g('0.010', 'mol/L'), as: 'k2' } },
      [0.49, 0.5, 0.51],
    ],
    // 10^0.5 × 1.6 = 5.05964 either way
    ['pH 1.0 by paper', { by: 'ph', ph: g('1.0', '1'), instrument: 'paper' }, [0.0197642, 0.1, 0.505964]],
    // 10^0.2 × 1.6 = 2.535829
    ['pH 2.0 by meter', { by: 'ph', ph: g('2.0', '1'), instrument: 'meter' }, [0.0039435, 0.01, 0.02535829]],
    // At pH 1 still the meter's own; below it 0.5 of a pH, as an electrode is off there: 10^0.5 × 1.6
    ['pH 1.0 by meter', { by: 'ph', ph: g('1.0', '1'), instrument: 'meter' }, [0.039435, 0.1, 0.2535829]],
    [
      'pH 0.9 by meter',
      { by: 'ph', ph: g('0.9', '1'), instrument: 'meter' },
      [0.0248814, 0.1258925, 0.636971],
    ],
    ['pH 7.0 by paper', { by: 'ph', ph: g('7.0', '1'), instrument: 'paper' }, [1.97642e-8, 1e-7, 5.05964e-7]],
    ['pH 7.1 by paper: none', { by: 'ph', ph: g('7.1', '1'), instrument: 'paper' }, [0, 0, 4.019e-7]],
    ['pH 12.0 by meter: none', { by: 'ph', ph: g('12.0', '1'), instrument: 'meter' }, [0, 0, 2.535829e-12]],
    ['assumed', { by: 'assumed', low: g('0.2', 'mol/L'), high: g('0.6', 'mol/L') }, [0.2, 0.4, 0.6]],
  ])('%s', (_, found, range) => meets(acid(found)?.perLitre, range));

  it('of an alkaline liquor says that its alkali is not reckoned', () => {
    const note = (ph: string) => acid({ by: 'ph', ph: g(ph, '1'), instrument: 'meter' })?.perLitre.note;
    expect(note('12.0')).toContain('alkali');
    expect(note('6.9')).not.toContain('alkali');
  });

  it('below pH 1 is as far off as a pot is read there: one source for both', () => {
    const told = (ph: string) =>
      acid({ by: 'ph', ph: g(ph, '1'), instrument: 'meter' })?.perLitre.sources.map(({ title }) => title);
    const off = sourceOf(potReadings.acidPh).title;
    expect(told('0.9')).toContain(off);
    expect(told('1.0')).not.toContain(off);
  });

  it('by paper at its lowest colour is at least so much: a load says that the liquor does not tell the rest', () => {
    const by = (ph: string, instrument: 'paper' | 'meter') =>
      loadOf(liquor([], [{ by: 'ph', ph: g(ph, '1'), instrument }]), 'leach liquor').freeAcid.openIn;
    expect(by('1', 'paper')).toEqual(['leach liquor']);
    expect(by('1.5', 'paper')).toEqual([]);
    expect(by('0.5', 'meter')).toEqual([]);
  });

  it('titrated: 25.0 mL × 0.100 mol/L ÷ 10.0 mL', () => {
    const found: AcidEvidence = {
      by: 'titration-volumes',
      sample: g('10.0', 'mL'),
      titrant: g('25.0', 'mL'),
      titrantStrength: g('0.100', 'mol/L'),
    };
    expect(acid(found)?.perLitre.value.toNumber()).toBeCloseTo(0.25, 9);
    expect(acid(found)?.all.value.toNumber()).toBeCloseTo(0.5, 9);
  });
});

describe('acid titrated in a liquor with iron(III), which drops before pH 4', () => {
  // 0.250 mol/L read; 5.5845 g/L are 0.1 mol/L, which take up to 0.3.
  const by: AcidEvidence = {
    by: 'titration-volumes',
    sample: g('10.0', 'mL'),
    titrant: g('25.0', 'mL'),
    titrantStrength: g('0.100', 'mol/L'),
  };
  const iron = (grams: string): MetalEvidence => weighed('Fe', grams);
  const bare = acid(by)?.perLitre;
  const found = (grams: string) => acid(by, [iron(grams)])?.perLitre;

  it('has the value and the high end that it would have without, and says why it may be less', () => {
    expect(found('2.2338')?.value.eq(bare?.value ?? 0)).toBe(true);
    expect(found('2.2338')?.high.eq(bare?.high ?? 0)).toBe(true);
    expect(found('2.2338')?.note).toContain('Iron(III)');
    expect(bare?.note).not.toContain('Iron');
  });

  it('may be less by three for each iron: 0.02 mol/L of it are 0.06, beside the end point', () => {
    // 2.2338 g in two litres; 0.06 and the end point of 0.250 − its own low end, in squares.
    const own = 0.25 - (bare?.low.toNumber() ?? 0);
    expect(found('2.2338')?.low.toNumber()).toBeCloseTo(0.25 - Math.hypot(0.06, own), 6);
  });

  it('but never less than nothing', () => {
    expect(found('11.169')?.low.toNumber()).toBe(0);
  });

  it('and so the low end of the base counts little of that iron a second time', () => {
    const base = (metals: readonly MetalEvidence[]) =>
      baseNeeded('caustic-soda', loadOf(liquor(metals, [by]), 'liquor'))?.hydroxide;
    const [without, withIron] = [base([]), base([iron('2.2338')])];
    // Three for each of 0.04 mol come on top; the low end may leave all of them out.
    expect(withIron?.value.minus(without?.value ?? 0).toNumber()).toBeCloseTo(0.12, 5);
    expect(withIron?.low.minus(without?.low ?? 0).toNumber()).toBeLessThan(0.05);
  });
});

describe('acid charged less what the metals took', () => {
  const charged = (
    strength: Extract<AcidEvidence, { by: 'charged-minus-consumed' }>['strength'],
    volume: WrittenLiquor['volume'] = g('1.00', 'L'),
  ): AcidEvidence => ({ by: 'charged-minus-consumed', volume, strength });
  it.each<readonly [string, AcidEvidence, readonly MetalEvidence[], number]>([
    ['nothing dissolved', charged(g('2.00', 'mol/L')), [], 2],
    // 3.785411784 L × 2.00
    ['a gallon', charged(g('2.00', 'mol/L'), g('1.00', 'US gal')), [], 7.570824],
    // 1366.7 g/L × 0.60 ÷ 63.012
    ['60 %', charged(g('60.0', '%')), [], 13.0137],
    // The density of 68 %: 955.3 ÷ 63.012
    ['1.4048 kg/L', charged(g('1.4048', 'kg/L')), [], 15.1599],
    // 10 ÷ 63.546 × 8/3 = 0.41965 in dilute acid, × 4 = 0.62947 in strong
    ['copper in dilute acid', charged(g('2.00', 'mol/L')), [weighed('Cu', '10.00')], 1.58035],
    ['copper in strong acid', charged(g('10.0', 'mol/L')), [weighed('Cu', '10.00')], 9.37053],
    // 10 ÷ 107.8682 × 4/3 = 0.12361
    ['silver in dilute acid', charged(g('2.00', 'mol/L')), [weighed('Ag', '10.00')], 1.87639],
    // 10 ÷ 26.9815 × 4 = 1.48250
    ['aluminium in dilute acid', charged(g('2.00', 'mol/L')), [weighed('Al', '10.00')], 0.5175],
    // 10 ÷ 137.327 × 2 = 0.14564, from its oxide or carbonate
    ['barium', charged(g('2.00', 'mol/L')), [weighed('Ba', '10.00')], 1.85436],
  ])('%s', (_, found, metals, mol) => {
    expect(Math.abs((acid(found, metals)?.all.value.toNumber() ?? 0) / mol - 1)).toBeLessThan(1e-4);
  });
});

describe('moisture', () => {
  it.each<readonly [string, WrittenMoisture, readonly [number, number, number]]>([
    ['stated, ± 2', { by: 'stated', percent: g('30', '%') }, [28, 30, 32]],
    // 3 % of 30 as limits: 0.9 × 2 ÷ √3 = 1.03923
    [
      'stated limits',
      { by: 'stated', percent: g('30', '%'), spread: { plusMinus: g('3', '%'), as: 'limits' } },
      [28.96077, 30, 31.03923],
    ],
    ['assumed', { by: 'assumed', low: g('20', '%'), high: g('40', '%') }, [20, 30, 40]],
  ])('%s', (_, found, range) => meets(moistureFrom(found, 'm', 'ceramic-residue'), range));

  it('a sample of 10.00 g that dries to 8.00 g was 20 % liquor', () => {
    const found: WrittenMoisture = { by: 'dried-sample', wet: g('10.00', 'g'), dry: g('8.00', 'g') };
    expect(moistureFrom(found, 'm', 'ceramic-residue')?.value.toNumber()).toBeCloseTo(20, 9);
  });
});

describe('of two ways of knowing', () => {
  const assay = measured('assay', g('10.0', 'g/L'));
  const strip = measured('strip', g('10', 'g/L'));
  it.each([[[assay, strip]], [[strip, assay]]])('the narrower is used, in whatever order', (findings) => {
    const found = liquor(findings).metals.get('Cu');
    expect(found?.best.perLitre.how).toBe('assay');
    expect(found?.others.map((o) => o.perLitre.how)).toEqual(['strip']);
  });
});

it('a base of a stated purity takes as much more: 1 mol of acid, 37.046 g ÷ 0.80 × 1.10', () => {
  const load = loadOf(liquor([], [{ by: 'titration', result: g('0.500', 'mol/L') }]), 'test');
  const lime = baseNeeded('hydrated-lime', load, { purity: g('80.0', '%'), origin: 'bag' });
  expect(lime?.mass.value.toNumber()).toBeCloseTo(50.938, 2);
});
