import { signal } from '@preact/signals';
import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test, vi } from 'vitest';
import { applyAll } from '../../../src/ledger/fold';
import { openingOf, stateFrom } from '../../../src/ledger/opening';
import type { State } from '../../../src/ledger/state';
import { baseIds } from '../../../src/reference/tables';
import { open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { wholeInMemory } from '../../support/whole-in-memory';

async function withLiquor() {
  const memory = await workshopInMemory();
  const logged = await memory.does({
    do: 'log-stream',
    batchId: memory.batch,
    stepId: null,
    stream: 'leach-liquor',
    liquid: {
      volume: { value: '3.60', unit: 'L' },
      findings: [{ by: 'photometer', metal: 'Cu', concentration: { value: '11.8', unit: 'g/L' } }],
      // As a density: grams a millilitre would be another unit of its kind, which this place does not take.
      freeAcid: [
        {
          by: 'charged-minus-consumed',
          volume: { value: '3.7', unit: 'L' },
          strength: { value: '1.180', unit: 'kg/L' },
        },
      ],
    },
    note: 'Greenish',
  });
  const volume = () => [...memory.state.value.streams.values()][0]?.amount.volume.toFixed();
  return { ...memory, logged, volume };
}

describe('the record', () => {
  test('says that it is whole, and how many entries it has', async () => {
    const { shell, state } = await workshopInMemory();
    open(shell, 'record');
    expect(await screen.findByText(`Whole, ${state.value.log.length} entries`)).toBeTruthy();
  });

  test('of which only a part is at hand is called whole by what the look at all of it found, or not at all', async () => {
    const { shell, state } = await workshopInMemory();
    const { log } = state.value;
    const at = (part: State) => ({ ...shell, state: signal(part) });
    const night = '2026-05-12T09:00:00.000Z';
    const opening = openingOf(state.value, { from: night, until: night });
    const part = stateFrom({ ...opening, log: log.slice(0, 2), places: [1, 2] });
    expect(log).toHaveLength(4);
    open(at(part), 'record');
    expect(screen.getByRole('link', { name: /^4 entries/ }).getAttribute('href')).toBe('#/record/verify');
    expect(screen.queryByText(/Whole|not as it was written/)).toBeNull();
    const looked = {
      entries: 100_000,
      photos: 0,
      heads: [],
      wrong: [],
      wrongCount: 0,
      untold: { damaged: 0, later: 0, photo: 0 },
      photosElsewhere: 0,
    };
    open({ ...at(part), lastCheck: signal(looked) }, 'record');
    expect(screen.getByText(/^Whole, 100.000 entries$/)).toBeTruthy();
  });

  test('names the entry that is not as it was written', async () => {
    const { shell, state } = await workshopInMemory();
    const [first, second, ...rest] = state.value.log;
    if (!first || !second) throw new Error('too few entries');
    const changed = { ...second, happenedAt: '2020-01-01T00:00:00.000Z' };
    state.value = { ...state.value, log: [first, changed, ...rest] };
    open(shell, 'record');
    const wrong = await screen.findByRole('link', { name: /Entry 2 is not as it was written/ });
    expect(wrong.getAttribute('href')).toBe(`#/record/entry/${second.id}`);
  });

  test('says how many entries could not be read', async () => {
    const { shell } = await workshopInMemory();
    const corrupted = signal([{ id: null, raw: {}, issues: [] }]);
    open({ ...shell, corrupted }, 'record');
    expect(screen.getByText('1 entry could not be read')).toBeTruthy();
  });

  test('says that the browser may clear it, asks, and says what the browser promised', async () => {
    const persist = vi.fn(async () => true);
    const storage = { persisted: async () => false, persist };
    vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { storage }));
    const { shell } = await workshopInMemory();
    open(shell, 'record');
    expect(await screen.findByText('The browser may throw the record away')).toBeTruthy();
    expect(persist).not.toHaveBeenCalled();
    await tap('Ask the browser to keep it');
    expect(await screen.findByText('Kept on this phone')).toBeTruthy();
    vi.unstubAllGlobals();
  });
});

