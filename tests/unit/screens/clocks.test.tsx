import { signal } from '@preact/signals';
import { act, fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import type { ClockOf } from '../../../src/ledger/entries/clocks';
import { minutesAfter } from '../../../src/safety/stated-time';
import { hour } from '../../../src/screens/frame';
import type { Telling } from '../../../src/screens/shell';
import { follow, open, row } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

type Workshop = Awaited<ReturnType<typeof workshopInMemory>>;

const text = (): string => (document.body.textContent ?? '').replace(/[\u202f\u00a0\u2009]/g, ' ');
const heading = (): string => screen.getByRole('heading', { level: 1 }).textContent ?? '';

async function starts(workshop: Workshop, of: ClockOf, minutes: number, more = {}): Promise<string> {
  const due = minutesAfter(workshop.now.value, minutes);
  const { body } = await workshop.does({ do: 'start-clock', of, due, batchId: null, ...more });
  return body.kind === 'clock-started' ? body.clockId : '';
}

const pass = (workshop: Workshop, minutes: number) => act(async () => workshop.pass(minutes * 60_000));

/** A second later, so that it is no water on the glass. */
async function tap(workshop: Workshop, name: string | RegExp): Promise<void> {
  await act(async () => workshop.pass(1_000));
  await act(async () => {
    fireEvent.click(screen.getByRole('button', { name }));
  });
}

/** The address as the bar of the browser would have it. */
function goTo(workshop: Workshop, address: string): void {
  workshop.path.value = address.split('/');
  open(workshop.shell, address);
}

const due = () =>
  within(screen.getByRole('list', { name: 'Due and wrong' }))
    .getAllByRole('link')
    .map((link) => link.textContent ?? '');

describe('clocks on Today', () => {
  it('say how long still, what to do now, and stand with the most pressing first', async () => {
    const workshop = await workshopInMemory();
    await starts(workshop, 'look', 60, { batchId: workshop.batch });
    await starts(workshop, 'purge', 20);
    const overdue = hour(minutesAfter(workshop.now.value, 10));
    await starts(workshop, 'ammonia-silver', 10);
    await starts(workshop, 'rinse', 15);
    await pass(workshop, 11);
    goTo(workshop, 'today');
    const clocks = due().filter((title) => /Rinse|Ammonia|Air|Look/.test(title));
    expect(clocks.map((title) => title.split(' ')[0])).toEqual(['Rinse', 'Ammonia', 'Air', 'Look']);
    expect(text()).toContain(`Since ${overdue}. Wet and clear: acid in now.`);
    expect(row(/^Air clearing/).textContent?.replace(/\s/g, ' ')).toContain('9 min');
    expect(row(/^Ammonia and silver/).getAttribute('href')).toBe('#/sos/ammonia-silver');
    expect(row(/^Ammonia and silver/).textContent).not.toMatch(/[-−]\d/);
    expect(row(/^Look at B/).getAttribute('href')).toMatch(/^#\/clocks\//);
  });

  it('stand there again after a reload, and are gone when they are ended', async () => {
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'purge', 20);
    goTo(workshop, 'today');
    goTo(workshop, 'today');
    follow(workshop.shell, /^Air clearing/);
    expect(heading()).toBe('Air clearing');
    await tap(workshop, 'The time is over');
    expect(workshop.state.value.clocks.get(clockId)?.stopped?.body.how).toBe('done');
    goTo(workshop, 'today');
    expect(screen.queryByRole('link', { name: /^Air clearing/ })).toBeNull();
  });

  it('ask both of the two people to end the waiting', async () => {
    const workshop = await workshopInMemory();
    await workshop.does({
      do: 'change-person',
      personId: workshop.tobias,
      name: 'Tobias',
      phone: '+47 22 11',
    });
    await starts(workshop, 'check-in', 30, { name: 'Tobias' });
    await pass(workshop, 31);
    goTo(workshop, 'today');
    expect(text()).toContain(
      'Ring Tobias, +47 22 11. If it is you who is waited for, tell them that you are well.',
    );
    follow(workshop.shell, /^Tobias checks that all is well/);
    expect(row(/^Ring Tobias/).getAttribute('href')).toBe('tel:+472211');
  });
});

describe('the page of a clock', () => {
  it('ends it with one tap, and takes that back: then it runs again', async () => {
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'check-in', 30, { name: 'Tobias' });
    goTo(workshop, `clocks/${clockId}`);
    await tap(workshop, 'They rang: all well');
    expect(heading()).toMatch(/^Done, /);
    await tap(workshop, 'Undo: it still runs');
    expect(heading()).toBe('Tobias checks that all is well');
    expect(workshop.state.value.clocks.get(clockId)?.stopped).toBeNull();
    await tap(workshop, 'Nobody needs to ring');
    expect(workshop.state.value.clocks.get(clockId)?.stopped?.body.how).toBe('not-needed');
    expect(workshop.state.value.log.at(-2)?.body.kind).toBe('entry-withdrawn');
  });

  it('does not take water on the glass for a tap', async () => {
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'purge', 20);
    goTo(workshop, `clocks/${clockId}`);
    await act(async () => {
      fireEvent.click(screen.getByRole('button', { name: 'Not needed' }));
    });
    expect(workshop.state.value.clocks.get(clockId)?.stopped).toBeNull();
  });

  it('says when it could not be written down, and stays', async () => {
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'purge', 20);
    goTo(workshop, `clocks/${clockId}`);
    workshop.breakStore({ code: 'full' } as never);
    await tap(workshop, 'The time is over');
    expect(screen.getByRole('alert')).toBeTruthy();
    expect(heading()).toBe('Air clearing');
  });

  it('says that a phone may stop a page, and to set a kitchen timer or ask a person', async () => {
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'look', 20, { batchId: workshop.batch });
    goTo(workshop, `clocks/${clockId}`);
    expect(text()).toMatch(/A phone may stop a web page.*kitchen timer.*ask a person/);
    expect(text()).not.toMatch(/will wake|will ring|always/);
  });

  it('of a look leads to the list of the step that runs', async () => {
    const workshop = await workshopInMemory();
    const { batch } = workshop;
    await workshop.does({ do: 'log-step-happened', step: 'leach', batchId: batch, clearance: null });
    const clockId = await starts(workshop, 'look', 20, { batchId: batch });
    goTo(workshop, `clocks/${clockId}`);
    expect(heading()).toMatch(/^Look at leach B/);
    expect(row(/^Go through the list/).getAttribute('href')).toBe(`#/check/${batch}/leach-check`);
  });

  it('says so where there is none', async () => {
    const workshop = await workshopInMemory();
    goTo(workshop, 'clocks/nothing');
    expect(screen.getByRole('alert').textContent).toBe('This clock is not in the record.');
  });
});

