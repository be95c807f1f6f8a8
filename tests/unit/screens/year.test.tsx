/** The year as a person finds it: what arose and left, what each substance came to, where to go, and its paper. */
import { screen, waitFor, within } from '@testing-library/preact';
import { expect, it, vi } from 'vitest';
import { follow, open, row, tap } from '../../support/hand';
import { paperFonts } from '../../support/paper-fonts';
import { workshopInMemory } from '../../support/shell-in-memory';
import { openCan } from '../../support/waste-in-cans';

vi.mock('../../../src/paperwork/pdf/fonts', () => ({ loadFonts: async () => paperFonts }));

type Memory = Awaited<ReturnType<typeof workshopInMemory>>;

const litres = (value: string) => ({ value, unit: 'L' }) as const;

/** In C-01 10 L of 1.100 kg/L with 5.0 g of copper a litre, in C-02 2.0 L of which nobody told the copper. */
async function twoCans() {
  const memory = await workshopInMemory('2028-03-01T08:00:00.000Z');
  const logs = async (code: string, volume: string, copper?: string) => {
    const containerId = await openCan(memory, { code, capacity: litres('20'), openedOn: '2028-03-01' });
    const { body } = await memory.does({
      do: 'log-stream',
      batchId: null,
      stepId: null,
      stream: copper === undefined ? 'wash-water' : 'barren-liquor',
      liquid: {
        volume: litres(volume),
        density: { value: copper === undefined ? '1.000' : '1.100', unit: 'kg/L' },
        findings:
          copper === undefined
            ? []
            : [{ by: 'assay', metal: 'Cu', concentration: { value: copper, unit: 'g/L' } }],
        freeAcid: [],
      },
      placements: [{ containerId, amount: litres(volume) }],
    });
    return { containerId, streamId: body.kind === 'stream-logged' ? body.streamId : '' };
  };
  const told = await logs('C-01', '10.0', '5.0');
  const untold = await logs('C-02', '2.0');
  return { ...memory, told, untold };
}

async function opened(memory: Pick<Memory, 'shell'>, address: string, title: string | RegExp): Promise<void> {
  open(memory.shell, address);
  await screen.findByRole('heading', { level: 1, name: title });
  await waitFor(() => expect(screen.queryByText(/^Going through the record/)).toBeNull());
}

const lines = (list: string): string[] =>
  within(screen.getByRole('list', { name: list }))
    .getAllByRole('listitem')
    .map((item) => item.textContent ?? '');

it('has what arose by kind, each figure with its working', async () => {
  const memory = await twoCans();
  await opened(memory, 'papers/year', 'The year 2028');
  // 10.0 × 1.100 and 2.0 × 1.000.
  expect(lines('Waste that arose')).toEqual([
    expect.stringMatching(/^In all13\.0.kg/),
    expect.stringMatching(/^Barren liquor11\.0.kg/),
    expect.stringMatching(/^Wash water2\.00.kg/),
  ]);
  expect(screen.getByText('Nothing was handed over in this year.')).toBeTruthy();
  expect(screen.getByText(/no silver was weighed/)).toBeTruthy();
  follow(memory.shell, /^In all/);
  await screen.findByRole('heading', { level: 1, name: 'Waste that arose' });
});

it('marks a balance with what does not tell, and leads to it', async () => {
  const memory = await twoCans();
  await opened(memory, 'papers/year/2028', 'The year 2028');
  expect(lines('What each substance came to')[0]).toMatch(
    /^CopperCloses as far as it is told; 1 thing does not tell50.g/,
  );
  follow(memory.shell, /^Copper/);
  await screen.findByRole('heading', { level: 1, name: 'Copper' });
  expect(lines('Was here and came in')[0]).toMatch(/^In waste that arose50/);
  expect(row(/^Wash water.*not determined in it/).getAttribute('href')).toBe(
    `#/streams/${memory.untold.streamId}`,
  );
});

it('says that it does not close where more was taken out than was held, with the movement', async () => {
  const memory = await twoCans();
  await memory.does({
    do: 'log-stream',
    batchId: null,
    stepId: null,
    stream: 'wash-water',
    liquid: {
      volume: litres('1.0'),
      findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '2.0', unit: 'g/L' } }],
      freeAcid: [],
    },
    placements: [
      { containerId: memory.told.containerId, amount: litres('1.0') },
      { containerId: memory.untold.containerId, amount: litres('1.0') },
    ],
  });
  await opened(memory, 'papers/year/2028/of/Cu', 'Copper');
  expect(screen.getByText(/^Does not close: more is found than came in/)).toBeTruthy();
  expect(lines('What keeps it from closing')[0]).toMatch(/more was put into containers than was logged/);
});

it('has words for a year in which nothing was written down, and makes its paper all the same', async () => {
  const memory = await workshopInMemory('2028-03-01T08:00:00.000Z');
  await opened(memory, 'papers/year', 'The year 2028');
  expect(screen.getByText('No waste was logged in this year.')).toBeTruthy();
  expect(screen.getByText('No waste of the year tells of any metal.')).toBeTruthy();
  await opened(memory, 'papers/year/2027', 'There is no such year.');
  await opened(memory, 'papers/year/2028/paper', 'Summary of 2028');
  await tap(/Make the summary/);
  await screen.findByRole('heading', { level: 1, name: 'The summary is made' }, { timeout: 20_000 });
  await waitFor(() => expect(memory.state.value.papers.size).toBe(1));
  const [made] = memory.state.value.papers.values();
  expect(made?.body).toMatchObject({
    paper: 'year',
    period: { first: '2028-01-01', last: '2028-12-31' },
    containerIds: [],
  });
});
