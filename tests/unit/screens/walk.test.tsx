/** The walk along the containers at the shelf: one by one, what is wrong, stops, pauses, the place, the end. */
import { act, fireEvent, screen } from '@testing-library/preact';
import { describe, expect, it, test } from 'vitest';
import { flags } from '../../../src/ledger/flags';
import { walkList } from '../../../src/ledger/walks';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';
import { tap as begin, heading, key as keyIn, leadsTo, reload, show, type Workshop } from './at-the-bench';

/** A can with this much in it. @returns its id */
async function stands(workshop: Workshop, code: string, volume = '2'): Promise<string> {
  const containerId = await openCan(workshop, { code, place: 'North wall', tray: 'nitrate tray' });
  if (volume === '0') return containerId;
  await logLiquid(workshop, 'barren-liquor', { value: volume, unit: 'L' }, containerId);
  return containerId;
}

async function shelf(cans = 3): Promise<Workshop> {
  const workshop = await workshopInMemory(undefined, ['walk']);
  for (let n = 1; n <= cans; n++) await stands(workshop, `C-0${n}`);
  return workshop;
}

/** What a tap began comes to its end: the entry is written, the draft is kept. */
const settled = () => act(() => new Promise<void>((done) => setTimeout(done)));

async function tap(workshop: Workshop, name: string | RegExp): Promise<void> {
  await begin(workshop, name);
  await settled();
}

async function key(workshop: Workshop, digits: string): Promise<void> {
  await keyIn(workshop, digits);
  await settled();
}

/** Taps so many ms after the page came up. */
async function tapAfter(workshop: Workshop, ms: number): Promise<void> {
  await act(async () => workshop.pass(ms));
  await act(async () => {
    fireEvent.click(screen.getByRole('button', { name: 'As it should be' }));
  });
  await settled();
}

const code = (n: number): string => `C\u20110${n}`;
const inOrder = (workshop: Workshop) => tap(workshop, 'As it should be');
const seen = ({ state }: Workshop) => [...state.value.walks.values()].at(-1)?.inspected ?? [];
const codesSeen = (workshop: Workshop): (string | undefined)[] =>
  seen(workshop).map(({ body }) => workshop.state.value.containers.get(body.containerId)?.body.code);
const found = ({ state }: Workshop) => [...state.value.findings.values()];
const fill = (label: string, text: string) =>
  fireEvent.input(screen.getByLabelText(label), { target: { value: text } });

/** The looks of the place, all in order, the thermometer at twelve. */
async function placeInOrder(workshop: Workshop): Promise<void> {
  await tap(workshop, 'Each in its own tray');
  await tap(workshop, 'Ran clear, both sides');
  await key(workshop, '12');
}

describe('all in order', () => {
  it('takes a tap a container, and no more than fifteen for ten of them', async () => {
    const workshop = await workshopInMemory(undefined, ['walk']);
    for (let n = 10; n < 20; n++) await stands(workshop, `C-${n}`);
    show(workshop);
    let taps = 0;
    const count = () => {
      taps += 1;
    };
    document.addEventListener('click', count);
    for (let n = 10; n < 20; n++) {
      expect(heading()).toBe(`C\u2011${n}`);
      await inOrder(workshop);
    }
    await placeInOrder(workshop);
    document.removeEventListener('click', count);
    expect(taps).toBeLessThanOrEqual(15);
    expect(heading()).toBe('The walk is done.');
    expect(screen.getByText('10 containers seen, nothing found.')).toBeTruthy();
    expect(screen.getByText('by 19 May')).toBeTruthy();
    expect(workshop.drafts.size).toBe(0);
  });

  it('is written container by container, with each look that was asked, and the end with the reading', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await inOrder(workshop);
    const looks = ['insp-shape', 'insp-leak', 'insp-cap', 'insp-label', 'insp-tray'];
    expect(seen(workshop).map(({ body }) => [body.looks, body.found, body.quick])).toEqual([
      [looks, [], undefined],
    ]);
    await inOrder(workshop);
    await placeInOrder(workshop);
    const [walk] = workshop.state.value.walks.values();
    expect(walk?.finished?.body).toMatchObject({
      looks: ['insp-apart', 'insp-eye', 'insp-temp'],
      readings: [{ look: 'insp-temp', value: '12', unit: '°C' }],
      notSeen: [],
      found: [],
    });
    expect(walk?.finished?.body.containerIds).toHaveLength(2);
  });

  it('shows what the record has of the container, and what to look at', async () => {
    const workshop = await shelf(1);
    show(workshop);
    for (const text of ['Barren liquor B\u201101', 'North wall', 'nitrate tray', '2.00 L of 5 L'])
      expect(screen.getByText(text)).toBeTruthy();
    const looks = screen.getByRole('list', { name: 'What to look at' });
    expect(looks.children).toHaveLength(5);
  });

  it('asks what the workshop has added too, of each container or once', async () => {
    const workshop = await shelf(1);
    const own = { kind: 'confirm', stop: true, reason: 'It happened' } as const;
    const list = walkList(workshop.state.value).id;
    await workshop.does({
      do: 'change-list',
      change: {
        change: 'item-added',
        list,
        item: { ...own, id: 'own-1', ask: 'Date on the cap', look: 'Read the cap.', of: 'container' },
      },
    });
    show(workshop);
    expect(screen.getByText('Read the cap.')).toBeTruthy();
    await inOrder(workshop);
    expect(seen(workshop)[0]?.body.looks.at(-1)).toBe('own-1');
  });
});

