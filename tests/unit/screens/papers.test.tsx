import { cleanup, render, screen, waitFor, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import type { FunctionComponent } from 'preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { CheckSet } from '../../../src/screens/papers/check';
import { ChooseSet } from '../../../src/screens/papers/choose';
import { PaperList } from '../../../src/screens/papers/list';
import { SignSet } from '../../../src/screens/papers/sign';
import { ShellProvider } from '../../../src/screens/shell';
import { paperFonts } from '../../support/paper-fonts';
import { disposalState } from '../paperwork/disposal-state';

const fonts = vi.hoisted(() => ({ missing: false }));

vi.mock('../../../src/paperwork/pdf/fonts', () => ({
  loadFonts: async () => {
    if (fonts.missing) throw new Error('no network');
    return paperFonts;
  },
}));

type Made = Awaited<ReturnType<typeof disposalState>>;
type At = Readonly<Record<string, string>>;

function open({ shell }: Made, Page: FunctionComponent<{ readonly at: At }>, set = 'chosen') {
  cleanup();
  render(
    <ShellProvider value={shell}>
      <Page at={{ set }} />
    </ShellProvider>,
  );
}

const papersIn = ({ state }: Made) => [...state.value.papers.values()].map(({ body }) => body);
const make = () => screen.getByRole('button', { name: /Make the set/ });
const tick = (name: RegExp) => userEvent.click(screen.getByRole('checkbox', { name }));
/** What is open of a container, once it is worked out. */
const openOf = async (code: string) => within(await screen.findByRole('list', { name: code }));
const long = [{}, { timeout: 20_000 }] as const;

afterEach(() => {
  fonts.missing = false;
  vi.restoreAllMocks();
});

describe('choosing what leaves', () => {
  test('begins with what is set aside to leave, and takes all or none at a tap', async () => {
    const memory = await disposalState();
    await memory.does({ do: 'mark-container', containerId: memory.wash, mark: 'leaving' });
    open(memory, ChooseSet);
    const chosen = () =>
      screen.getAllByRole('checkbox', { checked: true }).map((box) => box.closest('label')?.textContent);
    expect(chosen()).toEqual([expect.stringMatching(/C.02.*set aside to leave/)]);
    await userEvent.click(screen.getByRole('button', { name: 'All (2)' }));
    expect(chosen()).toHaveLength(2);
    await userEvent.click(screen.getByRole('button', { name: 'None' }));
    expect(screen.queryAllByRole('checkbox', { checked: true })).toEqual([]);
    await userEvent.click(screen.getByRole('button', { name: 'Set aside to leave (1)' }));
    expect(chosen()).toHaveLength(1);
    await userEvent.click(screen.getByRole('button', { name: /Check this one/ }));
    expect(memory.path.value).toEqual(['papers', 'new', 'chosen']);
  });

  test('asks for a container before it checks anything', async () => {
    const memory = await disposalState();
    open(memory, ChooseSet);
    await userEvent.click(screen.getByRole('button', { name: /^Check/ }));
    expect(screen.getByRole('alert').textContent).toMatch(/Tick at least one/);
    expect(memory.path.value).toEqual(['papers']);
  });

  test('offers what is gone only behind a fold', async () => {
    const memory = await disposalState();
    await memory.does({ do: 'mark-container', containerId: memory.wash, mark: 'gone' });
    open(memory, ChooseSet);
    const fold = screen.getByText('Already gone (1)').closest('details');
    expect(fold?.open).toBe(false);
    expect(fold?.textContent).toMatch(/C.02/);
  });
});

describe('checking a set', () => {
  test('shows what nobody told of a container, and leads to where it is told', async () => {
    const memory = await disposalState();
    open(memory, ChooseSet);
    await tick(/C.02/);
    open(memory, CheckSet);
    const wash = await openOf('C‑02');
    const evidence = screen
      .getByText('Copper, nickel, silver and free nitric acid not determined')
      .closest('a');
    expect(evidence?.getAttribute('href')).toBe(`#/streams/${memory.washStream}/found-later`);
    const stream = memory.state.value.streams.get(memory.washStream);
    const looks = screen.getByText('pH, colour and layers not determined').closest('a');
    expect(looks?.getAttribute('href')).toBe(`#/record/entry/${stream?.entryId}/correct`);
    expect(wash.getByText('Not closed').closest('a')?.getAttribute('href')).toBe(
      `#/containers/${memory.wash}/mark/closed`,
    );
    expect(screen.queryByText('C‑07')).toBeNull();
  });

  test('asks for what the place has not said, and shows what waits for a word', async () => {
    const memory = await disposalState();
    open(memory, CheckSet, memory.barren);
    const say = within(screen.getByRole('list', { name: 'Who must still say yes' }));
    expect(say.getByText('Storage time not entered').closest('a')?.getAttribute('href')).toBe(
      '#/record/rules/storage-days',
    );
    const code = (await say.findByText(/^UN 3264/, ...long)).closest('a');
    expect(code?.textContent).toMatch(/Candidate\. The collector.* confirms\./);
    expect(code?.getAttribute('href')).toBe(`#/containers/${memory.barren}/candidates`);
  });

  test('says with a seal who confirmed a code, and no longer asks for it', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'answer-candidate',
      containerId: memory.barren,
      scheme: 'transport',
      code: 'UN 3264',
      answer: 'accepted',
      saidBy: 'Fenwater Collection',
      saidOn: '2026-05-16',
    });
    open(memory, CheckSet, memory.barren);
    const row = (await screen.findByText(/^UN 3264/, ...long)).closest('a');
    expect(row?.textContent).toMatch(/Fenwater Collection said so, 16.May/);
    expect(screen.queryByText(/^UN \d+$/)?.closest('a')).toBe(row);
  });

  test('does not ask for a label that the set brings', async () => {
    const memory = await disposalState();
    open(memory, CheckSet, memory.barren);
    await openOf('C‑07');
    expect(screen.queryByText('No label made')).toBeNull();
    await tick(/With a label/);
    expect(screen.getByText('No label made').closest('a')?.getAttribute('href')).toBe(
      `#/containers/${memory.barren}/label`,
    );
  });

  test('names two containers that must not stand beside each other', async () => {
    const memory = await disposalState();
    const can = await memory.opens('C-09', '1');
    await memory.logs(can, null, 'ammonia-test-waste', {
      volume: { value: '0.2', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    open(memory, ChooseSet);
    await userEvent.click(screen.getByRole('button', { name: 'All (3)' }));
    open(memory, CheckSet);
    await screen.findByText('Ammonia-test waste must not meet barren liquor');
    expect(screen.getAllByText(/C.09; C.07\. Load them apart|C.07; C.09\. Load them apart/)).toHaveLength(1);
  });

  test('leads back to the set from the page on which a gap was opened, until it is looked at again', async () => {
    const memory = await disposalState();
    open(memory, CheckSet, memory.barren);
    await userEvent.click((await openOf('C‑07')).getByText('Not closed'));
    memory.path.value = ['containers', memory.barren];
    open(memory, PaperList);
    expect(screen.getByRole('link', { name: /Back to the papers/ }).getAttribute('href')).toBe(
      `#/papers/new/${memory.barren}`,
    );
    open(memory, CheckSet, memory.barren);
    memory.path.value = ['today'];
    open(memory, PaperList);
    expect(screen.queryByRole('link', { name: /Back to the papers/ })).toBeNull();
  });

  test('keeps what was chosen when the person comes back', async () => {
    const memory = await disposalState();
    open(memory, ChooseSet);
    await tick(/C.07/);
    open(memory, CheckSet);
    await userEvent.click(screen.getByRole('radio', { name: /Letter/ }));
    await tick(/whole working/);
    open(memory, CheckSet);
    expect(screen.getByRole('radio', { name: /Letter/ })).toHaveProperty('checked', true);
    expect(screen.getByRole('checkbox', { name: /whole working/ })).toHaveProperty('checked', false);
    open(memory, ChooseSet);
    expect(screen.getByRole('checkbox', { name: /C.07/ })).toHaveProperty('checked', true);
    expect(screen.getByRole('checkbox', { name: /C.02/ })).toHaveProperty('checked', false);
  });
});

describe('signing the statement', () => {
  const signInLetters = async (memory: Made) => {
    open(memory, SignSet, memory.barren);
    await tick(/Sign in letters/);
  };

  test('shows what is stated, in the words of the paper', async () => {
    const memory = await disposalState();
    open(memory, SignSet, memory.barren);
    await screen.findByText(/^Measured or read by somebody: /, ...long);
    expect(screen.getByText(/This is no certificate/)).toBeDefined();
  });

  test('gathers what was measured of many containers only when it is asked for', async () => {
    const memory = await disposalState();
    for (const code of ['C-11', 'C-12', 'C-13', 'C-14', 'C-15']) {
      const can = await memory.opens(code, '5');
      await memory.logs(can, null, 'wash-water', {
        volume: { value: '1', unit: 'L' },
        findings: [],
        freeAcid: [],
      });
    }
    open(memory, ChooseSet);
    await userEvent.click(screen.getByRole('button', { name: 'All (7)' }));
    open(memory, SignSet);
    expect(screen.getByText(/This is no certificate/)).toBeDefined();
    expect(screen.queryByText('Looking …')).toBeNull();
    await userEvent.click(screen.getByRole('button', { name: /Show what was measured/ }));
    await screen.findByText(/^Measured or read by somebody: /, ...long);
  });

  test('writes a signature in letters down as one, with its hour', async () => {
    const memory = await disposalState();
    await signInLetters(memory);
    const field = screen.getByRole('textbox', { name: 'Who signs' });
    await userEvent.clear(field);
    await userEvent.type(field, 'Ada Marsh');
    const { moment } = memory.shell;
    await userEvent.click(make());
    await screen.findByText('The paper is made', ...long);
    expect(papersIn(memory)).toMatchObject([
      { paper: 'disposal', signature: { name: 'Ada Marsh', signedAt: moment(), typed: true } },
    ]);
  });

  test('asks who signed where a signature has no name, and takes it for none', async () => {
    const memory = await disposalState();
    await signInLetters(memory);
    await userEvent.clear(screen.getByRole('textbox', { name: 'Who signs' }));
    expect(screen.getByText(/Write the name of who signed/)).toBeDefined();
    await userEvent.click(make());
    await screen.findByText('The paper is made', ...long);
    expect(papersIn(memory)[0]).not.toHaveProperty('signature');
  });

  test('does not take a signature for what was told after it', async () => {
    const memory = await disposalState();
    await signInLetters(memory);
    open(memory, CheckSet, memory.barren);
    expect(screen.getByRole('link', { name: /^Signed by/ })).toBeDefined();
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'closed' });
    open(memory, CheckSet, memory.barren);
    expect(screen.getByRole('link', { name: /Signed before something changed/ })).toBeDefined();
    await userEvent.click(make());
    await screen.findByText('The paper is made', ...long);
    expect(papersIn(memory)[0]).not.toHaveProperty('signature');
  });
});

