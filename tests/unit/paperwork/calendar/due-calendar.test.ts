import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type DueDay, dueCalendar } from '../../../../src/paperwork/calendar/due-calendar';

const madeAt = '2026-11-29T20:40:00.000Z';
const made = (...days: DueDay[]): string => dueCalendar(days, 'Workshop, due; days', madeAt);

const due = (more: Partial<DueDay> = {}): DueDay => ({
  id: 'storage/0190',
  day: '2027-05-23',
  title: 'C-014: last day',
  description: 'Start + 180 days.',
  ...more,
});

/** Read back by a library that did not write it. */
const read = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));

describe('a calendar of due days, read back by another library', () => {
  it('has each as a whole day, in no zone', () => {
    const [event] = read(made(due()));
    expect(event?.startDate.isDate).toBe(true);
    expect(event?.startDate.toString()).toBe('2027-05-23');
    expect(event?.endDate.toString()).toBe('2027-05-24');
    expect(event?.startDate.zone.tzid).toBe('floating');
  });

  it('gives back every letter: commas, semicolons, backslashes, lines, umlauts, emoji', () => {
    const title = 'Säure, 30 %; „Kanister“ C:\\14 🧪👩🏽‍🔬';
    const description = 'Erste Zeile,\nzweite; Zeile\\n\n\nÄÖÜß → ≤ µ 🇪🇺';
    const [event] = read(made(due({ title, description, alarmDaysBefore: 7 })));
    expect([event?.summary, event?.description]).toEqual([title, description]);
    const alarm = event?.component.getFirstSubcomponent('valarm');
    expect(alarm?.getFirstPropertyValue('description')).toBe(title);
    // This reader leaves a property that the standard does not name as it is written.
    const calendar = new ICAL.Component(ICAL.parse(made(due())));
    expect(calendar.getFirstPropertyValue('x-wr-calname')).toBe('Workshop\\, due\\; days');
  });

  it('gives back whatever was written, in lines of 75 octets at most', () => {
    const text = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200, size: 'max' });
    fc.assert(
      fc.property(text, text, (title, description) => {
        const file = made(due({ title, description, alarmDaysBefore: 3 }));
        for (const line of file.split('\r\n'))
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
        const [event] = read(file);
        // What no line of the file may hold stands there as a space.
        const shown = (given: string) => given.replace(/\r\n?/g, '\n').replace(/(?!\n)\p{Cc}/gu, ' ');
        expect([event?.summary, event?.description]).toEqual([shown(title), shown(description)]);
      }),
    );
  });

  it('ends every line with CR and LF, and has no other break', () => {
    const file = made(due({ description: 'one\rtwo\r\nthree\nfour' }));
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
  });

  it.each([
    [7, '-P6DT16H', '2027-05-16T08:00:00'],
    [1, '-PT16H', '2027-05-22T08:00:00'],
    [0, 'PT8H', '2027-05-23T08:00:00'],
  ])('calls %i days before, at eight in the morning', (alarmDaysBefore, written, moment) => {
    const file = made(due({ alarmDaysBefore }));
    expect(file).toContain(`TRIGGER:${written}\r\n`);
    const [event] = read(file);
    const trigger = event?.component.getFirstSubcomponent('valarm')?.getFirstPropertyValue('trigger');
    const at = event?.startDate.clone();
    if (at) at.isDate = false;
    at?.addDuration(trigger as InstanceType<typeof ICAL.Duration>);
    expect(at?.toString()).toBe(moment);
  });

  it('escapes what a calendar calls with, though the reader would take it unescaped', () => {
    const file = made(due({ title: 'acid, lye; a\\b', alarmDaysBefore: 7 }));
    expect(file).toContain('\r\nSUMMARY:acid\\, lye\\; a\\\\b\r\n');
    expect(file).toContain('\r\nDESCRIPTION:acid\\, lye\\; a\\\\b\r\n');
  });

  it('does not call where it should not', () => {
    expect(made(due())).not.toContain('VALARM');
  });

  it('keeps the UID and raises the SEQUENCE when it is made again, so that it is brought up to date', () => {
    const [before] = read(made(due()));
    const [after] = read(
      dueCalendar([due({ day: '2027-06-01', title: 'C-014' })], 'Workshop', '2026-11-30T08:00:00.000Z'),
    );
    expect(after?.uid).toBe(before?.uid);
    expect(Number(after?.sequence)).toBeGreaterThan(Number(before?.sequence));
    const stamp = (event: typeof before) => String(event?.component.getFirstPropertyValue('dtstamp'));
    expect([stamp(before), stamp(after)]).toEqual(['2026-11-29T20:40:00Z', '2026-11-30T08:00:00Z']);
  });

  it('is the same to the last byte when it is made of the same at the same time', () => {
    expect(made(due(), due({ id: 'other' }))).toBe(made(due(), due({ id: 'other' })));
  });

  it('knows the leap day and the end of a year', () => {
    const [leap, last] = read(made(due({ id: 'a', day: '2028-02-29' }), due({ id: 'b', day: '2099-12-31' })));
    expect(leap?.endDate.toString()).toBe('2028-03-01');
    expect(last?.endDate.toString()).toBe('2100-01-01');
  });
});

describe('no calendar is made', () => {
  it('of nothing, or of two days of one id', () => {
    expect(() => made()).toThrow('without a day');
    expect(() => made(due(), due({ day: '2027-01-01' }))).toThrow('two days');
  });
});
