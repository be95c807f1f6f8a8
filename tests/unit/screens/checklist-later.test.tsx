import { screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { checklists } from '../../../src/safety/checklists';
import { goTo, heading, key, leadsTo, readied, reload, show, tap, type Workshop } from './at-the-bench';

const list = checklists.get('acid-dilution');
const during = list?.items.find(({ when }) => when === 'during');
if (list === undefined || during?.kind !== 'reading')
  throw new Error('the dilution asks no reading while it runs');
const { ask, max = '' } = during;
const tooHot = String(Number(max) + 10);

/** A dilution that runs on a list gone through before. */
async function diluting(): Promise<Workshop> {
  const workshop = await readied();
  const { id, body } = await workshop.does({
    do: 'finish-checklist',
    runId: workshop.shell.newId(),
    step: 'acid-dilution',
    batchId: workshop.batch,
    checklist: { id: 'acid-dilution', version: '1', hash: 'b'.repeat(64), title: 'Dilute the acid' },
    outcome: 'cleared',
    startedAt: '2026-05-12T08:00:00.000Z',
    finishedAt: '2026-05-12T08:00:00.000Z',
    validUntil: '2026-05-12T10:00:00.000Z',
    answers: [
      { item: 'dil-one', ask: 'One', kind: 'confirm', answer: 'yes', at: '2026-05-12T08:00:00.000Z' },
    ],
  });
  if (body.kind !== 'checklist-finished') throw new Error('no list was finished');
  await workshop.does({ do: 'start-step', step: 'acid-dilution', batchId: workshop.batch, clearance: id });
  workshop.path.value = ['batches', workshop.batch];
  show(workshop);
  return workshop;
}

const later = (workshop: Workshop) =>
  [...workshop.state.value.checklists.values()].at(-1)?.later.map(({ body }) => body.answer) ?? [];

describe('what a list asks while its step runs', () => {
  it('stands on the batch and on Today until it is answered', async () => {
    const workshop = await diluting();
    expect(screen.getByRole('link', { name: new RegExp(`Asked while it runs: ${ask}`) })).toBeTruthy();
    await goTo(workshop, 'today');
    expect(screen.getByText(/Running since .*1 question to answer/)).toBeTruthy();
  });

  it('is answered on a page of its own, and stands under the answers of the list', async () => {
    const workshop = await diluting();
    await goTo(workshop, leadsTo(/Asked while it runs/));
    expect(heading()).toBe(ask);
    await key(workshop, max);
    expect(workshop.path.value).toEqual(['batches', workshop.batch]);
    expect(later(workshop)).toMatchObject([{ item: during.id, answer: max, max }]);
    expect(screen.queryByText(/Asked while it runs/)).toBeNull();
    await goTo(workshop, `clearance/${[...workshop.state.value.checklists.keys()].at(-1)}`);
    await tap(workshop, 'Show answers');
    expect(screen.getByRole('list', { name: 'While it ran and after it' }).textContent).toMatch(max);
  });

  it('ends on the red page with what to do now when it stops, is written down, and stays to be asked', async () => {
    const workshop = await diluting();
    await goTo(workshop, leadsTo(/Asked while it runs/));
    await key(workshop, tooHot);
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(screen.getByText('What to do now')).toBeTruthy();
    expect(later(workshop)).toMatchObject([{ answer: tooHot, stopped: true }]);
    const again = during.doors?.find(({ leads }) => leads === 'answer-again')?.do ?? '';
    await tap(workshop, again);
    expect(heading()).toBe(ask);
    await key(workshop, max);
    expect(later(workshop).map(({ answer }) => answer)).toEqual([tooHot, max]);
    expect(screen.queryByText(/Asked while it runs/)).toBeNull();
  });

  it('never keeps a step from ending, and is named where it ends', async () => {
    const workshop = await diluting();
    const end = screen.getByRole('button', { name: /^It has ended/ });
    expect(end.textContent).toMatch(`Not answered yet: ${ask}.`);
    await tap(workshop, /^It has ended/);
    expect([...workshop.state.value.steps.values()][0]?.endedAt).not.toBeNull();
    expect(screen.getByRole('link', { name: /Asked while it runs/ })).toBeTruthy();
  });

  it('says why an answer was not written down, and keeps the question', async () => {
    const workshop = await diluting();
    await goTo(workshop, leadsTo(/Asked while it runs/));
    workshop.breakStore({ code: 'disk-full' });
    await key(workshop, max);
    expect(screen.getByRole('alert').textContent).toMatch(/The phone is full/);
    workshop.breakStore(null);
    reload(workshop);
    await key(workshop, max);
    expect(later(workshop)).toHaveLength(1);
  });
});
