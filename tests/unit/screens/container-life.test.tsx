import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { lifeOf } from '../../../src/ledger/container-life';
import type { ContainerOpened } from '../../../src/ledger/entries/containers';
import { liquidContainers } from '../../../src/ledger/liquid-containers';
import { treatable } from '../../../src/ledger/treatment-begin';
import { choose, fill, follow, open, row, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
// Fetched when they are first opened: here already, so that no test waits for it.
import '../../../src/screens/batches/found-later';
import '../../../src/screens/containers/change';
import '../../../src/screens/containers/found';
import '../../../src/screens/containers/level';
import '../../../src/screens/containers/level-why';
import '../../../src/screens/containers/unknown';
import '../../../src/screens/containers/water-lost';
import '../../../src/screens/containers/what-it-is';
import { notAllHere } from '../../support/long-record';
import { logLiquid, openCan } from '../../support/waste-in-cans';

const litres = (value: string) => ({ value, unit: 'L' }) as const;
const plain = (text: string | null | undefined) =>
  (text ?? '').replaceAll('\u2011', '-').replaceAll(/\s/g, ' ');
const titled = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });

async function withContainers() {
  const memory = await workshopInMemory();
  const can = (made: Partial<ContainerOpened> = {}) => openCan(memory, { tray: 'nitrate tray', ...made });
  const log = (volume: string, containerId: string) =>
    logLiquid(memory, 'barren-liquor', litres(volume), containerId);
  const at = (id: string) => {
    const found = memory.state.value.containers.get(id);
    if (!found) throw new Error('no such container');
    return found;
  };
  const lifeAt = (id: string) => lifeOf(memory.state.value, at(id)).is;
  const show = (page: string) => open(memory.shell, page);
  const here = () => memory.path.value.join('/');
  const written = () => memory.state.value.log.length;
  return { ...memory, can, log, at, lifeAt, show, here, written };
}

/** A jerrican of 5 L with 4 L of barren liquor in it. */
async function holdingFour() {
  const p = await withContainers();
  const id = await p.can();
  const stream = await p.log('4', id);
  p.pass(60_000);
  return { ...p, id, stream };
}