describe('making a set', () => {
  test('makes one from two taps, writes it down, and offers the files', async () => {
    const memory = await disposalState();
    const making = vi.spyOn(memory.shell, 'makePaper');
    open(memory, CheckSet, memory.barren);
    await tick(/whole working/);
    expect(memory.drafts.size).toBe(1);
    const button = make();
    button.click();
    button.click();
    expect(making).toHaveBeenCalledTimes(1);
    await screen.findByText('The paper is made', ...long);
    const [paper, ...more] = papersIn(memory);
    expect(more).toEqual([]);
    expect(paper).toMatchObject({
      containerIds: [memory.barren],
      fileName: 'disposal-C-07-2026-05-17.pdf',
      format: 'pdf',
      paper: 'disposal',
      labels: true,
    });
    expect(screen.getByText(paper?.contentHash ?? 'no hash')).toBeDefined();
    expect(screen.getByRole('link', { name: 'Save it' }).getAttribute('download')).toBe(paper?.fileName);
    expect(screen.getByRole('link', { name: /Save the data/ }).getAttribute('download')).toMatch(/\.json$/);
    expect(memory.drafts.size).toBe(0);
  });

  test('says so when a part is not on the phone, and makes it once it is', async () => {
    vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    fonts.missing = true;
    const memory = await disposalState();
    open(memory, CheckSet, memory.barren);
    await userEvent.click(make());
    expect((await screen.findByRole('alert', ...long)).textContent).toMatch(/Nothing is lost/);
    expect(papersIn(memory)).toEqual([]);
    fonts.missing = false;
    await userEvent.click(make());
    await screen.findByText('The paper is made', ...long);
    expect(papersIn(memory)).toHaveLength(1);
  });

  test('says so when the disk is full, and keeps the choice', async () => {
    const memory = await disposalState();
    memory.breakStore({ code: 'disk-full' });
    open(memory, CheckSet, memory.barren);
    await userEvent.click(make());
    await waitFor(() => expect(screen.getByRole('alert').textContent).toMatch(/phone is full/), long[1]);
    expect(screen.queryByText('The paper is made')).toBeNull();
    expect(make()).toHaveProperty('disabled', false);
  });
});

