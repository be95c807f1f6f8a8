/** A window that writes nothing goes on by itself once it was decided elsewhere, and not in the middle of what must not be disturbed. */
import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { goOnWhenDecided } from '../../../src/app/decided';
import { go } from '../../../src/app/router';
import { draftsKept } from '../../../src/app/shell';
import { forgetMarker, markerKey, noteAlsoWithout, noteHeads } from '../../../src/storage/marker';
import type { Trouble } from '../../../src/storage/trouble';

const device = '0d000000-0000-7000-8000-000000000001';
const at = '2026-05-12T08:00:00.000Z';
const missing = { what: 'missing', at, device, from: 2, to: 3 } as const;
const gone: readonly Trouble[] = [{ code: 'gone' }];

let loaded = 0;
let end = (): void => undefined;

function watched(trouble: readonly Trouble[]) {
  const book = { name: 'real' as const, trouble: signal(trouble), outdated: signal(false) };
  end = goOnWhenDecided(book, () => {
    loaded += 1;
  });
  return book;
}

/** What a browser tells a window of what another has written. */
const tell = (key: string) => window.dispatchEvent(new StorageEvent('storage', { key }));

beforeEach(() => {
  loaded = 0;
  draftsKept.value = true;
  go('today', 'replace');
  noteHeads('real', [{ device, counter: 4, hash: 'a'.repeat(64), writtenAt: at }]);
});
afterEach(() => {
  end();
  forgetMarker('real');
});

describe('a window in which something is wrong', () => {
  it('is loaded anew once what is missing was given up in another', () => {
    watched(gone);
    noteHeads('real', [{ device, counter: 5, hash: 'b'.repeat(64), writtenAt: at }]);
    tell(markerKey('real'));
    expect(loaded, 'the other has only written').toBe(0);
    noteAlsoWithout('real', [missing]);
    tell(markerKey('demo'));
    expect(loaded, 'of another record').toBe(0);
    tell(markerKey('real'));
    expect(loaded).toBe(1);
  });

  it('finds out when it slept meanwhile', () => {
    watched(gone);
    noteAlsoWithout('real', [missing]);
    expect(loaded).toBe(0);
    document.dispatchEvent(new Event('visibilitychange'));
    expect(loaded).toBe(1);
  });

  it('is loaded anew once a backup was brought in elsewhere', () => {
    watched(gone).outdated.value = true;
    expect(loaded).toBe(1);
  });

  it.each(['sos', 'record/restore', 'record/backup'])('is left alone at %s, until one goes on', (place) => {
    go(place, 'replace');
    const { outdated } = watched(gone);
    noteAlsoWithout('real', [missing]);
    tell(markerKey('real'));
    expect([loaded, outdated.value]).toEqual([0, true]);
    go('today', 'replace');
    expect(loaded).toBe(1);
  });

  it('asks to be loaded anew where what was typed would be lost by it', () => {
    draftsKept.value = false;
    const { outdated } = watched(gone);
    noteAlsoWithout('real', [missing]);
    tell(markerKey('real'));
    expect([loaded, outdated.value]).toEqual([0, true]);
  });
});

it('one in which nothing is wrong goes on with what it does', () => {
  const { outdated } = watched([]);
  noteAlsoWithout('real', [missing]);
  tell(markerKey('real'));
  expect([loaded, outdated.value]).toEqual([0, false]);
});
