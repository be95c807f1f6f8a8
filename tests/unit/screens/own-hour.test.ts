/** Hours on the wall. Summer time ends in Paris on 25 October 2026 at 01:00 UTC (Directive 2000/84/EC, article 3). */
import { describe, expect, it } from 'vitest';
import { ownHourDiffers, ownHourText } from '../../../src/screens/record/own-hour';

const summer = '2026-10-25T00:30:00.000Z';
const winter = '2026-10-25T01:30:00.000Z';

describe('the hour where an entry was written', () => {
  it.each([
    [summer, 'Europe/Paris', '25 Oct 2026, 02:30, UTC+02:00, Europe/Paris'],
    [winter, 'Europe/Paris', '25 Oct 2026, 02:30, UTC+01:00, Europe/Paris'],
    [summer, 'America/Los_Angeles', '24 Oct 2026, 17:30, UTC−07:00, America/Los Angeles'],
    [summer, 'Asia/Kolkata', '25 Oct 2026, 06:00, UTC+05:30, Asia/Kolkata'],
    [summer, 'UTC', '25 Oct 2026, 00:30, UTC+00:00, UTC'],
    [summer, '-210', '24 Oct 2026, 21:00, UTC−03:30'],
    [summer, '+0', '25 Oct 2026, 00:30, UTC+00:00'],
    // As a record from elsewhere may have it.
    [summer, 'Ostermill/Weir_Yard', 'Ostermill/Weir Yard'],
  ])('%s in %s is %s', (iso, zone, text) => {
    expect(ownHourText(iso, zone).replaceAll('\u00a0', ' ')).toBe(text);
  });

  it.each([
    ['in another zone', summer, 'Asia/Tokyo', true],
    ['in another zone with the same hour', '2026-07-01T08:00:00.000Z', 'Europe/Madrid', false],
    ['here', '2026-07-01T08:00:00.000Z', 'Europe/Paris', false],
    ['in the hour that comes twice, the first time', summer, 'Europe/Paris', true],
    ['in the hour that comes twice, the second time', winter, 'Europe/Paris', true],
    ['the millisecond before it comes twice', '2026-10-24T23:59:59.999Z', 'Europe/Paris', false],
    ['the moment after it came twice', '2026-10-25T02:00:00.000Z', 'Europe/Paris', false],
    ['in the hour before the one left out in spring', '2026-03-29T00:30:00.000Z', 'Europe/Paris', false],
    ['in the hour after the one left out in spring', '2026-03-29T01:30:00.000Z', 'Europe/Paris', false],
    ['in a zone that nobody knows', summer, 'Ostermill/Weir_Yard', true],
  ])('written %s says more than the hour here: %#', (_, iso, zone, differs) => {
    expect(ownHourDiffers(iso, zone, 'Europe/Paris')).toBe(differs);
  });
});
