import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { ContainerScreen } from '../../../src/screens/containers/container';
import { ShellProvider } from '../../../src/screens/shell';
import { stagesPlanned } from '../../../src/screens/treatment/run-stages';
import { TreatmentScreen } from '../../../src/screens/treatment/treatment';
import { WhichPhScreen } from '../../../src/screens/treatment/which-ph';
import { TreatmentWorking } from '../../../src/screens/treatment/working';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';

/** Each page asks the equilibrium model some hundred times, which takes its time on a busy machine. */
vi.setConfig({ testTimeout: 30_000 });

type Made = Awaited<ReturnType<typeof disposalState>>;
type Screen = typeof TreatmentScreen;

const show = ({ shell, barren }: Made, Shown: Screen = TreatmentScreen, at = {}) =>
  render(
    <ShellProvider value={shell}>
      <Shown at={{ id: barren, ...at }} />
    </ShellProvider>,
  );
/** A choice of base, once its amount stands there. */
const base = async (name: string, amount: RegExp) => {
  const choice = await screen.findByRole('radio', { name: new RegExp(`^${name}`) }, { timeout: 10_000 });
  await expect.poll(() => choice.closest('label')?.textContent, { timeout: 10_000 }).toMatch(amount);
  return choice;
};
const allows = (memory: Made, value: 'yes' | 'no') =>
  memory.does({
    do: 'state-local-rule',
    stated: { rule: 'treatment-allowed', value },
    saidBy: 'County office',
    saidOn: '2026-05-01',
  });

describe('choosing a base and a pH for a container', () => {
  test('is reached from the container', async () => {
    const memory = await disposalState();
    show(memory, ContainerScreen);
    expect(screen.getByRole('link', { name: /Plan a treatment/ }).getAttribute('href')).toBe(
      `#/containers/${memory.barren}/treatment`,
    );
  });

  test('every base stands there: low, high and likely, or the pH at which it ends', async () => {
    show(await disposalState());
    // By hand (3.886 + 3.711 + 1.415) mol × 37.046 g/mol ÷ 95 % × 1.10 = 387 g.
    await base('Hydrated lime', /350 to 440\u202fg, likely 390\u202fg/);
    await base('Limestone', /ends at pH 5\.\d/);
    await base('Sodium bicarbonate', /ends at pH 7\.\d/);
    await base('Caustic soda', /to \d+\u202fg, likely \d+\u202fg/);
    expect(screen.getAllByRole('radio')).toHaveLength(7);
    expect(screen.getByRole('heading', { level: 1, name: /C.07 with hydrated lime/ })).toBeDefined();
    expect(screen.getByRole('figure', { name: '350 to 440 g; 390 g' })).toBeDefined();
  });

  test('a base that ends too low is drawn, and says so instead of an amount', async () => {
    show(await disposalState());
    await userEvent.click(await base('Limestone', /ends at/));
    await screen.findByText(/^Limestone ends at pH 5\.\d, whatever goes in/);
    expect(
      screen.getByText(/^Stirred in air for long it ends at pH 7\.\d\. Choose another base/),
    ).toBeDefined();
    expect(screen.getByRole('img', { name: /pH against limestone/ })).toBeDefined();
    expect(screen.queryByText('What comes of it')).toBeNull();
  });

  test('a lower pH, typed with a comma, lets more bases reach it, and stays when the person comes back', async () => {
    const memory = await disposalState();
    show(memory);
    await base('Magnesium hydroxide', /ends at pH 8\.\d/);
    await userEvent.type(screen.getByLabelText('pH wanted'), '8,5');
    await base('Magnesium hydroxide', /likely \d+\u202fg/);
    await screen.findByText(/pH 8\.5\. Still dissolved/);
    cleanup();
    show(memory);
    await base('Magnesium hydroxide', /likely \d+\u202fg/);
    expect(screen.getByLabelText('pH wanted')).toHaveProperty('value', '8,5');
  });

  test('a pH that no base brings is a fault at its field, and the pH proposed counts', async () => {
    show(await disposalState());
    await base('Hydrated lime', /likely 390/);
    await userEvent.type(screen.getByLabelText('pH wanted'), '13');
    await userEvent.tab();
    expect(await screen.findByText('Between 2 and 12.5.')).toBeDefined();
    await base('Hydrated lime', /likely 390/);
  });

  test('what comes of it stands in rows that open their working', async () => {
    const memory = await disposalState();
    show(memory);
    await screen.findByText('What comes of it', undefined, { timeout: 10_000 });
    for (const name of [/Heat it gives/, /Warms it by/, /Sludge, dry/, /^Filtrate/, /^Dissolved salt/])
      expect(screen.getByRole('link', { name })).toBeDefined();
    // Their amounts are those of the whole pot.
    for (const name of [/^Nitrate left, filtrate and cake/, /^Calcium left, filtrate and cake/])
      expect(screen.getByRole('link', { name })).toBeDefined();
    const href = screen.getByRole('link', { name: /Sludge, dry/ }).getAttribute('href');
    expect(href).toBe(`#/containers/${memory.barren}/treatment/working/dry`);
    cleanup();
    show(memory, TreatmentWorking, { key: 'dry' });
    expect(screen.getByRole('heading', { level: 1, name: /Sludge, dry/ })).toBeDefined();
    expect(screen.getAllByText(/Cu\(OH\)2/).length).toBeGreaterThan(0);
  });

  test('the read-out tells pH and what may still be dissolved in powers of ten', async () => {
    show(await disposalState());
    const slider = await screen.findByRole('slider', { name: 'Read the curve at' }, { timeout: 10_000 });
    expect(slider.getAttribute('aria-valuetext')).toMatch(
      /387\u202fg: pH 9\.\d\. Still dissolved: Cu, Ni up to 1\u202fmg\/L/,
    );
    fireEvent.input(slider, { target: { value: '0' } });
    expect(slider.getAttribute('aria-valuetext')).toMatch(/pH 0\.\d\. Still dissolved: Cu, Ni nearly all/);
    fireEvent.input(slider, { target: { value: '250' } });
    expect(slider.getAttribute('aria-valuetext')).toMatch(
      /pH [45]\.\d\. Still dissolved: Cu in part; Ni nearly all/,
    );
  });
});

