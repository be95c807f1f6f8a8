import { screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { choose, fill, follow, open, row, tap, type } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { station } from './at-the-bench';
// Fetched when they are first opened: here already, so that no test waits for it.
import '../../../src/screens/ventilation/kept';
import '../../../src/screens/ventilation/ventilation';
import '../../../src/screens/ventilation/working';

type Workshop = Awaited<ReturnType<typeof workshopInMemory>>;

const title = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });
const text = (): string => plain(document.body.textContent);
const plain = (said: string | null | undefined): string => (said ?? '').replace(/\s/g, ' ');
const rowText = (name: RegExp): string => plain(row(name).textContent);

const cm = (value: string) => ({ value, unit: 'cm' }) as const;
const hood = {
  is: 'ducted-hood',
  width: cm('90'),
  height: cm('45'),
  face: { speed: { value: '0.50', unit: 'm/s' }, measuredOn: '2026-03-01' },
  room: { value: '40', unit: 'm³' },
} as const;

/** The phone at a hood, the check of the batch open. */
async function atTheHood(list = '-') {
  const workshop = await workshopInMemory();
  const stationId = await station(workshop, 'Hood 1', hood);
  workshop.shell.chooseStation(stationId);
  const address = `ventilation/${workshop.batch}/${list}`;
  open(workshop.shell, address);
  await title('Ventilation check');
  return { ...workshop, stationId, address };
}

/** Copper in 1:1 acid over two hours, under 1 ppm, with a mixing factor of 3. */
async function copper(grams: string): Promise<void> {
  await choose('Which metal?', 'Cu');
  await type('Copper', grams);
  await type('Volume', '1.0');
  await type('Strength', '7.9');
  await choose('Strength, unit', 'mol/L');
  await type('From the first gas to the last', '2');
  await choose('Limit', 'niosh-15-min');
  await choose('Mixing factor of a room', '3');
}

const lastCheck = (workshop: Workshop) => [...workshop.state.value.ventilationChecks.values()].at(-1)?.body;

describe('50 g of copper in 1:1 acid over two hours', () => {
  it('are too much for a hood of 0.90 m × 0.45 m at 0.5 m/s: so many lots, none of them above what the duct bears', async () => {
    const workshop = await atTheHood();
    expect(text()).toContain('Some lines are empty still');
    await copper('50');
    const said = plain(screen.getByRole('status').textContent);
    expect(said).toContain('Too much for this place: split it');
    expect(said).toContain('An estimate, not a measurement.');
    const [, lots = '0', each = '0'] = /Split into (\d+) lots of ([\d.]+) g/.exec(said) ?? [];
    const portion = Number(/(\d+\.\d+) g/.exec(rowText(/^Largest lot/))?.[1]);
    expect(Number(each)).toBeLessThanOrEqual(portion);
    expect(Number(lots) * portion).toBeGreaterThanOrEqual(50);
    expect(said).not.toMatch(/safe|compliant/i);
    await tap(/^Take this result/);
    expect(lastCheck(workshop)).toMatchObject({
      batchId: workshop.batch,
      verdict: 'split',
      portion: { value: String(portion), unit: 'g' },
      charge: { acid: { volume: { value: '1.0', unit: 'L' } } },
    });
  });

  it('would need more room air than anything gives: 57 714 m³/h, by our own sum and no published one', async () => {
    const workshop = await atTheHood();
    const room = await station(workshop, 'Back room', {
      is: 'room',
      volume: { value: '40', unit: 'm³' },
      airflow: { value: '600', unit: 'm³/h' },
    });
    await copper('50');
    await choose('Where it is to be worked', 'Back room');
    expect(workshop.station.value).toBe(room);
    expect(screen.getByRole('status').textContent).toMatch(/^No acceptable place/);
    expect(text()).toContain('for gases of low toxicity, with limits of 100 ppm or more');
    follow(workshop.shell, /^Room air needed, mean/);
    await title('Room air that would be needed, mean');
    // 1.57366 mol × 24.45 L/mol ÷ 120 min × 3 ÷ 1 ppm, in the four digits of a working.
    expect(text()).toContain('57 710 m³/h');
  });
});

