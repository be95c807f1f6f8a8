import { render, screen, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { useState } from 'preact/hooks';
import { describe, expect, it, vi } from 'vitest';
import { PlacesBar, TaskBar } from '../../../src/ui/bar';
import { Choices } from '../../../src/ui/choices';
import { Field } from '../../../src/ui/field';
import { Mark } from '../../../src/ui/marks';
import { keyed, Pad } from '../../../src/ui/pad';
import { Page } from '../../../src/ui/page';
import { Row, Rows } from '../../../src/ui/row';
import { Shelf } from '../../../src/ui/shelf';

const Filter = ({ heard }: { readonly heard: (value: string) => void }) => {
  const [value, setValue] = useState<'paper' | 'glass' | undefined>();
  return (
    <Choices
      legend="What is the filter?"
      value={value}
      onChoose={(next) => {
        setValue(next);
        heard(next);
      }}
      choices={[
        { value: 'paper', label: 'Paper' },
        { value: 'glass', label: 'Glass fibre' },
      ]}
    />
  );
};

describe('the bottom bar', () => {
  it('has help first and says which place is open', () => {
    render(<PlacesBar open="containers" />);
    const links = within(screen.getByRole('navigation')).getAllByRole('link');
    expect(links.map((link) => link.textContent)).toEqual([
      'SOS',
      'Today',
      'Batches',
      'Containers',
      'Papers',
      'Record',
    ]);
    expect(links[0]?.getAttribute('href')).toBe('#/sos');
    expect(screen.getByRole('link', { current: 'page' }).textContent).toBe('Containers');
  });

  it('keeps help in a task and offers the ways out of it', async () => {
    const pause = vi.fn();
    render(
      <TaskBar>
        {[
          { label: 'Pause', onTap: pause },
          { label: 'Back one', disabled: true },
        ]}
      </TaskBar>,
    );
    expect(screen.getByRole('link', { name: 'SOS' })).toBeTruthy();
    await userEvent.click(screen.getByRole('button', { name: 'Pause' }));
    await userEvent.click(screen.getByRole('button', { name: 'Back one' }));
    expect(pause).toHaveBeenCalledOnce();
  });
});

describe('a question with answers', () => {
  it('is a group that has the question as its name, and no answer is given beforehand', () => {
    render(<Filter heard={() => undefined} />);
    const group = screen.getByRole('group', { name: 'What is the filter?' });
    expect(within(group).getAllByRole('radio', { checked: false })).toHaveLength(2);
  });

  it('is answered by tapping anywhere on the row, and by the keyboard', async () => {
    const heard = vi.fn();
    render(<Filter heard={heard} />);
    await userEvent.click(screen.getByText('Paper'));
    expect(heard).toHaveBeenLastCalledWith('paper');
    screen.getByRole('radio', { name: 'Glass fibre' }).focus();
    await userEvent.keyboard(' ');
    expect(heard).toHaveBeenLastCalledWith('glass');
  });
});

describe('a form line', () => {
  const line = (error?: string) =>
    render(
      <Field
        label="Copper"
        value="1,2,3"
        onInput={() => undefined}
        unit="g/L"
        hint="As on the report"
        error={error}
      />,
    );

  it('says its unit and its hint after its name', () => {
    line();
    const input = screen.getByRole('textbox', { name: 'Copper' });
    const said = (input.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent);
    expect(said).toEqual(['g/L', 'As on the report']);
    expect(input.getAttribute('aria-invalid')).toBeNull();
  });

  it('ties an error to the input that it is about', () => {
    line('One decimal sign');
    const input = screen.getByRole('textbox', { name: 'Copper' });
    expect(input.getAttribute('aria-invalid')).toBe('true');
    const ids = (input.getAttribute('aria-describedby') ?? '').split(' ');
    expect(ids.map((id) => document.getElementById(id)?.textContent)).toContain('One decimal sign');
  });

  it('names the choice of its unit after the line', async () => {
    const unit = vi.fn();
    render(
      <Field
        label="Volume"
        value="2"
        onInput={() => undefined}
        unit="L"
        units={[
          { value: 'L', label: 'L' },
          { value: 'mL', label: 'mL' },
        ]}
        onUnit={unit}
      />,
    );
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Volume, unit' }), 'mL');
    expect(unit).toHaveBeenCalledWith('mL');
  });
});

describe('the number pad', () => {
  it.each([
    ['', '.', '0.'],
    ['0.3', '.', '0.3'],
    ['0', '7', '7'],
    ['0.', '0', '0.0'],
    ['123456789', '1', '123456789'],
  ])('turns "%s" and the key "%s" into "%s"', (value, key, next) => {
    expect(keyed(value, key, '.', 9)).toBe(next);
  });

  it('takes digits, the decimal sign, Clear and Enter, each by its name', async () => {
    const changed = vi.fn();
    const entered = vi.fn();
    render(
      <Pad
        value="0,3"
        onChange={changed}
        onEnter={entered}
        decimalSign=","
        decimalLabel="decimal comma"
        clearLabel="Clear"
        backLabel="Back one digit"
        enterLabel="Enter 0,3 m/s"
        label="Number pad"
      />,
    );
    await userEvent.click(screen.getByRole('button', { name: '4' }));
    await userEvent.click(screen.getByRole('button', { name: 'decimal comma' }));
    await userEvent.click(screen.getByRole('button', { name: 'Back one digit' }));
    await userEvent.click(screen.getByRole('button', { name: 'Clear' }));
    await userEvent.click(screen.getByRole('button', { name: 'Enter 0,3 m/s' }));
    expect(changed.mock.calls.flat()).toEqual(['0,34', '0,3', '0,', '']);
    expect(entered).toHaveBeenCalledOnce();
  });
});

describe('a page', () => {
  it('puts the focus on its title, again after the route changes, and not after anything else', () => {
    const at = (focusKey: string, note: string) => (
      <Page title="Container C-07" focusKey={focusKey} bar={<PlacesBar />}>
        <button type="button">{note}</button>
      </Page>
    );
    const { rerender } = render(at('a', 'one'));
    const title = screen.getByRole('heading', { level: 1 });
    expect(document.activeElement).toBe(title);
    screen.getByRole('button').focus();
    rerender(at('a', 'two'));
    expect(document.activeElement).not.toBe(title);
    rerender(at('b', 'two'));
    expect(document.activeElement).toBe(title);
  });
});

describe('rows and the shelf', () => {
  it('a mark beside its words is silent, alone it speaks', () => {
    render(
      <Rows label="Due">
        <Row mark={<Mark kind="wrong" />} title="C-04 is too full" href="#/containers/c4" />
      </Rows>,
    );
    expect(screen.getByRole('link', { name: 'C-04 is too full' })).toBeTruthy();
    expect(screen.queryByRole('img')).toBeNull();
    render(<Mark kind="due" share={0.3} word="due in 8 min" />);
    expect(screen.getByRole('img', { name: 'due in 8 min' })).toBeTruthy();
  });

  it('each vessel on the shelf is a link that says everything the drawing says', () => {
    render(
      <Shelf
        label="Containers"
        trays={[
          {
            key: 'nitrate',
            word: 'nitrate tray',
            vessels: [
              {
                key: 'c4',
                name: 'C-04, 20 L jerrican, 18.6 L, 93 %, too full',
                href: '#/containers/c4',
                drawing: { family: 'jerrican', capacityL: 20, volumeL: 18.6, tint: '#389EBB', cap: 'vented' },
              },
            ],
          },
        ]}
      />,
    );
    const link = screen.getByRole('link', { name: 'C-04, 20 L jerrican, 18.6 L, 93 %, too full' });
    expect(link.getAttribute('href')).toBe('#/containers/c4');
  });
});