describe('what the local rules let be done', () => {
  test('nothing said is planning only, and so is no: the treatment cannot be begun from here', async () => {
    const memory = await disposalState();
    show(memory);
    expect(screen.getByText('For planning only')).toBeDefined();
    expect(screen.queryByRole('button', { name: /Begin the treatment/ })).toBeNull();
    cleanup();
    await allows(memory, 'no');
    show(memory);
    expect(screen.getByText('Your local rules say: no treatment here.')).toBeDefined();
    expect(screen.queryByRole('button', { name: /Begin the treatment/ })).toBeNull();
  });

  test('allowed: it is said by whom, and it can be begun', async () => {
    const memory = await disposalState();
    await allows(memory, 'yes');
    show(memory);
    expect(screen.getByText(/Treatment allowed: County office/)).toBeDefined();
    await base('Hydrated lime', /likely 390/);
    await userEvent.click(screen.getByRole('button', { name: /Begin the treatment/ }));
    expect(memory.path.value.join('/')).toBe(`treatment/begin/${memory.barren}`);
  });

  test('what is begun has the base and the pH that stood there, also where it was only proposed', async () => {
    const memory = await disposalState();
    await allows(memory, 'yes');
    show(memory);
    await userEvent.click(await base('Caustic soda', /likely/));
    await userEvent.click(screen.getByRole('button', { name: /Begin the treatment/ }));
    const [stage, ...others] = stagesPlanned(memory.shell, memory.barren) ?? [];
    expect(stage?.agent).toBe('caustic-soda');
    expect(stage?.target.typed).toMatch(/^9\.\d$/);
    expect(others).toEqual([]);
  });
});

