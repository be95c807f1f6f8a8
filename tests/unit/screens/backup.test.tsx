import 'fake-indexeddb/auto';
import { cleanup, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Shell } from '../../../src/screens/shell';
import { backupHere } from '../../support/backup-here';
import { open, tap, user } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';
import { anotherPhone, marked, opened, person, read, says } from '../storage/backup/invented-record';

beforeEach(async () => {
  await anotherPhone();
  const record = await opened();
  await says(record, person('Ana'), await marked(record));
});
afterEach(async () => {
  vi.restoreAllMocks();
  for (const name of ['share', 'canShare']) Reflect.deleteProperty(navigator, name);
  Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
  await anotherPhone();
});

const gives = (to: object, name: string, what: unknown): void =>
  void Object.defineProperty(to, name, { value: what, configurable: true });

const title = (name: string) => screen.findByRole('heading', { level: 1, name });
const passphrase = (label: 'Passphrase' | 'Passphrase once more') => screen.getByLabelText(label);

/** The page for it, in an app whose record lies in the store; `noted` are the backups that count. */
async function backingUp({
  work = () => backupHere(),
  note = () => true,
  ...more
}: Partial<Shell['backups']> = {}) {
  const { shell, pass } = shellInMemory('2026-05-12T08:00:00.000Z');
  const noted: unknown[] = [];
  const backups: Shell['backups'] = {
    ...shell.backups,
    ...more,
    work: vi.fn(work),
    note: (backup) => {
      noted.push(backup);
      return note(backup);
    },
  };
  const page = open({ ...shell, backups }, 'record/backup');
  await title('Back up the record');
  return { noted, pass, backups, page };
}

const anybody = () => user.click(screen.getByRole('radio', { name: /Anybody who has it/ }));

async function made(more: Partial<Shell['backups']> = {}) {
  const app = await backingUp(more);
  await anybody();
  await tap('Make the backup');
  await title('The backup is made');
  return app;
}

describe('before a backup is made', () => {
  test('it is said who can open it, and a passphrase is typed twice the same', async () => {
    const { backups } = await backingUp();
    await tap('Make the backup');
    expect(screen.getByText('Say who can open it.')).toBeTruthy();
    await user.click(screen.getByRole('radio', { name: /Only who knows a passphrase/ }));
    await tap('Make the backup');
    expect(screen.getByText('Type a passphrase.')).toBeTruthy();
    await user.type(passphrase('Passphrase'), 'weir yard six');
    await user.type(passphrase('Passphrase once more'), 'weir yard sic');
    await tap('Make the backup');
    expect(screen.getByText('The two are not the same. Show them, and look.')).toBeTruthy();
    await user.click(screen.getByRole('checkbox', { name: 'Show what I type' }));
    expect((passphrase('Passphrase') as HTMLInputElement).type).toBe('text');
    // Or a browser would ask its maker how it is spelt, and put a capital in front.
    expect(passphrase('Passphrase').getAttribute('spellcheck')).toBe('false');
    expect(passphrase('Passphrase').getAttribute('autocapitalize')).toBe('none');
    expect(backups.work).not.toHaveBeenCalled();
  });
});

/** A place for files as the picker gives it. @param room bytes that it takes */
function place(room = Number.POSITIVE_INFINITY) {
  let there = new Blob([]);
  const asked = vi.fn(async (_: { readonly suggestedName: string }) => ({
    name: 'card.zip',
    createWritable: async () => ({
      write: async (data: Blob) => {
        there = data.slice(0, room);
      },
      close: async () => undefined,
    }),
    getFile: async () => new File([there], 'card.zip'),
  }));
  return { asked, file: () => there };
}