describe('the next look', () => {
  it.each([
    [/^15 min/, 15],
    [/^1 h/, 60],
    [/^4 h/, 240],
  ])('after %s is a clock that runs from the tap', async (name, minutes) => {
    const workshop = await workshopInMemory();
    goTo(workshop, `batches/${workshop.batch}/look`);
    await tap(workshop, name);
    const [clock] = workshop.state.value.clocks.values();
    expect(clock?.body).toMatchObject({
      of: 'look',
      batchId: workshop.batch,
      due: minutesAfter(workshop.now.value, minutes),
    });
    expect(workshop.path.value).toEqual(['clocks', clock?.body.clockId]);
  });

  it('at an hour that has passed today comes tomorrow; with none typed it asks for it', async () => {
    const workshop = await workshopInMemory();
    goTo(workshop, `batches/${workshop.batch}/look`);
    await tap(workshop, 'Look at this hour');
    expect(screen.getByRole('alert').textContent).toContain('Write the hour');
    expect(workshop.state.value.clocks.size).toBe(0);
    const hourAgo = minutesAfter(workshop.now.value, -60);
    fireEvent.input(screen.getByLabelText('Another hour'), { target: { value: hour(hourAgo) } });
    await tap(workshop, 'Look at this hour');
    const [clock] = workshop.state.value.clocks.values();
    expect(clock?.body.due.slice(0, 16)).toBe(minutesAfter(hourAgo, 24 * 60).slice(0, 16));
  });

  it('takes the place of the one before', async () => {
    const workshop = await workshopInMemory();
    const old = await starts(workshop, 'look', 20, { batchId: workshop.batch });
    goTo(workshop, `batches/${workshop.batch}/look`);
    expect(text()).toContain('A new one takes its place');
    await tap(workshop, /^1 h/);
    expect(workshop.state.value.clocks.get(old)?.stopped?.body.how).toBe('not-needed');
    const running = [...workshop.state.value.clocks.values()].filter(({ stopped }) => stopped === null);
    expect(running).toHaveLength(1);
  });

  it('is offered where a step of the batch runs', async () => {
    const workshop = await workshopInMemory();
    await workshop.does({
      do: 'log-step-happened',
      step: 'leach',
      batchId: workshop.batch,
      clearance: null,
    });
    goTo(workshop, `batches/${workshop.batch}`);
    expect(row(/^Next look/).getAttribute('href')).toBe(`#/batches/${workshop.batch}/look`);
  });
});

