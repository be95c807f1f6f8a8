import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { signal } from '@preact/signals';
import { fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Body, PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Shell } from '../../../src/screens/shell';
import { notedOnceIn } from '../../../src/storage/backup/about-backup';
import type { RestorePlan } from '../../../src/storage/backup/plan-restore';
import {
  forgetMarker,
  type MarkerRead,
  noteBroughtIn,
  readMarker,
  type Without,
} from '../../../src/storage/marker';
import { backupHere } from '../../support/backup-here';
import { open, tap, user } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';
import {
  anotherPhone,
  backedUp,
  entriesIn,
  opened,
  person,
  read,
  says,
  workshop,
} from '../storage/backup/invented-record';

beforeEach(anotherPhone);
afterEach(async () => {
  vi.restoreAllMocks();
  await anotherPhone();
});

const kept = (name: string) => new File([readFileSync(`tests/unit/storage/kept/${name}`)], name);

function restoring(with_: Partial<Shell['backups']> = {}, more: Partial<Shell> = {}) {
  const { shell, pass } = shellInMemory('2026-05-12T08:00:00.000Z');
  const noted: Without[] = [];
  const backups: Shell['backups'] = {
    ...shell.backups,
    work: () => backupHere(),
    noteWithout: (without) => {
      noted.push(...without);
      return true;
    },
    ...with_,
  };
  open({ ...shell, backups, ...more }, 'record/restore');
  return { noted, pass };
}

const pick = async (file: File) => user.upload(await screen.findByLabelText(/Choose/), file);
const title = (name: string) => screen.findByRole('heading', { level: 1, name });
const button = (name: string) => screen.getByRole('button', { name }) as HTMLButtonElement;

describe('a backup that lacks something in its middle', () => {
  test('is brought in only once that was read and accepted, and it is noted', async () => {
    const { noted } = restoring();
    await pick(kept('backup-2.zip'));
    await title('The file is as it was made');
    for (const told of [
      'The record would go on without 1 entry',
      'Made of a record that goes on without: 1 entry that is missing',
      'Made of a record that goes on without: 3 entries that were lost',
      'Made of a record that goes on without: Entry 2, damaged',
      'Made of a record that goes on without: A whole record of 7 entries',
    ])
      expect(screen.getByText(told)).toBeTruthy();
    expect(button('Restore it').disabled).toBe(true);
    await user.click(screen.getByRole('checkbox', { name: 'I know what lacks, and go on without it' }));
    await tap('Restore it');
    await title('It is brought in');
    expect(screen.getByText('What the record goes on without stands under Record.')).toBeTruthy();
    expect(noted.map(({ what }) => what)).toEqual(['missing', 'lost', 'entry', 'record']);
    expect(await (await opened()).database.count('entries')).toBe(3);
  });
});

/** What lies in the store of this phone. */
const here = async () => entriesIn(await opened());

/** Of a workshop on a phone that has since been emptied. */
async function fileOf(...names: readonly string[]): Promise<File> {
  await says(await opened(), workshop, ...names.map(person));
  const { file } = await backedUp();
  await anotherPhone();
  return new File([file], 'backup.zip');
}

// Its last entry was written at 8:00:00.
test.each([
  ['is not told of within a minute', '2026-03-02T07:59:00.000Z', false],
  ['is told of beyond it', '2026-03-02T07:58:59.999Z', true],
])('that the clocks of two phones differ %s', async (_, now, told) => {
  const file = await fileOf();
  restoring({}, { now: signal(now) });
  await pick(file);
  await title('The backup is whole');
  expect(screen.queryByText('Its last entry is written later than now') !== null).toBe(told);
});

