import { fireEvent, render, screen, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { Plot } from '../../../../src/ui/plot/plot';
import { samplePlot } from './sample-plot';

const cursor = {
  label: 'Read at a dose',
  from: 0,
  to: 400,
  step: 10,
  start: 200,
  onAt: (x: number) => `At ${x} g: pH ${x / 100}`,
};

const words = (id: string | null) => document.getElementById(id ?? '')?.textContent;

describe('a plot', () => {
  it('is one picture with a title and words for what it shows', () => {
    render(<Plot spec={samplePlot} />);
    const picture = screen.getByRole('img', { name: 'pH against dose' });
    expect(words(picture.getAttribute('aria-describedby'))).toBe(
      'pH rests near 5 and reaches the aim at 353 g. Across: dose, g, from 0 to 400. Upwards: pH, from 0 to 12.',
    );
  });

  it('has its figures in tables with heads, folded away until asked for', async () => {
    const { container } = render(<Plot spec={samplePlot} />);
    expect(container.querySelector('details')?.open).toBe(false);
    await userEvent.click(screen.getByText('The figures as a table'));
    const [lines, dots] = screen.getAllByRole('table');
    if (!lines || !dots) throw new Error('no tables');
    expect(
      within(lines)
        .getAllByRole('columnheader')
        .map((head) => head.textContent),
    ).toEqual(['dose, g', 'pH', 'pH, low', 'pH, high']);
    expect(within(lines).getByRole('rowheader', { name: '152' })).toBeTruthy();
    expect(within(dots).getByRole('cell', { name: 'expected' })).toBeTruthy();
  });

  it('draws no text or style that the security policy would refuse', () => {
    const { container } = render(<Plot spec={samplePlot} />);
    for (const element of container.querySelectorAll('svg [style]')) expect(element).toBeUndefined();
    expect(container.querySelector('style')).toBeNull();
  });

  it('without a slider has nothing to tap but the fold', () => {
    render(<Plot spec={samplePlot} />);
    expect(screen.queryByRole('slider')).toBeNull();
  });
});

describe('the slider of a plot', () => {
  it('is reached by keyboard, named, and says what the plot says where it stands', async () => {
    render(<Plot spec={samplePlot} cursor={cursor} />);
    const slider = screen.getByRole('slider', { name: 'Read at a dose' });
    expect(slider.getAttribute('aria-valuetext')).toBe('At 200 g: pH 2');
    expect(screen.getByText('At 200 g: pH 2')).toBeTruthy();
    await userEvent.tab();
    expect(document.activeElement).toBe(slider);
    expect(slider.getAttribute('step')).toBe('10');
  });

  it('moves the line and the words with it, and draws nothing else anew', () => {
    const { container } = render(<Plot spec={samplePlot} cursor={cursor} />);
    const line = () =>
      [...container.querySelectorAll('svg')].at(-1)?.querySelector('path')?.getAttribute('d');
    const before = line();
    const picture = screen.getByRole('img');
    const changed = vi.fn();
    const watcher = new MutationObserver(changed);
    watcher.observe(picture, { subtree: true, childList: true, attributes: true });
    fireEvent.input(screen.getByRole('slider'), { target: { value: '300' } });
    expect(screen.getByText('At 300 g: pH 3')).toBeTruthy();
    expect(line()).not.toBe(before);
    expect(watcher.takeRecords()).toEqual([]);
    expect(changed).not.toHaveBeenCalled();
  });
});
