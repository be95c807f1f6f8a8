import { addDays, format, parseISO } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingDue } from '../../../src/safety/ventilation/reading-due';
import { hoodFaults, stationFrom } from '../../../src/safety/ventilation/station';
import { hood, room, today } from './ventilation-told';

type Told = Parameters<typeof hood>[0];

const days = (from: string, n: number): string => format(addDays(parseISO(from), n), 'yyyy-MM-dd');
const measured = (measuredOn: string, told: Told = {}) =>
  hood({ face: { speed: { value: '0.50', unit: 'm/s' }, measuredOn }, ...told });

describe('a reading of the air in the opening', () => {
  it('is due where nobody has taken one', () => {
    const { face: _, ...unmeasured } = hood();
    expect(readingDue(unmeasured, today)).toEqual({ why: 'not-measured' });
  });

  it('is due again from the day on which the hood was changed, not before', () => {
    expect(readingDue(measured('2026-09-29', { changedOn: '2026-09-30' }), today)).toEqual({
      why: 'changed-since',
      since: '2026-09-30',
    });
    expect(readingDue(measured('2026-09-29', { changedOn: '2026-09-29' }), today)).toBeNull();
  });

  it('is due after a year, and told of thirty days before', () => {
    expect(readingDue(measured('2025-11-28'), today)).toEqual({ why: 'too-old', since: '2026-11-28' });
    expect(readingDue(measured('2025-11-29'), today)).toEqual({ why: 'soon', by: today });
    expect(readingDue(measured('2025-12-29'), today)).toEqual({ why: 'soon', by: '2026-12-29' });
    expect(readingDue(measured('2025-12-30'), today)).toBeNull();
  });

  it('is of hoods with a duct alone', () => {
    for (const station of [room('40'), { is: 'outdoors' } as const, { is: 'ductless-hood' } as const])
      expect(readingDue(station, today)).toBeNull();
  });

  it('is due exactly where a hood is not counted on for its age', () => {
    const day = fc.integer({ min: -800, max: 0 }).map((n) => days(today, n));
    fc.assert(
      fc.property(day, fc.option(day, { nil: undefined }), (measuredOn, changedOn) => {
        const station = measured(measuredOn, changedOn === undefined ? {} : { changedOn });
        const built = stationFrom(station, today);
        const old =
          built.is === 'ducted-hood' &&
          hoodFaults(built, today).some((f) => f === 'reading-too-old' || f === 'reading-before-change');
        const due = readingDue(station, today);
        expect(due !== null && due.why !== 'soon').toBe(old);
      }),
    );
  });
});