test('a look that is new since this person walked last is told before the first container, once', async () => {
  const workshop = await shelf(1);
  show(workshop);
  await inOrder(workshop);
  await placeInOrder(workshop);
  const item = { id: 'own-1', kind: 'confirm', stop: true, ask: 'Shed locked', reason: 'Children' } as const;
  const list = walkList(workshop.state.value).id;
  await workshop.does({ do: 'change-list', change: { change: 'item-added', list, item } });
  workshop.pass(7 * 86_400_000);
  workshop.path.value = ['walk'];
  reload(workshop);
  expect(heading()).toBe('This list has changed since you last went through it');
  expect(screen.getByText('Shed locked')).toBeTruthy();
  await tap(workshop, 'I have read it. Begin.');
  expect(heading()).toBe(code(1));
  await inOrder(workshop);
  reload(workshop);
  expect(heading()).toBe('Acids, ammonia, organics apart');
  // Tobias has never walked: nothing is new to him.
  workshop.pass(86_400_000);
  workshop.person.value = workshop.tobias;
  reload(workshop);
  expect(heading()).toBe(code(1));
});

describe('no container', () => {
  it('at all is said, and nothing is asked', async () => {
    const workshop = await workshopInMemory(undefined, ['walk']);
    await stands(workshop, 'C-01', '0');
    show(workshop);
    expect(heading()).toBe('No container to look at');
  });

  it('that is gone is asked, and none that is empty, unless it is damaged', async () => {
    const workshop = await shelf(2);
    const empty = await stands(workshop, 'C-03', '0');
    const [first] = workshop.state.value.containers.keys();
    await workshop.does({ do: 'mark-container', containerId: first ?? '', mark: 'gone' });
    show(workshop);
    expect(heading()).toBe(code(2));
    await act(async () => {
      await workshop.does({ do: 'mark-container', containerId: empty, mark: 'damaged' });
    });
    expect(heading()).toBe(code(3));
    expect(screen.getByText(/^Damaged since/)).toBeTruthy();
    expect(screen.getByText('0.00 L of 5 L')).toBeTruthy();
  });
});

test('what nobody knows is looked at first, and is never called empty', async () => {
  const workshop = await shelf(1);
  const found = await stands(workshop, 'C-02', '0');
  await workshop.does({ do: 'mark-container', containerId: found, mark: 'contents-doubtful' });
  show(workshop);
  expect(heading()).toBe(code(2));
  expect(screen.getByText('Contents not determined')).toBeTruthy();
  expect(screen.getByText('not determined')).toBeTruthy();
  expect(screen.queryByText('Empty')).toBeNull();
});

