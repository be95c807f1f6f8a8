/** What the form would not take may still stand in the record, by a correction: it must not become a number. */
import { describe, expect, it } from 'vitest';
import { baseNeeded } from '../../../src/chemistry/base-needed';
import { densityOf } from '../../../src/chemistry/density';
import type { MetalEvidence } from '../../../src/chemistry/evidence';
import { acidFault, metalFault } from '../../../src/chemistry/evidence-faults';
import type { AcidEvidence } from '../../../src/chemistry/free-acid';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { loadAfter, loadOf } from '../../../src/chemistry/load';

const copper: MetalEvidence = { by: 'weighing', metal: 'Cu', mass: { value: '20', unit: 'g' } };
const nickel: MetalEvidence = { by: 'weighing', metal: 'Ni', mass: { value: '8', unit: 'g' } };
const titrated: AcidEvidence = { by: 'titration', result: { value: '0.50', unit: 'mol/L' } };

const liquor = (litres: string, findings: readonly MetalEvidence[], freeAcid: readonly AcidEvidence[]) =>
  liquorFrom({ origin: `test/${litres}`, volume: { value: litres, unit: 'L' }, findings, freeAcid });

describe('a liquor of no volume', () => {
  const none = liquor('0', [copper], [titrated]);

  it('tells nothing: no metal, no acid, no number that is none', () => {
    expect(none.metals.size).toBe(0);
    expect(none.freeAcid).toBeUndefined();
    expect(densityOf(loadOf(none, 'none')).value.isFinite()).toBe(true);
  });

  it('leaves a container open on it, not without a number', () => {
    const load = loadAfter([
      { kind: 'in', name: 'none', liquor: none },
      { kind: 'in', name: 'full', liquor: liquor('2.0', [copper, nickel], [titrated]) },
    ]);
    expect(load?.volume.value.toString()).toBe('2');
    expect(load?.metals.get('Cu')?.openIn).toEqual(['none']);
    const needed = load && baseNeeded('hydrated-lime', load);
    expect(needed?.mass.high.isFinite()).toBe(true);
    expect(needed?.openIn).toEqual(['none']);
  });
});

const impossibleMetals: readonly (readonly [string, MetalEvidence])[] = [
  [
    'after-more-than-before',
    {
      by: 'copper-weighed',
      metal: 'Cu',
      before: { value: '10', unit: 'g' },
      after: { value: '0.02', unit: 'kg' },
    },
  ],
  [
    'high-below-low',
    { by: 'assumed', metal: 'Cu', low: { value: '5', unit: 'g/L' }, high: { value: '900', unit: 'mg/L' } },
  ],
  [
    'units-differ',
    { by: 'assumed', metal: 'Cu', low: { value: '5', unit: 'g/L' }, high: { value: '9', unit: 'g' } },
  ],
  [
    'units-differ',
    { by: 'assumed', metal: 'Cu', low: { value: '5', unit: 'kg' }, high: { value: '9', unit: 'mg/L' } },
  ],
];

const impossibleAcids: readonly (readonly [string, AcidEvidence])[] = [
  [
    'high-below-low',
    { by: 'assumed', low: { value: '2', unit: 'mol/L' }, high: { value: '1', unit: 'mol/L' } },
  ],
  ['ph-out-of-range', { by: 'ph', ph: { value: '14.1', unit: '1' }, instrument: 'meter' }],
  [
    'nothing-in-sample',
    {
      by: 'titration-volumes',
      sample: { value: '0', unit: 'mL' },
      titrant: { value: '12', unit: 'mL' },
      titrantStrength: { value: '0.10', unit: 'mol/L' },
    },
  ],
  [
    'strength-outside-table',
    {
      by: 'charged-minus-consumed',
      volume: { value: '1', unit: 'L' },
      strength: { value: '90', unit: '%' },
    },
  ],
];

describe('evidence that contradicts itself is taken for not determined', () => {
  it.each(impossibleMetals)('copper, %s', (code, found) => {
    expect(metalFault(found)).toEqual({ code });
    expect(liquor('2.0', [found], []).metals.size).toBe(0);
    // What stands beside it counts.
    const beside = liquor('2.0', [found, copper], []).metals.get('Cu');
    expect(beside?.best.all.value.toString()).toBe('20');
    expect(beside?.others).toEqual([]);
  });

  it.each(impossibleAcids)('acid, %s', (code, found) => {
    expect(acidFault(found)?.code).toBe(code);
    expect(liquor('2.0', [], [found]).freeAcid).toBeUndefined();
    expect(liquor('2.0', [], [found, titrated]).freeAcid?.best.perLitre.value.toString()).toBe('0.5');
  });

  it('two ends in units of one kind agree', () => {
    expect(
      metalFault({
        by: 'assumed',
        metal: 'Cu',
        low: { value: '500', unit: 'mg/L' },
        high: { value: '5', unit: 'g/L' },
      }),
    ).toBeNull();
  });
});