describe('a backup that was made', () => {
  test('is not noted when the picker is closed, and is once it lies where it was saved', async () => {
    const { asked, file } = place();
    gives(globalThis, 'showSaveFilePicker', asked);
    const { noted } = await made();
    asked.mockRejectedValueOnce(new DOMException('closed', 'AbortError'));
    await user.click(screen.getByRole('button', { name: /^Save it/ }));
    await title('The backup is made');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(noted).toEqual([]);
    await user.click(screen.getByRole('button', { name: /^Save it/ }));
    expect(await screen.findByText('Saved as card.zip')).toBeTruthy();
    expect(asked).toHaveBeenLastCalledWith({
      suggestedName: expect.stringMatching(/^leesbook-backup-.*\.zip$/),
    });
    const { manifest } = await read(file());
    expect(noted).toEqual([{ at: manifest.madeAt, entries: 2, heads: manifest.heads }]);
  });

  test.each([
    ['is shorter where it lies', () => place(100).asked],
    ['cannot be written there', () => async () => Promise.reject(new DOMException('no', 'NotAllowedError'))],
  ])('and %s is not saved, does not count, and can be saved elsewhere', async (_, picker) => {
    gives(globalThis, 'showSaveFilePicker', picker());
    const { noted } = await made();
    await user.click(screen.getByRole('button', { name: /^Save it/ }));
    expect(await screen.findByText(/^It was not saved\. Choose another place/)).toBeTruthy();
    expect(noted).toEqual([]);
    gives(globalThis, 'showSaveFilePicker', place().asked);
    await user.click(screen.getByRole('button', { name: /^Save it/ }));
    expect(await screen.findByText('Saved as card.zip')).toBeTruthy();
    expect(noted).toHaveLength(1);
  });

  test('is saved by a link where there is no picker, and counts only when somebody has looked', async () => {
    const { noted } = await made();
    const link = screen.getByRole('link', { name: /^Save it/ });
    expect(link.getAttribute('download')).toMatch(/^leesbook-backup-.*\.zip$/);
    await user.click(link);
    await title('Is it where you want it?');
    await tap('No, once more');
    expect(noted).toEqual([]);
    await user.click(screen.getByRole('link', { name: /^Save it/ }));
    await tap('Yes, it is there');
    expect(screen.getByText('Noted: from now on this backup counts.')).toBeTruthy();
    expect(noted).toHaveLength(1);
  });

  test('says so where it could not be noted', async () => {
    await made({ note: () => false });
    await user.click(screen.getByRole('link', { name: /^Save it/ }));
    await tap('Yes, it is there');
    expect(screen.getByText(/The reminder stays\.$/)).toBeTruthy();
  });

  test('that is not shared after all does not count; refused, it says to save it', async () => {
    const share = vi.fn(async (_: { readonly files: readonly File[] }) => undefined);
    gives(navigator, 'share', share);
    gives(navigator, 'canShare', () => true);
    const { noted } = await made();
    share.mockRejectedValueOnce(new DOMException('closed', 'AbortError'));
    await tap('Share it');
    expect(screen.queryByText(/was not shared/)).toBeNull();
    share.mockRejectedValueOnce(new DOMException('no', 'NotAllowedError'));
    await tap('Share it');
    expect(await screen.findByText('It was not shared. Save it instead.')).toBeTruthy();
    expect(noted).toEqual([]);
    await tap('Share it');
    await title('Is it where you want it?');
    expect(share.mock.lastCall?.[0].files[0]?.name).toMatch(/^leesbook-backup-/);
    expect(noted).toEqual([]);
  });
});

