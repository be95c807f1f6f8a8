import { cleanup, screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { choose, fill, follow, open, row, tap, type, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { hood, station } from './at-the-bench';
// Fetched when they are first opened: here already, so that no test waits for it.
import '../../../src/screens/stations/list';
import '../../../src/screens/stations/measured';
import '../../../src/screens/stations/station';
import '../../../src/screens/stations/station-form';

const title = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });
const plain = (text: string | null | undefined): string => (text ?? '').replace(/\s/g, ' ');

/** The form of a new place. */
async function form() {
  const workshop = await workshopInMemory();
  open(workshop.shell, 'record/stations/new');
  await title('A new place');
  return workshop;
}
const is = (name: RegExp) => user.click(screen.getByRole('radio', { name }));
const setDay = async (label: string, day: string): Promise<void> => {
  await user.clear(screen.getByLabelText(label));
  await user.type(screen.getByLabelText(label), day);
};
type Workshop = Awaited<ReturnType<typeof workshopInMemory>>;
const stations = (workshop: Workshop) => [...workshop.state.value.stations.values()];
const measured = (measuredOn: string) =>
  ({ ...hood, face: { speed: { value: '0.50', unit: 'm/s' }, measuredOn } }) as const;

describe('describing a hood', () => {
  it('keeps every number as it was written, in its unit', async () => {
    const workshop = await form();
    await type('Name', 'Hood 1');
    await is(/^Hood with a duct/);
    await type('Width of the opening', '36');
    await choose('Width of the opening, unit', 'in');
    await type('Height of the opening', '45,0');
    await type('Mean speed', '100');
    await choose('Mean speed, unit', 'ft/min');
    await setDay('Measured on', '2026-03-01');
    await type('Volume of the room', '40');
    await tap('Keep this place');
    expect(stations(workshop)[0]?.body).toMatchObject({
      name: 'Hood 1',
      station: {
        is: 'ducted-hood',
        width: { value: '36', unit: 'in' },
        height: { value: '45.0', unit: 'cm' },
        face: { speed: { value: '100', unit: 'ft/min' }, measuredOn: '2026-03-01' },
        room: { value: '40', unit: 'm³' },
      },
    });
    expect(workshop.station.value).toBe(stations(workshop)[0]?.body.stationId);
  });

  it('says at each line what is missing or wrong, and writes nothing', async () => {
    const workshop = await form();
    await tap('Keep this place');
    expect(screen.getByText('Choose one.')).toBeTruthy();
    await is(/^Hood with a duct/);
    await type('Mean speed', '0.5');
    await type('Slowest speed at which it held', '0.3');
    expect(screen.getByText('Choose the day.')).toBeTruthy();
    expect(screen.getByText(/two speeds and a day/)).toBeTruthy();
    expect(screen.getAllByText('Write a number here.').length).toBe(2);
    await setDay('Measured on', '2026-05-13');
    expect(screen.getByText('That day is still to come.')).toBeTruthy();
    await fill('Mean speed', '');
    expect(screen.getByText(/Write the speed that was measured/)).toBeTruthy();
    await type('Fastest speed at which it held', '50');
    await choose('Fastest speed at which it held, unit', 'ft/min');
    await setDay('Tested on', '2026-01-10');
    // 50 ft/min is 0.254 m/s.
    expect(screen.getByText(/fastest is below the slowest/)).toBeTruthy();
    await tap('Keep this place');
    expect(stations(workshop)).toEqual([]);
  });

  it('survives a reload half-way, and says that it was begun', async () => {
    const workshop = await form();
    await type('Name', 'Hood 1');
    await is(/^Hood with a duct/);
    await type('Width of the opening', '9');
    cleanup();
    open(workshop.shell, 'record/stations/new');
    await title('A new place');
    expect(screen.getByLabelText<HTMLInputElement>('Width of the opening').value).toBe('9');
    expect(screen.getByText('You had begun this.')).toBeTruthy();
  });

  it('leads back to the page that needed a place, with the phone there', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, `record/stations/new/for/check/${workshop.batch}/filtration`);
    await title('A new place');
    await type('Name', 'Yard');
    await is(/^Outdoors/);
    await tap('Keep this place');
    expect(workshop.path.value).toEqual(['check', workshop.batch, 'filtration']);
    expect(workshop.station.value).toBe(stations(workshop)[0]?.body.stationId);
  });
});

