import { act, fireEvent, screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { workshopInMemory } from '../../support/shell-in-memory';
import {
  answerUntil,
  finished,
  heading,
  itemOf,
  opened,
  reload,
  show,
  tap,
  type Workshop,
} from './at-the-bench';

const { ask: filter } = itemOf('filtration', 'fil-medium');

describe('a clearance', () => {
  const complete = async (): Promise<Workshop> => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop);
    return workshop;
  };

  it('is given when every question has its answer, and begins its step', async () => {
    const workshop = await complete();
    expect(heading()).toBe('Filtration may start.');
    expect(screen.getByText(/^It ends with another batch, acid or person\./)).toBeTruthy();
    expect(finished(workshop)?.body.answers).toHaveLength(9);
    expect(workshop.drafts.size).toBe(0);
    await tap(workshop, 'Begin filtering');
    const [step] = workshop.state.value.steps.values();
    expect(step?.body).toMatchObject({ step: 'filtration', clearance: finished(workshop)?.entryId });
    expect(workshop.path.value).toEqual(['batches', workshop.batch]);
  });

  it('says the day of a call that is not today', async () => {
    const workshop = await workshopInMemory();
    workshop.path.value = ['check', '-', 'spill-response-readiness'];
    show(workshop);
    await answerUntil(workshop, itemOf('spill-response-readiness', 'rdy-buddy').ask);
    await tap(workshop, 'Named person, time set');
    await tap(workshop, 'Tobias');
    fireEvent.input(screen.getByLabelText('Hour'), { target: { value: '00:01' } });
    await tap(workshop, 'Keep');
    await answerUntil(workshop);
    expect(screen.getByText('checks at 13 May 00:01')).toBeTruthy();
  });

  it('that ran out is refused in words and offers its list again', async () => {
    const workshop = await complete();
    await act(async () => workshop.pass(3 * 3_600_000));
    expect(heading()).toBe('The clearance has run out.');
    expect(screen.getByRole('alert').textContent).toMatch(/has run out. Go through the checklist again/);
    expect(screen.queryByRole('button', { name: 'Begin filtering' })).toBeNull();
    expect(screen.getByRole('link', { name: 'Go through the list again' }).getAttribute('href')).toBe(
      `#/check/${workshop.batch}/filtration`,
    );
    expect(workshop.state.value.steps.size).toBe(0);
  });

  it('says at the button why nothing was written', async () => {
    const workshop = await complete();
    workshop.breakStore({ code: 'disk-full' });
    await tap(workshop, 'Begin filtering');
    expect(screen.getByRole('alert').textContent).toMatch(/The phone is full. Nothing was written/);
  });

  it('does not hold for another person', async () => {
    const workshop = await complete();
    await act(async () => {
      workshop.person.value = workshop.tobias;
    });
    expect(heading()).toBe('This clearance does not hold.');
  });

  it('that could not be written keeps the answers and can be written later', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    workshop.breakStore({ code: 'disk-full' });
    await answerUntil(workshop);
    expect(screen.getByRole('alert').textContent).toMatch(/The phone is full/);
    workshop.breakStore(null);
    const answered = workshop.now.value;
    workshop.pass(30 * 60_000);
    reload(workshop);
    await tap(workshop, 'Write the list down');
    expect(heading()).toBe('Filtration may start.');
    const until = Date.parse(finished(workshop)?.body.validUntil ?? '');
    expect(until).toBeLessThanOrEqual(Date.parse(answered) + 2 * 3_600_000);
  });
});

describe('starting a step', () => {
  it('offers the next in order first, and the clearance that holds', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop);
    workshop.path.value = ['batches', workshop.batch, 'step'];
    reload(workshop);
    expect(screen.getByRole('link', { name: /^Dilute the acid/ })).toBeTruthy();
    const filter = screen.getByRole('link', { name: /^Filter the leach liquor/ });
    expect(filter.textContent).toMatch(/Cleared until/);
    expect(filter.getAttribute('href')).toBe(`#/clearance/${finished(workshop)?.entryId}`);
    await act(async () => {
      await workshop.shell.perform({
        do: 'log-step-happened',
        batchId: workshop.batch,
        step: 'filtration',
        clearance: null,
      });
    });
    expect(screen.getAllByRole('link', { name: /questions first$/ })[0]?.textContent).toMatch(/./);
    expect(screen.getByRole('link', { name: /^Start cementing on copper/ }).closest('li')).toBeNull();
  });
});