describe('local rules', () => {
  test('that are not entered say what follows, and are entered with who said so and when', async () => {
    const { shell, state, path } = await workshopInMemory();
    const rules = open(shell, 'record/rules');
    expect(screen.getByText('Not entered. Days are counted up, and none is called in time.')).toBeTruthy();
    rules.unmount();
    open(shell, 'record/rules/storage-days');
    await user.type(screen.getByLabelText('How long may waste stay?'), '180');
    await user.type(screen.getByLabelText('Who said so'), 'County office');
    await user.type(screen.getByLabelText('When'), '2026-05-13');
    await tap('Keep this rule');
    expect(screen.getByText('That day is still to come.')).toBeTruthy();
    expect(state.value.rules.size).toBe(0);
    await user.clear(screen.getByLabelText('When'));
    await user.type(screen.getByLabelText('When'), '2026-05-12');
    await tap('Keep this rule');
    await waitFor(() => expect(path.value).toEqual(['record', 'rules']));
    expect(state.value.rules.get('storage-days')?.body).toMatchObject({
      stated: { value: { value: '180', unit: 'days' } },
      saidBy: 'County office',
      saidOn: '2026-05-12',
    });
  });

  test.each([
    ['100', undefined],
    ['100.1', 'At most 100 %. Check the number and its unit.'],
    ['0', 'It must be more than nothing.'],
    ['', 'Write a number here.'],
  ])('a fill limit of “%s” %% gets the words %s', async (typed, fault) => {
    const { shell, state } = await workshopInMemory();
    open(shell, 'record/rules/fill-limit');
    const field = screen.getByLabelText('How full may a container be?');
    if (typed !== '') await user.type(field, typed);
    await user.type(screen.getByLabelText('Who said so'), 'County office');
    await user.type(screen.getByLabelText('When'), '2026-05-12');
    await tap('Keep this rule');
    if (fault === undefined) await waitFor(() => expect(state.value.rules.size).toBe(1));
    else {
      expect(screen.getByText(fault)).toBeTruthy();
      await waitFor(() => expect(document.activeElement).toBe(field));
      expect(state.value.rules.size).toBe(0);
    }
  });
});

describe('people', () => {
  test('are added and leave, and the one who holds the phone is chosen', async () => {
    const { shell, state, person, tobias } = await workshopInMemory();
    const list = open(shell, 'record/people');
    await user.click(screen.getByRole('radio', { name: 'Tobias' }));
    expect(person.value).toBe(tobias);
    list.unmount();
    const leaving = open(shell, `record/people/${tobias}`);
    await user.click(screen.getByRole('button', { name: /Has left/ }));
    await waitFor(() => expect(state.value.people.get(tobias)?.leftAt).not.toBeNull());
    leaving.unmount();
    const again = open(shell, 'record/people');
    expect(screen.queryByRole('radio', { name: 'Tobias' })).toBeNull();
    expect(screen.getByRole('link', { name: /Tobias.*left/ })).toBeTruthy();
    again.unmount();
    open(shell, 'record/people/new');
    await tap('Keep this person');
    expect(screen.getByText('Write something here.')).toBeTruthy();
    expect(screen.queryByRole('alert')).toBeNull();
    await user.type(screen.getByLabelText('Name'), 'Ada');
    await tap('Keep this person');
    await waitFor(() =>
      expect([...state.value.people.values()].map(({ body }) => body.name)).toContain('Ada'),
    );
  });
});

test('a stated purity stands for its base; the others say what is reckoned with', async () => {
  const { shell, state } = await workshopInMemory();
  const form = open(shell, 'record/bases/hydrated-lime');
  await user.type(screen.getByLabelText('Purity, by mass'), '94,0');
  await user.type(screen.getByLabelText('Who or what says so'), 'as on the bag');
  await tap('Keep this purity');
  await waitFor(() => expect(state.value.bases.get('hydrated-lime')?.body.purity?.value).toBe('94.0'));
  form.unmount();
  open(shell, 'record/bases');
  const list = within(screen.getByRole('list', { name: 'Bases and their purity' }));
  expect(list.getByRole('link', { name: /Hydrated lime.*as on the bag.*94.0/ })).toBeTruthy();
  expect(list.getByRole('link', { name: /Limestone.*Not stated: 85 to 99 %/ })).toBeTruthy();
  expect(list.getAllByRole('link')).toHaveLength(baseIds.length);
});

