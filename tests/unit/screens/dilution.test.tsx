import { screen, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { open, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

const fill = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label });
  await user.clear(field);
  if (text !== '') await user.type(field, text);
};
const rowOf = (title: string) => screen.queryByText(title)?.closest('li')?.textContent ?? '';
const hrefOf = (title: string) => screen.getByText(title).closest('a')?.getAttribute('href')?.slice(2) ?? '';

async function onThePage() {
  const memory = await workshopInMemory();
  const address = `batches/${memory.batch}/dilution`;
  open(memory.shell, address);
  return { ...memory, address };
}

async function recipe(stock: string, wanted: string, volume: string) {
  await fill('Acid as it comes', stock);
  await fill('Strength wanted', wanted);
  await fill('Volume wanted', volume);
}

describe('working out a dilution', () => {
  test('is two taps from the batch, through starting a step', async () => {
    const memory = await workshopInMemory();
    open(memory.shell, `batches/${memory.batch}`);
    const step = hrefOf('Start a step');
    memory.person.value = [...memory.state.value.people.keys()][0] ?? null;
    open(memory.shell, step);
    expect(hrefOf('Work out a dilution')).toBe(`batches/${memory.batch}/dilution`);
  });

  test('says water first, then acid, with the mass of both', async () => {
    await onThePage();
    expect(rowOf('Water first')).toBe('');
    await recipe('68', '10', '1.00');
    // 0.1054 kg of acid itself; 0.155 kg of stock at 1.4048 kg/L; the rest of 1.0543 kg is water.
    expect(rowOf('Water first')).toMatch(/0\.899\s?kg.*0\.901\s?L/);
    expect(rowOf('Then acid, slowly')).toMatch(/0\.155\s?kg.*0\.1104\s?L/);
    const water = screen.getByText('Water first');
    const acid = screen.getByText('Then acid, slowly');
    expect(water.compareDocumentPosition(acid) & Node.DOCUMENT_POSITION_FOLLOWING).not.toBe(0);
    expect(screen.getByText('Always acid into water, never water into acid.')).toBeTruthy();
  });

  test('comes out the same in millilitres', async () => {
    await onThePage();
    await recipe('68', '10', '1000');
    const unit = screen
      .getAllByRole('combobox')
      .find((box) => within(box).queryByRole('option', { name: 'mL' }));
    if (!unit) throw new Error('no unit to choose');
    await user.selectOptions(unit, 'mL');
    expect(rowOf('Then acid, slowly')).toMatch(/155\s?g.*110\.4\s?mL/);
  });

  test('warns where it may pass 40 °C, and says how much acid at a time', async () => {
    await onThePage();
    await recipe('68', '34', '5');
    expect(screen.getByText(/may pass 40\s°C/)).toBeTruthy();
    expect(rowOf('Then acid, in portions')).toMatch(/2\.15\s?L/);
    const before = Number(/(\d\.\d+)\s?L/.exec(rowOf('Acid at a time, at most'))?.[1]);
    await fill('Room temperature', '30');
    const after = Number(/(\d\.\d+)\s?L/.exec(rowOf('Acid at a time, at most'))?.[1]);
    expect(after).toBeLessThan(before);
    await fill('Room temperature', '41');
    expect(screen.getByText(/40\s°C or more before it begins/)).toBeTruthy();
    expect(rowOf('Acid at a time, at most')).toBe('');
  });

  test('the least dilution of a cool room gives no warning', async () => {
    await onThePage();
    await recipe('68', '10', '5');
    expect(screen.queryByText(/may pass/)).toBeNull();
  });

  test('acid above the table gets no recipe, and is told why', async () => {
    await onThePage();
    await recipe('70', '10', '1');
    expect(rowOf('Water first')).not.toBe('');
    await fill('Acid as it comes', '70.1');
    await user.tab();
    expect(rowOf('Water first')).toBe('');
    expect(await screen.findByText(/from 0 to 70\s%.*fumes brown or red/)).toBeTruthy();
  });

  test('what is wanted must be weaker than the acid as it comes', async () => {
    await onThePage();
    await recipe('30', '30', '1');
    await user.click(screen.getByRole('textbox', { name: 'Strength wanted' }));
    await user.tab();
    expect(await screen.findByText('It must be weaker than the acid as it comes.')).toBeTruthy();
    expect(rowOf('Water first')).toBe('');
  });

  test('tells the strength of what is poured', async () => {
    await onThePage();
    await user.selectOptions(screen.getByRole('combobox', { name: 'Work out' }), 'the strength');
    await fill('Acid as it comes', '68');
    await fill('Acid', '1.00');
    await fill('Water', '1.00');
    // 0.9553 kg in 2.403 kg.
    expect(rowOf('Strength by mass')).toMatch(/39\.8\s?%/);
  });

  test('opens the working of every figure that was worked out', async () => {
    const { shell } = await onThePage();
    await recipe('68', '34', '5');
    const addresses = [
      'Water first',
      'Then acid, in portions',
      'Acid at a time, at most',
      'Rise, all at once',
    ].map(hrefOf);
    const titles = [
      'Water to take',
      'Acid to take',
      'Acid in one portion, at most',
      'Rise in temperature, all at once',
    ];
    for (const [i, address] of addresses.entries()) {
      open(shell, address);
      expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(titles[i]);
      expect(screen.getByText('What stands in it')).toBeTruthy();
    }
  });

  test('keeps what was typed through a reload, and writes nothing down', async () => {
    const { shell, state, address } = await onThePage();
    const before = state.value.log.length;
    await recipe('65', '20', '2');
    open(shell, address);
    expect(screen.getByRole('textbox', { name: 'Acid as it comes' })).toHaveProperty('value', '65');
    expect(rowOf('Then acid, slowly')).toMatch(/L/);
    expect(state.value.log.length).toBe(before);
  });

  test('a batch that is not in the record has no page', async () => {
    const memory = await workshopInMemory();
    open(memory.shell, 'batches/nobody/dilution');
    expect(screen.queryByRole('textbox')).toBeNull();
  });
});
