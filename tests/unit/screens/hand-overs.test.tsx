import { screen, waitFor, within } from '@testing-library/preact';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { HandedOver } from '../../../src/ledger/entries/hand-overs';
import { choose, fill, follow, open, row, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';
// Fetched when they are first opened: here already, so that no test waits for it.
import '../../../src/screens/hand-overs/back';
import '../../../src/screens/hand-overs/hand-over';
import '../../../src/screens/hand-overs/list';
import '../../../src/screens/hand-overs/new';
import '../../../src/screens/hand-overs/proof';

const litres = (value: string) => ({ value, unit: 'L' }) as const;
const titled = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });
const checkbox = (name: RegExp) => screen.getByRole<HTMLInputElement>('checkbox', { name });
/** The one that says whether it is meant, not the one that asks for its amount. */
const can = (n: number) => checkbox(new RegExp(`^C.0${n}(?!:)`));
const pdf = (name = 'receipt.pdf', text = '%PDF-1.7\n%%EOF') =>
  new File([text], name, { type: 'application/pdf' });

beforeEach(() => {
  vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:1');
  vi.spyOn(URL, 'revokeObjectURL').mockReturnValue();
});

/** Two cans with wash water, the second set aside to leave, and a workshop that knows its collector. */
async function twoCans() {
  const memory = await workshopInMemory();
  await memory.does({
    do: 'describe-workshop',
    name: 'Invented workshop',
    address: 'Weir Yard 6',
    emergencyNumber: '112',
    collector: { name: 'Fenwater', contact: '01632 960 077', licence: 'FW 1' },
    hazardousWasteCounter: 'Town counter\nMill Lane 2',
  });
  const one = await openCan(memory);
  const two = await openCan(memory);
  for (const id of [one, two]) await logLiquid(memory, 'wash-water', litres('4.00'), id);
  await memory.does({ do: 'mark-container', containerId: two, mark: 'leaving' });
  memory.pass(60_000);
  const show = async (page: string, title: string | RegExp) => {
    open(memory.shell, page);
    await titled(title);
  };
  const load = () => {
    const [newest] = [...memory.state.value.handOvers.values()].toReversed();
    if (!newest) throw new Error('nothing was handed over');
    return newest;
  };
  const handOver = async (containerIds: readonly string[], more: Partial<HandedOver> = {}) => {
    await memory.does({
      do: 'log-hand-over',
      collector: { name: 'Fenwater' },
      containers: containerIds.map((containerId) => ({ containerId })),
      signatures: {},
      ...more,
    });
    memory.pass(60_000);
    return load().body.handOverId;
  };
  return { ...memory, one, two, show, load, handOver };
}

