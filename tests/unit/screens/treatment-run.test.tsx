import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { runState, user } from './treatment-run-state';

const plain = (text: string | null | undefined): string =>
  (text ?? '').replace(/[\u2009\u202f\u00a0]/g, ' ').replaceAll('\u2011', '-');
const row = async (name: RegExp) => plain((await screen.findByText(name)).closest('li')?.textContent);
/** The large figure beside a heading. */
const beside = async (heading: string) =>
  plain((await screen.findByRole('heading', { level: 2, name: heading })).parentElement?.textContent);
const type = (label: string, text: string) => user.type(screen.getByLabelText(label, { exact: true }), text);
const tap = (name: string | RegExp) => user.click(screen.getByRole('button', { name }));

describe('a treatment from its beginning to its end', () => {
  test('begins on its clearance, takes the portion offered, and says how long to wait', async () => {
    const p = await runState();
    await p.allows();
    const cleared = await p.clears();
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating C.07/);
    expect(screen.getByText('Nothing that is known holds it back.')).toBeTruthy();
    await tap(/Begin the treatment/);
    expect(p.state.value.treatments.size).toBe(0);
    await type('To pH', '9,0');
    await tap(/Begin the treatment/);
    await waitFor(() => expect(p.shell.path.value[0]).toBe('treatment'));
    const [begun] = [...p.state.value.treatments.values()];
    const id = begun?.body.treatmentId ?? '';
    expect(begun?.body).toMatchObject({
      containerId: p.barren,
      stages: [{ agent: 'hydrated-lime', targetPh: { value: '9.0', unit: '1' } }],
      targetPh: { value: '9.0', unit: '1' },
      clearance: cleared.id,
      allowed: 'yes',
    });

    p.show();
    await p.title(/C.07 to pH 9/);
    const first = await beside('Next portion');
    expect(first).toMatch(/\d+ g$/);
    expect(screen.getByText(/Then wait 20 min and read the pH/)).toBeTruthy();
    await p.follow('Log dose');
    await p.title(/Into C.07/);
    expect(screen.getByLabelText<HTMLInputElement>('Weighed, as sold').value).toBe('');
    await user.click(await screen.findByRole('button', { name: /The next portion/ }));
    expect(first).toContain(`${screen.getByLabelText<HTMLInputElement>('Weighed, as sold').value} g`);
    await tap('It is in');
    await waitFor(() => expect(p.state.value.treatments.get(id)?.doses).toHaveLength(1));

    p.show();
    expect(await beside('Wait')).toMatch(/20 min$/);
    expect(screen.getByText(/set a kitchen timer too/)).toBeTruthy();
    p.waits(13);
    p.show();
    expect(await beside('Wait')).toMatch(/7 min$/);
    p.waits(8);
    p.show();
    expect(await beside('Read the pH')).toMatch(/since \d\d:\d\d$/);
  });

  test('takes a reading with what was read and no other', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.dose(id, '110');
    p.waits(21);
    p.show(`treatment/${id}`);
    await p.title(/C.07 to pH 9/);
    await p.follow('Log reading');
    await p.title(/Reading in C.07/);
    await tap('Keep the reading');
    expect(screen.getByText('Write at least one thing that was read.')).toBeTruthy();
    await type('pH', '0.8');
    await tap('Keep the reading');
    expect(p.state.value.treatments.get(id)?.readings).toHaveLength(0);
    await user.click(screen.getByRole('radio', { name: 'pH meter' }));
    await type('Temperature', '24');
    await user.selectOptions(screen.getByLabelText('Colour of the clear liquid'), 'blue-green');
    await type('Copper', '900');
    await tap('Keep the reading');
    await waitFor(() => expect(p.state.value.treatments.get(id)?.readings).toHaveLength(1));
    expect(p.state.value.treatments.get(id)?.readings[0]?.body).toMatchObject({
      ph: { value: { value: '0.8', unit: '1' }, instrument: 'meter' },
      temperature: { value: '24', unit: '°C' },
      colour: 'blue-green',
      findings: [{ by: 'strip', metal: 'Cu', concentration: { value: '900', unit: 'mg/L' } }],
    });
  });

  test('ends as the person says, and says what the container is now', async () => {
    const p = await runState();
    const id = await p.begun('9.0');
    await p.dose(id, '110');
    p.waits(21);
    const strip = { by: 'strip', metal: 'Cu', concentration: { value: '900', unit: 'mg/L' } } as const;
    await p.reads(id, '0.8', '24', [strip]);
    p.show(`treatment/${id}`);
    await p.title(/C.07 to pH 9/);
    await p.follow('End it');
    await p.title(/End the treatment of C.07/);
    await user.click(screen.getByRole('radio', { name: /The end was reached/ }));
    expect(plain(screen.getByRole('status').textContent)).toMatch(/The last pH read is 0.8, the aim was 9.0/);
    await user.click(screen.getByRole('radio', { name: /Stopped before the end/ }));
    await tap('End it');
    expect(p.state.value.treatments.get(id)?.ended).toBeNull();
    await type('Why, or what else to know', 'out of lime');
    await tap('End it');
    await waitFor(() => expect(p.state.value.treatments.get(id)?.ended?.body.outcome).toBe('stopped'));

    p.show();
    await p.title(/C.07: treatment ended/);
    expect(screen.getByText('out of lime')).toBeTruthy();
    expect(screen.getByText('Measured in the clear liquid: copper.')).toBeTruthy();
    expect(screen.getByText(/Nitrate is still in it. Nothing here is fit for a drain/)).toBeTruthy();
    const log = screen.getByRole('link', { name: /Log filtrate and sludge/ });
    expect(log.getAttribute('href')).toBe(`#/batches/${p.batch}/log`);
  });

  test('begins with what was chosen on the pages of the plan', async () => {
    const p = await runState();
    p.drafts.set(
      `treatment-${p.barren}`,
      JSON.stringify({ base: 'caustic-soda', target: { typed: '8.5', unit: '1' } }),
    );
    p.drafts.set(
      `treatment-plan-${p.barren}`,
      JSON.stringify({
        way: 'limestone-first',
        limestoneTo: { typed: '4.5', unit: '1' },
        rise: { typed: '', unit: 'K' },
        headspace: { typed: '', unit: 'L' },
      }),
    );
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    const value = (label: string) => screen.getByLabelText<HTMLInputElement>(label).value;
    expect(value('Stage 1: what goes in')).toBe('limestone');
    expect(value('Stage 1: to pH')).toBe('4.5');
    expect(value('Stage 2: what goes in')).toBe('caustic-soda');
    expect(value('Stage 2: to pH')).toBe('8.5');
  });
});

