import { screen, waitFor, within } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { choose, fill, open, tap, user } from '../../support/hand';
import { paperFonts } from '../../support/paper-fonts';
import { disposalState } from '../paperwork/disposal-state';

const fonts = vi.hoisted(() => ({ missing: false }));

vi.mock('../../../src/paperwork/pdf/fonts', () => ({
  loadFonts: async () => {
    if (fonts.missing) throw new Error('no network');
    return paperFonts;
  },
}));

/** What stands before the lens: texts in turn, the last one for ever; the camera is opened and let go by a tap alone. */
const lens = vi.hoisted(() => ({
  fault: null as 'refused' | 'none' | 'busy' | null,
  shows: [] as (string | null)[],
  torch: [] as boolean[],
  opened: 0,
  stopped: 0,
}));

vi.mock('../../../src/screens/scan/camera', () => ({
  openCamera: async () => {
    if (lens.fault) return { ok: false, fault: lens.fault };
    lens.opened += 1;
    const stop = () => {
      lens.stopped += 1;
    };
    const torch = async (on: boolean) => void lens.torch.push(on);
    return { ok: true, camera: { stream: null, torch, stop } };
  },
}));

vi.mock('../../../src/screens/scan/read-frame', () => ({
  frameReader: async () => async () => (lens.shows.length > 1 ? lens.shows.shift() : lens.shows[0]) ?? null,
}));

afterEach(() => {
  fonts.missing = false;
  Object.assign(lens, { fault: null, shows: [], torch: [], opened: 0, stopped: 0 });
  vi.restoreAllMocks();
});

const slow = { timeout: 10_000 };
const viewBox = (picture: HTMLElement) => picture.getAttribute('viewBox');
const label = (name: RegExp) => screen.findByRole('img', { name }, slow);

describe('making a label', () => {
  test('shows it as it will be printed, anew for another size', async () => {
    const memory = await disposalState();
    open(memory.shell, `containers/${memory.wash}/label`);
    await user.click(await screen.findByRole('radio', { name: /^A6/ }));
    const large = await label(/^The label says: Waste, held as hazardous C.02 .* Hazards not determined/);
    await waitFor(() => expect(viewBox(large)).toMatch(/^0 0 297\.6\d* 419\.5/));
    expect(screen.getByText(/C.02: hazards not determined/)).toBeDefined();
    await user.click(screen.getByRole('radio', { name: /^Small/ }));
    await waitFor(async () => expect(viewBox(await label(/C.02/))).toMatch(/ 209\.7/), slow);
  });

  test('writes down what was made, with the hash that lies in the file', async () => {
    const memory = await disposalState();
    open(memory.shell, `containers/${memory.barren}/label`);
    await user.click(await screen.findByRole('radio', { name: /^A6/ }));
    await tap(/Make the label/);
    await screen.findByText('The label is made', {}, slow);
    const papers = [...memory.state.value.papers.values()].map(({ body }) => body);
    expect(papers).toMatchObject([
      { containerIds: [memory.barren], fileName: 'label-C-07-A6-2026-05-17.pdf', format: 'pdf' },
    ]);
    expect(screen.getByText(papers[0]?.contentHash ?? 'no hash')).toBeDefined();
    expect(screen.getByText(/Print it at 100 %/)).toBeDefined();
  });

  test('takes several onto one sheet, from the first place that is free', async () => {
    const memory = await disposalState();
    open(memory.shell, 'papers/labels');
    await screen.findByRole('heading', { name: 'Labels' }, slow);
    await tap(/Make the labels/);
    expect(screen.getByRole('alert').textContent).toMatch(/Tick at least one/);
    for (const name of [/C.07/, /C.02/]) await user.click(screen.getByRole('checkbox', { name }));
    expect(screen.queryByLabelText('First free place on the sheet')).toBeNull();
    await user.click(screen.getByRole('radio', { name: /^A4 with four/ }));
    await choose('First free place on the sheet', '3');
    await label(/^The label says/);
    await tap(/Make the labels/);
    await screen.findByText('The labels are made', {}, slow);
    const [paper] = [...memory.state.value.papers.values()];
    expect(paper?.body.containerIds).toEqual([memory.barren, memory.wash]);
    expect(paper?.body.fileName).toBe('label-C-07_C-02-A4-of-4-2026-05-17.pdf');
  });

  test('shows the second label of a container that is to leave, and what is not determined on it', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'laws', value: ['us-federal'] },
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'leaving' });
    open(memory.shell, `containers/${memory.barren}/label`);
    await user.click(await screen.findByRole('radio', { name: /^A6/ }));
    await label(/^The label says: .*Federal Law Prohibits Improper Disposal.*Manifest Tracking Number/);
    expect(screen.getAllByRole('img', { name: /^The label says/ })).toHaveLength(2);
    expect(screen.getByText('C‑07: a second label before it is shipped')).toBeDefined();
    expect(screen.getByText(/Write the number of the manifest on it by hand/).textContent).toMatch(
      /Not determined on it: the EPA number of the workshop; waste numbers, as nobody has confirmed any\./,
    );
  });

  test('says so where the part that draws is not on the phone', async () => {
    vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    fonts.missing = true;
    const memory = await disposalState();
    open(memory.shell, `containers/${memory.barren}/label`);
    await screen.findByText(/is not on this phone yet/, {}, slow);
    await tap(/Make the label/);
    expect((await screen.findByRole('alert', {}, slow)).textContent).toMatch(/Nothing is lost/);
    expect(memory.state.value.papers.size).toBe(0);
  });

  test('shows the hazards that it prints, and tells what does not stand on a small one in full', async () => {
    const memory = await disposalState();
    open(memory.shell, `containers/${memory.barren}/label`);
    await user.click(await screen.findByRole('radio', { name: /^Small/ }));
    await screen.findByText(/C.07, not in full on this size: .*A larger one holds more/, {}, slow);
    expect(screen.getByText('C‑07: Danger, candidate, not confirmed')).toBeDefined();
    expect(screen.getByRole('img', { name: 'corrosion' })).toBeDefined();
    expect(screen.queryByText(/hazards not determined/)).toBeNull();
  });
});

