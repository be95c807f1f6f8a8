import { cleanup, render, screen } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { ContainerScreen } from '../../../src/screens/containers/container';
import { IronScreen } from '../../../src/screens/iron/iron';
import { ShellProvider } from '../../../src/screens/shell';
import { follow, row, user } from '../../support/hand';
import { disposalState } from '../paperwork/disposal-state';

type Made = Awaited<ReturnType<typeof disposalState>>;

const show = ({ shell, barren }: Made, id = barren) =>
  render(
    <ShellProvider value={shell}>
      <IronScreen at={{ id }} />
    </ShellProvider>,
  );
const grams = (name: RegExp): number => {
  const text = row(name).textContent ?? '';
  return Number(/(\d[\d.]*)\u2009g/.exec(text)?.[1]);
};

describe('copper onto iron first', () => {
  test('is reached from a container whose liquor holds copper, and from no other', async () => {
    const memory = await disposalState();
    const container = (id: string) =>
      render(
        <ShellProvider value={memory.shell}>
          <ContainerScreen at={{ id }} />
        </ShellProvider>,
      );
    container(memory.wash);
    expect(screen.queryByRole('link', { name: /Copper onto iron/ })).toBeNull();
    cleanup();
    container(memory.barren);
    follow(memory.shell, /Copper onto iron/);
    expect(screen.getByRole('heading', { level: 1, name: 'Copper onto iron first' })).toBeDefined();
  });

  test('tells iron, copper, what goes on, and the lime with iron and without', async () => {
    show(await disposalState());
    // 17.6 g/L of 6.70 L less 10 mg/L; all of it over the lime of the liquor as it stands.
    expect(grams(/Copper that goes down/)).toBeGreaterThan(100);
    expect(row(/Copper left/).textContent).toMatch(/1 to 200/);
    expect(row(/Iron\(II\) that goes on, a litre/)).toBeDefined();
    expect(grams(/Lime in all, with iron/)).toBe(grams(/Lime without iron/));
    expect(screen.getByText(/Iron takes as much lime as the copper did/)).toBeDefined();
    expect(row(/Change in sludge/)).toBeDefined();
  });

  test('is marked as common practice and for planning, each caution with who says so', async () => {
    show(await disposalState());
    expect(screen.getByText(/Common practice where no source is named/)).toBeDefined();
    expect(screen.getByText('For planning only')).toBeDefined();
    expect(screen.getByText(/ammonium at pH 2 to 4.5/).textContent).toMatch(
      /Huang, Zhang.*: read in the source/,
    );
    expect(screen.getByText(/Nickel goes down in part/).textContent).toMatch(/common practice, no source/);
  });

  test('takes more iron, and may make more ammonium and gas, where the acid is left as it is', async () => {
    show(await disposalState());
    const brought = { iron: grams(/Iron to put in/), first: grams(/Lime before the iron/) };
    const ammonium = row(/Ammonium that may form/).textContent;
    await user.selectOptions(screen.getByLabelText('Free acid as iron goes in'), 'as-it-is');
    expect(grams(/Iron to put in/)).toBeGreaterThan(1.5 * brought.iron);
    expect(brought.first).toBeGreaterThan(100);
    expect(screen.queryByRole('link', { name: /Lime before the iron/ })).toBeNull();
    expect(row(/Ammonium that may form/).textContent).not.toBe(ammonium);
    expect(row(/Ammonium that may form/).textContent).toMatch(/at most/);
  });

  test('takes the excess that the person states, and opens it in the working', async () => {
    const memory = await disposalState();
    show(memory);
    const usual = grams(/Iron to put in/);
    await user.type(screen.getByLabelText('Iron over what is used up'), '200');
    expect(grams(/Iron to put in/) / usual).toBeCloseTo(2, 1);
    follow(memory.shell, /Iron to put in/);
    expect(screen.getByText('Iron over what is used up')).toBeDefined();
    expect(screen.getByText(/stays in the pot as rust/)).toBeDefined();
  });

  test('is not worked out where ammonia waste is in it, nor where the acid is not told', async () => {
    const memory = await disposalState();
    show(memory, memory.wash);
    expect(screen.getByText('Not worked out: the free acid is not determined.')).toBeDefined();
    cleanup();
    await memory.logs(memory.barren, null, 'ammonia-test-waste', {
      volume: { value: '0.05', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    show(memory);
    expect(screen.getByText(/Never lime or caustic here/)).toBeDefined();
    expect(screen.queryByRole('link', { name: /Iron to put in/ })).toBeNull();
  });
});