describe('what is overdue', () => {
  it('shows on any page that is opened, and leads to the clock', async () => {
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'purge', 20);
    goTo(workshop, 'containers');
    expect(screen.queryByRole('complementary', { name: 'Overdue' })).toBeNull();
    await pass(workshop, 20);
    const strip = within(screen.getByRole('complementary', { name: 'Overdue' }));
    expect(strip.getByRole('link').getAttribute('href')).toBe(`#/clocks/${clockId}`);
  });

  it('leads nowhere from inside a task, and never stands before an emergency card', async () => {
    const workshop = await workshopInMemory();
    await starts(workshop, 'purge', 20);
    await pass(workshop, 20);
    goTo(workshop, `batches/${workshop.batch}/look`);
    expect(within(screen.getByRole('complementary', { name: 'Overdue' })).queryByRole('link')).toBeNull();
    goTo(workshop, 'sos/spill');
    expect(screen.queryByRole('complementary', { name: 'Overdue' })).toBeNull();
  });
});

describe('a notice when a clock is due', () => {
  it.each(['clocks', 'record'])('is asked for by nothing but a tap on its row (%s)', async (address) => {
    const workshop = await workshopInMemory();
    const telling = signal<Telling>('off');
    const changeTelling = vi.fn(async () => {
      telling.value = 'on';
    });
    const shell = { ...workshop.shell, telling, changeTelling };
    open(shell, address);
    expect(changeTelling).not.toHaveBeenCalled();
    await tap(workshop, /^Tell me when it is due/);
    expect(changeTelling).toHaveBeenCalledOnce();
    expect(screen.getByRole('button', { name: /^Tell me when it is due/ }).textContent).toContain('On');
  });

  it.each([
    ['refused', /does not let this page/],
    ['unavailable', /has no notices/],
  ] as const)('is no button where it is %s, and says why', async (state, why) => {
    const workshop = await workshopInMemory();
    open({ ...workshop.shell, telling: signal<Telling>(state) }, 'clocks');
    expect(screen.queryByRole('button', { name: /^Tell me/ })).toBeNull();
    expect(text()).toMatch(why);
  });
});

describe('the battery', () => {
  /** The browser tells of it a moment after it is asked. */
  const batteryRead = () => act(async () => undefined);

  const withBattery = (level: number, charging = false): EventTarget => {
    const battery = Object.assign(new EventTarget(), { level, charging });
    Object.defineProperty(navigator, 'getBattery', { value: async () => battery, configurable: true });
    onTestFinished(() => void Reflect.deleteProperty(navigator, 'getBattery'));
    return battery;
  };

  it.each([
    [0.15, false, true],
    [0.16, false, false],
    [0.1, true, false],
  ])('at %s, charging %s: reminded %s', async (level, charging, reminded) => {
    withBattery(level, charging);
    const workshop = await workshopInMemory();
    const clockId = await starts(workshop, 'rinse', 15);
    goTo(workshop, `clocks/${clockId}`);
    await batteryRead();
    expect(/Battery \d+ %/.test(text())).toBe(reminded);
  });

  it('that runs low while a clock runs is told on Today, and not when none does', async () => {
    const battery = withBattery(0.5);
    const workshop = await workshopInMemory();
    goTo(workshop, 'today');
    await batteryRead();
    Object.assign(battery, { level: 0.12 });
    await act(async () => {
      battery.dispatchEvent(new Event('levelchange'));
    });
    expect(text()).not.toContain('Battery');
    await act(async () => void (await starts(workshop, 'look', 60, { batchId: workshop.batch })));
    expect(text()).toContain('Battery 12 %');
  });
});

