import { signal } from '@preact/signals';
import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../src/ledger/fold';
import { seal } from '../../../src/ledger/seal';
import type { Shell } from '../../../src/screens/shell';
import { open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { wholeInMemory } from '../../support/whole-in-memory';

/** A liquor that was written down a day late, and whose volume was corrected. */
/** These pages are fetched when they are opened. */
async function shown(shell: Shell, place: string) {
  open(shell, place);
  await waitFor(() => expect(screen.getByRole('heading', { level: 1 }).textContent).not.toMatch(/^Opening/));
}

async function withCorrection() {
  const memory = await workshopInMemory();
  const { does, batch, pass, shell, tobias } = memory;
  pass(60_000);
  const performed = await shell.perform(
    {
      do: 'log-stream',
      batchId: batch,
      stepId: null,
      stream: 'wash-water',
      liquid: { volume: { value: '3.60', unit: 'L' }, findings: [], freeAcid: [] },
    },
    '2026-05-11T09:30:00.000Z',
  );
  const logged = performed.ok ? performed.written[0] : undefined;
  if (logged?.body.kind !== 'stream-logged') throw new Error('not logged');
  memory.person.value = tobias;
  pass(3 * 3_600_000);
  await does({
    do: 'correct-entry',
    corrects: logged.id,
    body: { ...logged.body, liquid: { volume: { value: '3.45', unit: 'L' }, findings: [], freeAcid: [] } },
    reason: 'misread',
  });
  return { ...memory, logged };
}

const rowsOf = (name: RegExp) =>
  within(screen.getByRole('list', { name }))
    .getAllByRole('listitem')
    .map(({ textContent }) => textContent ?? '');

describe('the history of a batch', () => {
  test('says who wrote what when, what was written later, and what a correction changed, by whom', async () => {
    const { shell, batch } = await withCorrection();
    await shown(shell, `batches/${batch}/history`);
    const [corrected, logged, opened] = rowsOf(/history$/);
    expect(corrected).toMatch(/^Correction: wash water/);
    expect(logged).toMatch(/^Wash water, B.01, 3\.60.L11 May 2026, \d\d:\d\d, Maren/);
    expect(logged).toMatch(/Written down later: 12 May 2026/);
    expect(logged).toMatch(/Corrected 12 May 2026, \d\d:\d\d, Tobias: misread/);
    expect(logged).toContain('Volume: 3.60\u2009L, now 3.45\u2009L');
    expect(opened).toMatch(/^Batch B.01 opened/);
    expect(opened).not.toContain('Written down');
  });

  test('is one tap away from its page, and leads to the check and to the register', async () => {
    const { shell, batch } = await withCorrection();
    const page = open(shell, `batches/${batch}`);
    const door = screen.getByRole('link', { name: /^History of this batch/ });
    expect(door.getAttribute('href')).toBe(`#/batches/${batch}/history`);
    page.unmount();
    await shown(shell, `batches/${batch}/history`);
    expect(screen.getByRole('link', { name: /^Check the book/ }).getAttribute('href')).toBe(
      '#/record/verify',
    );
    expect(screen.getByRole('link', { name: /^Register of a period/ }).getAttribute('href')).toBe(
      '#/papers/register',
    );
  });

  test('of what is long over says that it lies further back, and how to read it', async () => {
    const { shell, batch, state } = await withCorrection();
    const all = state.value.log;
    state.value = { ...state.value, history: [], log: [] };
    await shown({ ...shell, whole: wholeInMemory(() => all, '') }, `batches/${batch}/history`);
    expect(await screen.findByText(/^It is long over: .*“Read all of it” finds it\.$/)).toBeTruthy();
    expect(screen.getByRole('button', { name: /^Read all of it/ })).toBeTruthy();
    expect(screen.queryByText(/Nothing of it/)).toBeNull();
  });

  test('is looked for in the whole book where the phone holds only what is recent', async () => {
    const { shell, batch, state } = await withCorrection();
    const all = state.value.log;
    state.value = { ...state.value, history: state.value.history.slice(-1), log: all.slice(-1) };
    await shown({ ...shell, whole: wholeInMemory(() => all, 'somebody else') }, `batches/${batch}/history`);
    expect(rowsOf(/history$/)).toHaveLength(1);
    await user.click(
      await screen.findByRole('button', {
        name: new RegExp(`${all.length - 1} older entries`),
      }),
    );
    await screen.findByText(/this is all of it/);
    const [, logged, opened] = rowsOf(/history$/);
    expect(logged).toContain('Volume: 3.60\u2009L, now 3.45\u2009L');
    expect(logged).toMatch(/On another device, …0001/);
    expect(opened).toMatch(/^Batch B.01 opened/);
  });
});

test('an entry that the phone does not hold any more is read from the disk', async () => {
  const { shell, state, logged } = await withCorrection();
  const all = state.value.log;
  state.value = { ...state.value, history: [], log: [] };
  open({ ...shell, whole: wholeInMemory(() => all, shell.whole.device) }, `record/entry/${logged.id}`);
  expect(await screen.findByText('What became of it')).toBeTruthy();
  expect(screen.getByText('What counts now')).toBeTruthy();
});

test('an undone correction is struck through, and what was first written counts', async () => {
  const { shell, state, does, logged } = await withCorrection();
  const correction = state.value.log.at(-1)?.id ?? '';
  await does({ do: 'withdraw-entry', withdraws: correction, reason: 'no, it was 3.60' });
  open(shell, `record/entry/${logged.id}`);
  const struck = screen.getByText(/^Corrected .* misread$/);
  expect(struck.tagName).toBe('S');
});

test('the history of all can be read from a day back', async () => {
  const { shell, pass, does } = await withCorrection();
  pass(3 * 86_400_000);
  await does({ do: 'add-person', name: 'Ilse' });
  await shown(shell, 'record/history');
  expect((await screen.findAllByRole('link', { name: /^Person: Ilse/ })).length).toBe(1);
  await user.type(screen.getByLabelText('From which day back'), '2026-05-13');
  await waitFor(() => expect(screen.queryByRole('link', { name: /^Person: Ilse/ })).toBeNull());
  expect(screen.getByRole('link', { name: /^Person: Tobias/ })).toBeTruthy();
});

describe('checking the book', () => {
  test('says that it is whole, how many entries it has, and the last hash as papers print it', async () => {
    const { shell, state } = await withCorrection();
    await shown(shell, 'record/verify');
    await tap(/^Check every entry now/);
    expect(await screen.findByText(`Whole: ${state.value.log.length} entries`)).toBeTruthy();
    const last = state.value.log.at(-1)?.hash.slice(0, 16) ?? '';
    expect(document.body.textContent?.replaceAll('\u00a0', '')).toContain(last);
  });

  test('names the entry that is not as it was written', async () => {
    const { shell, state } = await withCorrection();
    const [first, second, ...rest] = state.value.log;
    if (!first || !second) throw new Error('too few');
    const changed = { ...second, happenedAt: '2020-01-01T00:00:00.000Z' };
    state.value = { ...state.value, log: [first, changed, ...rest] };
    await shown(shell, 'record/verify');
    await tap(/^Check every entry now/);
    expect(await screen.findByText('1 thing is wrong')).toBeTruthy();
    const row = screen.getByRole('link', { name: /^Entry 2 of/ });
    expect(row.getAttribute('href')).toBe(`#/record/entry/${second.id}`);
    expect(screen.queryByText(/^Whole/)).toBeNull();
  });

  test('says that the phone has not all of the app yet', async () => {
    const { shell } = await withCorrection();
    const notHere = {
      checked: Promise.resolve({ ok: false, failure: { code: 'not-loaded' } } as const),
      cancel: () => {},
    };
    await shown({ ...shell, checkRecord: () => notHere }, 'record/verify');
    await tap(/^Check every entry now/);
    expect((await screen.findByRole('alert')).textContent).toContain('not on this phone yet');
  });

  const typed = async (text: string) => {
    const field = screen.getByLabelText('Hash on the paper');
    await user.clear(field);
    await user.type(field, text);
    await tap('Look for it');
  };

  test('finds the entry whose hash stands on a paper, typed with gaps and capitals', async () => {
    const { shell, logged, state } = await withCorrection();
    await shown(shell, 'record/verify');
    const printed = (logged.hash.slice(0, 16).match(/.{4}/g) ?? []).join(' ').toUpperCase();
    await typed(`${printed}…`);
    const nth = state.value.log.findIndex(({ id }) => id === logged.id) + 1;
    expect(await screen.findByText(`This book contains that entry: number ${nth}`)).toBeTruthy();
    expect(screen.getByRole('link', { name: /^Wash water/ }).getAttribute('href')).toBe(
      `#/record/entry/${logged.id}`,
    );
  });

  test('says that an entry which was changed since is not in it', async () => {
    const { shell, logged, state } = await withCorrection();
    const rewritten = state.value.log.map(({ hash, ...entry }) =>
      entry.id === logged.id
        ? seal({ ...entry, happenedAt: '2026-05-10T09:30:00.000Z' })
        : { ...entry, hash },
    );
    await shown(
      { ...shell, state: signal(applyAll(rewritten)), whole: wholeInMemory(() => rewritten, '') },
      'record/verify',
    );
    await typed(logged.hash.slice(0, 16));
    expect(await screen.findByText('This book does not contain that entry')).toBeTruthy();
  });

  test('tells the hash of a paper from that of an entry', async () => {
    const { shell, does, batch } = await withCorrection();
    expect(batch).not.toBe('');
    const contentHash = '5e'.repeat(32);
    await does({
      do: 'record-paper',
      containerIds: [],
      contentHash,
      fileName: 'register.pdf',
      format: 'pdf',
      paper: 'register',
    } as never);
    await shown(shell, 'record/verify');
    await typed(contentHash.slice(0, 16));
    expect(await screen.findByText('That is the hash of a paper that this book made')).toBeTruthy();
  });

  test.each([
    ['1a2b 3c4d 5e6', 'At least 12 of them, or many entries would fit.'],
    ['1a2b 3c4d 5e6g', 'A hash has only digits and the letters a to f. Look at each one again.'],
  ])('looks for nothing by “%s”', async (text, fault) => {
    const { shell } = await withCorrection();
    await shown(shell, 'record/verify');
    await typed(text);
    expect(screen.getByText(fault)).toBeTruthy();
    expect(screen.queryByText(/This book/)).toBeNull();
  });
});
