/** Two windows with the same form: neither loses what was typed in it without a word, and nothing is written down twice unaware. */
import { screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Shell } from '../../../src/screens/shell';
import { clearDraft, keepDraft, readDraft, watchDraft } from '../../../src/storage/drafts';
import { fill, open, tap } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

const key = 'leesbook:draft:real:new-batch';
const mass = () => screen.getByLabelText('Mass of the feed') as HTMLInputElement;

/** A window with the form, whose drafts lie where those of the other do. */
async function opened() {
  const { shell } = await workshopInMemory();
  const draft: Shell['draft'] = {
    read: (form, schema) => readDraft('real', form, schema),
    keep: (form, value) => void keepDraft('real', form, value),
    drop: (form) => clearDraft('real', form),
    watch: (form, heard) => watchDraft('real', form, heard),
  };
  open({ ...shell, draft }, 'batches/new');
}

const formKey = () => Object.keys(localStorage).find((one) => one.startsWith('leesbook:draft:real:')) ?? key;

/** What the other window does, and what a browser then tells this one. */
async function there(change: (text: string) => string | null): Promise<void> {
  const at = formKey();
  const text = change(localStorage.getItem(at) ?? '');
  if (text === null) localStorage.removeItem(at);
  else localStorage.setItem(at, text);
  window.dispatchEvent(new StorageEvent('storage', { key: at, newValue: text }));
  await Promise.resolve();
}

beforeEach(() => localStorage.clear());
afterEach(() => localStorage.clear());

describe('a form that is typed into in another window', () => {
  it('says so, keeps what stands here, and shows what stands there on a tap', async () => {
    await opened();
    await fill('Mass of the feed', '500');
    expect(screen.queryByText('This form is open in another window')).toBeNull();
    await there((text) => text.replace('500', '777'));
    expect(await screen.findByText('This form is open in another window')).toBeTruthy();
    expect(mass().value).toBe('500');
    await tap('Show what stands there');
    expect(mass().value).toBe('777');
    expect(screen.queryByText('This form is open in another window')).toBeNull();
  });

  it('goes on with what is typed here', async () => {
    await opened();
    await fill('Mass of the feed', '500');
    await there((text) => text.replace('500', '777'));
    await screen.findByText('This form is open in another window');
    await fill('Mass of the feed', '501');
    expect(screen.queryByText('This form is open in another window')).toBeNull();
    expect(localStorage.getItem(formKey())).toContain('501');
  });

  it('finds out when it comes back into view, where it was not told', async () => {
    await opened();
    await fill('Mass of the feed', '500');
    localStorage.setItem(formKey(), (localStorage.getItem(formKey()) ?? '').replace('500', '777'));
    document.dispatchEvent(new Event('visibilitychange'));
    expect(await screen.findByText('This form is open in another window')).toBeTruthy();
  });
});

it('a form that was written down in another window says so before it is written down here as well', async () => {
  await opened();
  await fill('Mass of the feed', '500');
  await there(() => null);
  expect(await screen.findByText('This form was finished in another window')).toBeTruthy();
  expect(mass().value).toBe('500');
  await tap('Empty it here');
  expect(mass().value).toBe('');
});

it('the draft of another form, or the one kept here, says nothing', async () => {
  await opened();
  await fill('Mass of the feed', '500');
  keepDraft('real', 'another', { a: 1 });
  window.dispatchEvent(new StorageEvent('storage', { key: 'leesbook:draft:real:another' }));
  document.dispatchEvent(new Event('visibilitychange'));
  await fill('Mass of the feed', '501');
  expect(screen.queryByText(/in another window/)).toBeNull();
});
