import { act, screen, waitFor } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { choose, fill, open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';

const heading = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });

/** What a careful person sees whose sample holds silver. */
const beforeAmmonia = [
  ['How does the sample look?', 'Clear, bottom seen'],
  ['Blank: what does it show?', 'Stays clear'],
  ['And known silver?', 'Clear, then white curd'],
  ['What came down?', 'White, curdy, at once'],
  ['Hot water: what went?', 'The white stays'],
  ['Daylight: what became of it?', 'Not tried'],
] as const;
const withAmmonia = [
  ['Is it alkaline?', 'pH 9 or more'],
  ['Where is the white now?', 'Gone, all of it'],
  ['Which colour is the liquid?', 'Blue, bottom seen'],
  ['What does the strip show?', 'pH 3 or less'],
  ['What came back?', 'White curd'],
] as const;

async function atTheBench() {
  const memory = await workshopInMemory();
  const { batch, shell, state } = memory;
  const address = `batches/${batch}/silver-check`;
  /** Its list gone through, and begun on it. */
  async function begins(step: 'chloride-test' | 'ammonia-test'): Promise<void> {
    const id = step === 'chloride-test' ? 'spot-test-chloride' : 'spot-test-ammonia';
    const list = await memory.does({
      do: 'finish-checklist',
      runId: shell.newId(),
      step,
      batchId: batch,
      checklist: { id, version: '2', hash: 'a'.repeat(64), title: id },
      outcome: 'cleared',
      startedAt: memory.now.value,
      finishedAt: memory.now.value,
      validUntil: new Date(Date.parse(memory.now.value) + 3_600_000).toISOString(),
      answers: [{ item: 'first', ask: 'First?', kind: 'choice', answer: 'yes', at: memory.now.value }],
    });
    await memory.does({ do: 'start-step', step, batchId: batch, clearance: list.id });
  }
  async function holding(stream: StreamKind, code: string): Promise<void> {
    const containerId = await openCan(memory, {
      code,
      vessel: 'bottle',
      capacity: { value: '1', unit: 'L' },
    });
    await logLiquid(memory, stream, { value: '20', unit: 'mL' }, containerId);
  }
  /** A finger comes a second after the page. */
  async function press(name: string | RegExp): Promise<void> {
    await act(async () => memory.pass(1_000));
    await tap(name);
  }
  async function see(looks: readonly (readonly [ask: string, answer: string])[]): Promise<void> {
    for (const [ask, answer] of looks) {
      await heading(ask);
      await press(answer);
    }
  }
  const again = () => {
    memory.path.value = address.split('/');
    return open(shell, address);
  };
  const clock = () => [...state.value.clocks.values()][0];
  const checks = () => [...state.value.silverChecks.values()].map(({ body }) => body);
  return { ...memory, address, begins, holding, press, see, again, clock, checks };
}

describe('the order of the test', () => {
  test('its list comes before the first drop; what was begun without is written down, and stays marked', async () => {
    const { again, press, state } = await atTheBench();
    again();
    await heading('First: Chloride spot test');
    expect(screen.getByRole('link', { name: /Chloride spot test/ }).getAttribute('href')).toMatch(
      /#\/check\/.*\/spot-test-chloride/,
    );
    await press('Already tested? Write it down.');
    await press('Write it down');
    await heading('How does the sample look?');
    expect([...state.value.steps.values()].map(({ body }) => [body.step, body.clearance])).toEqual([
      ['chloride-test', null],
    ]);
  });

  test('a clearance that holds and has begun nothing is where it leads', async () => {
    const { again, does, batch, shell, now } = await atTheBench();
    const list = await does({
      do: 'finish-checklist',
      runId: shell.newId(),
      step: 'chloride-test',
      batchId: batch,
      checklist: { id: 'spot-test-chloride', version: '2', hash: 'a'.repeat(64), title: 'Chloride' },
      outcome: 'cleared',
      startedAt: now.value,
      finishedAt: now.value,
      validUntil: '2026-05-12T09:00:00.000Z',
      answers: [{ item: 'first', ask: 'First?', kind: 'choice', answer: 'yes', at: now.value }],
    });
    again();
    await heading('First: Chloride spot test');
    expect(screen.getByRole('link', { name: /Chloride spot test/ }).getAttribute('href')).toBe(
      `#/clearance/${list.id}`,
    );
  });

  test('no ammonia is offered before its own list, and the test can end without', async () => {
    const p = await atTheBench();
    await p.begins('chloride-test');
    p.again();
    await p.see(beforeAmmonia);
    await heading('First: Ammonia spot test');
    expect(screen.queryByRole('button', { name: /Ammonia goes in now/ })).toBeNull();
    expect(p.state.value.clocks.size).toBe(0);
    await p.press('End without ammonia');
    await heading('Not conclusive');
  });

  test('broken off before the first look, nothing of it is kept', async () => {
    const p = await atTheBench();
    await p.begins('chloride-test');
    p.again();
    await heading('How does the sample look?');
    await p.press('Break off');
    expect(p.path.value).toEqual(['batches', p.batch]);
    expect(p.drafts.size).toBe(0);
  });

  test('nothing with chloride ends it, and opens no ammonia', async () => {
    const p = await atTheBench();
    await p.begins('chloride-test');
    p.again();
    await p.see([...beforeAmmonia.slice(0, 3), ['What came down?', 'Nothing']]);
    await heading('Not silver');
    expect(screen.getByText(/That is no measurement/)).toBeTruthy();
  });
});