test('a base is stated by its basicity factor as well, but not by both', async () => {
  const { shell, state } = await workshopInMemory();
  const form = open(shell, 'record/bases/hydrated-lime');
  await user.type(screen.getByLabelText('Purity, by mass'), '94');
  await user.type(screen.getByLabelText('Or basicity factor, g CaO a gram'), '0,72');
  expect(screen.getByText(/leave one empty/)).toBeTruthy();
  await tap('Keep this purity');
  expect(state.value.bases.has('hydrated-lime')).toBe(false);
  await user.clear(screen.getByLabelText('Purity, by mass'));
  await tap('Keep this purity');
  await waitFor(() => expect(state.value.bases.get('hydrated-lime')?.body.basicity?.value).toBe('0.72'));
  form.unmount();
  open(shell, 'record/bases');
  const list = within(screen.getByRole('list', { name: 'Bases and their purity' }));
  expect(list.getByRole('link', { name: /Hydrated lime.*0.72.*g CaO\/g/ })).toBeTruthy();
});

describe('an entry', () => {
  test('is corrected in its numbers and texts, and the history shows both', async () => {
    const { shell, logged, volume } = await withLiquor();
    const form = open(shell, `record/entry/${logged.id}/correct`);
    await user.clear(screen.getByLabelText('Volume'));
    await user.type(screen.getByLabelText('Volume'), '3,45');
    await tap('Keep the correction');
    expect(volume()).toBe('3.6');
    await user.type(screen.getByLabelText('Why it was wrong'), 'misread');
    await tap('Keep the correction');
    await waitFor(() => expect(volume()).toBe('3.45'));
    form.unmount();
    open(shell, 'record/history');
    const line = await screen.findByRole('link', { name: /^Leach liquor, B.01, 3\.60/ });
    expect(line.textContent).toMatch(/Corrected 12 May 2026, \d\d:\d\d, Maren: misread/);
    expect(line.textContent).toContain('Volume: 3.60\u2009L, now 3.45\u2009L');
  });

  test('can be corrected in its unit, and only to one that its place takes', async () => {
    const { shell, logged, volume } = await withLiquor();
    open(shell, `record/entry/${logged.id}/correct`);
    expect(screen.queryByRole('combobox', { name: /strength, unit$/ })).toBeNull();
    const unit = screen.getByRole('combobox', { name: 'Volume, unit' });
    expect(
      within(unit)
        .getAllByRole('option')
        .map((o) => o.textContent),
    ).toEqual(['L', 'mL', 'US gal']);
    await user.selectOptions(unit, 'mL');
    await user.type(screen.getByLabelText('Why it was wrong'), 'wrong unit');
    await tap('Keep the correction');
    await waitFor(() => expect(volume()).toBe('0.0036'));
  });

  test('is not corrected when nothing is changed, nor to a moment that has not come', async () => {
    const { shell, state, logged } = await withLiquor();
    open(shell, `record/entry/${logged.id}/correct`);
    await user.type(screen.getByLabelText('Why it was wrong'), 'no reason');
    await tap('Keep the correction');
    expect(screen.getByRole('alert').textContent).toContain('Nothing is changed yet.');
    const when = screen.getByLabelText('When it happened');
    await user.clear(when);
    await user.type(when, '2026-12-24T09:30');
    await tap('Keep the correction');
    expect(screen.getByText('Choose a day and hour that have passed.')).toBeTruthy();
    expect(state.value.log.at(-1)?.id).toBe(logged.id);
  });

  test('is withdrawn with a reason, stays in the history, and comes back when that is withdrawn', async () => {
    const { shell, state, logged } = await withLiquor();
    const first = open(shell, `record/entry/${logged.id}/withdraw`);
    await tap('Withdraw it');
    expect(state.value.streams.size).toBe(1);
    await user.type(screen.getByLabelText('Why it did not happen'), 'another batch');
    await tap('Withdraw it');
    await waitFor(() => expect(state.value.streams.size).toBe(0));
    first.unmount();
    const history = open(shell, 'record/history');
    const line = await screen.findByRole('link', {
      name: /^Leach liquor.*Withdrawn 12 May 2026, .*, Maren: another batch/,
    });
    expect(line.querySelector('s')?.textContent).toMatch(/^Leach liquor/);
    history.unmount();
    const withdrawal = state.value.log.at(-1)?.id;
    open(shell, `record/entry/${withdrawal}/withdraw`);
    await user.type(screen.getByLabelText('Why it did not happen'), 'it did happen');
    await tap('Withdraw it');
    await waitFor(() => expect(state.value.streams.size).toBe(1));
  });

  test('shows what it says in words, and its hashes', async () => {
    const { shell, logged } = await withLiquor();
    open(shell, `record/entry/${logged.id}`);
    const fact = (term: string) => screen.getByText(term).nextElementSibling?.textContent;
    expect(fact('Copper (photometer)')).toBe('11.8\u2009g/L');
    expect(fact('Batch')).toMatch(/^B.01$/);
    expect(document.body.textContent).not.toContain('metal');
    expect(fact('By')).toBe('Maren');
    expect(fact('On')).toBe('this phone');
    expect(fact('Its hash')?.replaceAll('\u00a0', '')).toBe(logged.hash.slice(0, 16));
    expect(fact('Of the entry before it on its device')?.replaceAll('\u00a0', '')).toBe(
      logged.previous?.slice(0, 16),
    );
    expect(fact('In full, SHA-256')).toBe(logged.hash);
  });
});