describe('something is wrong', () => {
  it('is told look by look, with a note, and written with its container', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Leak or crust?');
    await tap(workshop, 'Weep');
    await tap(workshop, 'Old crust, dry');
    expect(heading()).toBe('Leak or crust? Weep: old crust, dry.');
    fill('More to it', 'White, under the rim');
    await tap(workshop, 'Something else is wrong');
    expect(screen.queryByRole('button', { name: 'Leak or crust?' })).toBeNull();
    // A look to be confirmed is wrong already: only its reason is asked.
    await tap(workshop, 'Not so: Label readable, dated');
    await tap(workshop, 'Written by hand for now');
    await tap(workshop, 'Write it down, go on');
    expect(heading()).toBe(code(2));
    expect(seen(workshop)[0]?.body.found).toEqual([
      expect.objectContaining({
        look: 'insp-leak',
        answer: 'weep: old crust, dry',
        note: 'White, under the rim',
      }),
      expect.objectContaining({ look: 'insp-label', answer: 'no: written by hand for now' }),
    ]);
    expect(flags(workshop.state.value).filter((flag) => flag.code === 'finding-open')).toHaveLength(2);
  });

  it('and what is described half survives a reload', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Leak or crust?');
    await tap(workshop, 'Weep');
    await tap(workshop, 'Old crust, dry');
    fill('More to it', 'White');
    reload(workshop);
    expect(heading()).toBe('Leak or crust? Weep: old crust, dry.');
    expect((screen.getByLabelText('More to it') as HTMLInputElement).value).toBe('White');
    // It waits for longer than the walk does.
    workshop.pass(20 * 3_600_000);
    reload(workshop);
    expect(heading()).toBe('Leak or crust? Weep: old crust, dry.');
  });

  it('is nothing after all when the look is in order, and can be left', async () => {
    const workshop = await shelf(1);
    show(workshop);
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Leak or crust?');
    await tap(workshop, 'None');
    expect(heading()).toBe('What is wrong?');
    await tap(workshop, 'Back');
    expect(heading()).toBe(code(1));
    expect(seen(workshop)).toEqual([]);
  });

  it('before is shown, so that it is not told anew', async () => {
    const workshop = await shelf(1);
    show(workshop);
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Not so: Tray dry and whole');
    await tap(workshop, 'Tray ordered');
    await tap(workshop, 'Write it down, go on');
    await placeInOrder(workshop);
    workshop.pass(7 * 86_400_000);
    workshop.path.value = ['walk'];
    reload(workshop);
    expect(heading()).toBe(code(1));
    expect(screen.getByText('Found before, still open: Tray dry and whole No: tray ordered.')).toBeTruthy();
  });
});

describe('a stop', () => {
  const bulged = async (workshop: Workshop): Promise<void> => {
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Shape of the walls');
    await tap(workshop, 'Bulged or hissing');
  };

  it('is written down at once, presses on Today, and leads to its card', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await bulged(workshop);
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(leadsTo(/^Back off/)).toBe('#/sos/bulging-container');
    expect(seen(workshop)[0]?.body.found).toMatchObject([{ look: 'insp-shape', stops: true }]);
    expect(flags(workshop.state.value)[0]).toMatchObject({ code: 'finding-open', pressing: 'now' });
  });

  it('stands there again after the card, a reload too, until the person goes on', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await bulged(workshop);
    reload(workshop);
    expect(screen.getByText('STOP')).toBeTruthy();
    await tap(workshop, /^Go on with the walk/);
    expect(heading()).toBe(code(2));
    expect(found(workshop).map(({ closed }) => closed)).toEqual([null]);
  });

  it('is closed there with what was done', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await bulged(workshop);
    await tap(workshop, /^Dealt with as the card says/);
    await tap(workshop, 'Close it');
    expect(screen.getByText('Write something here.')).toBeTruthy();
    expect(screen.queryByText(/does not fit/)).toBeNull();
    fill('What was done', 'Opened behind the shield');
    await tap(workshop, 'Close it');
    expect(heading()).toBe(code(2));
    expect(found(workshop)[0]?.closed?.body.done).toBe('Opened behind the shield');
  });

  it('stands on the screen when the disk is full, and is written down when it is not any more', async () => {
    const workshop = await shelf(2);
    show(workshop);
    workshop.breakStore({ code: 'disk-full' });
    await bulged(workshop);
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(leadsTo(/^Back off/)).toBe('#/sos/bulging-container');
    expect(screen.getByRole('alert').textContent).toMatch(/phone is full/);
    expect(screen.queryByRole('button', { name: /^Go on with the walk/ })).toBeNull();
    workshop.breakStore(null);
    await tap(workshop, 'Write it down');
    expect(seen(workshop)[0]?.body.found).toMatchObject([{ stops: true }]);
    await tap(workshop, /^Go on with the walk/);
    expect(heading()).toBe(code(2));
  });

  it('takes with it what was found on the container before', async () => {
    const workshop = await shelf(1);
    show(workshop);
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Not so: Tray dry and whole');
    await tap(workshop, 'Tray ordered');
    await tap(workshop, 'Something else is wrong');
    await tap(workshop, 'Leak or crust?');
    await tap(workshop, 'Leak');
    expect(seen(workshop)).toHaveLength(1);
    expect(seen(workshop)[0]?.body.found.map(({ look }) => look)).toEqual(['insp-tray', 'insp-leak']);
  });
});