/** At the tap that puts the ammonia in. */
async function atAmmonia() {
  const p = await atTheBench();
  await p.begins('chloride-test');
  p.again();
  await p.see(beforeAmmonia);
  await p.begins('ammonia-test');
  p.again();
  await heading('Ammonia goes in');
  return p;
}

describe('the ammonia', () => {
  test('its clock starts with the tap, stands on each page, and stops with acid and curd', async () => {
    const p = await atAmmonia();
    const before = Date.parse(p.now.value);
    await p.press(/Ammonia goes in now/);
    await heading('Is it alkaline?');
    await waitFor(() => expect(p.clock()).toBeDefined());
    expect(p.clock()?.body).toMatchObject({ of: 'ammonia-silver', batchId: p.batch });
    expect(Date.parse(p.clock()?.body.due ?? '')).toBe(before + 1_000 + 15 * 60_000);
    await act(async () => p.pass(3 * 60_000));
    expect(screen.getByText('12 min left')).toBeTruthy();
    await p.see(withAmmonia.slice(0, 4));
    expect(screen.getByText('11 min left')).toBeTruthy();
    expect(p.clock()?.stopped).toBeNull();
    await p.see(withAmmonia.slice(4));
    await heading('Silver confirmed');
    await waitFor(() => expect(p.clock()?.stopped?.body.how).toBe('done'));
    expect(screen.queryByText(/min left/)).toBeNull();
  });

  test('its clock runs again, due as before, when the look that stopped it is taken back', async () => {
    const p = await atAmmonia();
    await p.press(/Ammonia goes in now/);
    await p.see(withAmmonia);
    await heading('Silver confirmed');
    await waitFor(() => expect(p.clock()?.stopped).not.toBeNull());
    await p.press('Back one');
    await heading('What came back?');
    const clocks = () => [...p.state.value.clocks.values()];
    await waitFor(() => expect(clocks()).toHaveLength(2));
    expect(clocks()[1]).toMatchObject({ stopped: null, body: { due: p.clock()?.body.due } });
    await p.see(withAmmonia.slice(4));
    await heading('Silver confirmed');
    await waitFor(() => expect(clocks()[1]?.stopped?.body.how).toBe('done'));
  });

  test('after a reload the test goes on where it was, and the clock ran on', async () => {
    const p = await atAmmonia();
    await p.press(/Ammonia goes in now/);
    await p.see(withAmmonia.slice(0, 2));
    await heading('Which colour is the liquid?');
    await act(async () => p.pass(5 * 60_000));
    p.again();
    await heading('Which colour is the liquid?');
    expect(screen.getByText('9 min left')).toBeTruthy();
    expect(p.state.value.clocks.size).toBe(1);
  });

  test('a strip that is not acid is looked at again, with more acid', async () => {
    const p = await atAmmonia();
    await p.press(/Ammonia goes in now/);
    await p.see(withAmmonia.slice(0, 3));
    await p.press('Above pH 3');
    expect((await screen.findByRole('alert')).textContent).toMatch(/More dilute HCl/);
    await p.press('pH 3 or less');
    await heading('What came back?');
  });

  test('overdue, the page says to put the acid in now, and past two hours to open the card first', async () => {
    const p = await atAmmonia();
    await p.press(/Ammonia goes in now/);
    await heading('Is it alkaline?');
    await act(async () => p.pass(16 * 60_000));
    await heading('15 min are over. Acid in now.');
    await act(async () => p.pass(2 * 3_600_000));
    await heading(/Over two hours old/);
    expect(screen.getByRole('link', { name: /Dried or dark/ }).getAttribute('href')).toBe(
      '#/sos/ammonia-silver',
    );
    await p.press('Wet, no film: acid goes in now');
    await heading('What does the strip show?');
    expect(screen.getByRole('complementary', { name: 'Overdue' })).toBeTruthy();
    await p.see(withAmmonia.slice(3));
    await heading('Not conclusive');
    await waitFor(() => expect(p.clock()?.stopped?.body.how).toBe('done'));
  });

  test('a full phone does not lose the clock: it is written as soon as it can be, due as before', async () => {
    const p = await atAmmonia();
    p.breakStore({ code: 'disk-full' });
    await p.press(/Ammonia goes in now/);
    const due = Date.parse(p.now.value) + 15 * 60_000;
    await screen.findByText(/The clock could not be written down/);
    expect(p.clock()).toBeUndefined();
    p.breakStore(null);
    await act(async () => p.pass(60_000));
    p.again();
    await waitFor(() => expect(p.clock()).toBeDefined());
    expect(Date.parse(p.clock()?.body.due ?? '')).toBe(due);
    expect(Date.parse(p.clock()?.at ?? '')).toBe(due - 15 * 60_000);
  });

  test('broken off with the ammonia in, its clock runs on and the page says what to do', async () => {
    const p = await atAmmonia();
    await p.press(/Ammonia goes in now/);
    await heading('Is it alkaline?');
    await p.press('Acid in now');
    await heading('What does the strip show?');
    await p.press('Break off');
    await heading('Not conclusive');
    expect(screen.getByText(/the ammonia is not destroyed/)).toBeTruthy();
    await p.press(/Now its waste/);
    await p.press(/Keep the test without its waste/);
    await waitFor(() => expect(p.checks()).toHaveLength(1));
    expect(p.checks()[0]).toMatchObject({ outcome: 'not-conclusive', streamIds: [] });
    open(p.shell, `${p.address}/${p.checks()[0]?.checkId}`);
    expect((await screen.findByRole('link', { name: /^No waste is logged/ })).getAttribute('href')).toBe(
      `#/batches/${p.batch}/log`,
    );
    expect(p.clock()?.stopped).toBeNull();
    const running = [...p.state.value.steps.values()].filter(({ endedAt }) => endedAt === null);
    expect(running.map(({ body }) => body.step)).toEqual(['ammonia-test']);
  });
});

