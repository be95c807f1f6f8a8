import { cleanup, render, screen, waitFor } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { PaperList } from '../../../src/screens/papers/list';
import { NewPaper } from '../../../src/screens/papers/new';
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

const show = ({ shell }: Made, at: Record<string, string> = {}) =>
  render(
    <ShellProvider value={shell}>
      <NewPaper at={at} />
    </ShellProvider>,
  );

const papersIn = ({ state }: Made) => [...state.value.papers.values()].map(({ body }) => body);
const make = () => screen.getByRole('button', { name: /Make the paper/ });

afterEach(() => {
  fonts.missing = false;
  vi.restoreAllMocks();
});

describe('making papers', () => {
  test('shows what nobody told of a ticked container, and leads to the waste that does not tell', async () => {
    const memory = await disposalState();
    show(memory);
    expect(screen.queryByText('Copper not determined')).toBeNull();
    await userEvent.click(screen.getByRole('checkbox', { name: /C.02/ }));
    const link = screen.getByText('Copper not determined').closest('a');
    const stream = memory.state.value.streams.get(memory.washStream);
    expect(link?.getAttribute('href')).toBe(`#/record/entry/${stream?.entryId}`);
    const storage = screen.getByText('Storage time not entered').closest('a');
    expect(storage?.getAttribute('href')).toBe('#/record/rules/storage-days');
  });

  test('keeps what was ticked when the person comes back', async () => {
    const memory = await disposalState();
    show(memory);
    await userEvent.click(screen.getByRole('checkbox', { name: /C.07/ }));
    await userEvent.click(screen.getByRole('radio', { name: /A4/ }));
    cleanup();
    show(memory);
    expect(screen.getByRole('checkbox', { name: /C.07/ })).toHaveProperty('checked', true);
    expect(screen.getByRole('checkbox', { name: /C.02/ })).toHaveProperty('checked', false);
    expect(screen.getByRole('radio', { name: /A4/ })).toHaveProperty('checked', true);
  });

  test('asks for a container before it makes anything', async () => {
    const memory = await disposalState();
    show(memory);
    await userEvent.click(make());
    expect(screen.getByRole('alert').textContent).toMatch(/Tick at least one/);
    expect(papersIn(memory)).toEqual([]);
  });

  test('makes one paper from two taps, writes it down, and offers the files', async () => {
    const memory = await disposalState();
    const making = vi.spyOn(memory.shell, 'makePaper');
    show(memory, { id: memory.barren });
    await userEvent.click(screen.getByRole('checkbox', { name: /whole working/ }));
    expect(memory.drafts.size).toBe(1);
    const button = make();
    button.click();
    button.click();
    expect(making).toHaveBeenCalledTimes(1);
    await screen.findByText('The paper is made', {}, { timeout: 10_000 });
    const [paper, ...more] = papersIn(memory);
    expect(more).toEqual([]);
    expect(paper).toMatchObject({
      containerIds: [memory.barren],
      fileName: 'disposal-C-07-2026-05-17.pdf',
      format: 'pdf',
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
    show(memory, { id: memory.barren });
    await userEvent.click(make());
    expect((await screen.findByRole('alert', {}, { timeout: 10_000 })).textContent).toMatch(
      /Nothing is lost/,
    );
    expect(papersIn(memory)).toEqual([]);
    expect(screen.getByRole('checkbox', { name: /C.07/ })).toHaveProperty('checked', true);
    fonts.missing = false;
    await userEvent.click(make());
    await screen.findByText('The paper is made', {}, { timeout: 10_000 });
    expect(papersIn(memory)).toHaveLength(1);
  });

  test('says so when the disk is full, and keeps the choice', async () => {
    const memory = await disposalState();
    memory.breakStore({ code: 'disk-full' });
    show(memory, { id: memory.barren });
    await userEvent.click(make());
    await waitFor(() => expect(screen.getByRole('alert').textContent).toMatch(/phone is full/), {
      timeout: 10_000,
    });
    expect(screen.queryByText('The paper is made')).toBeNull();
    expect(make()).toHaveProperty('disabled', false);
  });

  test('lists the papers made, newest first, each with its entry', async () => {
    const memory = await disposalState();
    const record = (fileName: string, containerId: string) =>
      memory.does({
        do: 'record-paper',
        containerIds: [containerId],
        contentHash: 'a'.repeat(64),
        fileName,
        format: 'pdf',
      });
    await record('first.pdf', memory.barren);
    memory.pass(60_000);
    const { id } = await record('second.pdf', memory.wash);
    render(
      <ShellProvider value={memory.shell}>
        <PaperList />
      </ShellProvider>,
    );
    const rows = screen.getAllByRole('link', { name: /\.pdf/ });
    expect(rows.map((row) => /first|second/.exec(row.textContent ?? '')?.[0])).toEqual(['second', 'first']);
    expect(rows[0]?.getAttribute('href')).toBe(`#/record/entry/${id}`);
  });
});
