import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { describe, expect, test } from 'vitest';
import { ContainerList } from '../../../src/screens/containers/list';
import { ShellProvider } from '../../../src/screens/shell';
import { TreatmentScreen } from '../../../src/screens/treatment/treatment';
import { TwoWaysOfAll, TwoWaysScreen } from '../../../src/screens/two-ways/two-ways';
import { TwoWaysWorking } from '../../../src/screens/two-ways/working';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';

type Made = Awaited<ReturnType<typeof disposalState>>;

const show = async ({ shell, barren }: Made, id = barren) => {
  render(
    <ShellProvider value={shell}>
      <TwoWaysScreen at={{ id }} />
    </ShellProvider>,
  );
  await screen.findByRole('list', { name: 'To hand over' });
};
const link = (name: RegExp) => screen.getByRole('link', { name });
/** The line of the comparison that begins with these words. */
const line = (name: string | RegExp) => {
  const found = screen
    .getAllByRole('listitem')
    .find((item) => within(item).queryByText(name, { exact: true }));
  if (!found) throw new Error(`no line ${name}`);
  return found;
};
const allows = ({ does }: Made, value: 'yes' | 'no') =>
  does({
    do: 'state-local-rule',
    stated: { rule: 'treatment-allowed', value },
    saidBy: 'County office',
    saidOn: '2026-05-02',
  });
const priced = ({ does }: Made, what: 'hydrated-lime' | 'collection-visit', value: string, unit = 'EUR') =>
  does({ do: 'state-price', what, amount: { value, unit } });

/** Words by which a page would take a side. */
const takesSides =
  /recommend|\bshould\b|\bbetter\b|cheap|\bsaves?\b|\bworth\b|advise|prefer|\bsafe\b|compliant/i;

