/** Descriptions of dangerous goods as published examples write them, and sums as the text of ADR states them. */
import { describe, expect, it } from 'vitest';
import { aquatic } from '../../src/rules/transport/aquatic';
import {
  type Described,
  describedByKnowledge,
  describedInAdr,
  describedInUSA,
  namedWaste,
} from '../../src/rules/transport/description';
import { toxic } from '../../src/rules/transport/toxic';
import { consignment } from '../support/consignment';

const described = (entry: Described['entry'], more: Partial<Described>): Described => ({
  entry,
  group: 'II',
  technicalNames: [],
  environmentallyHazardous: false,
  rcraCodes: [],
  reportable: false,
  ...more,
});
const entry = (un: string, name: string, of: string, subsidiary: readonly string[] = []) => ({
  un,
  name,
  class: of,
  subsidiary,
});

describe('a French adviser on wastes under ADR (tennaxia.com, read November 2026), without the tunnel code', () => {
  it('UN 1203 WASTE GASOLINE, 3, II, ENVIRONMENTALLY HAZARDOUS', () => {
    const d = described(entry('UN 1203', 'GASOLINE', '3'), { environmentallyHazardous: true });
    expect(describedInAdr(d)).toBe('UN 1203 WASTE GASOLINE, 3, II, ENVIRONMENTALLY HAZARDOUS');
  });

  it('UN 3295 WASTE HYDROCARBONS, LIQUID, N.O.S. (Gasoline, diesel), 3, II', () => {
    const hydrocarbons = entry('UN 3295', 'HYDROCARBONS, LIQUID, N.O.S.', '3');
    const d = described(hydrocarbons, { technicalNames: ['Gasoline', 'diesel'] });
    expect(describedInAdr(d)).toBe('UN 3295 WASTE HYDROCARBONS, LIQUID, N.O.S. (Gasoline, diesel), 3, II');
  });
});

describe('an Austrian dangerous-goods office (giz.at, read November 2026; German there), without the tunnel code', () => {
  it('UN 1230 WASTE METHANOL, 3 (6.1), II', () => {
    const d = described(entry('UN 1230', 'METHANOL', '3', ['6.1']), {});
    expect(describedInAdr(d)).toBe('UN 1230 WASTE METHANOL, 3 (6.1), II');
  });

  it('UN 3175 SOLIDS CONTAINING FLAMMABLE LIQUID, N.O.S., 4.1, II, WASTE IN ACCORDANCE WITH 2.1.3.5.5', () => {
    const solids = entry('UN 3175', 'SOLIDS CONTAINING FLAMMABLE LIQUID, N.O.S.', '4.1');
    expect(describedByKnowledge(described(solids, {}))).toBe(
      'UN 3175 SOLIDS CONTAINING FLAMMABLE LIQUID, N.O.S., 4.1, II, WASTE IN ACCORDANCE WITH 2.1.3.5.5',
    );
  });
});

describe('the US Department of Transportation', () => {
  it('RQ, NA3077, Hazardous waste, solid, n.o.s. (K170), 9, PGIII (interpretation 15-0227R)', () => {
    const solid = { ...entry('NA3077', 'HAZARDOUS WASTE, SOLID, N.O.S.', '9'), usaOnly: true as const };
    const d = described(solid, { group: 'III', rcraCodes: ['K170'], reportable: true });
    expect(describedInUSA(d).replace('PG III', 'PGIII')).toBe(
      'RQ, NA3077, Hazardous waste, solid, n.o.s. (K170), 9, PGIII',
    );
  });

  it('Waste acetone (49 CFR 172.101(c)(9))', () => {
    expect(namedWaste('acetone', 'Waste')).toBe('Waste acetone');
  });
});

describe('ADR 2.2.9.1.10.4.6 (editions of 2017 and 2019)', () => {
  it('Acute 1 × M ≥ 25 %, and 10 × M × Chronic 1 ≥ 25 %', () => {
    const sums = (shares: Parameters<typeof consignment>[0]['shares']) =>
      aquatic(consignment({ ...(shares ? { shares } : {}) }))?.grounds.map(({ figure }) =>
        figure.value.toNumber(),
      );
    expect(sums({ 'Zn(NO3)2': '25' })).toEqual([25, 250]);
    expect(sums({ 'Zn(NO3)2': '2.5' })).toEqual([25]);
  });
});

describe('ADR 2.2.61.1.10.1 (edition of 2019): LD50 of a preparation = LD50 of the substance × 100 ÷ its per cent', () => {
  it('copper hydroxide, 0.47 mg/L of dust: 47 % of it are at the 1.0 mg/L of packing group III', () => {
    const [found] = toxic(consignment({ state: 'solid', shares: { 'Cu(OH)2': '60' } }));
    const preparation = (0.47 * 100) / 60;
    expect(found?.grounds[0]?.figure.value.toNumber()).toBeCloseTo(100 / preparation, 9);
  });
});