describe('the form', () => {
  it('keeps what stands in it over a reload, half-way', async () => {
    const workshop = await atTheHood();
    await choose('Which metal?', 'Ni');
    await type('Nickel', '3');
    open(workshop.shell, workshop.address);
    expect(screen.getByLabelText<HTMLInputElement>('Nickel').value).toBe('3');
    await tap('Begin again');
    expect(screen.queryByLabelText('Nickel')).toBeNull();
  });

  it('says at each line what is missing, and takes nothing', async () => {
    const workshop = await atTheHood();
    await tap(/^Take this result/);
    expect(screen.getByText('Choose a metal and write its grams.')).toBeTruthy();
    expect(screen.getByText('Choose one.')).toBeTruthy();
    await type('Share that comes first', '40');
    expect(screen.getByText(/Share and time belong together/)).toBeTruthy();
    expect(lastCheck(workshop)).toBeUndefined();
  });

  it('says it of acid that there is none of, and of a mixing factor that makes less air do', async () => {
    await atTheHood();
    await copper('5');
    expect(screen.getByRole('status').textContent).toMatch(/Too much|enough/);
    await choose('Strength, unit', '%');
    await fill('Strength', '98');
    await tap(/^Take this result/);
    expect(screen.getByText(/no strength of nitric acid that is known here/)).toBeTruthy();
    expect(screen.queryByRole('status')).toBeNull();
    await fill('Strength', '30');
    await choose('Mixing factor of a room', 'one of your own');
    await type('Mixing factor', '0.2');
    expect(screen.getByText(/An efficiency of 0.2 is a factor of 5/)).toBeTruthy();
    expect(screen.queryByRole('status')).toBeNull();
  });

  it('offers the acid that the batch was charged with, and fills in nothing by itself', async () => {
    const workshop = await atTheHood();
    await workshop.does({
      do: 'log-charge',
      batchId: workshop.batch,
      charge: {
        what: 'acid',
        volume: { value: '330', unit: 'mL' },
        strength: { value: '68', unit: '%' },
      },
    });
    open(workshop.shell, workshop.address);
    expect(screen.getByLabelText<HTMLInputElement>('Volume').value).toBe('');
    await tap(/^330.mL of 68.%/);
    expect(screen.getByLabelText<HTMLInputElement>('Volume').value).toBe('330');
    expect(screen.getByLabelText<HTMLInputElement>('Strength').value).toBe('68');
  });

  it('offers the free acid of the leach liquor to its cementation', async () => {
    const workshop = await atTheHood();
    await workshop.does({
      do: 'log-stream',
      batchId: workshop.batch,
      stepId: null,
      stream: 'leach-liquor',
      liquid: {
        volume: { value: '3.45', unit: 'L' },
        findings: [],
        freeAcid: [{ by: 'titration', result: { value: '1.48', unit: 'mol/L' } }],
      },
    });
    open(workshop.shell, workshop.address);
    expect(screen.queryByRole('button', { name: /^3\.45/ })).toBeNull();
    await choose('Step', 'cementation');
    await tap(/^3\.45.L of 1\.48.mol/);
    await type('From the first gas to the last', '24');
    await choose('Limit', 'niosh-15-min');
    // 3.45 L × 1.48 mol/L dissolve 122 g of copper: more than goes into one lot, so the liquor is split.
    expect(plain(screen.getByRole('status').textContent)).toMatch(/Split into \d+ lots of [\d.]+ L/);
  });

  it('takes metal of which nobody knows what it is for the worst', async () => {
    await atTheHood();
    await copper('5');
    const known = rowText(/^Gas of the charge/);
    await choose('What is known of it', 'grams in all, not which');
    await type('Metal in all', '5');
    const high = (said: string) => Number(/to ([\d.]+)/.exec(said)?.[1]);
    expect(high(rowText(/^Gas of the charge/))).toBeGreaterThan(high(known));
  });

  it('shows who set the limit, and whether one of us read it there', async () => {
    await atTheHood();
    await choose('Limit', 'acgih-8-h');
    expect(screen.getByText(/from memory, not checked against its source/)).toBeTruthy();
    await choose('Limit', 'niosh-15-min');
    expect(screen.getByText(/read in the source, or in a public copy of it.*1\.8 mg/)).toBeTruthy();
  });
});

