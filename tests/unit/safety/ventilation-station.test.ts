import { describe, expect, it } from 'vitest';
import { inFormula } from '../../../src/quantities/format';
import { readingEnds } from '../../../src/safety/ventilation/reading-due';
import { type DuctedHood, hoodFaults, stationFrom } from '../../../src/safety/ventilation/station';
import { WrittenCharge, WrittenStation } from '../../../src/safety/ventilation/station-schema';
import { hood, leach, room, today } from './ventilation-told';

type Told = Parameters<typeof hood>[0];

function built(told: Told = {}, speed?: string): DuctedHood {
  const station = stationFrom(hood(told, speed), today);
  if (station.is !== 'ducted-hood') throw new Error('no hood');
  return station;
}
const faults = (told?: Told, speed?: string) => hoodFaults(built(told, speed), today);

const read = (measuredOn: string, value = '0.50') => ({
  face: { speed: { value, unit: 'm/s' as const }, measuredOn },
});
const certificate = (low: string, high: string, datedOn = '2026-01-10') => ({
  certificate: {
    low: { value: low, unit: 'm/s' as const },
    high: { value: high, unit: 'm/s' as const },
    datedOn,
  },
});

describe('the air that a hood takes away', () => {
  it('is the opening times the speed: 0.9 m × 0.45 m × 0.5 m/s is 729 m³/h', () => {
    const { face } = built();
    expect(face?.airflow.value.toNumber()).toBeCloseTo(729, 9);
    expect(face && inFormula(face.airflow).replace(/\s/g, ' ')).toBe('729.0 m³/h');
  });

  it('is the same in inches and feet a minute', () => {
    const { face } = built({
      width: { value: '36.00', unit: 'in' },
      height: { value: '18.00', unit: 'in' },
      face: { speed: { value: '98.4', unit: 'ft/min' }, measuredOn: '2026-09-29' },
    });
    // 4.5 ft² × 98.4 ft/min × 0.3048³ m³/ft³ × 60.
    expect(face?.airflow.value.toNumber()).toBeCloseTo(4.5 * 98.4 * 0.3048 ** 3 * 60, 6);
  });

  it('is as uncertain as a reading in a workshop', () => {
    const { face } = built();
    expect(face?.airflow.high.div(face.airflow.value).minus(1).times(100).toNumber()).toBeCloseTo(10, 0);
  });
});

describe('a hood is counted on', () => {
  it.each([['0.40'], ['0.50'], ['0.60']])('at %s m/s', (speed) => expect(faults({}, speed)).toEqual([]));
  it.each([
    ['0.39', 'face-too-slow'],
    ['0.61', 'face-too-fast'],
    ['0', 'face-too-slow'],
  ])('at %s m/s not: %s', (speed, fault) => expect(faults({}, speed)).toEqual([fault]));

  it('not where nobody has measured it, and not without an opening', () => {
    expect(faults({ face: undefined })).toEqual(['face-not-measured']);
    expect(faults({ height: { value: '0', unit: 'm' } })).toEqual(['opening-missing']);
  });

  it('for a year after it was measured', () => {
    expect(faults(read('2025-11-29'))).toEqual([]);
    expect(faults(read('2025-11-28'))).toEqual(['reading-too-old']);
    expect(faults(read('2026-11-30'))).toEqual(['reading-not-yet']);
    expect(readingEnds('2024-02-29')).toBe('2025-02-28');
  });

  it('not once it was changed after that', () => {
    expect(faults({ ...read('2026-09-29'), changedOn: '2026-09-29' })).toEqual([]);
    expect(faults({ ...read('2026-09-29'), changedOn: '2026-09-30' })).toEqual(['reading-before-change']);
  });
});

describe('a certificate of containment', () => {
  it('sets another window', () => {
    expect(faults({ ...certificate('0.30', '0.38') }, '0.35')).toEqual([]);
    expect(faults({ ...certificate('0.30', '0.38') }, '0.50')).toEqual(['face-too-fast']);
    expect(built(certificate('0.30', '0.38')).window.by).toBe('certificate');
  });

  it('never one under 0.3 or above 0.75 m/s', () => {
    expect(faults({ ...certificate('0.20', '0.90') }, '0.29')).toEqual(['face-too-slow']);
    expect(faults({ ...certificate('0.20', '0.90') }, '0.30')).toEqual([]);
    expect(faults({ ...certificate('0.20', '0.90') }, '0.75')).toEqual([]);
    expect(faults({ ...certificate('0.20', '0.90') }, '0.76')).toEqual(['face-too-fast']);
  });

  it.each([
    ['all of it is under 0.3 m/s', certificate('0.10', '0.25')],
    ['it is upside down', certificate('0.70', '0.65')],
    ['it is older than the last change', { ...certificate('0.30', '0.38'), changedOn: '2026-03-01' }],
    ['it is not dated yet', certificate('0.30', '0.38', '2026-12-24')],
  ])('does not count where %s', (_, told) => {
    const { window, certificateOut } = built(told);
    expect([window.by, certificateOut]).toEqual(['usual', true]);
    expect(faults(told, '0.50')).toEqual([]);
    expect(faults(told, '0.35')).toEqual(['face-too-slow', 'certificate-does-not-count']);
  });
});

describe('what a person writes', () => {
  it('is kept as it was written, or refused', () => {
    expect(WrittenStation.parse(hood())).toEqual(hood());
    expect(WrittenStation.safeParse({ ...hood(), name: 'Hood' }).success).toBe(false);
    expect(WrittenStation.safeParse({ ...hood(), changedOn: '2026-02-30' }).success).toBe(false);
    expect(WrittenStation.safeParse({ ...room('40'), volume: { value: '40', unit: 'L' } }).success).toBe(
      false,
    );
    expect(WrittenCharge.safeParse({ ...leach({ Cu: '5' }), limit: 'nobody' }).success).toBe(false);
    expect(WrittenCharge.safeParse({ step: 'filtration' }).success).toBe(true);
    const stated = { at: { value: '0.3', unit: 'ppm' }, whose: 'Port authority' };
    expect(WrittenCharge.safeParse({ ...leach({ Cu: '5' }), limit: stated }).success).toBe(true);
  });
});