describe('what cannot be seen', () => {
  it('goes in with why, stays on Today, and is looked at by itself', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await tap(workshop, 'Cannot see it');
    await tap(workshop, 'Behind others, out of reach');
    await inOrder(workshop);
    await placeInOrder(workshop);
    expect(screen.getByText('1 container seen, 1 not seen, nothing found.')).toBeTruthy();
    workshop.path.value = ['today'];
    reload(workshop);
    const [first] = workshop.state.value.containers.keys();
    expect(leadsTo(/C.01 was not seen Behind others, out of reach/)).toBe(`#/walk/${first}`);
    workshop.path.value = ['walk', first ?? ''];
    reload(workshop);
    await inOrder(workshop);
    expect(heading()).toBe('It is looked at');
    workshop.path.value = ['today'];
    reload(workshop);
    expect(screen.queryByText(/was not seen/)).toBeNull();
  });
});

test('two that could not be seen are looked at one by one, and a slip is taken back', async () => {
  const workshop = await shelf(3);
  show(workshop);
  await tap(workshop, 'Cannot see it');
  await tap(workshop, 'Place locked or barred');
  await tap(workshop, /^Undo: C.01/);
  expect(heading()).toBe(code(1));
  for (let n = 0; n < 2; n++) {
    await tap(workshop, 'Cannot see it');
    await tap(workshop, 'Place locked or barred');
  }
  await inOrder(workshop);
  await placeInOrder(workshop);
  const [, second] = workshop.state.value.containers.keys();
  workshop.path.value = ['walk', second ?? ''];
  reload(workshop);
  expect(heading()).toBe(code(2));
  await inOrder(workshop);
  expect(heading()).toBe('It is looked at');
  expect(workshop.state.value.walks.size).toBe(1);
  workshop.path.value = ['today'];
  reload(workshop);
  expect(screen.getByText(/C.01 was not seen/)).toBeTruthy();
});

describe('a walk that was interrupted', () => {
  it('goes on at the container where it stopped, after a reload and from another phone', async () => {
    const workshop = await shelf(3);
    show(workshop);
    await inOrder(workshop);
    await inOrder(workshop);
    reload(workshop);
    expect(heading()).toBe(code(3));
    // What was seen is in the entries: a phone without the draft knows it too.
    workshop.drafts.clear();
    reload(workshop);
    expect(heading()).toBe(code(3));
    await inOrder(workshop);
    expect(new Set(seen(workshop).map(({ body }) => body.walkId)).size).toBe(1);
  });

  it('is told on Today with how far it has got', async () => {
    const workshop = await shelf(3);
    show(workshop);
    await inOrder(workshop);
    workshop.path.value = ['today'];
    reload(workshop);
    expect(leadsTo(/Walk along the containers Under way: 1 of 3 seen/)).toBe('#/walk');
  });

  it('begins anew the next day', async () => {
    const workshop = await shelf(3);
    show(workshop);
    await inOrder(workshop);
    workshop.pass(20 * 3_600_000);
    reload(workshop);
    expect(heading()).toBe(code(1));
    await inOrder(workshop);
    expect(workshop.state.value.walks.size).toBe(2);
  });

  it('asks the looks of the place where it stopped', async () => {
    const workshop = await shelf(1);
    show(workshop);
    await inOrder(workshop);
    await tap(workshop, 'Each in its own tray');
    reload(workshop);
    expect(heading()).toBe('Eyewash run today');
  });
});