describe('choosing a file', () => {
  test('that is left undone changes nothing', async () => {
    restoring();
    // As the phone tells that its list of files was closed: nothing is in it.
    fireEvent.change(await screen.findByLabelText('Choose a backup'));
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Restore or join');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test.each([
    ['a letter', new File(['Dear Maren, the backup is on the card.'], 'letter.zip'), /^This is no backup/],
    ['nothing', new File([], 'empty.zip'), /^The file is empty/],
    ['one that was cut short', kept('backup-1.zip').slice(0, 3000), /damaged or cut short/],
  ])('of %s says why it is not taken and what to do, and another can be chosen', async (_, given, why) => {
    restoring();
    await pick(given instanceof File ? given : new File([given], 'cut.zip'));
    const told = await screen.findByRole('alert');
    expect(within(told).getByText(why)).toBeTruthy();
    expect(within(told).getByText('Not taken. Nothing here was changed.')).toBeTruthy();
    expect(await here()).toEqual([]);
    await user.upload(screen.getByLabelText('Choose another file'), kept('backup-1.zip'));
    await title('The file is as it was made');
  });

  test('of a locked one asks for its passphrase, again where it does not open it', async () => {
    restoring();
    await pick(kept('backup-1.zip.age'));
    await title('The file is locked');
    expect(screen.getByText('backup-1.zip.age')).toBeTruthy();
    expect(button('Open it').disabled).toBe(true);
    await user.type(screen.getByLabelText('Passphrase'), 'weir yard');
    await tap('Open it');
    expect(await screen.findByText(/^The passphrase does not open it\./)).toBeTruthy();
    await user.clear(screen.getByLabelText('Passphrase'));
    await user.type(screen.getByLabelText('Passphrase'), 'weir yard six');
    await tap('Open it');
    await title('The file is as it was made');
  });

  test('shows how far it is, and is left without a trace', async () => {
    let go = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      go = resolve;
    });
    const { pass } = restoring({ work: () => backupHere(() => held) });
    await pick(kept('backup-1.zip'));
    await screen.findByRole('progressbar', { name: /Reading the backup/ });
    pass(1000);
    await user.click(screen.getByRole('button', { name: /^Leave it/ }));
    await title('Restore or join');
    go();
    // As long as what was left would have taken.
    await backupHere().look(
      { record: 'real', file: kept('backup-1.zip'), passphrase: undefined },
      () => undefined,
    );
    await title('Restore or join');
    expect(screen.queryByRole('alert')).toBeNull();
    await pick(kept('backup-1.zip'));
    await title('The file is as it was made');
    expect(await here()).toEqual([]);
  });
});

const container = (containerId: string, code: string): PlainBody => ({
  kind: 'container-opened',
  v: 1,
  containerId,
  code,
  vessel: 'jerrican',
  capacity: { value: '5', unit: 'L' },
  material: 'HDPE',
  cap: 'vented',
  openedOn: '2026-03-02',
});
const batch = (batchId: string, code: string): Body => ({
  kind: 'batch-opened',
  v: 1,
  batchId,
  code,
  feed: { capacitors: 'mixed', era: 'lead-free', mass: { value: '500', unit: 'g' } },
});

describe('codes that two phones gave to different things', () => {
  test('are told before it is joined; one that was corrected since, is of the same thing, or was twice before, is not', async () => {
    const there = await opened();
    const [shared] = await says(there, container('0190b3b0-0000-7000-8000-00000000c001', 'C-01'));
    const [, , wrong] = await says(
      there,
      container('0190b3b0-0000-7000-8000-00000000c107', 'c-007'),
      batch('0190b3b0-0000-7000-8000-00000000b107', 'B-03'),
      container('0190b3b0-0000-7000-8000-00000000c109', 'C-09'),
    );
    await says(there, {
      kind: 'entry-corrected',
      v: 1,
      corrects: wrong?.id ?? '',
      body: container('0190b3b0-0000-7000-8000-00000000c109', 'C-10'),
      reason: 'The label says so',
    });
    const { file } = await backedUp();
    await anotherPhone();
    const own = await opened();
    await own.database.add('entries', shared as Entry);
    await says(
      own,
      container('0190b3b0-0000-7000-8000-00000000c207', 'C-007'),
      batch('0190b3b0-0000-7000-8000-00000000b203', 'B-03'),
      container('0190b3b0-0000-7000-8000-00000000c209', 'C-09'),
      container('0190b3b0-0000-7000-8000-00000000c211', 'C-11'),
      container('0190b3b0-0000-7000-8000-00000000c212', 'C-11'),
    );
    restoring();
    await pick(new File([file], 'other.zip'));
    await title('The backup is whole');
    expect(screen.getByText(/^Two containers would be c\u2011007$/i)).toBeTruthy();
    expect(screen.getByText('Two batches would be B\u201103')).toBeTruthy();
    expect(screen.getAllByText(/would be [bc]\u2011/i)).toHaveLength(2);
    expect(button('Join it to the record')).toBeTruthy();
  });
});

