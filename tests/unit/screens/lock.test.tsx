/** The lock of the screen: what it keeps of a PIN, how long it makes somebody wait, and how it comes off. */
import { render, screen, waitFor } from '@testing-library/preact';
import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, test, vi } from 'vitest';
import { pinFits, readScreenLock, type ScreenLock, screenLockKey } from '../../../src/storage/screen-lock';
import { fill, open, tap, user } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';

/** The lock as a window finds it at its start. */
async function started() {
  vi.resetModules();
  return import('../../../src/screens/lock/locking');
}

const stored = (): string => localStorage.getItem(screenLockKey) ?? '';

beforeEach(() => {
  localStorage.clear();
  sessionStorage.clear();
});
afterEach(() => void vi.useRealTimers());

test('the hash of a PIN is PBKDF2 with SHA-256: RFC 7914, section 11, first half of its first result', async () => {
  const lock = {
    salt: '73616c74',
    rounds: 1,
    hash: '55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc',
  } as ScreenLock;
  expect(await pinFits(lock, 'passwd')).toBe(true);
  expect(await pinFits(lock, 'passwe')).toBe(false);
});

describe('how long a wrong PIN makes wait', () => {
  it.each([
    [0, 0],
    [4, 0],
    [5, 30],
    [6, 60],
    [9, 480],
    [10, 900],
    [1000, 900],
  ])('after %i it is %i seconds', async (wrong, seconds) => {
    const { waitAfter } = await started();
    expect(waitAfter(wrong)).toBe(seconds * 1000);
  });

  it('never falls with one more', async () => {
    const { waitAfter } = await started();
    fc.assert(
      fc.property(fc.nat(200), (wrong) => {
        expect(waitAfter(wrong + 1)).toBeGreaterThanOrEqual(waitAfter(wrong));
      }),
    );
  });

  it('is the same whatever the clock of the phone is set to, and begins anew in a window opened anew', async () => {
    const first = await started();
    await first.setPin('2580', 5);
    for (let i = 0; i < 5; i += 1) expect(await first.tryPin('0000')).toBe('wrong');
    expect(await first.tryPin('2580')).toBe('wait');
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 86_400_000 });
    expect(await first.tryPin('2580')).toBe('wait');
    const again = await started();
    expect(again.waitLeft()).toBeGreaterThan(29_000);
    expect(await again.tryPin('2580')).toBe('wait');
  });

  it('is over once it was waited, and the right PIN ends the count', async () => {
    vi.useFakeTimers({ toFake: ['performance'] });
    const { setPin, tryPin, waitLeft } = await started();
    await setPin('2580', 5);
    for (let i = 0; i < 5; i += 1) await tryPin('0000');
    vi.advanceTimersByTime(29_999);
    expect(await tryPin('2580')).toBe('wait');
    vi.advanceTimersByTime(1);
    expect(waitLeft()).toBe(0);
    expect(await tryPin('2580')).toBe('right');
    expect(readScreenLock()?.wrong).toBe(0);
  });
});

describe('the pages', () => {
  it('are hidden at a start, and not in a reload soon after', async () => {
    const { setPin } = await started();
    await setPin('2580', 5);
    expect((await started()).pagesHidden.value).toBe(true);
    sessionStorage.setItem('leesbook:last-seen', String(Date.now() - 4 * 60_000));
    expect((await started()).pagesHidden.value).toBe(false);
    sessionStorage.setItem('leesbook:last-seen', String(Date.now() - 5 * 60_000));
    expect((await started()).pagesHidden.value).toBe(true);
    // Seen last in what is now the future: the clock was set back.
    sessionStorage.setItem('leesbook:last-seen', String(Date.now() + 60_000));
    expect((await started()).pagesHidden.value).toBe(true);
  });

  it('stay locked over a reload, though they were in view a moment before', async () => {
    const { setPin, lockNow } = await started();
    await setPin('2580', 5);
    sessionStorage.setItem('leesbook:last-seen', String(Date.now() - 1000));
    lockNow();
    // As where localStorage is full: what tells the other windows was not kept.
    localStorage.removeItem('leesbook:screen-lock-now');
    expect((await started()).pagesHidden.value).toBe(true);
  });

  it('are locked as well in a window that slept while all were locked, and is shown again soon after', async () => {
    const { setPin, lockNow } = await started();
    await setPin('2580', 5);
    lockNow();
    // Storage of that other window, which went out of view before.
    sessionStorage.setItem('leesbook:last-seen', String(Date.now() - 1000));
    expect((await started()).pagesHidden.value).toBe(true);
  });

  it('leave open what somebody in need looks for', async () => {
    const { setPin } = await started();
    await setPin('2580', 5);
    const { isHidden } = await started();
    expect(isHidden(['containers'])).toBe(true);
    expect(isHidden([])).toBe(true);
    expect(isHidden(['sos', 'eye-skin'])).toBe(false);
    expect(isHidden(['clocks'])).toBe(false);
  });

  it('are shown where what is kept of the lock cannot be read: it encrypts nothing', async () => {
    localStorage.setItem(screenLockKey, '{"v":1}');
    expect((await started()).pagesHidden.value).toBe(false);
  });
});