describe('handing over', () => {
  test('begins with what is set aside and the collector that is known; agreed is nothing to type', async () => {
    const p = await twoCans();
    await p.show('hand-overs/new', 'Hand over');
    expect([can(2).checked, can(1).checked]).toEqual([true, false]);
    expect(screen.getByLabelText<HTMLInputElement>('Licence or registration number').value).toBe('FW 1');
    await fill('Vehicle, number plate', 'FEN 204');
    await fill('Driver', 'Rufus Oakley');
    const theirs = screen.getByRole('group', { name: 'For the collector' });
    expect(within(theirs).getByLabelText<HTMLInputElement>('Who signs').value).toBe('Rufus Oakley');
    await user.click(within(theirs).getByRole('checkbox', { name: /^Sign in letters/ }));
    await tap('Keep the hand-over');
    await waitFor(() => expect(p.path.value[0]).toBe('hand-overs'));
    expect(p.load().body).toEqual({
      kind: 'handed-over',
      v: 1,
      handOverId: p.load().body.handOverId,
      collector: { name: 'Fenwater', licence: 'FW 1', contact: '01632 960 077' },
      driver: 'Rufus Oakley',
      vehicle: 'FEN 204',
      containers: [{ containerId: p.two }],
      signatures: { collector: { name: 'Rufus Oakley', signedAt: p.now.value, typed: true } },
    });
    expect(p.path.value).toEqual(['hand-overs', p.load().body.handOverId]);
  });

  test('begun with one container it is that one; another amount is asked for, and kept as it is written', async () => {
    const p = await twoCans();
    await p.show(`hand-overs/new/${p.one}`, 'Hand over');
    expect([can(1).checked, can(2).checked]).toEqual([true, false]);
    await user.click(checkbox(/another amount/));
    await tap('Keep the hand-over');
    expect(screen.getByText('Write a number here.')).toBeTruthy();
    expect(p.state.value.handOvers.size).toBe(0);
    await fill('C‑01, as the collector has it', '3,80');
    await tap('Keep the hand-over');
    await waitFor(() => expect(p.state.value.handOvers.size).toBe(1));
    expect(p.load().body.containers).toEqual([{ containerId: p.one, agreed: { value: '3.80', unit: 'L' } }]);
  });

  test('begun with a set of papers it is what the set names and what is still here, and the set goes with it', async () => {
    const p = await twoCans();
    const { body } = await p.does({
      do: 'record-paper',
      containerIds: [p.one, p.two],
      contentHash: 'a'.repeat(64),
      fileName: 'set.pdf',
      format: 'pdf',
      paper: 'disposal',
    });
    const paperId = body.kind === 'paper-made' ? body.paperId : '';
    await p.does({ do: 'mark-container', containerId: p.two, mark: 'gone' });
    await p.show(`hand-overs/new/${paperId}`, 'Hand over');
    expect(can(1).checked).toBe(true);
    expect(screen.queryByRole('checkbox', { name: /^C.02/ })).toBeNull();
    await tap('Keep the hand-over');
    await waitFor(() => expect(p.state.value.handOvers.size).toBe(1));
    expect(p.load().body).toMatchObject({ containers: [{ containerId: p.one }], paperId });
  });

  test('with nothing ticked, or nobody to take it, nothing is written and both are said', async () => {
    const p = await twoCans();
    await p.show('hand-overs/new', 'Hand over');
    await user.click(can(2));
    await choose('Collector', 'another, not in this list');
    await tap('Keep the hand-over');
    expect(screen.getByText('Tick at least one container.')).toBeTruthy();
    expect(screen.getByText('Write something here.')).toBeTruthy();
    expect(p.state.value.handOvers.size).toBe(0);
    await tap(/^The one set aside to leave/);
    expect(can(2).checked).toBe(true);
  });

  test('another collector takes along what was filled in for the first, and leaves what somebody wrote', async () => {
    const p = await twoCans();
    await p.show('hand-overs/new', 'Hand over');
    const value = (label: string) => screen.getByLabelText<HTMLInputElement>(label).value;
    await choose('Collector', 'Town counter');
    expect([value('Licence or registration number'), value('Telephone, address')]).toEqual([
      '',
      'Town counter\nMill Lane 2',
    ]);
    await fill('Licence or registration number', 'own word');
    await choose('Collector', 'Fenwater');
    expect(value('Licence or registration number')).toBe('own word');
  });

  test('what was begun is there again after a reload', async () => {
    const p = await twoCans();
    await p.show('hand-overs/new', 'Hand over');
    await fill('Number of their paper', 'M 7');
    await user.click(can(1));
    await p.show('hand-overs/new', 'Hand over');
    expect(screen.getByText('You had begun this.')).toBeTruthy();
    expect(screen.getByLabelText<HTMLInputElement>('Number of their paper').value).toBe('M 7');
    expect(can(1).checked).toBe(true);
  });

  test('what must not travel side by side is told with its source, and is in nobody’s way', async () => {
    const p = await twoCans();
    const ammonia = await openCan(p);
    await logLiquid(p, 'ammonia-test-waste', litres('0.10'), ammonia);
    await logLiquid(p, 'leach-liquor', litres('0.50'), p.two);
    await p.show('hand-overs/new', 'Hand over');
    expect(screen.queryByText(/not side by side/)).toBeNull();
    await user.click(can(3));
    const told = screen.getByRole('list', { name: 'Before it leaves' });
    expect(told.textContent).toMatch(/C.0[23] and C.0[23]: not side by side.*Source: /);
    expect(told.textContent).toMatch(/C.02: not written down as closed/);
    await tap('Keep the hand-over');
    await waitFor(() => expect(p.state.value.handOvers.size).toBe(1));
  });

  test('a disk that fails says so, and what was written in the form stays', async () => {
    const p = await twoCans();
    await p.show('hand-overs/new', 'Hand over');
    p.breakStore({ code: 'disk-full' });
    await tap('Keep the hand-over');
    expect(await screen.findByText(/^The phone is full/)).toBeTruthy();
    p.breakStore(null);
    await tap('Keep the hand-over');
    await waitFor(() => expect(p.state.value.handOvers.size).toBe(1));
  });
});

