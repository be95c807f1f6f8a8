/** What a feed tells of a liquor, and what a strip tells between its steps, with numbers worked out by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MetalEvidence, StripSteps } from '../../../src/chemistry/evidence';
import { metalFault } from '../../../src/chemistry/evidence-faults';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { typicalMetals } from '../../../src/chemistry/typical';
import { Finding } from '../../../src/ledger/entries/findings';
import { type Figure, mostlyKnownBy } from '../../../src/quantities/figure';
import type { Metal } from '../../../src/reference/tables';

const g = <const U extends string>(value: string, unit: U) => ({ value, unit });
const liquor = (...findings: MetalEvidence[]) =>
  liquorFrom({ origin: 'test', volume: g('2.00', 'L'), findings, freeAcid: [] });
const best = (found: MetalEvidence) => liquor(found).metals.get(found.metal)?.best;

function meets(figure: Figure | undefined, expected: readonly [number, number, number]) {
  if (!figure) throw new Error('not determined');
  for (const [i, end] of [figure.low, figure.value, figure.high].entries())
    expect(Math.abs(end.toNumber() / (expected[i] ?? 0) - 1), `${i}: ${end}`).toBeLessThan(1e-4);
}

const strip = (value: string, steps?: StripSteps): MetalEvidence => ({
  by: 'strip',
  metal: 'Ni',
  concentration: g(value, 'mg/L'),
  steps,
});

describe('a strip read between its steps', () => {
  it.each<readonly [string, StripSteps, readonly [number, number, number]]>([
    // Middles by ratio, √(30 × 100) and √(100 × 300), as limits: 100 × 0.3^(1/√3) and 100 × 3^(1/√3).
    ['30 and 300', { below: g('30', 'mg/L'), above: g('300', 'mg/L') }, [0.0499018, 0.1, 0.1885671]],
    ['30 and 0.3 g/L', { below: g('30', 'mg/L'), above: g('0.3', 'g/L') }, [0.0499018, 0.1, 0.1885671]],
    // Next to nothing: half the step, 50, as a limit: 50 × 2 ÷ √3 = 57.735.
    ['0 and 300', { below: g('0', 'mg/L'), above: g('300', 'mg/L') }, [0.042265, 0.1, 0.1885671]],
    // The side nobody told has the usual factor of 2.
    ['300 above alone', { above: g('300', 'mg/L') }, [0.05, 0.1, 0.1885671]],
    ['30 below alone', { below: g('30', 'mg/L') }, [0.0499018, 0.1, 0.2]],
  ])('100 mg/L between %s', (_, steps, range) => meets(best(strip('100', steps))?.perLitre, range));

  it('nearer steps tell more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 8 }), (below, closer) => {
        const wide = best(strip('100', { below: g(String(below), 'mg/L'), above: g('300', 'mg/L') }));
        const near = best(
          strip('100', { below: g(String(below + closer), 'mg/L'), above: g('300', 'mg/L') }),
        );
        expect(near?.perLitre.low.gt(wide?.perLitre.low ?? 1)).toBe(true);
      }),
    );
  });

  it.each<readonly [string, StripSteps]>([
    ['a step below that is not below', { below: g('100', 'mg/L') }],
    ['a step above that is not above', { above: g('0.1', 'g/L') }],
  ])('%s is a fault, and tells nothing', (_, steps) => {
    expect(metalFault(strip('100', steps))).toEqual({ code: 'steps-out-of-order' });
    expect(best(strip('100', steps))).toBeUndefined();
  });

  it('one that was written before there were steps is read as ever', () => {
    const old = { by: 'strip', metal: 'Ni', concentration: { value: '100', unit: 'mg/L' }, on: '2026-05-02' };
    expect(Finding.parse(old)).toEqual(old);
    meets(best(strip('100'))?.perLitre, [0.05, 0.1, 0.2]);
  });
});

const feed = g('500', 'g');
const typical = (
  metal: Metal,
  liquor: 'leach' | 'barren' = 'leach',
  capacitors: Extract<MetalEvidence, { by: 'typical' }>['capacitors'] = 'precious-metal-electrode',
): MetalEvidence => ({ by: 'typical', metal, capacitors, liquor, feed });
const lessResidue = (metal: Metal, residue: string): MetalEvidence => ({
  by: 'feed-minus-residue',
  metal,
  capacitors: 'precious-metal-electrode',
  liquor: 'leach',
  feed,
  residue: g(residue, 'g'),
});

describe('what a feed usually gives', () => {
  it('500 g hold 80 g of silver, 40 to 125: 16 %, 8 to 25, and the balance', () => {
    // √(40² + 2.5²·…): half a per cent of 80 is 0.4.
    meets(best(typical('Ag'))?.all, [80 - Math.hypot(40, 0.4), 80, 80 + Math.hypot(45, 0.4)]);
    expect(mostlyKnownBy(best(typical('Ag'))?.all as Figure)).toBe('typical');
  });

  it('after cementation copper is that of the feed and what silver and palladium displaced, at least', () => {
    // 2.5 + 80 × 63.546 ÷ (2 × 107.8682) + 3.0 × 63.546 ÷ 106.42
    const copper = best(typical('Cu', 'barren'));
    expect(copper?.all.value.toNumber()).toBeCloseTo(2.5 + 23.5643 + 1.7914, 3);
    expect(copper?.atLeast).toBe(true);
  });

  it.each([
    ['98', '2', 0.3006],
    ['95', '5', 0.3097],
  ])(
    '%s g of silver with %s g of palladium put 0.301 to 0.310 g copper a gram',
    (silver, palladium, each) => {
      const found = best({
        by: 'metals-recovered',
        metal: 'Cu',
        silver: g(silver, 'g'),
        palladium: g(palladium, 'g'),
      });
      expect(found?.all.value.div(100).toNumber()).toBeCloseTo(each, 4);
    },
  );

  it('base-metal electrodes tell of no silver; barren liquor of neither silver nor palladium', () => {
    expect(best(typical('Ag', 'leach', 'base-metal-electrode'))).toBeUndefined();
    expect(best(typical('Ag', 'barren'))).toBeUndefined();
    expect(typicalMetals({ capacitors: 'base-metal-electrode', liquor: 'leach' })).toEqual(['Cu', 'Ni']);
    expect(typicalMetals({ capacitors: 'unknown', liquor: 'barren' })).toEqual(['Cu', 'Ni']);
  });

  it('an unknown feed is as wide as a mixed one', () => {
    const [unknown, mixed] = (['unknown', 'mixed'] as const).map((kind) =>
      best(typical('Ni', 'leach', kind)),
    );
    expect(unknown?.all.high.eq(mixed?.all.high ?? 0)).toBe(true);
    expect(unknown?.all.low.isZero()).toBe(true);
  });
});

describe('feed less dried residue', () => {
  const metals = ['Ag', 'Pd', 'Cu', 'Ni'] as const;

  it('100 g gone are shared as usual: 16 of 18.1 parts are silver', () => {
    expect(best(lessResidue('Ag', '400'))?.all.value.toNumber()).toBeCloseTo((100 * 16) / 18.1, 6);
  });

  it('all metals together are what dissolved, whatever it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), (residue) => {
        const found = liquor(...metals.map((metal) => lessResidue(metal, String(residue)))).metals;
        const sum = metals.reduce((all, m) => all + (found.get(m)?.best.all.value.toNumber() ?? 0), 0);
        expect(Math.abs(sum - (500 - residue))).toBeLessThan(1e-9);
      }),
    );
  });

  it('tells more of silver than the kind of feed alone', () => {
    const both = liquor(typical('Ag'), lessResidue('Ag', '420')).metals.get('Ag');
    expect(both?.best.by).toBe('feed-minus-residue');
  });

  it('more residue than feed is a fault, and tells nothing', () => {
    expect(metalFault(lessResidue('Ag', '501'))).toEqual({ code: 'residue-above-feed' });
    expect(best(lessResidue('Ag', '501'))).toBeUndefined();
  });

  it('two metals of one batch share one weighing of the feed', () => {
    const found = liquor(typical('Ag'), typical('Pd')).metals;
    const origins = (metal: Metal) => [...(found.get(metal)?.best.all.slopes.keys() ?? [])];
    expect(origins('Ag')).toContain('test/feed');
    expect(origins('Pd')).toContain('test/feed');
  });
});