describe('a file that was found whole', () => {
  test('of another workshop is joined only when somebody says that the two belong together', async () => {
    const file = await fileOf('Halvard');
    await says(await opened(), person('Ana'));
    restoring();
    await pick(file);
    await title('The backup is whole');
    expect(screen.getByText('Nothing in it is also here')).toBeTruthy();
    expect(button('Join it to the record').disabled).toBe(true);
    await user.click(screen.getByRole('checkbox', { name: 'I know: the two belong together' }));
    await tap('Join it to the record');
    await title('It is brought in');
    expect(await here()).toHaveLength(3);
  });

  test('says in the end what came in, and apart from that what was mended', async () => {
    const record = await opened();
    const [lost, damaged] = (await says(record, workshop, person('Ben'), person('Cleo'))).slice(1) as [
      Entry,
      Entry,
    ];
    const { file } = await backedUp();
    await record.database.delete('entries', lost.id);
    await record.database.put('entries', { ...damaged, zone: 'Europe/Rome' });
    restoring();
    await pick(new File([file], 'backup.zip'));
    await title('The backup is whole');
    await tap('Join it to the record');
    await title('It is brought in');
    expect(screen.getByText('1 entry came in and is on the disk.')).toBeTruthy();
    expect(screen.getByText('1 entry was damaged and is mended.')).toBeTruthy();
  });

  test('of the real record is not brought into the invented workshop', async () => {
    restoring({}, { record: 'demo' });
    await pick(kept('backup-1.zip'));
    await title('The file is as it was made');
    expect(screen.getByText('It is of a real record')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Restore it|Join it/ })).toBeNull();
  });

  test('for which there is no room says so, brings nothing in, and is brought in once there is', async () => {
    const file = await fileOf('Halvard', 'Enno');
    restoring();
    await pick(file);
    await title('The backup is whole');
    const add = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    await tap('Restore it');
    expect(await screen.findByText(/^The phone is full\. Nothing here was changed\./)).toBeTruthy();
    add.mockRestore();
    expect(await here()).toEqual([]);
    await tap('Restore it');
    await title('It is brought in');
    expect(await here()).toHaveLength(3);
  });

  test('beside which something was written meanwhile is chosen anew', async () => {
    const file = await fileOf('Halvard');
    const again = new File([file], 'again.zip');
    restoring();
    await pick(file);
    await title('The backup is whole');
    const first = screen.getByRole('button', { name: 'Restore it' });
    // Another window brings the same file in first.
    const other = backupHere();
    await other.look({ record: 'real', file: again, passphrase: undefined }, () => undefined);
    const newDevice = '0190b3b0-0000-7000-8000-00000000d009';
    await other.bring({ record: 'real', now: '2026-05-12T08:00:00.000Z', newDevice }, () => undefined);
    await user.click(first);
    expect(await screen.findByText(/^Something was written here in the meantime\./)).toBeTruthy();
    expect(await here()).toHaveLength(2);
    await pick(again);
    expect(await screen.findByText(/^Nothing in it is new/)).toBeTruthy();
  });
});