const look = async () =>
  user.click(await screen.findByRole('button', { name: /Look through the camera/ }, slow));

async function openScan(memory: Awaited<ReturnType<typeof disposalState>>) {
  const page = open(memory.shell, 'scan');
  await screen.findByRole('heading', { name: 'Scan a label' }, slow);
  return page;
}

describe('reading a label', () => {
  test('asks for the camera on a tap, and opens the container that it sees', async () => {
    const memory = await disposalState();
    lens.shows = [null, null, `https://elsewhere.example/x/#/containers/${memory.wash}`];
    await openScan(memory);
    expect(lens.opened).toBe(0);
    await look();
    await waitFor(() => expect(memory.path.value).toEqual(['containers', memory.wash]));
    await waitFor(() => expect(lens.stopped).toBe(1));
    expect(lens.opened).toBe(1);
  });

  test('says so of a label that is not of here, and goes on looking', async () => {
    const memory = await disposalState();
    const other = '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6071';
    lens.shows = [`https://a.example/#/containers/${other}`];
    await openScan(memory);
    await look();
    expect((await screen.findByRole('alert')).textContent).toMatch(/another workshop/);
    expect(lens.stopped).toBe(0);
    lens.shows = [`https://a.example/#/containers/${memory.barren}`];
    await waitFor(() => expect(memory.path.value).toEqual(['containers', memory.barren]));
  });

  test('lets the camera go when the page is hidden, and when it is left', async () => {
    const memory = await disposalState();
    const page = await openScan(memory);
    await look();
    await screen.findByText(/Hold the pattern/);
    const hidden = vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
    document.dispatchEvent(new Event('visibilitychange'));
    await waitFor(() => expect(lens.stopped).toBe(1));
    hidden.mockReturnValue('visible');
    await look();
    await screen.findByText(/Hold the pattern/);
    page.unmount();
    await waitFor(() => expect(lens.stopped).toBe(2));
    expect(lens.opened).toBe(2);
  });

  test('turns the light on and off where the phone has one', async () => {
    const memory = await disposalState();
    await openScan(memory);
    await look();
    await user.click(await screen.findByRole('button', { name: 'Light on' }));
    await user.click(await screen.findByRole('button', { name: 'Light off' }));
    expect(lens.torch).toEqual([true, false]);
  });

  test.each([
    ['refused', /Allow it in the settings/],
    ['none', /no camera here/],
    ['busy', /Another app has the camera/],
  ] as const)('says what to do where the camera is not to be had: %s', async (fault, words) => {
    const memory = await disposalState();
    lens.fault = fault;
    await openScan(memory);
    await look();
    expect((await screen.findByRole('alert')).textContent).toMatch(words);
    await fill('Code on the label', 'c7');
    await tap('Open it');
    expect(memory.path.value).toEqual(['containers', memory.barren]);
  });

  test('opens by a typed code, asks which where two look alike, and tells what it does not know', async () => {
    const memory = await disposalState();
    const seven = await memory.opens('C-7', '5');
    await openScan(memory);
    await tap('Open it');
    expect(screen.getByRole('alert').textContent).toBe('Type the code first.');
    await fill('Code on the label', 'x1');
    await tap('Open it');
    expect(screen.getByRole('alert').textContent).toMatch(/No container here has the code “x1”/);
    await fill('Code on the label', 'c 7');
    await tap('Open it');
    const list = screen.getByRole('list', { name: /Which one/ });
    expect(
      within(list)
        .getAllByRole('link')
        .map((link) => link.getAttribute('href')),
    ).toEqual([`#/containers/${memory.barren}`, `#/containers/${seven}`]);
    expect(screen.queryByRole('alert')).toBeNull();
    await fill('Code on the label', 'C-02');
    await tap('Open it');
    expect(memory.path.value).toEqual(['containers', memory.wash]);
  });
});