describe('a container of which not enough is known', () => {
  test('without its free acid no curve is drawn, and a bench test is the way on', async () => {
    const memory = await disposalState();
    show(memory, TreatmentScreen, { id: memory.wash });
    expect(screen.getByText('Not worked out: the free acid is not determined.')).toBeDefined();
    expect(screen.getByText(/A bench test tells what it takes/)).toBeDefined();
    expect(screen.getByRole('link', { name: /Bench test/ })).toBeDefined();
    expect(screen.queryByRole('radio')).toBeNull();
  });

  test('with ammonia waste in it no base is offered at all', async () => {
    const memory = await disposalState();
    const ammonia = { volume: { value: '0.05', unit: 'L' }, findings: [], freeAcid: [] } as const;
    await memory.logs(memory.barren, null, 'ammonia-test-waste', { ...ammonia, findings: [], freeAcid: [] });
    show(memory);
    expect(screen.getByText(/Never lime or caustic here/)).toBeDefined();
    expect(screen.queryByRole('radio')).toBeNull();
  });

  test('where one liquor does not tell, all amounts are at least', async () => {
    const memory = await disposalState();
    await memory.logs(memory.barren, null, 'wash-water', {
      volume: { value: '1.00', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    show(memory);
    await base('Hydrated lime', /at least \d+\u202fg/);
    expect(await screen.findByText('At least. More may be needed.')).toBeDefined();
    expect(screen.getByText('What comes of it, at least')).toBeDefined();
    expect(screen.queryByRole('figure', { name: /390 g/ })).toBeNull();
  });

  test('a bench test with the base stands beside what the model says, and says where they do not meet', async () => {
    const memory = await disposalState();
    const bench = (mass: string) =>
      memory.does({
        do: 'log-bench-test',
        containerId: memory.barren,
        sampleVolume: { value: '100', unit: 'mL' },
        agent: 'hydrated-lime',
        mass: { value: mass, unit: 'g' },
        endPh: { value: '9.5', unit: '1' },
        instrument: 'meter',
      });
    await bench('5.80');
    show(memory);
    // 5.80 g for 0.100 L of 6.70 L: 389 g.
    const row = await screen.findByRole('link', { name: /^By the bench test/ }, { timeout: 10_000 });
    expect(row.textContent).toMatch(/to pH 9\.5, from a sample of 100\u202fmL/);
    expect(row.textContent).toMatch(/3\d\d/);
    expect(screen.queryByText('The two do not meet within their ranges.')).toBeNull();
    cleanup();
    await bench('9.00');
    show(memory);
    await screen.findByText('The two do not meet within their ranges.', undefined, { timeout: 10_000 });
  });

  test('silver, lead, palladium and tin each say what base alone does not do', async () => {
    const memory = await disposalState();
    const metals = ['Ag', 'Pb', 'Pd', 'Sn'] as const;
    await memory.logs(memory.barren, null, 'barren-liquor', {
      ...barrenLiquor,
      volume: { value: '1.00', unit: 'L' },
      findings: metals.map((metal) => ({
        by: 'assay',
        metal,
        concentration: { value: '0.5', unit: 'g/L' },
      })),
    });
    show(memory);
    await screen.findByText('What comes of it, at least', undefined, { timeout: 10_000 });
    for (const said of [
      /^Silver: at pH \d+\.\d base alone leaves .* Chloride first/,
      /^Lead: at pH \d+\.\d base alone leaves .* Carbonate brings it down further/,
      /not predicted above pH 4/,
      /^Tin: not predicted/,
    ])
      expect(screen.getByText(said)).toBeDefined();
  });

  test('a liquor that is too strong for the model: the curve is rough, which is said once and not of each metal', async () => {
    const memory = await disposalState();
    const can = await memory.opens('C-21', '20');
    const assay = (metal: 'Cu' | 'Pb' | 'Ba', value: string) =>
      ({ by: 'assay', metal, concentration: { value, unit: 'g/L' } }) as const;
    await memory.logs(can, null, 'barren-liquor', {
      ...barrenLiquor,
      findings: [assay('Cu', '150'), assay('Pb', '20'), assay('Ba', '2')],
      freeAcid: [{ by: 'titration', result: { value: '3.0', unit: 'mol/L' } }],
    });
    show(memory, TreatmentScreen, { id: can });
    await screen.findByText(
      /^The liquor is stronger than the model reaches: the curve is rough\.$/,
      undefined,
      {
        timeout: 10_000,
      },
    );
    // In the words of the drawing, and on its line.
    expect(screen.getByText(/the curve is rough\. The pH rises/)).toBeDefined();
    expect(screen.getAllByText('rough').length).toBeGreaterThan(0);
    const slider = screen.getByRole('slider', { name: 'Read the curve at' });
    expect(slider.getAttribute('aria-valuetext')).toMatch(/pH 9/);
    expect(slider.getAttribute('aria-valuetext')).not.toMatch(/not predicted/);
    cleanup();
    show(memory);
    await screen.findByText('What comes of it', undefined, { timeout: 10_000 });
    expect(screen.queryByText(/stronger than the model/)).toBeNull();
  });
});

describe('which pH', () => {
  const best = () => screen.findByText(/^Least stays at pH/, undefined, { timeout: 10_000 });

  test('tells the pH of least, each metal against its limit, and whose limits they are', async () => {
    const memory = await disposalState();
    show(memory, WhichPhScreen);
    expect((await best()).textContent).toMatch(/pH 9\.\d/);
    expect(screen.getByText(/Reference only, not your limit/)).toBeDefined();
    expect(screen.getByRole('img', { name: /What stays dissolved against pH/ })).toBeDefined();
    const [copper] = screen.getAllByRole('link', { name: /^Copper/ });
    expect(copper?.textContent).toMatch(/at most 0\.5 of the limit, 2\.07\u202fmg\/L/);
    expect(copper?.textContent).toContain('0.1 to 1');
    expect(copper?.getAttribute('href')).toBe(`#/containers/${memory.barren}/treatment/working/Cu-most`);
    expect(screen.getByText(/Nothing here is fit for a drain/)).toBeDefined();
  });

  test("holds against the reference that is chosen, marked as nobody's limit here, on the page of the treatment too", async () => {
    const memory = await disposalState();
    show(memory, WhichPhScreen);
    const choice = await screen.findByLabelText('Held against meanwhile', undefined, { timeout: 10_000 });
    await userEvent.selectOptions(choice, 'Treatment of liquid waste, upper end of the level');
    const held = /^Held against: Treatment of liquid waste.*Reference only, not your limit\.$/;
    expect(await screen.findByText(held, undefined, { timeout: 10_000 })).toBeDefined();
    expect(
      screen.getByText(/^Levels that others are held to.*2018\/1147.*: (read|from memory)/),
    ).toBeDefined();
    // Decision (EU) 2018/1147: copper 0.5 mg/L.
    const [copper] = screen.getAllByRole('link', { name: /^Copper/ });
    expect(copper?.textContent).toMatch(/the limit, 0\.5\u202fmg\/L/);
    cleanup();
    show(memory, WhichPhScreen);
    expect(await screen.findByText(held, undefined, { timeout: 10_000 })).toBeDefined();
  });

  test('holds against the local rules where they name metals, and says who said so', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'discharge-limits', value: { Cu: { value: '0.05', unit: 'mg/L' } } },
      saidBy: 'County office',
      saidOn: '2026-05-01',
    });
    show(memory, WhichPhScreen);
    await screen.findByText('Held against your limits', undefined, { timeout: 10_000 });
    expect(screen.getByText(/^Said by County office on 2026-05-01/)).toBeDefined();
    expect(screen.queryByText(/Reference only/)).toBeNull();
    expect(screen.getByText(/to 20 times the limit, 0\.05\smg/)).toBeDefined();
    expect(screen.getByText(/^Nickel has no limit entered and is not counted: at pH /)).toBeDefined();
  });

  test('names a metal without a limit beside the window, and how much of it dissolves again there', async () => {
    const memory = await disposalState();
    const aluminium = { by: 'assay', metal: 'Al', concentration: { value: '12', unit: 'g/L' } } as const;
    const can = await memory.opens('C-21', '20');
    await memory.logs(can, null, 'barren-liquor', {
      ...barrenLiquor,
      findings: [...barrenLiquor.findings, aluminium],
    });
    show(memory, WhichPhScreen, { id: can });
    const pH = /pH (\d+\.\d)/.exec((await best()).textContent ?? '')?.[1];
    const says = (text: string) => screen.getByText(new RegExp(`^${text}$`));
    says(`Aluminium has no limit entered and is not counted: at pH ${pH} up to 10\\sg/L stays\\.`);
    says(`Aluminium dissolves again above pH 7\\.\\d: at pH ${pH} up to 10\\sg/L\\.`);
    expect(screen.queryByText(/^Aluminium comes back/)).toBeNull();
    // Nickel does so beyond the best alone.
    expect(screen.getByText(/^Nickel comes back from pH 11\.\d on: do not go beyond\.$/)).toBeDefined();
    expect(screen.queryByText(/^No limit stands here/)).toBeNull();
  });

  test('says of silver once how much stays, as its row does', async () => {
    const memory = await disposalState();
    const silver = { by: 'assay', metal: 'Ag', concentration: { value: '45', unit: 'mg/L' } } as const;
    const can = await memory.opens('C-21', '20');
    await memory.logs(can, null, 'barren-liquor', {
      ...barrenLiquor,
      findings: [...barrenLiquor.findings, silver],
    });
    show(memory, WhichPhScreen, { id: can });
    await best();
    const [row] = screen.getAllByRole('link', { name: /^Silver/ });
    expect(row?.textContent).toContain('10 to 100');
    const sentences = screen.getAllByText(/^Silver .*\.$/).map(({ textContent }) => textContent);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(
      /^Silver comes under its limit at no pH with hydrated lime: at pH \d+\.\d 10 to 100\smg\/L stay\. Chloride first/,
    );
    expect(screen.getAllByText(/Chloride first/)).toHaveLength(1);
    cleanup();
    show(memory, TreatmentScreen, { id: can });
    await screen.findByText(/^Silver: at pH \d+\.\d base alone leaves 10 to 100\smg\/L\./, undefined, {
      timeout: 10_000,
    });
  });

  test('names what a base that ends too low never brings under its limit', async () => {
    const memory = await disposalState();
    show(memory, WhichPhScreen);
    await best();
    await userEvent.selectOptions(screen.getByLabelText('Base'), 'sodium-bicarbonate');
    await screen.findByText(/^Nickel comes under its limit at no pH with sodium bicarbonate/);
  });

  test('hands its pH to the page of the treatment', async () => {
    const memory = await disposalState();
    show(memory, WhichPhScreen);
    await best();
    await userEvent.click(screen.getByRole('button', { name: /Aim at pH 9/ }));
    expect(memory.path.value.join('/')).toBe(`containers/${memory.barren}/treatment`);
    cleanup();
    show(memory);
    const field = await screen.findByLabelText('pH wanted', undefined, { timeout: 10_000 });
    expect(field).toHaveProperty('value', expect.stringMatching(/^9\.\d$/));
  });

  test('the figures of the plot stand in a table, too', async () => {
    show(await disposalState(), WhichPhScreen);
    await best();
    const [table] = screen.getAllByRole('table', { hidden: true });
    expect(within(table as HTMLElement).getAllByRole('row', { hidden: true }).length).toBeGreaterThan(5);
  });
});
