import { screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import {
  answerInOrder,
  answerUntil,
  finished,
  goTo,
  heading,
  itemOf,
  leadsTo,
  readied,
  reload,
  show,
  stopAt,
  tap,
  type Workshop,
} from './at-the-bench';

/** Filtration was begun with no list. */
async function begunWithout(): Promise<Workshop & { stepId: string }> {
  const workshop = await readied();
  const { body } = await workshop.does({
    do: 'log-step-happened',
    batchId: workshop.batch,
    step: 'filtration',
    clearance: null,
  });
  if (body.kind !== 'step-started') throw new Error('no step was begun');
  workshop.pass(20 * 60_000);
  workshop.path.value = ['today'];
  show(workshop);
  return { ...workshop, stepId: body.stepId };
}

async function goneThrough(): Promise<Workshop> {
  const workshop = await begunWithout();
  await goTo(workshop, leadsTo(/without clearance/));
  await answerUntil(workshop);
  return workshop;
}

it('a step begun without its list is written down from the choice of steps, with no question asked', async () => {
  const workshop = await readied();
  workshop.path.value = ['batches', workshop.batch, 'step'];
  show(workshop);
  await goTo(workshop, leadsTo(/Begun already, without its list/));
  await goTo(workshop, leadsTo(/^Filter the leach liquor/));
  await tap(workshop, 'Write it down');
  expect([...workshop.state.value.steps.values()].map(({ body }) => body)).toMatchObject([
    { step: 'filtration', batchId: workshop.batch, clearance: null },
  ]);
  expect(workshop.path.value).toEqual(['batches', workshop.batch]);
});

describe('a list that is late', () => {
  it('is where Today and the batch lead from a step without clearance', async () => {
    const workshop = await begunWithout();
    const way = `#/check/late-${workshop.stepId}/filtration`;
    expect(leadsTo(/without clearance.*go through its list now, as late/)).toBe(way);
    await goTo(workshop, `batches/${workshop.batch}`);
    expect(leadsTo('Go through its list now, as late')).toBe(way);
  });

  it('says with each question when the step began, and lets nobody write the step down again', async () => {
    const workshop = await begunWithout();
    await goTo(workshop, leadsTo(/without clearance/));
    await answerInOrder(workshop);
    expect(screen.getByText('Late: the step began at 08:00')).toBeTruthy();
    await stopAt(workshop, itemOf('filtration', 'sta-ribbon'));
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /^Already/ })).toBeNull();
  });

  it('is written down as late, in the step it is for, and clears nothing', async () => {
    const workshop = await goneThrough();
    expect(heading()).toBe('Written down as late');
    expect(screen.queryByText(/may start/)).toBeNull();
    expect(finished(workshop)?.body).toMatchObject({ validUntil: null, outcome: 'cleared' });
    await goTo(workshop, leadsTo('To the batch'));
    expect(screen.getByText(/without clearance, its list gone through at 08:\d\d, late/)).toBeTruthy();
    expect(screen.getByText('gone through late, clears nothing')).toBeTruthy();
    expect(screen.queryByRole('link', { name: /as late/ })).toBeNull();
  });

  it('leaves the flag on Today, which then says when it was gone through', async () => {
    const workshop = await goneThrough();
    await goTo(workshop, 'today');
    expect(leadsTo(/Filtration.*without clearance.*gone through after all, 12.May 08:\d\d/)).toBe(
      `#/batches/${workshop.batch}`,
    );
  });

  it('that ended in a stop is written down as late too', async () => {
    const workshop = await begunWithout();
    await goTo(workshop, leadsTo(/without clearance/));
    const place = itemOf('filtration', 'sta-place');
    await stopAt(workshop, place);
    await tap(workshop, place.doors?.find(({ leads }) => leads === 'put-off')?.do ?? '');
    expect(heading()).toBe('Written down as late');
    expect(screen.getByText(/ended in a stop/)).toBeTruthy();
    expect(finished(workshop)?.body).toMatchObject({ outcome: 'stopped' });
    expect(workshop.state.value.steps.size).toBe(1);
  });

  it('is late still after a reload', async () => {
    const workshop = await begunWithout();
    await goTo(workshop, leadsTo(/without clearance/));
    await answerInOrder(workshop);
    reload(workshop);
    expect(screen.getByText(/^Late: the step began/)).toBeTruthy();
  });
});