describe('hand over as it is, or treat first', () => {
  test('is reached from the treatment of a container and from the list of all', async () => {
    const { shell, barren } = await disposalState();
    render(
      <ShellProvider value={shell}>
        <TreatmentScreen at={{ id: barren }} />
      </ShellProvider>,
    );
    expect(link(/Hand over as it is/).getAttribute('href')).toBe(
      `#/containers/${barren}/as-it-is-or-treated`,
    );
    cleanup();
    render(
      <ShellProvider value={shell}>
        <ContainerList />
      </ShellProvider>,
    );
    expect(link(/Hand over as it is/).getAttribute('href')).toBe('#/containers/as-it-is-or-treated');
  });

  test('shows both ways side by side, each figure named by its column and with its range', async () => {
    await show(await disposalState());
    expect(link(/^As it is Liquid: 6.70.L.?6.3 to 7.1/)).toBeDefined();
    expect(link(/^Treated first, for planning only Sludge, wet: 1.9 kg/)).toBeDefined();
    expect(within(line('Sludge, wet')).getByText('none')).toBeDefined();
    expect(link(/Base to buy, as sold: 390.g.?350 to 440/)).toBeDefined();
    expect(within(line('Hours it stands and drains')).getByText('common practice, no source')).toBeDefined();
  });

  test('opens the working of every figure', async () => {
    const memory = await disposalState();
    await show(memory);
    const links = screen.getAllByRole('link').map((one) => one.getAttribute('href') ?? '');
    const keys = links.flatMap((href) => href.split('/as-it-is-or-treated/')[1] ?? []);
    expect(keys.length).toBeGreaterThan(10);
    for (const key of new Set(keys)) {
      cleanup();
      render(
        <ShellProvider value={memory.shell}>
          <TwoWaysWorking at={{ id: memory.barren, key }} />
        </ShellProvider>,
      );
      expect(screen.queryByText(/cannot be worked out any more/), key).toBeNull();
    }
  });

  test.each([['not-stated'], ['no']] as const)(
    'takes no side where the local rules are %s, and says that it is for planning only',
    async (rule) => {
      const memory = await disposalState();
      if (rule === 'no') await allows(memory, 'no');
      await show(memory);
      expect(screen.getByText('For planning only')).toBeDefined();
      expect(screen.getAllByText('Treated first, for planning only').length).toBeGreaterThan(0);
      expect(document.body.textContent).not.toMatch(takesSides);
      expect(screen.queryByText(/Whom to ask/) !== null).toBe(rule === 'not-stated');
    },
  );

  test('takes no side where treatment is allowed either, and says who allowed it', async () => {
    const memory = await disposalState();
    await allows(memory, 'yes');
    await show(memory);
    expect(screen.getByText(/County office said so/)).toBeDefined();
    expect(screen.queryByText(/for planning only/i)).toBeNull();
    expect(document.body.textContent).not.toMatch(takesSides);
  });

  test('names whom to ask as the workshop has them', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'describe-workshop',
      name: 'Shed',
      address: 'Lane 1',
      emergencyNumber: '112',
      authority: { name: 'County office', contact: 'x' },
      collector: { name: 'Northern collection', contact: 'x' },
    });
    await show(memory);
    const ask = link(/Whom to ask/);
    expect(ask.textContent).toMatch(/County office and Northern collection/);
    expect(ask.getAttribute('href')).toBe('#/record/rules/treatment-allowed');
  });

  test('follows base, pH, solids and hours as they are typed', async () => {
    await show(await disposalState());
    await userEvent.type(screen.getByLabelText('Solids in the wet sludge'), '10');
    expect(link(/Sludge, wet: 2.9 kg/)).toBeDefined();
    await userEvent.type(screen.getByLabelText('Hours of yours at the pot'), '5.5');
    expect(link(/Hours at the pot: 5.5 h/)).toBeDefined();
    await userEvent.selectOptions(screen.getByLabelText('Base'), 'limestone');
    expect(await screen.findByText(/this base ends at pH 5.4/)).toBeDefined();
    expect(screen.getByRole('heading', { name: 'Why treating is not worked out' })).toBeDefined();
    expect(within(line('Sludge, wet')).getByText('not worked out')).toBeDefined();
    expect(link(/^As it is Mass in all: 7.2 kg/)).toBeDefined();
  });

  test('opens with the base and the pH that were chosen for the treatment', async () => {
    const memory = await disposalState();
    memory.drafts.set(
      `treatment-${memory.barren}`,
      JSON.stringify({ base: 'caustic-soda', target: { typed: '8.8', unit: '1' } }),
    );
    await show(memory);
    expect((screen.getByLabelText('Base') as HTMLSelectElement).value).toBe('caustic-soda');
    expect((screen.getByLabelText('pH at the end') as HTMLInputElement).value).toBe('8.8');
    expect(screen.getByText(/nitrate, now of sodium/)).toBeDefined();
  });

  test('asks for a pH between 2 and 12.5', async () => {
    await show(await disposalState());
    const field = screen.getByLabelText('pH at the end');
    await userEvent.clear(field);
    await userEvent.type(field, '13');
    fireEvent.blur(field);
    expect(await screen.findByText('Between 2 and 12.5.')).toBeDefined();
    expect(screen.queryByRole('list', { name: 'To hand over' })).toBeNull();
  });

  test('says what each still is, and that the filtrate is waste', async () => {
    await show(await disposalState());
    expect(screen.getByText(/acid, corrosive liquid with nitrates of copper and nickel/)).toBeDefined();
    expect(screen.getByText(/hydroxides of copper and nickel/)).toBeDefined();
    expect(
      screen.getByText(/nitrate, now of calcium.*waste until a named authority says otherwise/),
    ).toBeDefined();
  });

  test('shows the month both ways with who says what counts, and the same days on both sides', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'storage-days', value: { value: '180', unit: 'days' } },
      saidBy: 'County office',
      saidOn: '2026-05-02',
    });
    await show(memory);
    const arose = within(line('Adds to the month, counted as it arose')).getAllByRole('link');
    expect(arose.map((one) => one.textContent)).toEqual([
      expect.stringMatching(/7.2/),
      expect.stringMatching(/7.2/),
    ]);
    const handed = within(line('Adds to the month, counted as handed over')).getAllByRole('link');
    expect(handed[1]?.textContent).toMatch(/9.8/);
    expect(screen.getByText(/Your authority decides/)).toBeDefined();
    expect(screen.getAllByText(/not counted again/)[0]?.textContent).toMatch(
      /262.13.*predecessor.*read in the source/,
    );
    const days = within(line('Last day')).getAllByText(/Nov/);
    expect(days).toHaveLength(2);
    expect(screen.getByText(/does not start the days anew/)).toBeDefined();
  });
});