describe('a clearance', () => {
  async function cleared(second?: { name: string; at?: string }) {
    const workshop = await workshopInMemory();
    await workshop.does({
      do: 'change-person',
      personId: workshop.tobias,
      name: 'Tobias',
      phone: '+47 22 11',
    });
    const now = workshop.now.value;
    const { id } = await workshop.does({
      do: 'finish-checklist',
      runId: workshop.shell.newId(),
      step: 'leach',
      batchId: workshop.batch,
      checklist: { id: 'leach-start', version: '2', hash: 'a'.repeat(64), title: 'Start the leach' },
      outcome: 'cleared',
      startedAt: now,
      finishedAt: now,
      validUntil: minutesAfter(now, 60),
      place: 'Ducted hood',
      ...(second === undefined ? {} : { second }),
      answers: [{ item: 'a', ask: 'Is it so?', kind: 'confirm', answer: 'yes', at: now }],
    });
    return { workshop, id, now };
  }
  const at = (minutes: number) => minutesAfter('2026-05-12T08:00:00.000Z', minutes);

  it('counts down to the call, and takes “They rang: all well”', async () => {
    const { workshop, id } = await cleared({ name: 'Tobias', at: at(45) });
    goTo(workshop, `clearance/${id}`);
    expect(text()).toContain(`Tobias checks at ${hour(at(45))}`);
    expect(row(/^Tobias checks/).textContent?.replace(/\s/g, ' ')).toContain('45 min');
    await pass(workshop, 15);
    expect(row(/^Tobias checks/).textContent?.replace(/\s/g, ' ')).toContain('30 min');
    await tap(workshop, 'They rang: all well');
    expect([...workshop.state.value.clocks.values()][0]?.stopped?.body.how).toBe('done');
    expect(text()).toContain('Rang: all well,');
  });

  it('says since when a call is missed, also once it has run out', async () => {
    const { workshop, id } = await cleared({ name: 'Tobias', at: at(45) });
    await pass(workshop, 61);
    goTo(workshop, `clearance/${id}`);
    expect(heading()).toBe('The clearance has run out.');
    expect(text()).toContain(`Since ${hour(at(45))}. Ring them`);
  });

  it('leads to the next look at its batch', async () => {
    const { workshop, id } = await cleared();
    goTo(workshop, `clearance/${id}`);
    expect(row(/^Next look/).getAttribute('href')).toBe(`#/batches/${workshop.batch}/look`);
  });

  describe('told to somebody', () => {
    const share = vi.fn(async () => undefined);
    beforeEach(() => share.mockClear());
    afterEach(() => {
      for (const name of ['share', 'canShare', 'clipboard']) Reflect.deleteProperty(navigator, name);
    });
    const give = (name: string, value: unknown): void =>
      void Object.defineProperty(navigator, name, { value, configurable: true });

    it('is shown before anything is sent, and goes through what the phone shares with', async () => {
      give('share', share);
      const { workshop, id } = await cleared({ name: 'Tobias', at: at(45) });
      goTo(workshop, `clearance/${id}`);
      follow(workshop.shell, /^Send where/);
      expect(text()).toContain(`Tobias, please ring Maren at ${hour(at(45))}`);
      expect(text()).toContain('Weir Yard 6, Ostermill. Map 4471 0926.');
      expect(share).not.toHaveBeenCalled();
      await tap(workshop, 'Send it');
      expect(share).toHaveBeenCalledWith({ text: expect.stringContaining('No answer?') });
    });

    it('goes by text message to the number of the person where nothing shares', async () => {
      const { workshop, id } = await cleared({ name: 'Tobias', at: at(45) });
      goTo(workshop, `clearance/${id}/message`);
      expect(screen.queryByRole('button', { name: 'Send it' })).toBeNull();
      const link = row(/^Text message to Tobias/).getAttribute('href') ?? '';
      expect(link).toMatch(/^sms:\+472211\?body=/);
      expect(decodeURIComponent(link)).toContain('Cleared until');
    });

    it('asks for a call at once when it was missed, and no longer says what it was cleared for', async () => {
      const { workshop, id } = await cleared({ name: 'Tobias', at: at(45) });
      await pass(workshop, 61);
      goTo(workshop, `clearance/${id}/message`);
      expect(text()).toContain('Tobias, please ring Maren now');
      expect(text()).not.toContain('Cleared until');
    });

    it('can be copied, and says when it could not', async () => {
      const writeText = vi.fn(async () => undefined);
      give('clipboard', { writeText });
      const { workshop, id } = await cleared();
      goTo(workshop, `clearance/${id}/message`);
      await tap(workshop, 'Copy it');
      expect(writeText).toHaveBeenCalledWith(expect.stringMatching(/^What: Leach, B-\d+\.$/m));
      expect(screen.getByRole('alert').textContent).toContain('Copied');
      writeText.mockRejectedValueOnce(new DOMException('', 'NotAllowedError'));
      await tap(workshop, 'Copy it');
      expect(screen.getByRole('alert').textContent).toContain('could not be copied');
    });

    it('says nothing when the person thinks better of it, and another way when it fails', async () => {
      give('share', share);
      const { workshop, id } = await cleared();
      goTo(workshop, `clearance/${id}/message`);
      share.mockRejectedValueOnce(new DOMException('', 'AbortError'));
      await tap(workshop, 'Send it');
      expect(screen.queryByRole('alert')).toBeNull();
      share.mockRejectedValueOnce(new DOMException('', 'NotAllowedError'));
      await tap(workshop, 'Send it');
      expect(screen.getByRole('alert').textContent).toContain('copy it');
    });
  });
});
