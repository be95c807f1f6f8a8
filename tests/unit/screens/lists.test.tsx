import { screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { workshopLists } from '../../../src/ledger/workshop-lists';
import { askedAtMost, mostAtOnePause } from '../../../src/safety/checklist-faults';
import { choose, fill, open, row, tap, type, user } from '../../support/hand';
import { notAllHere } from '../../support/long-record';
import { workshopInMemory } from '../../support/shell-in-memory';
import { itemOf, type Workshop } from './at-the-bench';

const radio = (name: string | RegExp) => user.click(screen.getByRole('radio', { name }));
const listIn = (workshop: Workshop, id: string) => workshopLists(workshop.state.value).get(id);
const own = (workshop: Workshop, list = 'filtration') =>
  listIn(workshop, list)?.items.filter((item) => item.own) ?? [];

/** A reading of ours with a range on both sides. */
const warm = itemOf('leach-check', 'lck-temp');
if (warm.kind !== 'reading' || warm.max === undefined)
  throw new Error('the leach check reads no temperature');
const { max } = warm;
const range = 'record/lists/leach-check/lck-temp/range';

async function addQuestion(workshop: Workshop): Promise<void> {
  open(workshop.shell, 'record/lists/filtration/add');
  await type('The question', 'Radio off');
  await type('Why we ask it', 'The pump is not heard over it.');
  await radio('Before the step');
  await radio(/^Looked at/);
  await radio('It stops the step');
}

describe('the lists of the workshop', () => {
  it('stand in the record, as they came until something is changed', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, 'record');
    expect(row(/^Checklists/).textContent).toMatch(/14, as they came/);
    open(workshop.shell, 'record/lists');
    expect(screen.getAllByRole('link', { name: /questions, as it came/ })).toHaveLength(14);
  });

  it('show each question with why, source and status', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, 'record/lists/leach-check/lck-temp');
    expect(screen.getByText(warm.why)).toBeTruthy();
    expect(screen.getByText(warm.source)).toBeTruthy();
    expect(screen.queryByRole('link', { name: /^Drop/ })).toBeNull();
  });
});

describe('a question of our own', () => {
  it('is added, marked, and asked', async () => {
    const workshop = await workshopInMemory();
    await addQuestion(workshop);
    await tap('Add it');
    expect(own(workshop)).toMatchObject([{ ask: 'Radio off', kind: 'confirm', stop: true }]);
    expect(workshop.path.value).toEqual(['record', 'lists', 'filtration']);
    expect(workshop.drafts.size).toBe(0);
    open(workshop.shell, 'record/lists');
    expect(row(/^Filter the leach liquor/).textContent).toMatch(/1 own/);
    open(workshop.shell, 'record/lists/filtration');
    expect(row(/^Radio off/).textContent).toMatch(/own question/);
  });

  it('that is half filled survives a reload', async () => {
    const workshop = await workshopInMemory();
    await addQuestion(workshop);
    open(workshop.shell, 'record/lists/filtration/add');
    expect(screen.getByText('You had begun this.')).toBeTruthy();
    expect(screen.getByLabelText('The question')).toHaveProperty('value', 'Radio off');
    expect(screen.getByRole('radio', { name: 'It stops the step' })).toHaveProperty('checked', true);
  });

  it('says at each field what is missing, and what to do about a question that is too long', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, 'record/lists/filtration/add');
    await tap('Add it');
    expect(document.querySelectorAll('[aria-invalid=true], [data-wrong=true]').length).toBe(4);
    await addQuestion(workshop);
    await fill('The question', 'Is the radio in the yard really switched off by now?');
    await tap('Add it');
    expect(screen.getByText('The question has more than nine words. Make it shorter.')).toBeTruthy();
    expect(own(workshop)).toEqual([]);
  });

  it('can be a choice, some of whose answers stop', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, 'record/lists/filtration/add');
    await type('The question', 'Which funnel?');
    await type('Why we ask it', 'The small one overflows.');
    await radio('Before the step');
    await radio(/^One of several answers/);
    await type('Answer 1', 'the large one');
    await user.click(screen.getByRole('checkbox', { name: 'Answer 1 stops the step' }));
    await type('Answer 2', 'the small one');
    await user.click(screen.getByRole('checkbox', { name: 'Answer 2 stops the step' }));
    await tap('Add it');
    expect(screen.getByText(/Every answer stops the step/)).toBeTruthy();
    await user.click(screen.getByRole('checkbox', { name: 'Answer 1 stops the step' }));
    await tap('Add it');
    expect(own(workshop)).toMatchObject([
      { kind: 'choice', choices: [{ answer: 'the large one' }, { answer: 'the small one', stops: true }] },
    ]);
  });

  it('can be a reading with a unit that is picked', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, 'record/lists/leach-check/add');
    await type('The question', 'Cold room');
    await type('Why we ask it', 'It froze last winter.');
    await radio('After it');
    await radio(/^A reading/);
    await choose('Unit', '°C');
    await type('Lowest in order', '-5');
    await radio('It goes in with a reason');
    await tap('Add it');
    expect(own(workshop, 'leach-check')).toMatchObject([
      { kind: 'reading', unit: '°C', min: '-5', stop: false },
    ]);
  });

  it('of the walk says what it is asked of, and stands under that', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, 'record/lists/container-inspection/add');
    await type('The question', 'Date on the cap');
    await type('Why we ask it', 'Two cans were mixed up.');
    await radio(/^Looked at/);
    await radio('It goes in with a reason');
    await tap('Add it');
    const of = screen.getByRole('group', { name: 'What is it asked of?' });
    expect(of.textContent).toMatch(/Choose one/);
    await radio('Of each container');
    await tap('Add it');
    expect(own(workshop, 'container-inspection')).toMatchObject([{ of: 'container', stop: false }]);
    open(workshop.shell, 'record/lists/container-inspection');
    const under = screen.getByRole('heading', { name: 'Of each container' }).parentElement;
    expect(under?.textContent).toMatch(/Date on the cap/);
    expect(under?.textContent).not.toMatch(/Eyewash/);
  });

  it('is refused where nine are asked already, at the field that mends it', async () => {
    const workshop = await workshopInMemory();
    const id = [...workshopLists(workshop.state.value).values()].find(
      ({ items }) => askedAtMost(items, undefined) === mostAtOnePause,
    )?.id;
    open(workshop.shell, `record/lists/${id}/add`);
    await type('The question', 'Radio off');
    await type('Why we ask it', 'The pump is not heard over it.');
    await radio('Before the step');
    await radio(/^Looked at/);
    await radio('It stops the step');
    await tap('Add it');
    const pause = screen.getByRole('group', { name: 'When is it asked?' });
    expect(pause.textContent).toMatch(/9 questions are asked there already/);
    await radio('While it runs');
    await tap('Add it');
    expect(own(workshop, id)).toHaveLength(1);
  });

  it('that could stop the step falls away only with a reason', async () => {
    const workshop = await workshopInMemory();
    await addQuestion(workshop);
    await tap('Add it');
    open(workshop.shell, `record/lists/filtration/${own(workshop)[0]?.id}/drop`);
    await tap('Drop it');
    expect(screen.getByText(/Say why it falls away/)).toBeTruthy();
    await type('Why', 'The radio is gone.');
    await tap('Drop it');
    expect(own(workshop)).toEqual([]);
  });
});