describe('what holds a treatment back', () => {
  test('is told all at once, each with the way to it', async () => {
    const p = await runState();
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    const rule = screen.getByRole('link', { name: /Nobody has said yet that treatment is allowed/ });
    expect(rule.getAttribute('href')).toBe('#/record/rules/treatment-allowed');
    expect(screen.getByRole('button', { name: /No clearance for this step/ })).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Begin the treatment/ })).toBeNull();
  });

  test('leads through the checklist, and from its clearance back to this container', async () => {
    const p = await runState();
    await p.allows();
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    await tap(/First: Neutralise with lime/);
    expect(p.shell.path.value).toEqual(['check', `container-${p.barren}`, 'neutralise-lime']);
    const cleared = await p.clears();
    p.waits(1);
    p.show(`clearance/${cleared.id}`);
    await p.title('Neutralisation may start.');
    p.waits(1);
    await tap('Begin neutralising');
    expect(p.shell.path.value).toEqual(['treatment', 'begin', p.barren]);
    expect(p.state.value.steps.size).toBe(2);
    p.show();
    await p.title(/Begin treating/);
    await type('To pH', '9');
    await tap(/Begin the treatment/);
    await waitFor(() => expect(p.state.value.treatments.size).toBe(1));
    p.show(`clearance/${cleared.id}`);
    expect((await screen.findByRole('link', { name: /To the treatment/ })).getAttribute('href')).toMatch(
      /^#\/treatment\/0/,
    );
  });

  test('is of the container and not of the batch, from whose steps its list is reached', async () => {
    const p = await runState();
    const list = async () => {
      p.show(`batches/${p.batch}/step`);
      return (await screen.findByRole('link', { name: /Neutralise with lime/ })).getAttribute('href');
    };
    expect(await list()).toBe('#/treatment/begin');
    await p.clears();
    expect(await list()).toBe('#/treatment/begin');
  });

  test('goes on from its clearance to the container that it was given for', async () => {
    const p = await runState();
    const cleared = await p.clears();
    p.waits(1);
    p.show(`clearance/${cleared.id}`);
    await p.title('Neutralisation may start.');
    p.waits(1);
    await tap('Begin neutralising');
    expect(p.shell.path.value).toEqual(['treatment', 'begin', p.barren]);
  });

  test('gives no list for no container, and leads to choosing one', async () => {
    const p = await runState();
    p.show('check/-/neutralise-lime');
    await p.title('This list is gone through for one container. Choose it first.');
    expect(screen.getByRole('link', { name: 'Choose the container' }).getAttribute('href')).toBe(
      '#/treatment/begin',
    );
  });

  test('keeps nobody from writing down what was begun all the same', async () => {
    const p = await runState();
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    await p.follow('Already begun? Write it down.');
    await p.title(/C.07: treatment begun already/);
    await type('To pH', '9');
    await tap('Write it down');
    await waitFor(() => expect(p.state.value.treatments.size).toBe(1));
    const [begun] = [...p.state.value.treatments.values()];
    expect(begun?.body).toMatchObject({ clearance: null, allowed: 'not-stated' });
    p.show();
    await p.title(/C.07 to pH 9/);
    expect(screen.getByText('Begun without clearance')).toBeTruthy();
    expect(screen.getByText('Begun without being allowed by the local rules')).toBeTruthy();
  });

  test('leads from the last door of the checklist to the same page', async () => {
    const p = await runState();
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    await user.click(screen.getByRole('button', { name: /No clearance for this step/ }));
    p.show();
    await tap('Already neutralised? Write it down.');
    await waitFor(() => expect(p.shell.path.value).toEqual(['treatment', 'begin', p.barren, 'already']));
  });

  test('says that ammonia waste takes no base, with no way to begin', async () => {
    const p = await runState();
    await p.allows();
    await p.clears();
    await p.logs(p.barren, null, 'ammonia-test-waste', {
      volume: { value: '0.05', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    expect(screen.getByText(/Ammonia-test waste is in it/)).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Begin the treatment/ })).toBeNull();
  });

  test('is told in words when the record refuses what the page had let through', async () => {
    const p = await runState();
    await p.allows();
    await p.clears();
    Object.assign(p.shell, {
      perform: async () => ({
        ok: false,
        refusal: { code: 'treatment-not-allowed', details: { because: 'not-allowed' } },
      }),
    });
    p.show(`treatment/begin/${p.barren}`);
    await p.title(/Begin treating/);
    await type('To pH', '9');
    await tap(/Begin the treatment/);
    expect(await screen.findByText(/Your local rules do not allow treatment here/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Already begun? Write it down.' })).toBeTruthy();
  });
});