describe('a container that was found', () => {
  async function found() {
    const p = await withContainers();
    p.show('containers');
    follow(p.shell, /^Found one: nobody knows/);
    await titled(/^Found/);
    await user.click(screen.getByRole('radio', { name: 'Its label is gone' }));
    await fill('How much stands in it', '1.5');
    await fill('What is written on it, or told of it', 'S 2 in pencil');
    await fill('Holds when full', '2.5');
    await tap('Put it on the shelf');
    await waitFor(() => expect(p.here()).toMatch(/^containers\/\S+$/));
    const id = p.path.value[1] ?? '';
    p.show(`containers/${id}`);
    return { ...p, id };
  }

  test('stands as not determined, with what is written on it and as much as was read', async () => {
    const p = await found();
    expect(p.lifeAt(p.id)).toBe('not-determined');
    expect(screen.getByText(/^Contents not determined since 12 May$/)).toBeTruthy();
    expect(screen.getByText(/Its label is gone\. S 2 in pencil\. Nothing may be added/)).toBeTruthy();
    expect(screen.getByText(/^as read, of 2.5/)).toBeTruthy();
    expect(screen.queryByText('Empty')).toBeNull();
    expect(screen.queryByRole('link', { name: 'Put in' })).toBeNull();
  });

  test('does not become one of 5 L because nobody said how large it is', async () => {
    const p = await withContainers();
    p.show('containers/found');
    await titled(/^Found/);
    await tap('Put it on the shelf');
    expect(screen.getByText('Write a number here.')).toBeTruthy();
    expect(p.state.value.containers.size).toBe(0);
  });

  test('says what to test in which order, and rings those who may know', async () => {
    const p = await found();
    await p.does({
      do: 'describe-workshop',
      name: 'Invented workshop',
      address: 'Weir Yard 6',
      emergencyNumber: '112',
      collector: { name: 'Fenwater', contact: '01632 960 077' },
    });
    follow(p.shell, /^What to test, whom to ask/);
    await titled(/^What is in C.01\?/);
    const tests = within(screen.getAllByRole('list').at(-1) as HTMLElement).getAllByRole('listitem');
    expect(tests.map(({ textContent }) => textContent?.slice(0, 2))).toEqual([
      '1.',
      '2.',
      '3.',
      '4.',
      '5.',
      '6.',
      '7.',
    ]);
    expect(screen.getByRole('link', { name: /^Call Fenwater/ }).getAttribute('href')).toBe('tel:01632960077');
    expect(screen.getByRole('link', { name: 'Say what it is' })).toBeTruthy();
  });

  test('becomes what somebody says it is, with who says so and how, and can then be filled', async () => {
    const p = await found();
    follow(p.shell, /^Say what it is$/);
    await titled(/what it is$/);
    await tap('That is what it is');
    expect(p.lifeAt(p.id)).toBe('not-determined');
    await choose('Kind of waste', 'Wash water');
    expect((screen.getByLabelText('Volume') as HTMLInputElement).value).toBe('1.5');
    await fill('Copper', '0.4');
    await tap('That is what it is');
    expect(screen.getByText('Choose one.')).toBeTruthy();
    expect(screen.getByText(/^Something above is missing/)).toBeTruthy();
    await choose('Who says so', 'another, not in this list');
    expect(screen.getByText('Write something here.')).toBeTruthy();
    await choose('Who says so', 'Maren');
    await choose('How they know', 'Tests made here');
    p.pass(60_000);
    await tap('That is what it is');
    await waitFor(() => expect(p.lifeAt(p.id)).toBe('filling'));
    p.show(`containers/${p.id}`);
    expect(screen.getByText(/^Maren said what is in it, .*: tests made here\.$/)).toBeTruthy();
    expect(screen.getByText(/^Determined: Wash water/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Put in' })).toBeTruthy();
  });
});

describe('a vessel', () => {
  test('is changed in what is other, and in nothing else', async () => {
    const p = await holdingFour();
    p.show(`containers/${p.id}/change`);
    await titled(/change the vessel/);
    await tap('Keep the change');
    expect(await screen.findByText('Nothing is changed yet.')).toBeTruthy();
    await choose('Cap', 'tight cap');
    await choose('Tray it stands in', 'not said');
    await choose('Which area', 'in the store');
    await tap('Keep the change');
    await waitFor(() => expect(p.at(p.id).body.cap).toBe('tight'));
    expect(p.at(p.id).changes.at(-1)?.body).toEqual({
      kind: 'container-changed',
      v: 1,
      containerId: p.id,
      cap: 'tight',
      tray: null,
      area: 'store',
    });
  });
});

describe('a level', () => {
  async function read(level: string) {
    const p = await holdingFour();
    p.show(`containers/${p.id}/level`);
    await titled(/read the level/);
    expect(plain(screen.getByText(/^By the record/).textContent)).toBe('By the record it holds 4.00 L.');
    await fill('Level', level);
    await tap('Keep the level');
    await waitFor(() => expect(p.at(p.id).levels).toHaveLength(1));
    p.pass(60_000);
    return p;
  }

  test('that agrees is kept, and asks nothing', async () => {
    const p = await read('4.1');
    expect(p.here()).toBe(`containers/${p.id}`);
    p.show(p.here());
    expect(screen.getByText('as the record has it')).toBeTruthy();
  });

  test('that is less is asked about, and water that went off is one tap away, filled in', async () => {
    const p = await read('2.5');
    expect(p.here()).toBe(`containers/${p.id}/level/why`);
    p.show(p.here());
    await titled(/^1.5\s?L less than the record$/);
    await tap(/^Water went off/);
    p.show(p.here());
    expect(((await screen.findByLabelText('How much')) as HTMLInputElement).value).toBe('1.5');
    await tap('Write it down');
    await waitFor(() => expect(p.at(p.id).holds.volume.toFixed()).toBe('2.5'));
    p.show(`containers/${p.id}`);
    expect(screen.queryByText(/level and record disagree/)).toBeNull();
    expect(screen.getByText('Water went off')).toBeTruthy();
  });

  test('that is less may have been spilt: the form for it is filled in', async () => {
    const p = await read('2.5');
    p.show(p.here());
    await tap(/^It was spilt/);
    p.show(p.here());
    expect((screen.getByLabelText('Take out') as HTMLInputElement).value).toBe('1.5');
    expect((screen.getByLabelText('Where it goes') as HTMLSelectElement).value).toBe('spill');
  });

  test('that nobody can explain puts its contents in doubt', async () => {
    const p = await read('2.5');
    p.show(p.here());
    follow(p.shell, /^Nobody knows/);
    await tap('Write it down');
    await waitFor(() => expect(p.lifeAt(p.id)).toBe('not-determined'));
  });

  test('leads to the entries that made the amount, to correct the one that is wrong', async () => {
    const p = await read('2.5');
    p.show(p.here());
    follow(p.shell, /^An entry is wrong/);
    await titled('Which entry?');
    expect(screen.getAllByRole('listitem')).toHaveLength(3);
    expect(row(/into C.01/).getAttribute('href')).toMatch(/^#\/record\/entry\//);
  });
});

describe('what is said of a container', () => {
  test.each([
    ['Hold it as it is', 'held', 'Held as it is since 12 May'],
    ['Set aside to leave', 'leaving', 'Set aside to leave since 12 May'],
    ['It is closed for good', 'closed', 'Closed for good since 12 May'],
  ] as const)('%s: three taps from its page, then said by word on it', async (door, is, word) => {
    const p = await holdingFour();
    p.show(`containers/${p.id}`);
    follow(p.shell, /^More$/);
    follow(p.shell, new RegExp(`^${door}`));
    await tap('Write it down');
    await waitFor(() => expect(p.lifeAt(p.id)).toBe(is));
    p.show('today');
    expect(
      screen.getByRole('link', { name: new RegExp(`^C-01, Barren liquor.*${word.slice(0, 6)}`) }),
    ).toBeTruthy();
    p.show(`containers/${p.id}`);
    expect(screen.getByText(word)).toBeTruthy();
    expect(screen.queryByRole('link', { name: 'Put in' })).toBeNull();
  });

  test('gone: to whom and with which paper; then its proof, and it stands apart on the list', async () => {
    const p = await holdingFour();
    await p.does({
      do: 'describe-workshop',
      name: 'Invented workshop',
      address: 'Weir Yard 6',
      emergencyNumber: '112',
      collector: { name: 'Fenwater', contact: '01632 960 077' },
    });
    p.show(`containers/${p.id}/mark/gone`);
    await choose('To whom it went', 'Fenwater');
    await fill('Number of the paper', 'T-114');
    await tap('Write it down');
    await waitFor(() => expect(p.lifeAt(p.id)).toBe('gone'));
    expect(p.at(p.id).marks.at(-1)?.body).toMatchObject({ to: 'Fenwater', document: 'T-114' });
    p.show('containers');
    await user.click(screen.getByText('Gone (1)'));
    const [own, ...twice] = await screen.findAllByRole('link', { name: /^C.01/ });
    expect(own?.closest('details')?.textContent).toMatch(/^Gone \(1\)/);
    expect(twice).toEqual([]);
    p.show(`containers/${p.id}`);
    expect(screen.getByText('Fenwater, T-114')).toBeTruthy();
    p.pass(60_000);
    follow(p.shell, /^File the proof of disposal$/);
    await fill('Number of the paper', 'V-9');
    await tap('Write it down');
    await waitFor(() => expect(p.at(p.id).proofFiledAt).not.toBeNull());
    p.pass(60_000);
    p.show(`containers/${p.id}`);
    expect(screen.getByRole('link', { name: /^Proof of disposal is filed V-9, / })).toBeTruthy();
    follow(p.shell, /^It came back$/);
    await tap('Write it down');
    await waitFor(() => expect(p.lifeAt(p.id)).toBe('filling'));
  });

  test('emptied: what the record still has in it is said before', async () => {
    const p = await holdingFour();
    p.show(`containers/${p.id}/mark/emptied`);
    expect(plain(screen.getByText(/By the record/).textContent)).toContain('still holds 4.00 L');
    follow(p.shell, /^Write where it went$/);
    expect(screen.getByLabelText('Take out')).toBeTruthy();
  });

  test('the same page asks for no mark that there is not', async () => {
    const p = await holdingFour();
    p.show(`containers/${p.id}/mark/vanished`);
    expect(screen.getByText('This container is not in the record.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Write it down' })).toBeNull();
  });
});

describe('a container that broke', () => {
  async function broken() {
    const p = await holdingFour();
    const [small, other] = [await p.can({ capacity: litres('2.5') }), await p.can()];
    p.show(`containers/${p.id}/mark/damaged`);
    await tap('Write it down');
    await waitFor(() => expect(p.here()).toBe(`containers/${p.id}/move-all`));
    p.show(p.here());
    p.pass(1000);
    return { ...p, small, other };
  }

  test('opens a stop at once, and names the sound ones that all of it fits into', async () => {
    const p = await broken();
    expect(screen.getByText('STOP')).toBeTruthy();
    expect((await titled(/is damaged/)).textContent).toMatch(/Move all of it, now\.$/);
    expect(screen.getAllByRole('button').map(({ textContent }) => plain(textContent))).toEqual([
      expect.stringMatching(/^All of it into C-03/),
      'Already moved? Write it down.',
    ]);
    expect(p.lifeAt(p.id)).toBe('damaged');
  });

  test('is empty with one tap, and all of it stands in the other', async () => {
    const p = await broken();
    await tap(/^All of it into C.03/);
    await waitFor(() => expect(p.here()).toBe(`containers/${p.other}`));
    expect(p.at(p.other).holds.volume.toFixed()).toBe('4');
    expect(p.at(p.id).contents).toEqual([]);
    p.show(`containers/${p.id}/move-all`);
    expect(screen.queryByText('STOP')).toBeNull();
  });

  test('has a door to a new one, which leads back, and to the spill card', async () => {
    const p = await broken();
    expect(row(/spill card/).getAttribute('href')).toBe('#/sos/spill');
    follow(p.shell, /^Open a new container for it/);
    await fill('Holds when full', '10');
    await tap('Open this container');
    await waitFor(() => expect(p.here()).toBe(`containers/${p.id}/move-all`));
    p.show(p.here());
    expect(screen.getByRole('button', { name: /^All of it into C.04/ })).toBeTruthy();
  });

  test('was emptied already: the form for it has all of it filled in', async () => {
    const p = await broken();
    await tap('Already moved? Write it down.');
    expect(p.here()).toBe(`containers/${p.id}/out`);
    p.show(p.here());
    expect((screen.getByLabelText('Take out') as HTMLInputElement).value).toBe('4');
    await choose('Into which', p.small);
    await tap('Write it down');
    await tap('It is in already. Write it down.');
    await waitFor(() => expect(p.at(p.small).holds.volume.toFixed()).toBe('4'));
  });

  test('says so on its own page, with the way there', async () => {
    const p = await broken();
    p.show(`containers/${p.id}`);
    expect(row(/is damaged/).getAttribute('href')).toBe(`#/containers/${p.id}/move-all`);
    expect(row(/^Move all of it over$/).getAttribute('href')).toBe(`#/containers/${p.id}/move-all`);
  });
});

test('what is wrong with it stands on its page, each with the way to put it right', async () => {
  const p = await withContainers();
  const id = await p.can({ cap: 'tight' });
  await p.log('4.8', id);
  await p.does({
    do: 'answer-candidate',
    containerId: id,
    scheme: 'rcra',
    code: 'D002',
    answer: 'accepted',
    saidBy: 'Fenwater',
    saidOn: '2026-05-12',
  });
  p.pass(60_000);
  await p.does({ do: 'log-level', containerId: id, level: litres('3') });
  p.show(`containers/${id}`);
  const hrefs = within(screen.getByRole('list', { name: 'Wrong or to be done' }))
    .getAllByRole('link')
    .map((link) => [
      plain(link.textContent).slice(0, 24),
      link.getAttribute('href')?.split('/').slice(3).join('/'),
    ]);
  expect(hrefs).toEqual([
    ['C-01 is too fullLimit 90', 'out'],
    ['C-01 is capped tightNitr', 'change'],
    ['C-01: level and record d', 'level/why'],
  ]);
  p.pass(60_000);
  await p.log('0.1', id);
  p.show(`containers/${id}`);
  expect(row(/confirmed for other contents/).getAttribute('href')).toBe(`#/containers/${id}/candidates`);
});

test('what went in and out stands with its day, its waste and batch, and what was in it then', async () => {
  const p = await holdingFour();
  await p.log('0.3', p.id);
  p.show(`containers/${p.id}`);
  const rows = screen
    .getAllByRole('link', { name: /Barren liquor, B/ })
    .map((link) => plain(link.textContent));
  expect(rows).toEqual([
    '12 MayBarren liquor, B-01then 4.30 L+0.3 L',
    '12 MayBarren liquor, B-01first in, then 4.00 L+4 L',
  ]);
});

test('its history has every entry about it, and none about another', async () => {
  const p = await holdingFour();
  const other = await p.can();
  await p.does({ do: 'mark-container', containerId: other, mark: 'held' });
  await p.does({ do: 'mark-container', containerId: p.id, mark: 'closed' });
  p.show(`containers/${p.id}/history`);
  await titled(/history$/);
  const history = screen.getByRole('list', { name: /history$/ });
  expect(
    within(history)
      .getAllByRole('listitem')
      .map(({ textContent }) => plain(textContent).slice(0, 12)),
  ).toEqual([
    expect.stringMatching(/^C-01/),
    expect.stringMatching(/^4 L into/),
    expect.stringMatching(/^Barren liquo/),
    expect.stringMatching(/^C-01 opened/),
  ]);
});

test('what was found of a liquor later stands beside what was known of it', async () => {
  const p = await holdingFour();
  p.show(`streams/${p.stream}`);
  follow(p.shell, /^Add what was found later/);
  await titled('Found later');
  const before = p.written();
  await tap('Keep what was found');
  expect(await screen.findByText('Nothing is filled in yet.')).toBeTruthy();
  await fill('Copper', '11.8');
  await tap('Keep what was found');
  await waitFor(() => expect(p.written()).toBe(before + 1));
  expect(p.state.value.streams.get(p.stream)?.body.liquid?.findings).toEqual([
    { by: 'photometer', metal: 'Cu', concentration: { value: '11.8', unit: 'g/L' } },
  ]);
});

test('what is gone is chosen last, and neither compared nor treated', async () => {
  const p = await holdingFour();
  const other = await p.can();
  await p.log('1', other);
  await p.does({ do: 'mark-container', containerId: p.id, mark: 'gone' });
  p.pass(60_000);
  const third = await p.can();
  p.show(`containers/${third}/out`);
  const options = within(screen.getByLabelText('Into which')).getAllByRole('option');
  expect(options.map(({ textContent }) => plain(textContent))).toEqual([
    'Choose',
    'C-02: Barren liquor B-01, 1.00 L',
    'C-01: Barren liquor B-01, 4.00 L, gone',
  ]);
  expect(liquidContainers(p.state.value)).toEqual([other]);
  expect(treatable(p.state.value).map(({ body }) => body.containerId)).toEqual([other]);
});

test('a half-filled form is there again after a reload', async () => {
  const p = await holdingFour();
  p.show(`containers/${p.id}/level`);
  await titled(/read the level/);
  await fill('Level', '3.7');
  p.show(`containers/${p.id}/level`);
  await titled(/read the level/);
  expect((screen.getByLabelText('Level') as HTMLInputElement).value).toBe('3.7');
});

test('one that stood here before all that is at hand leads to its history for what was in it before', async () => {
  const { state, show, id } = await holdingFour();
  show(`containers/${id}`);
  expect(plain(document.body.textContent)).toContain('first in');
  expect(screen.queryByRole('link', { name: /^What was before that/ })).toBeNull();
  state.value = {
    ...state.value,
    earlier: notAllHere(),
  };
  show(`containers/${id}`);
  expect(plain(document.body.textContent)).not.toContain('first in');
  expect(row(/^What was before that/).getAttribute('href')).toBe(`#/containers/${id}/history`);
});