describe('a finger that slipped', () => {
  it('is taken back for five seconds, and the record says so', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await inOrder(workshop);
    await tap(workshop, /^Undo: C.01/);
    expect(heading()).toBe(code(1));
    expect(seen(workshop)).toEqual([]);
    expect(workshop.state.value.history.map(({ standing }) => standing)).toContain('withdrawn');
  });

  it('that wrote down what was wrong is taken back with what was told', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await tap(workshop, 'Something is wrong');
    await tap(workshop, 'Not so: Tray dry and whole');
    await tap(workshop, 'Tray ordered');
    await tap(workshop, 'Write it down, go on');
    await tap(workshop, /^Undo: C.01/);
    expect(heading()).toBe('What is wrong?');
    expect(screen.getByText('Tray dry and whole: No: tray ordered.')).toBeTruthy();
    expect(found(workshop)).toEqual([]);
    await tap(workshop, 'Write it down, go on');
    expect(found(workshop)).toHaveLength(1);
  });

  it('within 400 ms of a change is water on the glass', async () => {
    const workshop = await shelf(2);
    show(workshop);
    await inOrder(workshop);
    await tapAfter(workshop, 300);
    expect(codesSeen(workshop)).toEqual(['C-01']);
  });

  it('three times sooner than anybody can look brings one plain line, and is kept for the record', async () => {
    const workshop = await shelf(4);
    show(workshop);
    for (let n = 0; n < 3; n++) {
      expect(screen.queryByText('Look at the thing, then tap.')).toBeNull();
      await tapAfter(workshop, 500);
    }
    expect(screen.getByText('Look at the thing, then tap.')).toBeTruthy();
    expect(seen(workshop).map(({ body }) => body.quick)).toEqual([true, true, true]);
  });
});

describe('the place as a whole', () => {
  const atPlace = async (): Promise<Workshop> => {
    const workshop = await shelf(1);
    show(workshop);
    await inOrder(workshop);
    return workshop;
  };

  it('is found wanting with a reason, a reading out of its range too', async () => {
    const workshop = await atPlace();
    await tap(workshop, 'Each in its own tray');
    await tap(workshop, 'No');
    await tap(workshop, 'Water off, being repaired');
    await tap(workshop, 'Write it down, go on');
    await key(workshop, '35');
    await tap(workshop, 'Hot day, shaded');
    await tap(workshop, 'Write it down, go on');
    expect(heading()).toBe('The walk is done.');
    expect(found(workshop).map(({ containerId, found: { answer } }) => [containerId, answer])).toEqual([
      [null, 'no: water off, being repaired'],
      [null, '35 °C: hot day, shaded'],
    ]);
  });

  it('that stops is put right at once, and both are in the record', async () => {
    const workshop = await atPlace();
    await tap(workshop, 'No');
    expect(screen.getByText('STOP')).toBeTruthy();
    await tap(workshop, /^Move them to trays of their own/);
    fill('What was done', 'Ammonia on a tray of its own');
    await tap(workshop, 'Close it');
    expect(heading()).toBe('Eyewash run today');
    await tap(workshop, 'Ran clear, both sides');
    await key(workshop, '12');
    expect(found(workshop).map(({ found: { stops }, closed }) => [stops, closed?.body.done])).toEqual([
      [true, 'Ammonia on a tray of its own'],
    ]);
  });

  it('ends the walk also when its last look stops and stays open', async () => {
    const workshop = await shelf(1);
    const item = {
      id: 'own-1',
      kind: 'confirm',
      stop: true,
      ask: 'Shed locked',
      reason: 'Children',
    } as const;
    const list = walkList(workshop.state.value).id;
    await workshop.does({ do: 'change-list', change: { change: 'item-added', list, item } });
    show(workshop);
    await inOrder(workshop);
    await placeInOrder(workshop);
    await tap(workshop, 'No');
    await tap(workshop, /^Go on with the walk/);
    expect(heading()).toBe('The walk is done.');
    expect(found(workshop)).toMatchObject([{ found: { look: 'own-1', stops: true }, closed: null }]);
  });

  it('is closed with what was done, also when the disk failed between the two', async () => {
    const workshop = await atPlace();
    await tap(workshop, 'No');
    await tap(workshop, /^Move them to trays of their own/);
    fill('What was done', 'Ammonia on a tray of its own');
    await tap(workshop, 'Close it');
    await tap(workshop, 'Ran clear, both sides');
    const { perform } = workshop.shell;
    const fails: typeof perform = async (intention, at) =>
      intention.do === 'close-finding'
        ? { ok: false, failure: { code: 'disk-full' } }
        : perform(intention, at);
    Object.assign(workshop.shell, { perform: fails });
    reload(workshop);
    await key(workshop, '12');
    expect(heading()).toBe('Everything is looked at');
    expect(found(workshop).map(({ closed }) => closed)).toEqual([null]);
    Object.assign(workshop.shell, { perform });
    reload(workshop);
    await tap(workshop, 'Write the walk down');
    expect(heading()).toBe('The walk is done.');
    expect(found(workshop)[0]?.closed?.body.done).toBe('Ammonia on a tray of its own');
  });

  it('is not lost when the disk is full at the end', async () => {
    const workshop = await atPlace();
    await tap(workshop, 'Each in its own tray');
    await tap(workshop, 'Ran clear, both sides');
    workshop.breakStore({ code: 'disk-full' });
    await key(workshop, '12');
    expect(heading()).toBe('Everything is looked at');
    workshop.breakStore(null);
    reload(workshop);
    await tap(workshop, 'Write the walk down');
    expect(heading()).toBe('The walk is done.');
  });
});