describe('money on that page', () => {
  test('says where no price is entered, and adds nothing up', async () => {
    await show(await disposalState());
    const collection = within(line('Collection of the liquid'));
    expect(collection.getAllByText('no price entered')).toHaveLength(2);
    expect(within(line('In all')).getAllByText(/^not added up: no price for/)).toHaveLength(2);
    expect(
      within(line('In all')).getByText(/for collection, a litre; collection, a kilogram; /),
    ).toBeDefined();
  });

  test('takes prices where they are used: each becomes an entry, and the sum follows', async () => {
    const memory = await disposalState();
    await show(memory);
    const types = (label: string, text: string) => userEvent.type(screen.getByLabelText(label), text);
    await types('Hydrated lime, a kilogram', '0,85');
    await types('Collection, a litre', '1.90');
    await types('Collection, a kilogram', '2.35');
    await types('Collection, a visit', '85');
    await types('Who or what says so', 'Offer of 3 May');
    await userEvent.click(screen.getByRole('button', { name: 'Keep the prices' }));
    expect(await screen.findByRole('link', { name: /^As it is In all: 97.7 EUR/ })).toBeDefined();
    expect(memory.state.value.prices.get('hydrated-lime')?.body).toMatchObject({
      amount: { value: '0.85', unit: 'EUR' },
      saidBy: 'Offer of 3 May',
    });
    const written = memory.state.value.log.length;
    await userEvent.click(screen.getByRole('button', { name: 'Keep the prices' }));
    expect(await screen.findByText('Nothing has changed.')).toBeDefined();
    expect(memory.state.value.log).toHaveLength(written);
  });

  test('takes a currency once for all that are still empty', async () => {
    const memory = await disposalState();
    await show(memory);
    await userEvent.selectOptions(screen.getByLabelText('Collection, a litre, unit'), 'SEK');
    const unit = screen.getByLabelText('Collection, a visit, unit') as HTMLSelectElement;
    expect(unit.value).toBe('SEK');
  });

  test('offers the currencies in use, and takes any other by its code', async () => {
    const memory = await disposalState();
    await priced(memory, 'collection-visit', '90', 'SEK');
    await show(memory);
    const unit = () => screen.getByLabelText('Collection, a litre, unit') as HTMLSelectElement;
    const codes = [...unit().options].map(({ value }) => value);
    expect(codes.slice(0, 2)).toEqual(['SEK', 'EUR']);
    expect(codes.at(-1)).toBe('another code');
    expect(codes).toHaveLength(23);
    await userEvent.selectOptions(unit(), 'another code');
    await userEvent.type(screen.getByLabelText('Currency, its three letters'), 'isk');
    expect(unit().value).toBe('ISK');
  });

  test('of two currencies is not added, and each stays in its own', async () => {
    const memory = await disposalState();
    await priced(memory, 'hydrated-lime', '0.85');
    await priced(memory, 'collection-visit', '90', 'USD');
    await memory.does({
      do: 'state-price',
      what: 'collection-per-kilogram',
      amount: { value: '2', unit: 'EUR' },
    });
    await show(memory);
    expect(within(line('In all')).getAllByText(/EUR and USD are not one currency/)).toHaveLength(2);
    expect(within(line('One visit of the collector')).getAllByText(/90/)).toHaveLength(2);
  });
});

describe('all liquid containers', () => {
  test('are compared together; those that cannot be are told of with the reason', async () => {
    const memory = await disposalState();
    const second = await memory.opens('C-11', '10');
    await memory.logs(second, null, 'barren-liquor', {
      ...barrenLiquor,
      volume: { value: '3.00', unit: 'L' },
    });
    render(
      <ShellProvider value={memory.shell}>
        <TwoWaysOfAll />
      </ShellProvider>,
    );
    expect(await screen.findByRole('link', { name: /^As it is Liquid: 9.7/ })).toBeDefined();
    expect(screen.getByText(/^2 of 3 containers with liquid/)).toBeDefined();
    expect(screen.getByText(/^Counted: C.07 and C.11/)).toBeDefined();
    expect(screen.getByRole('heading', { name: 'On neither side' })).toBeDefined();
    expect(link(/C.02/).textContent).toMatch(/free acid is not determined/);
    expect(screen.getByText('Storage days of the oldest run since')).toBeDefined();
  });
});