describe('an entry that is not as it was sealed', () => {
  /** One letter of it was changed on the disk, and its hash was not. */
  async function withDamage() {
    const memory = await withLiquor();
    const { state, shell, logged } = memory;
    const log = state.value.log.map((entry) =>
      entry.id === logged.id ? { ...entry, happenedAt: '2026-05-10T09:30:00.000Z' } : entry,
    );
    return {
      ...memory,
      shell: { ...shell, state: signal(applyAll(log)), whole: wholeInMemory(() => log, '') },
    };
  }

  test('says so on top of its page, with the way to a backup; one that is says nothing', async () => {
    const { shell, logged, state } = await withDamage();
    const page = open(shell, `record/entry/${logged.id}`);
    expect(screen.getByRole('note').textContent).toMatch(/^This entry is not as it was sealed.*in doubt/);
    expect(screen.getByRole('link', { name: 'Restore a backup' }).getAttribute('href')).toBe(
      '#/record/restore',
    );
    page.unmount();
    open(shell, `record/entry/${state.value.log[0]?.id}`);
    expect(screen.getByText('What it says')).toBeTruthy();
    expect(screen.queryByRole('note')).toBeNull();
  });

  test('says so of a correction, where what counts now is in doubt', async () => {
    const { shell, logged, does, state } = await withLiquor();
    await does({ do: 'withdraw-entry', withdraws: logged.id, reason: 'another batch' });
    const log = state.value.log.map((entry) =>
      entry.body.kind === 'entry-withdrawn' ? { ...entry, writtenAt: '2026-05-13T09:30:00.000Z' } : entry,
    );
    open({ ...shell, state: signal(applyAll(log)) }, `record/entry/${logged.id}`);
    expect(screen.getByRole('note').textContent).toMatch(
      /^A correction of this entry is not as it was sealed/,
    );
  });

  test('is in doubt in the history, and no other is', async () => {
    const { shell } = await withDamage();
    open(shell, 'record/history');
    const line = await screen.findByRole('link', { name: /^Leach liquor.*Not as it was sealed/ });
    expect(line).toBeTruthy();
    expect(screen.getAllByText(/Not as it was sealed/)).toHaveLength(1);
  });

  test('that cannot be read is not said to be missing', async () => {
    const { shell } = await withLiquor();
    const id = '00000000-0000-7000-8000-00000000dead';
    const page = open({ ...shell, corrupted: signal([{ id, raw: {}, issues: [] }]) }, `record/entry/${id}`);
    expect(await screen.findByRole('heading', { level: 1, name: 'This entry cannot be read' })).toBeTruthy();
    page.unmount();
    open(shell, `record/entry/${id}`);
    expect(await screen.findByText('This entry is not in the record.')).toBeTruthy();
  });
});

test('a workshop described again keeps what was there and takes the change', async () => {
  const { shell, state } = await workshopInMemory();
  open(shell, 'record/workshop');
  const name = screen.getByLabelText('Name of the workshop');
  await user.clear(name);
  await user.type(name, 'Weir Yard shed');
  await tap('Keep the workshop');
  await waitFor(() => expect(state.value.workshop?.body.name).toBe('Weir Yard shed'));
  expect(state.value.workshop?.body).toMatchObject({ emergencyNumber: '112', mapReference: '4471 0926' });
});