describe('the place of the papers', () => {
  const record = (memory: Made, fileName: string, containerId: string, paper?: 'labels' | 'disposal') =>
    memory.does({
      do: 'record-paper',
      containerIds: [containerId],
      contentHash: 'a'.repeat(64),
      fileName,
      format: 'pdf',
      ...(paper ? { paper } : {}),
    });

  test('lists the papers made, kind by kind, newest first, each with its entry', async () => {
    const memory = await disposalState();
    await record(memory, 'first.pdf', memory.barren);
    memory.pass(60_000);
    await record(memory, 'label-C-02-A6-2026-05-17.pdf', memory.wash);
    const { id } = await record(memory, 'second.pdf', memory.wash, 'disposal');
    open(memory, PaperList);
    const sets = within(screen.getByRole('list', { name: 'Hand-over papers' }));
    const rows = sets.getAllByRole('link', { name: /\.pdf/ });
    expect(rows.map((row) => /first|second/.exec(row.textContent ?? '')?.[0])).toEqual(['second', 'first']);
    expect(rows[0]?.getAttribute('href')).toBe(`#/record/entry/${id}`);
    const labels = within(screen.getByRole('list', { name: 'Labels' }));
    expect(labels.getAllByRole('link', { name: /\.pdf/ })).toHaveLength(1);
  });

  test('makes an earlier set again of the same containers', async () => {
    const memory = await disposalState();
    await record(memory, 'first.pdf', memory.wash, 'disposal');
    const [{ paperId = '' } = {}] = papersIn(memory);
    open(memory, PaperList);
    expect(screen.getByRole('link', { name: 'Make it again' }).getAttribute('href')).toBe(
      `#/papers/new/${paperId}`,
    );
    open(memory, CheckSet, paperId);
    expect(screen.getByRole('heading', { name: 'C‑02' })).toBeDefined();
    expect(screen.queryByRole('heading', { name: 'C‑07' })).toBeNull();
  });
});