describe('one hand-over', () => {
  test('says what is not signed and not told, and where the proof stands', async () => {
    const p = await twoCans();
    const id = await p.handOver([p.one, p.two]);
    await p.show(`hand-overs/${id}`, 'Left with Fenwater');
    for (const text of [
      'Not signed for the workshop',
      'Not signed by the collector',
      'How long it may take is not entered',
    ])
      expect(screen.getByText(text)).toBeTruthy();
    expect(screen.getAllByText('not determined').length).toBe(4);
    expect(row(/^File the proof/).textContent).toMatch(/Of C.01, C.02/);
  });

  test('is not in the record where its address is wrong', async () => {
    const p = await twoCans();
    for (const page of ['hand-overs/none', 'hand-overs/none/proof', 'hand-overs/none/back'])
      await p.show(page, 'Hand-overs');
    expect(screen.getByText('This hand-over is not in the record.')).toBeTruthy();
  });

  test('a container that is gone leads to it, and says with whom', async () => {
    const p = await twoCans();
    const id = await p.handOver([p.one]);
    await p.show(`containers/${p.one}`, /C.01/);
    expect(row(/^Left with Fenwater/).getAttribute('href')).toBe(`#/hand-overs/${id}`);
    expect(row(/^File the proof/).getAttribute('href')).toBe(`#/hand-overs/${id}/proof`);
    expect(row(/^It came back/).getAttribute('href')).toBe(`#/hand-overs/${id}/back`);
    await p.show(`containers/${p.two}`, /C.02/);
    expect(screen.queryByRole('link', { name: /^Left with/ })).toBeNull();
  });

  test('those whose proof is awaited stand first, the newest first', async () => {
    const p = await twoCans();
    const first = await p.handOver([p.one]);
    const second = await p.handOver([p.two]);
    await p.show('hand-overs', 'Hand-overs');
    const order = () =>
      within(screen.getByRole('list', { name: 'Hand-overs' }))
        .getAllByRole('link')
        .map((link) => link.getAttribute('href')?.split('/').at(-1));
    expect(order()).toEqual([second, first]);
    await p.does({ do: 'file-proof', handOverId: second, containerIds: [p.two] });
    await p.show('hand-overs', 'Hand-overs');
    expect(order()).toEqual([first, second]);
    expect(screen.getByText('1 still without all proofs')).toBeTruthy();
  });
});

