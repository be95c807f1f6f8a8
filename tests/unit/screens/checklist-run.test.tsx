import { act, fireEvent, screen, within } from '@testing-library/preact';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { workshopInMemory } from '../../support/shell-in-memory';
import { answerUntil, heading, itemOf, key, opened, reload, show, tap } from './at-the-bench';

const { ask: filter } = itemOf('filtration', 'fil-medium');

describe('going through a checklist', () => {
  it('asks one question at a time and says how far it is', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    expect(heading()).toBe('Where are you working?');
    expect(screen.getByText('1 of 8')).toBeTruthy();
    await tap(workshop, 'Ducted hood, fan on');
    expect(heading()).toBe('What does the ribbon do?');
    expect(screen.getByText('2 of 9')).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole('heading', { level: 1 }));
  });

  it('ignores a tap within 400 ms of a change: water on the glass', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await tap(workshop, 'Ducted hood, fan on');
    await act(async () => workshop.pass(399));
    await act(async () => {
      fireEvent.click(screen.getByRole('button', { name: 'No ribbon fitted' }));
    });
    expect(heading()).toBe('What does the ribbon do?');
    await act(async () => workshop.pass(1));
    await act(async () => {
      fireEvent.click(screen.getByRole('button', { name: 'No ribbon fitted' }));
    });
    expect(screen.getByText('STOP')).toBeTruthy();
  });

  it('takes an answer back', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await tap(workshop, 'Ducted hood, fan on');
    await tap(workshop, 'Undo: Ducted hood, fan on');
    expect(heading()).toBe('Where are you working?');
    expect(screen.getByRole('button', { name: 'Back one' })).toHaveProperty('disabled', true);
  });

  it('offers the undo for five seconds, then the way back without the answer', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    onTestFinished(() => void vi.useRealTimers());
    const workshop = await opened('filtration');
    show(workshop);
    await tap(workshop, 'Ducted hood, fan on');
    await act(async () => void vi.advanceTimersByTime(4_900));
    expect(screen.getByRole('button', { name: 'Undo: Ducted hood, fan on' })).toBeTruthy();
    await act(async () => void vi.advanceTimersByTime(200));
    expect(screen.queryByRole('button', { name: /^Undo/ })).toBeNull();
    await tap(workshop, 'Back one');
    expect(heading()).toBe('Where are you working?');
  });

  it('begins again when the first answers are too old, and says so', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    await act(async () => workshop.pass(3 * 3_600_000));
    expect(heading()).toBe('Begin this list again');
    expect(screen.getByText(/the first is too old to count/)).toBeTruthy();
    await tap(workshop, 'Begin again');
    expect(screen.getByText('1 of 8')).toBeTruthy();
  });

  it('begins again for another person, and names who answered so far', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    await act(async () => {
      workshop.person.value = workshop.tobias;
    });
    expect(heading()).toBe('Begin this list again');
    expect(screen.getByText(/^Maren answered so far/)).toBeTruthy();
  });

  it('stands at the same question after a reload', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    reload(workshop);
    expect(heading()).toBe('What is the filter?');
    expect(screen.getByText('5 of 9')).toBeTruthy();
  });

  it('asks after a long pause whether the last answers are still true, and asks them again if not', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    await act(async () => workshop.pass(22 * 60_000));
    reload(workshop);
    expect(heading()).toBe('You stopped at item 5, 22 min ago.');
    expect(within(screen.getByRole('list', { name: 'Still true?' })).getByText('Butyl')).toBeTruthy();
    await tap(workshop, 'No. Ask these again.');
    expect(heading()).toBe('Which gloves are on?');
  });

  it('lets a reading out of range in only with a reason, and shows the range only then', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    await tap(workshop, 'Glass fibre');
    await tap(workshop, 'Gravity');
    await tap(workshop, 'Clean water');
    expect(screen.queryByText(/5 to 30/)).toBeNull();
    await key(workshop, '42');
    expect(screen.getByText(/Wanted: 5 to 30/)).toBeTruthy();
    await tap(workshop, 'Gravity only, no vacuum');
    expect(heading()).toBe('Labelled wet tub ready for used filter');
  });

  it('asks for the walk round first, and comes back after it', async () => {
    const workshop = await workshopInMemory();
    workshop.path.value = ['check', workshop.batch, 'filtration'];
    show(workshop);
    await tap(workshop, /Ready for a spill or fume/);
    expect(workshop.path.value).toEqual(['check', '-', 'spill-response-readiness']);
    await tap(workshop, 'Walked both: clear');
    await key(workshop, '3');
    await tap(workshop, 'Phone with signal');
    await tap(workshop, 'Named person, time set');
    await tap(workshop, 'Tobias');
    fireEvent.input(screen.getByLabelText('Hour'), { target: { value: '23:15' } });
    await tap(workshop, 'Keep');
    await key(workshop, '5');
    await tap(workshop, 'Both held air');
    await tap(workshop, 'Leave, shut door, call');
    await tap(workshop, 'Well and rested');
    expect(heading()).toBe('Acid may be opened.');
    expect(screen.getByText('checks at 23:15')).toBeTruthy();
    expect(screen.getByText(/^It ends with another person\./)).toBeTruthy();
    await tap(workshop, 'Go on: Filter the leach liquor');
    expect(heading()).toBe('Where are you working?');
  });

  it('asks who holds the phone before anything else', async () => {
    const workshop = await opened('filtration');
    workshop.person.value = null;
    show(workshop);
    await tap(workshop, 'Tobias');
    expect(workshop.person.value).toBe(workshop.tobias);
  });

  it('says one plain line after three confirmations sooner than anybody can look, and keeps it for the record', async () => {
    const workshop = await opened('hand-over');
    show(workshop);
    const confirms = ['ho-label', 'ho-cap', 'ho-apart'].map((id) => itemOf('hand-over', id));
    await answerUntil(workshop, confirms[0]?.ask);
    for (const item of confirms) {
      expect(screen.queryByText('Look at the thing, then tap.')).toBeNull();
      await act(async () => workshop.pass(500));
      await act(async () => {
        const name = item.kind === 'confirm' ? (item.yes ?? '') : '';
        fireEvent.click(screen.getByRole('button', { name }));
      });
    }
    expect(heading()).toBe(itemOf('hand-over', 'ho-ppe').ask);
    expect(screen.getByText('Look at the thing, then tap.')).toBeTruthy();
    await answerUntil(workshop);
    expect(screen.getByText('Look at the thing, then tap.')).toBeTruthy();
    const list = [...workshop.state.value.checklists.values()].at(-1);
    expect(list?.body.answers.filter(({ quick }) => quick)).toHaveLength(3);
  });
});
