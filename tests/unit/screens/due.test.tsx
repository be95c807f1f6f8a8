/** Last days and amounts as a person finds them: in order on Today, with their counting, and in a file for a calendar. */
import { act, screen, waitFor, within } from '@testing-library/preact';
import ICAL from 'ical.js';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { loadEveryday, screenAt } from '../../../src/app/routes';
import { calendarDays, makeCalendar } from '../../../src/screens/due/calendar-file';
import { fill, open, row, tap, type } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { openCan } from '../../support/waste-in-cans';

await loadEveryday();

type Memory = Awaited<ReturnType<typeof workshopInMemory>>;

const litres = (value: string) => ({ value, unit: 'L' }) as const;

/** In Paris 1 March 2028 is a Wednesday. */
const start = '2028-03-01T08:00:00.000Z';

const can = (memory: Memory, code: string) =>
  openCan(memory, { code, capacity: litres('20'), openedOn: '2028-03-01' });

async function waste(memory: Memory, containerId: string, volume: string): Promise<string> {
  const { body } = await memory.does({
    do: 'log-stream',
    batchId: null,
    stepId: null,
    stream: 'barren-liquor',
    liquid: {
      volume: litres(volume),
      density: { value: '1.100', unit: 'kg/L' },
      findings: [],
      freeAcid: [{ by: 'titration', result: { value: '0.7', unit: 'mol/L' } }],
    },
    placements: [{ containerId, amount: litres(volume) }],
  });
  return body.kind === 'stream-logged' ? body.streamId : '';
}

const rule = (
  memory: Memory,
  stated: Extract<Parameters<Memory['does']>[0], { do: 'state-local-rule' }>['stated'],
) => memory.does({ do: 'state-local-rule', stated, saidBy: 'County office', saidOn: '2028-02-10' });

/** A can with 10 L of barren liquor since 1 March, one with 5 L since 11 March. */
async function twoCans() {
  const memory = await workshopInMemory(start);
  const first = await can(memory, 'C-01');
  const second = await can(memory, 'C-02');
  const stream = await waste(memory, first, '10');
  memory.now.value = '2028-03-11T08:00:00.000Z';
  await waste(memory, second, '5');
  return { ...memory, first, second, stream };
}

const lines = (list: string | RegExp): string[] =>
  within(screen.getByRole('list', { name: list }))
    .getAllByRole('listitem')
    .map((item) => item.textContent ?? '');

/** Lazy pages come a moment later. */
async function opened(memory: Pick<Memory, 'shell'>, address: string, title: string | RegExp): Promise<void> {
  open(memory.shell, address);
  await screen.findByRole('heading', { level: 1, name: title });
}

const orderOf = (all: readonly string[], ...parts: readonly RegExp[]): number[] =>
  parts.map((part) => all.findIndex((text) => part.test(text)));

