import { signal } from '@preact/signals';
import { cleanup, screen } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { MarkerRead } from '../../../src/storage/marker';
import type { Trouble } from '../../../src/storage/trouble';
import { open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

const device = '0d000000-0000-7000-8000-000000000001';
const hash = 'a'.repeat(64);

const marker = (entries: number, backup: number | null = null): MarkerRead => ({
  state: 'there',
  marker: {
    v: 1,
    entries,
    heads: [],
    writtenAt: '2026-05-12T07:30:00.000Z',
    lastBackup: backup === null ? null : { at: '2026-05-10T07:00:00.000Z', entries: backup, heads: [] },
    without: [],
  },
});

const damagedEntry = (counter: number) =>
  ({
    what: 'entry',
    id: `00000000-0000-7000-8000-${String(counter).padStart(12, '0')}`,
    hash,
    device,
    counter,
    why: { code: 'hash-differs', stated: hash, computed: 'b'.repeat(64) },
    later: false,
  }) as const;

async function troubled(trouble: readonly Trouble[], at: string, found: MarkerRead = marker(214, 190)) {
  const memory = await workshopInMemory();
  open({ ...memory.shell, trouble: signal(trouble), marker: () => found }, at);
  return memory;
}

describe('a record that is not whole', () => {
  test.each(['today', 'batches', 'containers', 'record'])('is told on %s, with a door', async (place) => {
    await troubled([{ code: 'shorter', missing: [], entries: 3 }], place);
    const door = screen.getByRole('link', { name: /The record is not whole/ });
    expect(door.getAttribute('href')).toBe('#/record/not-whole');
  });

  test('is told on a form without a word of a tap that leads nowhere', async () => {
    await troubled([{ code: 'shorter', missing: [], entries: 3 }], 'batches/new');
    const strip = screen.getByRole('complementary', { name: 'The record is not whole' });
    expect(strip.textContent).toMatch(/Under Record stands what is wrong/);
    expect(strip.textContent).not.toMatch(/Tap/);
    expect(strip.querySelector('a')).toBeNull();
  });

  test('is not told on an emergency card', async () => {
    await troubled([{ code: 'gone' }], 'sos');
    expect(screen.queryByText(/The record is/)).toBeNull();
  });

  test('tells how many entries are missing, how many there were, and which of them no backup has', async () => {
    await troubled([{ code: 'shorter', missing: [], entries: 3 }], 'record/not-whole');
    expect(screen.getByText('3 entries at the end are missing')).toBeTruthy();
    expect(screen.getByText(/^It had 214 entries, the last written/)).toBeTruthy();
    expect(screen.getByText(/^Last backup 10.May .*, with 190 entries$/)).toBeTruthy();
    expect(screen.getByText('24 entries after it are in no backup noted here.')).toBeTruthy();
    expect(screen.getByRole('link', { name: /Restore a backup/ }).getAttribute('href')).toBe(
      '#/record/restore',
    );
    expect(screen.getByRole('link', { name: /Take out what is here/ }).getAttribute('href')).toBe(
      '#/record/backup',
    );
  });

  test('does not count what was given up before', async () => {
    const found = marker(214);
    if (found.state !== 'there') throw new Error('no marker');
    const without = [{ what: 'missing', at: '2026-05-11T07:00:00.000Z', device, from: 2, to: 4 }] as const;
    const other = { ...without[0], device: '0d000000-0000-7000-8000-000000000009' };
    const heads = [{ device, counter: 214, hash }];
    const told = { ...found, marker: { ...found.marker, heads, without: [...without, other] } };
    await troubled([{ code: 'gone' }], 'record/not-whole', told);
    expect(screen.getByText(/^It had 211 entries/)).toBeTruthy();
    cleanup();
    await troubled([{ code: 'gone' }], 'record/not-whole/go-on', told);
    expect(screen.getByText(/^All 211 entries/)).toBeTruthy();
  });

  test('says that nobody knows how many there were where the marker cannot be read', async () => {
    await troubled([{ code: 'gone' }], 'record/not-whole', { state: 'unreadable' });
    expect(screen.getByText('How many entries it had is not known')).toBeTruthy();
    expect(screen.queryByText(/^It had/)).toBeNull();
    expect(screen.queryByRole('link', { name: /Take out/ })).toBeNull();
  });

  test('names damaged entries with a door to each, the first of many', async () => {
    const wrong = Array.from({ length: 20 }, (_, at) => damagedEntry(at + 1));
    await troubled([{ code: 'damaged', wrong, count: 150 }], 'record/not-whole');
    expect(screen.getAllByRole('link', { name: /Entry \d+ of this phone is damaged/ })).toHaveLength(8);
    expect(screen.getByText('And 142 more')).toBeTruthy();
    cleanup();
    await troubled([{ code: 'damaged', wrong, count: 12_150 }], 'record/not-whole/go-on');
    expect(screen.getByText(/^20 damaged entries count in the figures as they stand now/)).toBeTruthy();
    expect(screen.getByText(/^12\D130 more are damaged and are not given up with this/)).toBeTruthy();
  });

  test('tells how many are missing between others, and what is given up without them', async () => {
    const wrong = { ...damagedEntry(7), why: { code: 'counter-gap', expected: 5, found: 7 } } as const;
    await troubled([{ code: 'damaged', wrong: [wrong], count: 1 }], 'record/not-whole');
    expect(
      screen.getByRole('link', { name: /^2 entries before entry 7 of this phone are missing/ }),
    ).toBeTruthy();
    cleanup();
    await troubled([{ code: 'damaged', wrong: [wrong], count: 1 }], 'record/not-whole/go-on');
    expect(screen.getByText(/^2 entries missing between others\./)).toBeTruthy();
    expect(screen.queryByText(/damaged entry/)).toBeNull();
  });

  test('of a newer version is no damage: nothing is restored or given up, the new version is taken', async () => {
    await troubled([{ code: 'later-version', entries: 5 }], 'record/not-whole');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('A newer Leesbook wrote here');
    expect(screen.queryByRole('link', { name: /Restore/ })).toBeNull();
    cleanup();
    await troubled([{ code: 'later-version', entries: 5 }], 'record/not-whole/go-on');
    expect(screen.queryByRole('button', { name: /Go on/ })).toBeNull();
  });
});

describe('going on', () => {
  test('is decided only after what is given up was read, in two steps', async () => {
    const decided: string[] = [];
    const memory = await workshopInMemory();
    const goOn = async () => {
      decided.push('now');
      return null;
    };
    const trouble = signal<readonly Trouble[]>([
      { code: 'shorter', missing: [], entries: 3 },
      { code: 'damaged', wrong: [damagedEntry(7), { what: 'head', why: 'missing' }], count: 2 },
    ]);
    open({ ...memory.shell, trouble, marker: () => marker(214), goOn }, 'record/not-whole/go-on');
    expect(screen.getByText(/^At the least 3 entries at the end\./)).toBeTruthy();
    expect(screen.getByText(/^One damaged entry counts in the figures as it stands now/)).toBeTruthy();
    expect(screen.queryByText(/without it|left out/)).toBeNull();
    expect(screen.getByText(/goes on as a new device/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Go on as it is' })).toBeNull();
    await tap('I have read what comes of it');
    expect(decided).toEqual([]);
    await tap('Go on as it is');
    expect(decided).toEqual(['now']);
  });

  test('that could not be kept says so, and can be tried again', async () => {
    const memory = await workshopInMemory();
    const goOn = async () => ({ code: 'disk-full' }) as const;
    open(
      { ...memory.shell, trouble: signal([{ code: 'gone' }]), marker: () => marker(214), goOn },
      'record/not-whole/go-on',
    );
    expect(screen.getByText('All 214 entries of the record before, and every photo in it.')).toBeTruthy();
    await tap('I have read what comes of it');
    await tap('Begin a new record');
    expect(await screen.findByText(/The phone is full/)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Begin a new record' })).toBeTruthy();
  });

  test('stays told until it comes back', async () => {
    const memory = await workshopInMemory();
    const found: MarkerRead = {
      state: 'there',
      marker: {
        v: 1,
        entries: 2,
        heads: [],
        writtenAt: null,
        lastBackup: null,
        without: [
          { what: 'record', at: '2026-05-11T07:00:00.000Z', entries: 214 },
          { what: 'entry', at: '2026-05-11T07:00:00.000Z', id: null, hash: null, device: null, counter: 7 },
          { what: 'missing', at: '2026-05-11T07:00:00.000Z', device, from: 2, to: 4 },
        ],
      },
    };
    const { shell } = memory;
    open({ ...shell, marker: () => found }, 'record');
    const row = screen.getByRole('link', { name: /Goes on without 3 things.*not been looked at/ });
    expect(row.textContent).toContain('4 entries are here.');
    expect(screen.queryByText(/^Whole/)).toBeNull();
    cleanup();
    const looked = {
      entries: 4,
      photos: 0,
      heads: [],
      wrong: [],
      wrongCount: 0,
      untold: { damaged: 0, later: 0, photo: 0 },
      photosElsewhere: 0,
    };
    open({ ...shell, marker: () => found, lastCheck: signal(looked) }, 'record');
    expect(screen.getByRole('link', { name: /But for what was damaged, each is as it was/ })).toBeTruthy();
    cleanup();
    open({ ...shell, marker: () => found }, 'record/history');
    const lacks = await screen.findByRole('link', {
      name: /^Not all is here: A whole record of 214 entries, and 2 more/,
    });
    expect(lacks.getAttribute('href')).toBe('#/record/not-whole');
    cleanup();
    open({ ...shell, marker: () => found }, row.getAttribute('href') ?? '');
    expect(screen.getByText('A whole record of 214 entries')).toBeTruthy();
    expect(screen.getByText('Entry 7, damaged')).toBeTruthy();
    expect(screen.getByText('3 entries that are missing')).toBeTruthy();
    expect(screen.queryByText(/Nothing is wrong/)).toBeNull();
    expect(screen.getByRole('link', { name: /Restore a backup/ }).getAttribute('href')).toBe(
      '#/record/restore',
    );
  });
});

describe('a record that goes on with a damaged entry', () => {
  test.each(['today', 'record'])('tells on %s that figures may rest on it', async (place) => {
    const memory = await workshopInMemory();
    const found = marker(214);
    if (found.state !== 'there') throw new Error('no marker');
    const { id, counter } = damagedEntry(7);
    const lacking = {
      ...found.marker,
      without: [{ what: 'entry', at: '2026-05-11T07:00:00.000Z', id, hash, device, counter }],
    };
    const shell = { ...memory.shell, marker: () => ({ ...found, marker: lacking }) as MarkerRead };
    open(shell, place);
    const row = screen.getByRole('link', { name: /damaged entry.*(in the figures|what can be read of it)/ });
    expect(row.getAttribute('href')).toBe('#/record/not-whole');
    cleanup();
    open({ ...memory.shell, marker: () => found }, place);
    expect(screen.queryByText(/damaged entry/)).toBeNull();
  });
});

describe('a form on a record that is not written to', () => {
  test.each([
    ['read-only', /nothing is written into it\. What you have typed stays here/],
    ['disk-full', /Nothing was written, and what you typed stays here\. Make a backup/],
    ['closed', /Open Leesbook again: what you typed is still there/],
  ] as const)('stays filled, also over a reload, and says what to do: %s', async (code, says) => {
    const memory = await workshopInMemory();
    open(memory.shell, 'batches/new');
    await user.type(screen.getByLabelText('Mass of the feed'), '700');
    await user.click(screen.getByRole('radio', { name: 'mixed' }));
    await user.click(screen.getByRole('radio', { name: 'lead-free' }));
    memory.breakStore({ code });
    await tap('Open this batch');
    expect(await screen.findByText(says)).toBeTruthy();
    cleanup();
    open(memory.shell, 'batches/new');
    expect((screen.getByLabelText('Mass of the feed') as HTMLInputElement).value).toBe('700');
    memory.breakStore(null);
    await tap('Open this batch');
    expect(memory.state.value.batches.size).toBe(2);
    expect(memory.drafts.size).toBe(0);
  });
});