describe('a backup that is not made', () => {
  test('because there is no record says so', async () => {
    await anotherPhone();
    await backingUp();
    await anybody();
    await tap('Make the backup');
    expect(await screen.findByText('There is no record on this phone to back up.')).toBeTruthy();
  });

  test.each(['arrayBuffer', 'stream'] as const)(
    'because the phone has no room for it keeps what was typed, and is made once there is: %s',
    async (how) => {
      await backingUp();
      await user.click(screen.getByRole('radio', { name: /Only who knows a passphrase/ }));
      await user.type(passphrase('Passphrase'), 'weir yard six');
      await user.type(passphrase('Passphrase once more'), 'weir yard six');
      const reading = vi.spyOn(Blob.prototype, how).mockImplementation(() => {
        throw new DOMException('gone', 'NotReadableError');
      });
      await tap('Make the backup');
      expect(await screen.findByText(/^This phone has not enough room to make it\./)).toBeTruthy();
      reading.mockRestore();
      expect((passphrase('Passphrase') as HTMLInputElement).value).toBe('weir yard six');
      await tap('Make the backup');
      await title('The backup is made');
    },
  );

  test('because it was left shows how far it was, and leads back to the form', async () => {
    let go = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      go = resolve;
    });
    const { pass, backups } = await backingUp({ work: () => backupHere(() => held) });
    await anybody();
    await tap('Make the backup');
    const bar = await screen.findByRole('progressbar', { name: /Making the backup/ });
    expect(bar.getAttribute('aria-valuenow') ?? bar.getAttribute('value')).toBe('0');
    // A second drop of the tap that began it ends nothing.
    await user.click(screen.getByRole('button', { name: /^Leave it/ }));
    expect(screen.getByRole('progressbar')).toBeTruthy();
    pass(1000);
    await user.click(screen.getByRole('button', { name: /^Leave it/ }));
    await title('Back up the record');
    go();
    expect((screen.getByRole('radio', { name: /Anybody/ }) as HTMLInputElement).checked).toBe(true);
    expect(screen.queryByRole('alert')).toBeNull();
    await tap('Make the backup');
    await title('The backup is made');
    expect(backups.work).toHaveBeenCalledTimes(2);
  });

  test('because the page was left is ended', async () => {
    const ended = vi.fn();
    const never = new Promise<void>(() => undefined);
    const { page } = await backingUp({
      work: () => {
        const work = backupHere(() => never);
        return { ...work, end: ended };
      },
    });
    await anybody();
    await tap('Make the backup');
    await screen.findByRole('progressbar');
    page.unmount();
    await waitFor(() => expect(ended).toHaveBeenCalled());
  });
});

describe('before one is made it is told', () => {
  test('when the last was, and what is in none', async () => {
    const since = async () => ({
      lastAt: '2026-05-08T08:00:00.000Z',
      entries: 12,
      files: 1,
      oldest: '2026-05-10T08:00:00.000Z',
    });
    await backingUp({ since });
    expect(await screen.findByText('12 entries on this phone only')).toBeTruthy();
    expect(screen.getByText(/Last backup 8 May 2026\.$/)).toBeTruthy();
  });

  test('that a short passphrase is soon found, and it is taken all the same', async () => {
    await backingUp();
    await user.click(screen.getByRole('radio', { name: /Only who knows a passphrase/ }));
    expect(screen.queryByText(/^One that short/)).toBeNull();
    await user.type(passphrase('Passphrase'), 'ab');
    expect(passphrase('Passphrase').getAttribute('aria-describedby')).toMatch(/hint$/);
    expect(screen.getByText(/^One that short is soon found by trying/)).toBeTruthy();
    await user.type(passphrase('Passphrase once more'), 'ab');
    await user.type(passphrase('Passphrase'), ' weir yard six');
    expect(screen.queryByText(/^One that short/)).toBeNull();
    await user.clear(passphrase('Passphrase'));
    await user.type(passphrase('Passphrase'), 'ab');
    await tap('Make the backup');
    await title('The backup is made');
  });
});

test('a backup of a record that lacks an entry is not called whole', async () => {
  const record = await opened();
  const [ben] = await says(record, person('Ben'), person('Cleo'));
  await made();
  expect(screen.getByText(/^It holds 4 entries.*and is whole\.$/)).toBeTruthy();
  cleanup();
  await record.database.delete('entries', (ben as Entry).id);
  await made();
  expect(screen.getByText(/^It holds 3 entries.*and is as it was made\.$/)).toBeTruthy();
  expect(screen.getByText('1 entry that the record lacks is not in it either.')).toBeTruthy();
});