describe('the pot while it is treated', () => {
  test('has its range close in with each reading, and its figure opens', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.reads(id, '0.3', '20');
    p.show(`treatment/${id}`);
    const wide = await row(/left to add to pH/);
    await p.dose(id, '110');
    p.waits(21);
    await p.reads(id, '0.8');
    await p.dose(id, '70');
    p.waits(21);
    await p.reads(id, '4.8');
    p.show(`treatment/${id}`);
    const [low = 0, high = 0] = [...(await row(/left to add to pH/)).matchAll(/\d+/g)].slice(-2).map(Number);
    const [was = 0, wasHigh = 0] = [...wide.matchAll(/\d+/g)].slice(-2).map(Number);
    expect(high - low).toBeLessThan(wasHigh - was);
    expect(high).toBeLessThan(wasHigh - 150);
    const read = screen.getByText('Read or expected').closest('table');
    expect(plain(read?.textContent)).toMatch(/0.*0\.3.*110.*0\.8.*180.*4\.8/);
    await p.follow(/left to add to pH/);
    await p.title(/Hydrated lime left to add to pH 9/);
    expect(screen.getByText('Put in so far in this stage')).toBeTruthy();
    p.show(`treatment/${id}/working/left/0`);
    // Once as a line of the working, once among what widens the range.
    expect(await screen.findAllByText('pH read at 180 g of base')).toHaveLength(2);
  });

  test('shows no figure of what is left where a reading contradicts the plan, but what to do', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.reads(id, '0.3');
    await p.dose(id, '300');
    p.waits(21);
    await p.reads(id, '1.0');
    p.show(`treatment/${id}`);
    expect(await screen.findByText('The readings contradict the plan')).toBeTruthy();
    expect(plain(screen.getByRole('status').textContent)).toMatch(/with 300 g in; by what is known/);
    expect(screen.getByText('Add nothing.')).toBeTruthy();
    expect(screen.getByText(/acid or metals were logged wrong/)).toBeTruthy();
    expect(screen.queryByText('Left to add')).toBeNull();
    expect(screen.queryByRole('heading', { name: 'Next portion' })).toBeNull();
    const reading = p.state.value.treatments.get(id)?.readings.at(-1);
    expect(screen.getByRole('link', { name: /Correct it if it was miswritten/ }).getAttribute('href')).toBe(
      `#/record/entry/${reading?.entryId}`,
    );
  });

  test('asks once more where the reading came before the wait was over, and learns nothing from it', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.dose(id, '110');
    p.waits(5);
    await p.reads(id, '0.4');
    p.show(`treatment/${id}`);
    expect(await beside('Wait')).toMatch(/15 min$/);
    p.waits(16);
    p.show();
    await screen.findByText(/The last reading came before the wait was over/);
    await p.reads(id, '0.8');
    p.show();
    expect(await beside('Next portion')).toMatch(/g$/);
  });

  test('says so when it warmed by more than one portion may', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.reads(id, '0.3', '20');
    await p.dose(id, '110');
    p.waits(21);
    await p.reads(id, '0.8', '30');
    p.show(`treatment/${id}`);
    await p.title(/C.07 to pH 9/);
    expect(screen.queryByText(/Add nothing. Stir and let it cool/)).toBeNull();
    await p.reads(id, '0.8', '31');
    p.show();
    await p.title(/C.07 to pH 9/);
    expect(plain(screen.getByText(/^Warmer by/).textContent)).toBe('Warmer by 11.0 K: more than 10 K');
    expect(screen.getByText(/Add nothing. Stir and let it cool/)).toBeTruthy();
  });

  test('takes no base where ammonia waste came to it, and offers no portion', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.logs(p.barren, null, 'ammonia-test-waste', {
      volume: { value: '0.05', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    p.show(`treatment/${id}`);
    await p.title(/C.07 to pH 9/);
    expect(screen.getByRole('alert').textContent).toMatch(/put no base on it.*Add nothing/);
    expect(screen.queryByRole('heading', { name: 'Next portion' })).toBeNull();
  });

  test('is another pot once waste was put in, and has no figure of what is left', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.dose(id, '110');
    p.waits(21);
    await p.logs(p.barren, null, 'wash-water', {
      volume: { value: '0.50', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    p.show(`treatment/${id}`);
    expect(await screen.findByText(/Waste was put in or taken out since the first portion/)).toBeTruthy();
    expect(screen.queryByText('Left to add')).toBeNull();
  });

  test('is led by the pH alone where nobody knows the acid, and says why', async () => {
    const p = await runState();
    const { body } = await p.does({
      do: 'log-treatment-happened',
      containerId: p.wash,
      stages: [{ agent: 'hydrated-lime', targetPh: { value: '9', unit: '1' } }],
      targetPh: { value: '9', unit: '1' },
      clearance: null,
    });
    p.show(`treatment/${body.kind === 'treatment-begun' ? body.treatmentId : ''}`);
    expect(await screen.findByText('What is left to add is not worked out')).toBeTruthy();
    expect(screen.getByText(/the free acid is not determined/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Log dose' })).toBeTruthy();
  });

  test('is written down as it was, also against the plan', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.dose(id, '110');
    p.waits(2);
    p.show(`treatment/${id}/dose`);
    await p.title(/Into C.07/);
    expect(screen.getByText('The wait after the last portion is not over.')).toBeTruthy();
    await type('Weighed, as sold', '2');
    await user.selectOptions(screen.getByLabelText('Weighed, as sold, unit'), 'lb');
    expect(plain((await screen.findByText(/More than the plan/)).textContent)).toMatch(/\d+ g/);
    await tap('It is in');
    await waitFor(() =>
      expect(p.state.value.treatments.get(id)?.doses.at(-1)?.body.mass).toEqual({ value: '2', unit: 'lb' }),
    );
  });

  test('keeps a half-filled reading and dose over a reload', async () => {
    const p = await runState();
    const id = await p.begun();
    p.show(`treatment/${id}/reading`);
    await p.title(/Reading in/);
    await type('pH', '3.1');
    await user.click(screen.getByRole('radio', { name: 'pH meter' }));
    p.show(`treatment/${id}/dose`);
    await p.title(/Into/);
    await type('Weighed, as sold', '42,5');
    p.show();
    await p.title(/Into/);
    expect(screen.getByLabelText<HTMLInputElement>('Weighed, as sold').value).toBe('42,5');
    p.show(`treatment/${id}/reading`);
    await p.title(/Reading in/);
    expect(screen.getByLabelText<HTMLInputElement>('pH').value).toBe('3.1');
    expect(screen.getByRole<HTMLInputElement>('radio', { name: 'pH meter' }).checked).toBe(true);
    expect(screen.getByText('You had begun this.')).toBeTruthy();
  });

  test('offers the instrument of the last reading first, and chooses none', async () => {
    const p = await runState();
    const id = await p.begun();
    const offered = () => screen.getAllByRole('radio').map((one) => plain(one.closest('label')?.textContent));
    p.show(`treatment/${id}/reading`);
    await p.title(/Reading in/);
    expect(offered()).toEqual(['pH paper', 'pH meter']);
    await p.reads(id, '1.2');
    p.show();
    await p.title(/Reading in/);
    expect(offered()).toEqual(['pH meter', 'pH paper']);
    expect(screen.queryAllByRole('radio', { checked: true })).toEqual([]);
  });

  test('says so when the end of the plan was read', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.dose(id, '390');
    p.waits(30);
    await p.reads(id, '9.1');
    p.show(`treatment/${id}`);
    expect(await screen.findByRole('heading', { level: 2, name: 'pH 9.1 read' })).toBeTruthy();
  });
});

describe('a treatment elsewhere', () => {
  test('stands on Today with the next look, and on its container with a door', async () => {
    const p = await runState();
    const id = await p.begun();
    await p.reads(id, '0.3');
    await p.dose(id, '110');
    p.waits(4);
    p.show('today');
    const running = screen.getByText('C‑07: treatment running').closest('a');
    expect(plain(running?.textContent)).toMatch(/Next look \d\d:\d\d\..*16 min$/);
    expect(running?.getAttribute('href')).toBe(`#/treatment/${id}`);
    p.waits(17);
    p.show();
    expect(plain(screen.getByText('C‑07: treatment running').closest('a')?.textContent)).toMatch(
      /pH to be read since \d\d:\d\d/,
    );
    p.show(`containers/${p.barren}`);
    const door = screen.getByText('Treatment running, hydrated lime').closest('a');
    expect(door?.getAttribute('href')).toBe(`#/treatment/${id}`);
    await p.does({ do: 'end-treatment', treatmentId: id, outcome: 'reached' });
    p.show();
    expect(screen.queryByText('Treatment running, hydrated lime')).toBeNull();
    expect(
      screen
        .getByText(/^Treatment ended, /)
        .closest('a')
        ?.getAttribute('href'),
    ).toBe(`#/treatment/${id}`);
  });
});

test('one that ended far below its aim is not called done on Today, on its container, on its own page', async () => {
  const p = await runState();
  const id = await p.begun('10.2');
  await p.dose(id, '110');
  await p.reads(id, '2.0');
  await p.does({ do: 'end-treatment', treatmentId: id, outcome: 'reached' });
  p.show('today');
  const flag = screen.getByText('C‑07: ended at pH 2.0, aim 10.2').closest('a');
  expect(flag?.getAttribute('href')).toBe(`#/treatment/${id}`);
  p.show(`containers/${p.barren}`);
  expect(screen.getByText('ended at pH 2.0, aim 10.2: not neutralised by what was read')).toBeTruthy();
  p.show(`treatment/${id}`);
  await screen.findByText('Ended at pH 2.0, aim 10.2: not neutralised by what was read');
  const ways = screen.getAllByRole('link').map((link) => link.textContent ?? '');
  const at = (name: string) => ways.findIndex((way) => way.startsWith(name));
  expect(at('Begin another treatment')).toBeGreaterThan(-1);
  expect(at('Begin another treatment')).toBeLessThan(at('Filter the sludge'));
  await p.reads(id, '9.8');
  p.show('today');
  expect(screen.queryByText(/not neutralised|ended at pH/i)).toBeNull();
});

test('a container has one part for its treatment, with every way to it', async () => {
  const p = await runState();
  p.show(`containers/${p.barren}`);
  const part = screen.getByRole('heading', { level: 2, name: 'Treatment' }).closest('section');
  const ways = within(part as HTMLElement)
    .getAllByRole('link')
    .map((link) => link.getAttribute('href')?.replace(p.barren, 'C'));
  expect(ways).toEqual([
    '#/containers/C/treatment',
    '#/treatment/begin/C',
    '#/containers/C/bench-test',
    '#/containers/C/iron',
    '#/containers/C/as-it-is-or-treated',
  ]);
  expect(screen.getAllByText('Plan a treatment')).toHaveLength(1);
});

test('a bench test that was kept tells on the container and its treatment page what nothing else tells', async () => {
  const p = await runState();
  await p.does({
    do: 'log-bench-test',
    containerId: p.wash,
    sampleVolume: { value: '100', unit: 'mL' },
    agent: 'hydrated-lime',
    mass: { value: '1.20', unit: 'g' },
    endPh: { value: '9.0', unit: '1' },
    instrument: 'meter',
  });
  p.show(`containers/${p.wash}`);
  const needed = await screen.findByText('Hydrated lime, by the bench test');
  expect(plain(needed.closest('a')?.textContent)).toMatch(/\d+ g/);
  const row = screen.getByText(/brought 100.mL to pH 9.0/).closest('a');
  await waitFor(() => expect(row?.getAttribute('href')).toMatch(/bench-test/));
  p.show(`containers/${p.wash}/treatment`);
  await screen.findByText('Hydrated lime, by the bench test');
  expect(screen.queryByText(/A bench test tells what it takes/)).toBeNull();
  p.show(row?.getAttribute('href')?.replace('#/', ''));
  expect(await screen.findByText('What stands in it')).toBeTruthy();
});

test('a treatment stands on the batch whose waste is in it, and on no other', async () => {
  const p = await runState();
  const id = await p.begun();
  p.show(`batches/${p.batch}`);
  const door = () => screen.queryByText('Treatment of C‑07')?.closest('a');
  expect(door()?.getAttribute('href')).toBe(`#/treatment/${id}`);
  await p.dose(id, '110');
  await p.does({ do: 'end-treatment', treatmentId: id, outcome: 'stopped', reason: 'rain' });
  p.show();
  expect(plain(door()?.textContent)).toMatch(/stopped before the end/);
  const { body } = await p.does({
    do: 'open-batch',
    feed: { capacitors: 'unknown', era: 'unknown', mass: { value: '1', unit: 'g' } },
  });
  p.show(`batches/${body.kind === 'batch-opened' ? body.batchId : ''}`);
  expect(screen.getByText('No step yet.')).toBeTruthy();
  expect(door()).toBeUndefined();
});

describe('a bench test', () => {
  test('is scaled up beside the model, and kept', async () => {
    const p = await runState();
    p.show(`containers/${p.barren}/bench-test`);
    await p.title(/Bench test of C.07/);
    await type('Sample taken', '100');
    await type('Base used, as sold', '5.8');
    await type('pH at the end', '9');
    await tap('Keep the bench test');
    expect(p.state.value.containers.get(p.barren)?.benchTests).toHaveLength(0);
    await user.click(screen.getByRole('radio', { name: 'pH paper' }));
    // 5.8 g × 6.70 L ÷ 0.100 L = 389 g; the model says about 387 g.
    expect(plain((await screen.findByText('By this bench test')).closest('li')?.textContent)).toMatch(
      /(380|390|389)/,
    );
    expect(plain((await screen.findByText('By the model')).closest('li')?.textContent)).toMatch(/g/);
    expect(screen.queryByText(/do not meet/)).toBeNull();
    await tap('Keep the bench test');
    await waitFor(() => expect(p.state.value.containers.get(p.barren)?.benchTests).toHaveLength(1));
  });

  test('that does not meet the model says so', async () => {
    const p = await runState();
    p.show(`containers/${p.barren}/bench-test`);
    await p.title(/Bench test of C.07/);
    await type('Sample taken', '100');
    await type('Base used, as sold', '12');
    await type('pH at the end', '9');
    await user.click(screen.getByRole('radio', { name: 'pH meter' }));
    expect(await screen.findByText(/The two do not meet within their ranges/)).toBeTruthy();
  });

  test('no longer holds once something was added', async () => {
    const p = await runState();
    await p.does({
      do: 'log-bench-test',
      containerId: p.barren,
      sampleVolume: { value: '100', unit: 'mL' },
      agent: 'hydrated-lime',
      mass: { value: '5.8', unit: 'g' },
      endPh: { value: '9', unit: '1' },
      instrument: 'paper',
    });
    p.show(`containers/${p.barren}/bench-test`);
    await p.title(/Bench test of/);
    expect(await row(/5.8\u2009?.*g hydrated lime brought/)).not.toMatch(/no longer holds/);
    const id = await p.begun();
    p.waits(1);
    await p.dose(id, '10');
    p.show();
    await p.title(/Bench test of/);
    expect(await row(/hydrated lime brought/)).toMatch(/no longer holds/);
  });
});