describe('what is known once it is brought in', () => {
  const noting = (found?: MarkerRead) => {
    const noteBroughtIn = vi.fn(() => true);
    const openAgain = vi.fn();
    restoring({ noteBroughtIn, openAgain }, found ? { marker: () => found } : {});
    return { noteBroughtIn, openAgain };
  };
  const bring = async (file: File, name = 'Restore it') => {
    await pick(file);
    await title('The backup is whole');
    await tap(name);
    await title('It is brought in');
  };

  test('is that it was backed up: as it was made, and all of it', async () => {
    const file = await fileOf('Halvard');
    const { noteBroughtIn, openAgain } = noting();
    await bring(file);
    const { manifest } = await read(file);
    const noted = { at: manifest.madeAt, entries: 2, heads: manifest.heads };
    expect(noteBroughtIn.mock.calls).toEqual([[noted]]);
    expect(screen.queryByText(/still missing/)).toBeNull();
    // Whoever brings it back need not be whom it names.
    await tap('Open the record');
    expect(openAgain).toHaveBeenCalledWith('record/holder');
  });

  test('is who held this phone, where another record was joined to its own', async () => {
    const file = await fileOf('Halvard');
    await says(await opened(), person('Ana'));
    const openAgain = vi.fn();
    restoring({ openAgain });
    await pick(file);
    await title('The backup is whole');
    await user.click(screen.getByRole('checkbox', { name: 'I know: the two belong together' }));
    await tap('Join it to the record');
    await title('It is brought in');
    await tap('Open the record');
    expect(openAgain).toHaveBeenCalledWith('');
  });

  test('is said before: that the phone has held more, and the way leads there', async () => {
    const file = await fileOf('Halvard', 'Enno');
    const { manifest } = await read(file);
    const heads = manifest.heads.map((head) => ({ ...head, counter: head.counter + 1 }));
    const { openAgain } = noting({
      state: 'there',
      marker: { v: 1, entries: 4, heads, writtenAt: null, lastBackup: null, without: [] },
    });
    await pick(file);
    await title('The backup is whole');
    expect(screen.getByText('This phone has held 1 entry more than would then be here')).toBeTruthy();
    await tap('Restore it');
    await title('It is brought in');
    expect(screen.getByText(/^1 entry that this phone has held is still missing\./)).toBeTruthy();
    await tap('See what is missing');
    expect(openAgain).toHaveBeenCalledWith('record/not-whole');
  });

  test('is not that a backup holds what it lacks and this phone may have', async () => {
    const record = await opened();
    const [, ben] = (await says(record, workshop, person('Ben'), person('Cleo'))) as readonly Entry[];
    await record.database.delete('entries', (ben as Entry).id);
    const { file } = await backedUp();
    await record.database.add('entries', ben as Entry);
    const last = (await says(record, person('Dora')))[0] as Entry;
    const later = (await backedUp()).file;
    expect(notedOnceIn(await read(file), { here: 1 } as RestorePlan)).toBeNull();
    expect(notedOnceIn(await read(file), { here: 0 } as RestorePlan)).toMatchObject({ entries: 2 });
    expect(notedOnceIn(await read(later), { here: 1 } as RestorePlan)).toMatchObject({
      heads: [{ counter: last.counter }],
    });
  });
});

test('a backup that was brought in is noted as the last, unless the one that is noted holds more', () => {
  const head = (device: string, counter: number) => ({ device, counter, hash: 'a'.repeat(64) });
  const [here, there] = ['0d000000-0000-7000-8000-000000000001', '0d000000-0000-7000-8000-000000000002'];
  const backup = (entries: number, ...heads: readonly ReturnType<typeof head>[]) => ({
    at: '2026-03-02T08:00:00.000Z',
    entries,
    heads: [...heads],
  });
  const noted = () => {
    const found = readMarker('demo');
    return found.state === 'there' ? found.marker.lastBackup : null;
  };
  forgetMarker('demo');
  noteBroughtIn('demo', backup(3, head(here, 3)));
  expect(noted()?.entries).toBe(3);
  // Of the other phone: it would make of these three entries what lies here only.
  noteBroughtIn('demo', backup(9, head(there, 9)));
  expect(noted()?.entries).toBe(3);
  noteBroughtIn('demo', backup(13, head(here, 4), head(there, 9)));
  expect(noted()?.entries).toBe(13);
  forgetMarker('demo');
});