describe('a place in the record', () => {
  it('that is no hood and not outdoors may be described, and says that it is never enough', async () => {
    const workshop = await form();
    await type('Name', 'Back room');
    await is(/^Room without/);
    expect(screen.getByText(/Nothing that gives off nitrous gas may be worked there/)).toBeTruthy();
    await type('Volume of the room', '40');
    await type('Air that goes through', '600');
    await tap('Keep this place');
    expect(stations(workshop)[0]?.body.station).toEqual({
      is: 'room',
      volume: { value: '40', unit: 'm³' },
      airflow: { value: '600', unit: 'm³/h' },
    });
    open(workshop.shell, workshop.path.value.join('/'));
    await title('Back room');
    expect(screen.getByText(/Room air is no answer to this gas/)).toBeTruthy();
  });

  it('is due again when its reading is older than a change, and not after it was measured again', async () => {
    const workshop = await workshopInMemory();
    const id = await station(workshop, 'Hood 1', { ...measured('2026-03-01'), changedOn: '2026-04-02' });
    open(workshop.shell, 'record/stations');
    await title('Working places');
    expect(plain(row(/^Hood 1/).textContent)).toContain('Due again: changed 2 Apr, not measured since.');
    follow(workshop.shell, /^Hood 1/);
    await title('Hood 1');
    expect(screen.getByText(/changed after it was measured/)).toBeTruthy();
    follow(workshop.shell, /^We measured again/);
    await title('Hood 1: measured again');
    await type('Mean speed', '0,52');
    await tap('Keep this reading');
    expect(workshop.state.value.stations.get(id)?.body.station).toEqual({
      ...hood,
      changedOn: '2026-04-02',
      face: { speed: { value: '0.52', unit: 'm/s' }, measuredOn: '2026-05-12' },
    });
    open(workshop.shell, 'record/stations');
    await title('Working places');
    expect(plain(row(/^Hood 1/).textContent)).not.toContain('Due');
  });

  it('is given up, with the phone at none, and taken into use again', async () => {
    const workshop = await workshopInMemory();
    const id = await station(workshop, 'Hood 1', measured('2026-03-01'));
    workshop.shell.chooseStation(id);
    open(workshop.shell, `record/stations/${id}`);
    await title('Hood 1');
    workshop.pass(60_000);
    await tap(/^Give it up/);
    expect(workshop.state.value.stations.get(id)?.givenUpAt).not.toBeNull();
    expect(workshop.station.value).toBeNull();
    open(workshop.shell, `record/stations/${id}`);
    await title('Hood 1');
    workshop.pass(60_000);
    await tap('Take it into use again');
    expect(workshop.state.value.stations.get(id)?.givenUpAt).toBeNull();
  });

  it('opens the air that it takes away to its working', async () => {
    const workshop = await workshopInMemory();
    const id = await station(workshop, 'Hood 1', measured('2026-03-01'));
    open(workshop.shell, `record/stations/${id}`);
    await title('Hood 1');
    // 0.80 × 0.30 × 0.50 × 3600 = 432 m³/h
    expect(plain(row(/^Air that it takes away/).textContent)).toMatch(/430/);
    follow(workshop.shell, /^Air that it takes away/);
    await title('Air that the hood takes away');
    expect(plain(document.body.textContent)).toContain('432.0 m³/h');
  });
});

describe('Today', () => {
  const dueOn = async (measuredOn: string): Promise<string> => {
    const workshop = await workshopInMemory();
    await station(workshop, 'Hood 1', measured(measuredOn));
    open(workshop.shell, 'today');
    return plain(screen.queryByRole('link', { name: /^Hood 1/ })?.textContent);
  };

  it('says when a hood is to be measured: thirty days before, and from then on', async () => {
    expect(await dueOn('2025-06-12')).toBe('');
    expect(await dueOn('2025-06-11')).toContain('Measure again by 11 Jun.');
    expect(await dueOn('2025-05-11')).toContain('Due again: the reading held until 11 May.');
  });

  it('says nothing of a hood that was given up', async () => {
    const workshop = await workshopInMemory();
    const id = await station(workshop, 'Hood 1', measured('2025-05-11'));
    await workshop.does({ do: 'give-up-station', stationId: id });
    open(workshop.shell, 'today');
    expect(screen.queryByRole('link', { name: /^Hood 1/ })).toBeNull();
  });
});