describe('Today', () => {
  it('has what is due in order, the careful day first, each row leading to where it is done', async () => {
    const memory = await twoCans();
    await rule(memory, { rule: 'storage-days', value: { value: '90', unit: 'days' } });
    await rule(memory, { rule: 'month-limit', value: { value: '15', unit: 'kg' } });
    // 1 March + 90 = 30 May, careful 29 May; 11 March + 90 = 9 June, careful 8 June.
    memory.now.value = '2028-05-30T08:00:00.000Z';
    open(memory.shell, 'today');
    const all = lines('Due and wrong');
    expect(orderOf(all, /Walk along/, /C.01 must leave/, /C.02 must leave/, /Local rules/)).toEqual([
      0, 1, 2, 3,
    ]);
    expect(all[1]).toMatch(/Was due by Monday 29\sMay\. By the longer count today/);
    expect(all[2]).toMatch(/By Thursday 8\sJun/);
    expect(row(/C.01 must leave/).getAttribute('href')).toBe(`#/containers/${memory.first}`);
    expect(screen.getByText(/need a look/).textContent).toBe('2 containers need a look.');
  });

  it('counts up what nobody has limited, with the law beside it for comparison', async () => {
    const memory = await twoCans();
    memory.now.value = '2028-04-11T08:00:00.000Z';
    open(memory.shell, 'today');
    const [line] = lines('Due and wrong').filter((text) => text.includes('Storage time not entered'));
    expect(line).toMatch(
      /Waste in C.01 has stood 41 days, and 1 more stand. For comparison: 90 days \(40 CFR 262\.17/,
    );
    expect(row(/Storage time not entered/).getAttribute('href')).toBe('#/record/rules/storage-days');
  });

  it('tells of a month against its own limit, and is quiet without one', async () => {
    const memory = await twoCans();
    const told = () => lines('Due and wrong').filter((text) => /Waste o[fn] /.test(text));
    open(memory.shell, 'today');
    expect(told()).toEqual([]);
    // 15 L × 1.100 = 16.5 kg, each volume read to 5 %.
    await rule(memory, { rule: 'month-limit', value: { value: '16.5', unit: 'kg' } });
    open(memory.shell, 'today');
    expect(told()).toEqual([expect.stringMatching(/^Waste of this month: may be over.*Limit 16\.5/)]);
    await rule(memory, { rule: 'month-limit', value: { value: '200', unit: 'kg' } });
    open(memory.shell, 'today');
    expect(told()).toEqual([]);
  });
});

describe('a last day', () => {
  it('opens how it was counted: both readings, the day that is the first, and who said the limit', async () => {
    const memory = await twoCans();
    await rule(memory, { rule: 'storage-days', value: { value: '90', unit: 'days' } });
    await opened(memory, 'due', 'Dates and amounts');
    const href = row(/C.01 must leave/).getAttribute('href') ?? '';
    await opened(memory, href, /C.01 must leave/);
    const all = screen.getAllByRole('listitem').map((item) => item.textContent);
    expect(all).toEqual([
      expect.stringMatching(/^Counted from.*1\sMar$/),
      expect.stringMatching(/^Days that are allowed.*County office.*90\sdays$/),
      expect.stringMatching(/^Last day, the careful one.*29\sMay$/),
      expect.stringMatching(/^Last day by the longer count.*30\sMay$/),
      expect.stringMatching(/^Left to the careful one.*79\sdays$/),
    ]);
  });

  it('that is not due any more says so', async () => {
    await opened(await twoCans(), 'due/days/proof/none', 'Dates and amounts');
    expect(screen.getByText('This is not due any more.')).toBeTruthy();
  });

  it('stands on its container, with from when it counts', async () => {
    const memory = await twoCans();
    await rule(memory, { rule: 'storage-days', value: { value: '90', unit: 'days' } });
    await rule(memory, { rule: 'near-work-limit', value: { value: '100', unit: 'L' } });
    open(memory.shell, `containers/${memory.first}`);
    const all = lines('Storage time');
    expect(all[0]).toMatch(/^Counted from1\sMar/);
    expect(all[1]).toMatch(/By Monday 29\sMay\. By the longer count 30\sMay/);
    expect(all[2]).toContain('Where it stands is not said');
    await memory.does({ do: 'change-container', containerId: memory.second, area: 'near-work' });
    open(memory.shell, `containers/${memory.second}`);
    expect(lines('Storage time').at(-1)).toContain('Beside the work');
  });
});

describe('a month', () => {
  it('says under each rule what it counts, opens its working, and has a category as a candidate only', async () => {
    const memory = await twoCans();
    await opened(memory, 'due/months/2028-03', 'March 2028');
    expect(screen.getByText(/^All hazardous waste that arises.*40 CFR 262\.13/)).toBeTruthy();
    expect(lines('Category')[0]).toMatch(/^Very small generator.*Candidate/);
    await opened(memory, row(/^Counted/).getAttribute('href') ?? '', /Hazardous waste counted/);
    expect(document.body.textContent).toContain('16.5');
  });

  it('leaves out what somebody said is left out, by name; and without a name nothing is written', async () => {
    const memory = await twoCans();
    await opened(memory, `due/wastes/${memory.stream}`, /Barren liquor/);
    await act(async () => screen.getByRole('radio', { name: /^Not hazardous/ }).click());
    await tap('Write it down');
    expect(memory.state.value.streams.get(memory.stream)?.counting).toBeNull();
    // Told at the field, and not by the record that would refuse it.
    expect(screen.getByText('Write something here.')).toBeTruthy();
    expect(screen.queryByRole('alert')).toBeNull();
    await type('Who says so', 'County office');
    await tap('Write it down');
    await waitFor(() => expect(memory.path.value).toEqual(['due', 'months', '2028-03']));
    expect(memory.state.value.streams.get(memory.stream)?.counting?.body).toMatchObject({
      counted: 'not-hazardous',
      saidBy: 'County office',
    });
    await opened(memory, 'due/months/2028-03', 'March 2028');
    expect(lines('Not counted')[0]).toMatch(/^Barren liquor.*11\.0/);
    expect(lines('Counted')[0]).toMatch(/^Barren liquor.*5\.5/);
  });

  it('keeps a half written word over a reload', async () => {
    const memory = await twoCans();
    await opened(memory, `due/wastes/${memory.stream}`, /Barren liquor/);
    await fill('Who says so', 'Count');
    await opened(memory, `due/wastes/${memory.stream}`, /Barren liquor/);
    expect((screen.getByLabelText('Who says so') as HTMLInputElement).value).toBe('Count');
  });

  it('of nonsense is no page that breaks', async () => {
    const memory = await twoCans();
    for (const address of ['due/months/2028-13', 'due/months/x', 'due/wastes/none', 'due/months/x/working'])
      expect(screenAt(address.split('/'))).not.toBeNull();
    await opened(memory, 'due/months/2028-13', /not due/);
  });
});

describe('the calendar file', () => {
  const made: File[] = [];
  beforeEach(() => {
    made.length = 0;
    vi.spyOn(URL, 'createObjectURL').mockImplementation((file) => {
      made.push(file as File);
      return 'blob:made';
    });
  });
  afterEach(() => vi.restoreAllMocks());

  const events = async (file: File) =>
    new ICAL.Component(ICAL.parse(await file.text()))
      .getAllSubcomponents('vevent')
      .map((one) => new ICAL.Event(one));

  it('has each last day by its careful reading, with both told, under the same identifier each time', async () => {
    const memory = await twoCans();
    await rule(memory, { rule: 'storage-days', value: { value: '90', unit: 'days' } });
    await opened(memory, 'due/calendar', 'Dates as a calendar file');
    await tap('Make the calendar file');
    await screen.findByRole('link', { name: 'Save the file' });
    const [file] = made;
    if (!file) throw new Error('no file');
    expect([file.name, file.type]).toEqual(['due-days-2028-03-11.ics', 'text/calendar']);
    const found = await events(file);
    expect(found.map(({ startDate, summary }) => [startDate.toString(), summary])).toEqual([
      // The walk: 1 March + 7.
      ['2028-03-08', 'Walk along the containers'],
      ['2028-05-29', 'C\u201101 must leave'],
      ['2028-06-08', 'C\u201102 must leave'],
    ]);
    expect(found[1]?.uid).toBe(`leave/${memory.first}@leesbook`);
    expect(found[1]?.description).toMatch(/^Counted from 1\sMar: 90 days\.\n.*30\sMay/);
    memory.now.value = '2028-04-01T08:00:00.000Z';
    const asked = { state: memory.state.value, now: memory.now.value, zone: 'Europe/Paris', demo: false };
    const later = await makeCalendar(asked);
    if (!later.ok) throw new Error(later.words);
    expect((await events(later.file)).map(({ uid }) => uid)).toEqual(found.map(({ uid }) => uid));
  });

  it('of the invented workshop says so in each title, and never takes the place of a real day', async () => {
    const { state, now } = await twoCans();
    const days = calendarDays({ state: state.value, now: now.value, zone: 'Europe/Paris', demo: true });
    expect(days.map(({ id, title }) => [id, title])).toEqual([
      ['invented/walk', 'Invented: Walk along the containers'],
    ]);
  });

  it('is not made of nothing', async () => {
    const memory = await workshopInMemory(start);
    await opened(memory, 'due/calendar', 'Dates as a calendar file');
    expect(
      (screen.getByRole('button', { name: 'Make the calendar file' }) as HTMLButtonElement).disabled,
    ).toBe(true);
  });
});
