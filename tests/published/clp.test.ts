/**
 * Rules for mixtures against worked examples that others published:
 * - United Nations, ST/SG/AC.10/C.4/2008/23, annex 2: examples of acute toxicity (3.1(c) and 3.1(d)); their copies are named
 *   after the example;
 * - United Nations, ST/SG/AC.10/C.4/2012/25: example 4.1(a) of the summation method;
 * - European Chemicals Agency, helpdesk, Mixture classification: exercises (seminar for the Baltic States, 5 March 2012);
 * - Krejsová, Klasifikace žíravosti a dráždivosti (Verlag Dashöfer, 26 November 2014): the higher end of a range counts;
 * - Safe Work Australia, GHS classification training, answer sheet: labels.
 * Two of the agency's categories are not in EU law (Acute 2 and 3 to water, acute toxicity 5) and are not looked for.
 */
import { describe, expect, it } from 'vitest';
import type { Substance } from '../../src/reference/substances-tables';
import { calculate } from '../../src/rules/clp/classify';
import { type Hazard, hazardOf, hazardText } from '../../src/rules/clp/hazard';
import { labelElements } from '../../src/rules/clp/label';
import type { Part } from '../../src/rules/clp/parts';
import { madeUp } from '../support/made-up-part';

const fired = (parts: readonly Part[]): string[] =>
  calculate(parts)
    .found.filter((f) => f.standing === 'fires')
    .map((f) => hazardText(f.hazard));

const oral = (estimate: string): Partial<Substance> => ({
  toxicity: [{ route: 'oral', estimate, unit: 'mg/kg' }],
});

describe('acute toxicity, as the United Nations work it out', () => {
  it('4 % of an ingredient with 1737 mg/kg makes 43 425 mg/kg, not classified', () => {
    const parts = [madeUp('ingredient 1', '4', oral('1737'))];
    expect(calculate(parts).estimates.oral?.value.toNumber()).toBeCloseTo(43_425, 6);
    expect(fired(parts)).toEqual([]);
  });

  it('26, 23 and 40 % of 2737, 4500 and 400 mg/kg make 873 mg/kg, category 4', () => {
    const parts = [
      madeUp('ingredient 1', '26', oral('2737')),
      madeUp('ingredient 2', '23', oral('4500')),
      madeUp('ingredient 4', '40', oral('400')),
    ];
    expect(calculate(parts).estimates.oral?.value.toFixed(0)).toBe('873');
    expect(fired(parts)).toEqual(['Acute Tox. 4 (oral) H302']);
  });
});

describe('the summation method for water, as the United Nations work it out', () => {
  const chronic = (category: string, code: string): Substance['classes'][number] => ({
    class: 'Aquatic Chronic',
    category,
    code,
  });
  const parts = [
    madeUp('ingredient 1', '0.01', {
      classes: [{ class: 'Aquatic Acute', category: '1', code: 'H400' }, chronic('1', 'H410')],
      m: { acute: '10', chronic: '10', source: 'clp-notified', status: 'memory' },
    }),
    madeUp('ingredient 2', '1.0', { classes: [chronic('2', 'H411')] }),
    madeUp('ingredient 3', '25.0', { classes: [chronic('4', 'H413')] }),
    madeUp('ingredient 4', '73.99', {}),
  ];

  it('0.1 % towards Acute 1 and Chronic 1', () => {
    const { aquatic } = calculate(parts);
    expect(aquatic.acute?.value.toNumber()).toBeCloseTo(0.1, 12);
    expect(aquatic.chronic?.value.toNumber()).toBeCloseTo(0.1, 12);
  });

  it('20 % towards Chronic 3 comes near, 26.01 % towards Chronic 4 reaches it', () => {
    const found = calculate(parts).found.map(({ hazard, standing, grounds }) => [
      hazardText(hazard),
      standing,
      grounds[0]?.figure.value.toNumber(),
    ]);
    expect(found).toEqual([
      ['Aquatic Chronic 3 H412', 'close', 20],
      ['Aquatic Chronic 4 H413', 'fires', 26.01],
    ]);
  });
});

const irritant: Partial<Substance> = { classes: [{ class: 'Skin Irrit.', category: '2', code: 'H315' }] };
const corrosive: Partial<Substance> = { classes: [{ class: 'Skin Corr.', category: '1B', code: 'H314' }] };

describe('skin, as an agency and a publisher work it out', () => {
  it('0.8 % of an irritant is below the cut-off: it does not count at all', () => {
    const parts = [madeUp('surfactant', '9.2', {}), madeUp('thickener', '0.8', irritant)];
    expect(calculate(parts).skin['2']).toBeNull();
  });

  it('1.8 % of an irritant counts', () => {
    const parts = [madeUp('surfactant', '8.2', {}), madeUp('thickener', '1.8', irritant)];
    expect(calculate(parts).skin['2']?.value.toNumber()).toBeCloseTo(0.18, 12);
  });

  it('4 % of what is corrosive is no corrosive mixture; said to be 3 to 7 % it is one', () => {
    expect(fired([madeUp('acid', '4', corrosive)])).not.toContain('Skin Corr. 1B H314');
    expect(fired([madeUp('acid', ['3', '4', '7'], corrosive)])).toContain('Skin Corr. 1B H314');
  });
});

describe('a label, as a trainer answers', () => {
  const accepted = (...codes: string[]): Hazard[] => codes.flatMap((code) => hazardOf(code) ?? []);

  it('an oxidising solid that is harmful and very toxic to water', () => {
    const label = labelElements(
      accepted(
        'Ox. Sol. 2 H272',
        'Acute Tox. 4 (oral) H302',
        'Aquatic Acute 1 H400',
        'Aquatic Chronic 1 H410',
      ),
    );
    expect(label.signalWord).toBe('Danger');
    expect(label.pictograms).toEqual(['GHS03', 'GHS07', 'GHS09']);
    expect(label.hazardStatements.map((s) => s.text)).toEqual([
      'May intensify fire; oxidiser.',
      'Harmful if swallowed.',
      'Very toxic to aquatic life with long lasting effects.',
    ]);
  });
});