describe('a range', () => {
  it('is tightened at any time, and marked so', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, range);
    await fill('Highest', String(Number(max) - 5));
    expect(screen.getByText(/Tighter than ours/)).toBeTruthy();
    await tap('Keep this range');
    expect(listIn(workshop, 'leach-check')?.items.find(({ id }) => id === 'lck-temp')).toMatchObject({
      range: 'tightened',
      max: String(Number(max) - 5),
    });
    open(workshop.shell, 'record/lists');
    expect(row(/1 tightened/)).toBeTruthy();
  });

  it('is made wider only with a reason, and marked wherever it stands', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, range);
    await fill('Highest', String(Number(max) + 5));
    expect(screen.getByText(/Wider than ours/)).toBeTruthy();
    await tap('Keep this range');
    expect(screen.getByText('Say why it may be wider.')).toBeTruthy();
    expect(workshop.state.value.listChanges).toEqual([]);
    await type('Why', 'The vessel is jacketed.');
    await tap('Keep this range');
    open(workshop.shell, 'record/lists/leach-check/lck-temp');
    expect(screen.getAllByText(/loosened/).length).toBeGreaterThan(0);
    expect(screen.getByText(new RegExp(`as it came: .*${max}`))).toBeTruthy();
  });

  it('says what is wrong with it, and keeps what was typed', async () => {
    const workshop = await workshopInMemory();
    open(workshop.shell, range);
    await fill('Highest', 'warm');
    await tap('Keep this range');
    expect(screen.getByText(/“warm” is not a number/)).toBeTruthy();
    await fill('Lowest', '90');
    await fill('Highest', '80');
    await tap('Keep this range');
    expect(screen.getByText('The highest value must lie above the lowest.')).toBeTruthy();
    open(workshop.shell, range);
    expect(screen.getByLabelText('Lowest')).toHaveProperty('value', '90');
  });
});

it('what was in order ten times in a row is offered for review', async () => {
  const workshop = await workshopInMemory();
  for (let n = 0; n < 10; n += 1)
    await workshop.does({
      do: 'finish-checklist',
      runId: workshop.shell.newId(),
      step: 'filtration',
      batchId: workshop.batch,
      checklist: { id: 'filtration', version: '1', hash: 'a'.repeat(64), title: 'Filter' },
      outcome: 'cleared',
      startedAt: '2026-05-12T07:50:00.000Z',
      finishedAt: '2026-05-12T08:00:00.000Z',
      validUntil: '2026-05-12T10:00:00.000Z',
      answers: [
        { item: 'fil-tub', ask: 'Tub ready', kind: 'confirm', answer: 'yes', at: '2026-05-12T08:00:00.000Z' },
      ],
    });
  open(workshop.shell, 'record/lists/filtration');
  expect(screen.getByText('Tub ready')).toBeTruthy();
  expect(screen.getByText(/^10 times in a row/)).toBeTruthy();
  const earlier = notAllHere({ from: '2026-01-01T00:00:00.000Z' });
  workshop.state.value = { ...workshop.state.value, earlier };
  await screen.findByText(/^At least 10 times in a row/);
});