test('a walk that was made already is written down for the hour it was made', async () => {
  const workshop = await shelf(1);
  // The waste went in at eight; it is noon now.
  workshop.pass(4 * 3_600_000);
  show(workshop);
  await tap(workshop, 'What to look at');
  await tap(workshop, 'Walked already? Write it down.');
  fill('When', '2026-05-12T10:30');
  await tap(workshop, 'Go on');
  expect(heading()).toBe(code(1));
  expect(screen.getByText(/^Written down later: made/)).toBeTruthy();
  // How long somebody looked then is not told by how long they tap now.
  await tapAfter(workshop, 500);
  await placeInOrder(workshop);
  const [walk] = workshop.state.value.walks.values();
  const stated = new Date('2026-05-12T10:30').toISOString();
  expect([walk?.inspected[0]?.at, walk?.finished?.at, walk?.inspected[0]?.body.quick]).toEqual([
    stated,
    stated,
    undefined,
  ]);
});

test('an address of the time when the walk was one list leads to the walk', async () => {
  const workshop = await shelf(1);
  workshop.path.value = ['check', '-', 'container-inspection'];
  show(workshop);
  expect(leadsTo('To the walk')).toBe('#/walk');
});

test('a finding tells what was seen, by whom, and is closed with what was done; all of it stays', async () => {
  const workshop = await shelf(1);
  show(workshop);
  await tap(workshop, 'Something is wrong');
  await tap(workshop, 'Not so: Tray dry and whole');
  await tap(workshop, 'Tray ordered');
  fill('More to it', 'Crack at the handle');
  await tap(workshop, 'Write it down, go on');
  workshop.path.value = ['today'];
  reload(workshop);
  const href = leadsTo(/^C.01: Tray dry and whole/);
  expect(href).toBe(`#/findings/${found(workshop)[0]?.found.findingId}`);
  workshop.path.value = href.slice(2).split('/');
  reload(workshop);
  expect(heading()).toBe('Tray dry and whole: No: tray ordered.');
  for (const text of ['Crack at the handle', /^Maren, /]) expect(screen.getByText(text)).toBeTruthy();
  workshop.person.value = workshop.tobias;
  workshop.path.value = [...workshop.path.value, 'done'];
  reload(workshop);
  fill('What was done', 'New tray under it');
  await tap(workshop, 'Close it');
  expect(heading()).toBe('Tray dry and whole: No: tray ordered.');
  for (const text of ['Crack at the handle', 'New tray under it', /^Maren, /, /^Tobias, /])
    expect(screen.getByText(text)).toBeTruthy();
  expect(screen.queryByRole('link', { name: 'Done: say what was done' })).toBeNull();
  expect(flags(workshop.state.value).some((flag) => flag.code === 'finding-open')).toBe(false);
  const [first] = workshop.state.value.containers.keys();
  workshop.path.value = ['containers', first ?? ''];
  reload(workshop);
  expect(leadsTo(/^Tray dry and whole/)).toBe(href);
});