describe('outdoors', () => {
  it('works nothing out of the air, and lists what has to hold', async () => {
    const workshop = await atTheHood();
    await station(workshop, 'Yard', { is: 'outdoors' });
    await copper('5');
    await choose('Where it is to be worked', 'Yard');
    expect(text()).toContain('Wind from behind you, never still air.');
    expect(text()).toContain('No rain into the acid.');
    expect(screen.queryByRole('link', { name: /^In the duct/ })).toBeNull();
  });
});

describe('a list', () => {
  it('gets the answer and the largest lot, which is the limit of its first portion', async () => {
    const workshop = await atTheHood('leach-start');
    expect(screen.queryByLabelText('Step')).toBeNull();
    await copper('4');
    expect(screen.getByRole('status').textContent).toMatch(/enough for this lot/);
    await tap(/^Take this result/);
    expect(workshop.path.value).toEqual(['check', workshop.batch, 'leach-start']);
    expect(lastCheck(workshop)).toMatchObject({ verdict: 'enough', stationId: workshop.stationId });
  });

  it('without metals is asked for the place alone', async () => {
    const workshop = await atTheHood('filtration');
    expect(screen.queryByLabelText('Volume')).toBeNull();
    expect(screen.getByRole('status').textContent).toMatch(/enough for this lot/);
    await tap(/^Take this result/);
    expect(lastCheck(workshop)).toMatchObject({ charge: { step: 'filtration' }, verdict: 'enough' });
  });
});

describe('a check that was taken', () => {
  it('stands on the page of its batch, and is worked out again from what was written down, years later', async () => {
    const workshop = await atTheHood();
    await copper('4');
    const duct = rowText(/^In the duct at the peak/);
    await tap(/^Take this result/);
    workshop.pass(3 * 366 * 86_400_000);
    await workshop.does({
      do: 'change-station',
      stationId: workshop.stationId,
      name: 'Hood 1',
      station: { is: 'ductless-hood' },
    });
    open(workshop.shell, `batches/${workshop.batch}`);
    follow(workshop.shell, /^This place is enough for this lot/);
    await title('Ventilation check');
    expect(rowText(/^In the duct at the peak/)).toBe(duct);
    expect(text()).toContain('4 g copper');
    expect(text()).not.toContain('Written down then');
    follow(workshop.shell, /^In the duct at the peak/);
    await title('In the duct at the peak');
    expect(text()).toContain('Air that the hood takes away');
  });

  it('says so where this version works it out otherwise than it was written down', async () => {
    const workshop = await atTheHood();
    const entry = await workshop.does({
      do: 'log-ventilation-check',
      batchId: workshop.batch,
      stationId: workshop.stationId,
      charge: {
        step: 'leach',
        metals: { known: 'each', masses: [{ metal: 'Cu', mass: { value: '50', unit: 'g' } }] },
        acid: { volume: { value: '1', unit: 'L' }, strength: { value: '7.9', unit: 'mol/L' } },
        release: { value: '2', unit: 'h' },
        limit: 'niosh-15-min',
      },
      verdict: 'enough',
    });
    const id = entry.body.kind === 'ventilation-checked' ? entry.body.checkId : '';
    open(workshop.shell, `ventilation-checks/${id}`);
    await title('Ventilation check');
    expect(text()).toContain('Written down then: “This place is enough for this lot”.');
  });
});

it('the purge clock runs for the time that the air takes, rounded up', async () => {
  const workshop = await atTheHood();
  await copper('4');
  const high = Number(/to (\d+)/.exec(rowText(/^Time to air it/))?.[1]);
  await tap(/^Start the purge clock/);
  const clock = [...workshop.state.value.clocks.values()].at(-1)?.body;
  expect(clock?.of).toBe('purge');
  const minutes = (Date.parse(clock?.due ?? '') - Date.parse(workshop.now.value)) / 60_000;
  expect(Number.isInteger(minutes)).toBe(true);
  // The end that is printed is rounded outwards to the digits of the range.
  expect(minutes).toBeLessThanOrEqual(high);
  expect(minutes).toBeGreaterThan(high - 10);
  expect(workshop.path.value[0]).toBe('clocks');
});
