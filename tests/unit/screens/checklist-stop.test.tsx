import { screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { answerUntil, finished, heading, itemOf, opened, show, tap, type Workshop } from './at-the-bench';

const { ask: filter } = itemOf('filtration', 'fil-medium');

describe('a stop', () => {
  const stopped = async (): Promise<Workshop> => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop, filter);
    await tap(workshop, 'Paper, stronger acid');
    return workshop;
  };

  it('says stop, why, and what makes it right', async () => {
    const workshop = await stopped();
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(heading()).toBe('What is the filter? Paper, stronger acid.');
    expect(screen.getByText(/left to dry is a fire starter/)).toBeTruthy();
    await tap(workshop, /^Fit glass fibre/);
    expect(heading()).toBe('What is the filter?');
  });

  it('stays told when the step is put off', async () => {
    const workshop = await stopped();
    await tap(workshop, 'Leave it covered. Filter later.');
    expect(finished(workshop)?.body).toMatchObject({
      outcome: 'stopped',
      validUntil: null,
      step: 'filtration',
    });
    expect(workshop.state.value.steps.size).toBe(0);
    expect(workshop.path.value).toEqual(['batches', workshop.batch]);
    expect(workshop.drafts.size).toBe(0);
  });

  it('never refuses the truth: what was done already is written down without a clearance', async () => {
    const workshop = await stopped();
    await tap(workshop, 'Already filtered? Write it down.');
    await tap(workshop, 'Write it down');
    const [step] = workshop.state.value.steps.values();
    expect(step?.body).toMatchObject({ step: 'filtration', clearance: null, batchId: workshop.batch });
    expect(finished(workshop)?.body.outcome).toBe('stopped');
    expect(workshop.path.value).toEqual(['batches', workshop.batch]);
  });

  it('stays told in the clearance after it was made right', async () => {
    const workshop = await stopped();
    await tap(workshop, /^Fit glass fibre/);
    await answerUntil(workshop);
    const answers = finished(workshop)?.body.answers ?? [];
    expect(answers.filter(({ stopped: how }) => how).map(({ answer }) => answer)).toEqual([
      'paper, stronger acid',
    ]);
    expect(finished(workshop)?.body.outcome).toBe('cleared');
  });
});