/** The whole test made, at its waste. */
async function atWaste() {
  const p = await atAmmonia();
  await p.press(/Ammonia goes in now/);
  await p.see(withAmmonia);
  await heading('Silver confirmed');
  await p.press(/Now its waste/);
  await heading('The waste of the test');
  return p;
}

describe('what is written down', () => {
  test('nothing stands in the volume until somebody fills it in; sample and drops work it out', async () => {
    const p = await atWaste();
    const [volume] = screen.getAllByLabelText('Volume of it') as HTMLInputElement[];
    expect(volume?.value).toBe('');
    await p.press('Keep the test');
    expect(p.checks()).toHaveLength(0);
    await fill('Sample', '0.5');
    await fill('Drops of everything that went in', '30');
    await p.press(/^Take 2\.0/);
    expect((screen.getAllByLabelText('Volume of it') as HTMLInputElement[])[0]?.value).toBe('2.0');
  });

  test('jars of the very kind are offered and no can of nitrate liquor', async () => {
    const p = await atTheBench();
    await p.holding('leach-liquor', 'CAN-1');
    await p.holding('ammonia-test-waste', 'JAR-A');
    await p.holding('chloride-test-waste', 'JAR-C');
    await p.begins('chloride-test');
    p.again();
    await p.see([...beforeAmmonia.slice(0, 3), ['What came down?', 'Nothing']]);
    await p.press(/Now its waste/);
    const into = screen.getByLabelText('Into which container') as HTMLSelectElement;
    const offered = [...into.options].map(({ text }) => text).join(' | ');
    expect(offered).toContain('JAR-C');
    expect(offered).not.toContain('JAR-A');
    expect(offered).not.toContain('CAN-1');
  });

  test('waste, looks and outcome stand in the record; steps and clock have ended; the draft is gone', async () => {
    const p = await atWaste();
    await p.holding('ammonia-test-waste', 'JAR-A');
    await p.holding('chloride-test-waste', 'JAR-C');
    p.again();
    await fill('Sample', '0.5');
    const [ammonia, chloride] = screen.getAllByLabelText('Volume of it') as HTMLInputElement[];
    if (!ammonia || !chloride) throw new Error('two kinds were made');
    await user.type(ammonia, '2.1');
    await user.type(chloride, '1.5');
    const [first, second] = screen.getAllByLabelText('Into which container') as HTMLSelectElement[];
    const pick = async (select: HTMLSelectElement | undefined, code: string): Promise<void> => {
      const option = [...(select?.options ?? [])].find(({ text }) => text.startsWith(code));
      if (select && option) await user.selectOptions(select, option);
    };
    await pick(first, 'JAR-A');
    await pick(second, 'JAR-C');
    await p.press('Keep the test');
    await waitFor(() => expect(p.checks()).toHaveLength(1));
    const [check] = p.checks();
    expect(check).toMatchObject({ outcome: 'silver', sample: { value: '0.5', unit: 'mL' } });
    expect(check?.looks.map(({ look, seen }) => `${look} ${seen}`)).toContain('ammonia gone');
    const streams = check?.streamIds.map((id) => p.state.value.streams.get(id)?.body) ?? [];
    expect(streams.map((body) => [body?.stream, body?.liquid?.volume.value])).toEqual([
      ['ammonia-test-waste', '2.1'],
      ['chloride-test-waste', '1.5'],
    ]);
    expect(streams.every((body) => body?.stepId !== null)).toBe(true);
    expect([...p.state.value.steps.values()].every(({ endedAt }) => endedAt !== null)).toBe(true);
    expect(p.clock()?.stopped).not.toBeNull();
    const later = [...p.state.value.checklists.values()].flatMap((list) => list.later);
    expect(later.map(({ body }) => [body.answer.item, body.answer.answer])).toEqual([['am-time', '1']]);
    expect([...p.drafts.keys()].filter((name) => name.startsWith('silver-check'))).toEqual([]);
    await waitFor(() => expect(p.path.value.at(-1)).toBe(check?.checkId));
    open(p.shell, p.path.value.join('/'));
    await heading('Silver confirmed');
    expect(screen.getByText('Gone, all of it: fits silver')).toBeTruthy();
    expect(screen.getByText(/^AgCl \+ 2\sNH₃ → \[Ag\(NH₃\)₂\]⁺ \+ Cl⁻$/)).toBeTruthy();
    const entry = p.state.value.history.find(({ entry }) => entry.body.kind === 'silver-checked');
    open(p.shell, `record/entry/${entry?.entry.id}`);
    expect(screen.getByText('Hot water').nextElementSibling?.textContent).toBe('stays');
    expect(screen.getByText('Outcome').nextElementSibling?.textContent).toBe('silver');
    expect(screen.getByRole('link', { name: 'Open its working' }).getAttribute('href')).toBe(
      `#/${p.path.value.join('/')}`,
    );
    open(p.shell, `batches/${p.batch}`);
    expect(screen.getByRole('link', { name: /Silver confirmed/ })).toBeTruthy();
  });

  test('a phone that fails half-way writes no waste twice', async () => {
    const p = await atWaste();
    const [volume] = screen.getAllByLabelText('Volume of it') as HTMLInputElement[];
    if (volume) await user.type(volume, '2.1');
    await choose('Into which container', 'later');
    const { perform } = p.shell;
    const failing = Object.assign(p.shell, {
      perform: async (...given: Parameters<typeof perform>) =>
        given[0].do === 'log-silver-check'
          ? ({ ok: false, failure: { code: 'disk-full' } } as const)
          : perform(...given),
    });
    await p.press('Keep the test');
    await screen.findByText(/The phone is full/);
    expect(p.state.value.streams.size).toBe(1);
    Object.assign(failing, { perform });
    p.again();
    await heading('The waste of the test');
    await p.press('Keep the test');
    await waitFor(() => expect(p.checks()).toHaveLength(1));
    expect(p.state.value.streams.size).toBe(1);
    expect(p.checks()[0]?.streamIds).toHaveLength(1);
  });

  test('the batch leads back into a test that waits', async () => {
    const p = await atAmmonia();
    open(p.shell, `batches/${p.batch}`);
    const back = () => screen.getAllByRole('link', { name: /Go on with the silver check/ });
    for (const link of back()) expect(link.getAttribute('href')).toBe(`#/${p.address}`);
    p.again();
    await heading('Ammonia goes in');
    await p.press(/Ammonia goes in now/);
    await waitFor(() => expect(p.clock()).toBeDefined());
    open(p.shell, `clocks/${p.clock()?.body.clockId}`);
    expect(back()[0]?.getAttribute('href')).toBe(`#/${p.address}`);
  });
});