describe('a forgotten PIN', () => {
  it('takes the lock off a day after it was asked for, and not before', async () => {
    const { setPin, askForRemoval, removableFrom } = await started();
    await setPin('2580', 5);
    expect(removableFrom('2026-05-14T08:00:00.000Z')).toBeNull();
    askForRemoval('2026-05-14T08:00:00.000Z');
    expect(removableFrom('2026-05-14T08:00:00.000Z')).toBe('2026-05-15T08:00:00.000Z');
    expect(removableFrom('2026-05-14T07:59:59.999Z'), 'the clock was set back').toBeNull();
  });

  it('is not asked about any more once the PIN was given', async () => {
    const { setPin, askForRemoval, removableFrom, tryPin } = await started();
    await setPin('2580', 5);
    askForRemoval('2026-05-14T08:00:00.000Z');
    expect(await tryPin('2580')).toBe('right');
    expect(removableFrom('2026-05-14T08:00:00.000Z')).toBeNull();
  });
});

describe('the page of the lock', () => {
  const digits = 'PIN';
  const again = 'The same PIN again';

  test('says plainly what it protects, and turns on with one PIN written twice, of which only a hash is kept', async () => {
    const { shell } = shellInMemory();
    open(shell, 'record/lock');
    expect(screen.getByText(/does not encrypt the record/)).toBeTruthy();
    await fill(digits, '258');
    await fill(again, '258');
    await tap('Turn the lock on');
    expect(screen.getByText(/Four digits at the least/)).toBeTruthy();
    await fill(digits, '258014');
    await fill(again, '258015');
    await tap('Turn the lock on');
    expect(screen.getByText(/not the same/)).toBeTruthy();
    expect(stored()).toBe('');
    await fill(again, '258014');
    await tap('Turn the lock on');
    await waitFor(() => expect(screen.getByText('On, after 5 minutes out of view')).toBeTruthy());
    expect(stored()).not.toContain('258014');
    const lock = readScreenLock();
    expect(lock && (await pinFits(lock, '258014'))).toBe(true);
    await tap(/Take the lock off/);
    expect(stored()).toBe('');
  });
});

test('the page that is locked answers at once that it was asked to take the lock off, and from when it can be', async () => {
  const { setPin, lockNow } = await import('../../../src/screens/lock/locking');
  const { LockPage } = await import('../../../src/screens/lock/lock-page');
  const { ShellProvider } = await import('../../../src/screens/shell');
  const { shell } = shellInMemory('2026-05-14T08:00:00.000Z');
  await setPin('2580', 5);
  lockNow();
  // The tap comes seconds after the page's own clock moved on last.
  const moment = () => '2026-05-14T08:00:09.000Z';
  render(
    <ShellProvider value={{ ...shell, moment }}>
      <LockPage />
    </ShellProvider>,
  );
  await user.click(screen.getByText('PIN forgotten?'));
  await tap('Ask to take the lock off');
  expect(screen.getByRole('status').textContent).toMatch(/can be from 15 May/);
});