describe('the proof', () => {
  test('is filed for those that it proves, with its paper, and is awaited of the others', async () => {
    const p = await twoCans();
    const id = await p.handOver([p.one, p.two]);
    await p.show(`hand-overs/${id}/proof`, 'Proof of disposal');
    await user.click(can(2));
    await user.upload(screen.getByLabelText('Choose a PDF'), pdf('Cert 88.pdf'));
    await screen.findByText('Cert 88.pdf');
    await fill('Its number', '88');
    await fill('Dated', '2026-05-11');
    await tap('File the proof');
    await waitFor(() => expect(p.load().proofs).toHaveLength(1));
    const [proof] = p.load().proofs;
    expect(proof?.body).toMatchObject({
      containerIds: [p.one],
      saidBy: 'Fenwater',
      document: '88',
      datedOn: '2026-05-11',
      files: [{ name: 'Cert 88.pdf', type: 'application/pdf' }],
    });
    await p.show(`hand-overs/${id}`, 'Left with Fenwater');
    const link = await screen.findByRole('link', { name: /^Open Cert 88\.pdf/ });
    expect([link.getAttribute('download'), link.getAttribute('target')]).toEqual(['Cert 88.pdf', null]);
    follow(p.shell, /^File the proof/);
    await titled('Proof of disposal');
    expect(screen.queryByRole('checkbox', { name: /^C.01/ })).toBeNull();
    expect(can(2).checked).toBe(true);
  });

  test('of a day that has not come, or of no container, is not filed', async () => {
    const p = await twoCans();
    const id = await p.handOver([p.one]);
    await p.show(`hand-overs/${id}/proof`, 'Proof of disposal');
    await fill('Dated', '2026-05-13');
    await tap('File the proof');
    expect(screen.getByText('Choose a day that has come.')).toBeTruthy();
    await fill('Dated', '2026-05-12');
    await user.click(can(1));
    await tap('File the proof');
    expect(screen.getByText('Tick at least one container.')).toBeTruthy();
    expect(p.load().proofs).toEqual([]);
  });

  test('whose bytes are not those that were kept, or lie elsewhere, is told of and not opened', async () => {
    const p = await twoCans();
    const kept = await p.shell.keepFile(pdf());
    if (!kept.ok) throw new Error('not kept');
    const id = await p.handOver([p.one], { files: [kept.file] });
    p.photos.set(kept.file.hash, new TextEncoder().encode('%PDF-other'));
    await p.show(`hand-overs/${id}`, 'Left with Fenwater');
    expect(await screen.findByText(/^Damaged: its bytes/)).toBeTruthy();
    expect(screen.queryByRole('link', { name: /^Open receipt/ })).toBeNull();
    p.photos.clear();
    await p.show(`hand-overs/${id}`, 'Left with Fenwater');
    expect(await screen.findByText(/^Not on this phone/)).toBeTruthy();
  });
});

describe('a load that comes back', () => {
  test('asks why, and then stands here again; what stayed away does not', async () => {
    const p = await twoCans();
    const id = await p.handOver([p.one, p.two]);
    await p.show(`hand-overs/${id}/back`, 'A load came back');
    await user.click(can(2));
    await tap('It is here again');
    expect(screen.getByText('Write something here.')).toBeTruthy();
    expect(screen.queryByText(/does not fit/), 'it was not tried').toBeNull();
    await fill('Why it was refused', 'Drum bulged');
    await tap('It is here again');
    await waitFor(() => expect(p.load().rejected).toHaveLength(1));
    const gone = (containerId: string) => p.state.value.containers.get(containerId)?.goneSince !== null;
    expect([gone(p.one), gone(p.two)]).toEqual([false, true]);
    await p.show('today', /May/);
    expect(row(/^C.01 came back and must leave again/).getAttribute('href')).toBe(`#/hand-overs/${id}`);
    await p.show(`hand-overs/${id}/back`, 'A load came back');
    expect(screen.queryByRole('checkbox', { name: /^C.01/ })).toBeNull();
  });
});

test('an entry of a hand-over says all of it but the strokes, shows who signed and what can be opened', async () => {
  const p = await twoCans();
  const kept = await p.shell.keepFile(pdf('Note.pdf'));
  if (!kept.ok) throw new Error('not kept');
  const signature = {
    name: 'Maren',
    signedAt: p.now.value,
    width: 600,
    height: 240,
    strokes: [[1, 2, 577, 4]],
  };
  await p.handOver([p.one], { files: [kept.file], signatures: { generator: signature } });
  open(p.shell, `record/entry/${p.load().entryId}`);
  expect(await screen.findByRole('img', { name: 'Signature of Maren, drawn' })).toBeTruthy();
  expect(await screen.findByRole('link', { name: /^Open Note\.pdf/ })).toBeTruthy();
  const terms = screen.getAllByRole('term').map(({ textContent }) => textContent);
  expect(terms.filter((term) => /stroke|width|height|hand.?over id/i.test(term ?? ''))).toEqual([]);
  expect(screen.queryByText('577')).toBeNull();
  expect(terms).toEqual(expect.arrayContaining(['Signature: of the workshop', 'Container 1']));
});
