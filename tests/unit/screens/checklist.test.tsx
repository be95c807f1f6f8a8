import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { Clearance } from '../../../src/screens/checklist/clearance';
import { RunList } from '../../../src/screens/checklist/run-list';
import { StepChoice } from '../../../src/screens/checklist/step-choice';
import { ShellProvider } from '../../../src/screens/shell';
import { workshopInMemory } from '../../support/shell-in-memory';

type Workshop = Awaited<ReturnType<typeof workshopInMemory>>;

/** The three screens at their addresses. */
function Screens({ path }: { readonly path: Workshop['path'] }) {
  const [place, first = '', second = ''] = path.value;
  const key = path.value.join('/');
  if (place === 'check') return <RunList key={key} at={{ for: first, list: second }} />;
  if (place === 'clearance') return <Clearance key={key} at={{ entry: first }} />;
  if (place === 'batches' && second === 'step') return <StepChoice key={key} at={{ batch: first }} />;
  return <p>{key}</p>;
}

const show = (workshop: Workshop) =>
  render(
    <ShellProvider value={workshop.shell}>
      <Screens path={workshop.path} />
    </ShellProvider>,
  );

/** Reload: everything on the screen is gone, what was kept is there. */
const reload = (workshop: Workshop): void => {
  cleanup();
  show(workshop);
};

const heading = (): string => screen.getByRole('heading', { level: 1 }).textContent ?? '';

/** Looks for a second, then taps. */
async function tap(workshop: Workshop, name: string | RegExp): Promise<void> {
  await act(async () => workshop.pass(1_000));
  await act(async () => {
    fireEvent.click(screen.getByRole('button', { name }));
  });
}

async function key(workshop: Workshop, digits: string): Promise<void> {
  for (const digit of digits) await tap(workshop, digit);
  await tap(workshop, /^Enter/);
}

/** A walk round that is in date, so that lists which require it begin at once. */
async function readied(at: (batch: string) => readonly string[]): Promise<Workshop> {
  const workshop = await workshopInMemory();
  await workshop.does({
    do: 'finish-checklist',
    runId: workshop.shell.newId(),
    step: 'readiness',
    batchId: null,
    checklist: {
      id: 'spill-response-readiness',
      version: '1',
      hash: 'a'.repeat(64),
      title: 'Ready for a spill or fume',
    },
    outcome: 'cleared',
    startedAt: '2026-05-12T07:50:00.000Z',
    finishedAt: '2026-05-12T08:00:00.000Z',
    validUntil: '2026-05-12T20:00:00.000Z',
    answers: [
      {
        item: 'rdy-out',
        ask: 'Exit clear',
        kind: 'confirm',
        answer: 'yes',
        at: '2026-05-12T08:00:00.000Z',
      },
    ],
  });
  workshop.path.value = at(workshop.batch);
  return workshop;
}

const filtering = (): Promise<Workshop> => readied((batch) => ['check', batch, 'filtration']);

const upToTheFilter = async (workshop: Workshop): Promise<void> => {
  await tap(workshop, 'Ducted hood, fan on');
  await tap(workshop, 'Pulls in everywhere');
  await tap(workshop, 'Butyl');
  await tap(workshop, 'Goggles, shield, apron');
};

const fromTheFilter = async (workshop: Workshop): Promise<void> => {
  await tap(workshop, 'Glass fibre');
  await tap(workshop, 'Gravity');
  await tap(workshop, 'Clean water');
  await key(workshop, '21');
  await tap(workshop, 'Label on, water in');
};

const cleared = (workshop: Workshop) => [...workshop.state.value.checklists.values()].at(-1);

describe('going through a checklist', () => {
  it('asks one question at a time and says how far it is', async () => {
    const workshop = await filtering();
    show(workshop);
    expect(heading()).toBe('Where are you working?');
    expect(screen.getByText('1 of 8')).toBeTruthy();
    await tap(workshop, 'Ducted hood, fan on');
    expect(heading()).toBe('What does the ribbon do?');
    expect(screen.getByText('2 of 9')).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole('heading', { level: 1 }));
  });

  it('ignores a tap within 400 ms of a change: water on the glass', async () => {
    const workshop = await filtering();
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
    const workshop = await filtering();
    show(workshop);
    await tap(workshop, 'Ducted hood, fan on');
    await tap(workshop, 'Undo: Ducted hood, fan on');
    expect(heading()).toBe('Where are you working?');
    expect(screen.getByRole('button', { name: 'Back one' })).toHaveProperty('disabled', true);
  });

  it('offers the undo for five seconds, then the way back without the answer', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    onTestFinished(() => void vi.useRealTimers());
    const workshop = await filtering();
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
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    await act(async () => workshop.pass(3 * 3_600_000));
    expect(heading()).toBe('Begin this list again');
    expect(screen.getByText(/the first is too old to count/)).toBeTruthy();
    await tap(workshop, 'Begin again');
    expect(screen.getByText('1 of 8')).toBeTruthy();
  });

  it('begins again for another person, and names who answered so far', async () => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    await act(async () => {
      workshop.person.value = workshop.tobias;
    });
    expect(heading()).toBe('Begin this list again');
    expect(screen.getByText(/^Maren answered so far/)).toBeTruthy();
  });

  it('stands at the same question after a reload', async () => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    reload(workshop);
    expect(heading()).toBe('What is the filter?');
    expect(screen.getByText('5 of 9')).toBeTruthy();
  });

  it('asks after a long pause whether the last answers are still true, and asks them again if not', async () => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    await act(async () => workshop.pass(22 * 60_000));
    reload(workshop);
    expect(heading()).toBe('You stopped at item 5, 22 min ago.');
    expect(within(screen.getByRole('list', { name: 'Still true?' })).getByText('Butyl')).toBeTruthy();
    await tap(workshop, 'No. Ask these again.');
    expect(heading()).toBe('Which gloves are on?');
  });

  it('lets a reading out of range in only with a reason, and shows the range only then', async () => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
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
    await tap(workshop, 'Go on: Filter the leach liquor');
    expect(heading()).toBe('Where are you working?');
  });

  it('asks who holds the phone before anything else', async () => {
    const workshop = await filtering();
    workshop.person.value = null;
    show(workshop);
    await tap(workshop, 'Tobias');
    expect(workshop.person.value).toBe(workshop.tobias);
  });
});

describe('a stop', () => {
  const stopped = async (): Promise<Workshop> => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
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
    expect(cleared(workshop)?.body).toMatchObject({
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
    expect(cleared(workshop)?.body.outcome).toBe('stopped');
    expect(workshop.path.value).toEqual(['batches', workshop.batch]);
  });

  it('stays told in the clearance after it was made right', async () => {
    const workshop = await stopped();
    await tap(workshop, /^Fit glass fibre/);
    await fromTheFilter(workshop);
    const answers = cleared(workshop)?.body.answers ?? [];
    expect(answers.filter(({ stopped: how }) => how).map(({ answer }) => answer)).toEqual([
      'paper, stronger acid',
    ]);
    expect(cleared(workshop)?.body.outcome).toBe('cleared');
  });
});

describe('a clearance', () => {
  const complete = async (): Promise<Workshop> => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    await fromTheFilter(workshop);
    return workshop;
  };

  it('is given when every question has its answer, and begins its step', async () => {
    const workshop = await complete();
    expect(heading()).toBe('Filtration may start.');
    expect(cleared(workshop)?.body.answers).toHaveLength(9);
    expect(workshop.drafts.size).toBe(0);
    await tap(workshop, 'Begin filtering');
    const [step] = workshop.state.value.steps.values();
    expect(step?.body).toMatchObject({ step: 'filtration', clearance: cleared(workshop)?.entryId });
    expect(workshop.path.value).toEqual(['batches', workshop.batch]);
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
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    workshop.breakStore({ code: 'disk-full' });
    await fromTheFilter(workshop);
    expect(screen.getByRole('alert').textContent).toMatch(/The phone is full/);
    workshop.breakStore(null);
    const answered = workshop.now.value;
    workshop.pass(30 * 60_000);
    reload(workshop);
    await tap(workshop, 'Write the list down');
    expect(heading()).toBe('Filtration may start.');
    const until = Date.parse(cleared(workshop)?.body.validUntil ?? '');
    expect(until).toBeLessThanOrEqual(Date.parse(answered) + 2 * 3_600_000);
  });
});

describe('starting a step', () => {
  it('offers the next in order first, and the clearance that holds', async () => {
    const workshop = await filtering();
    show(workshop);
    await upToTheFilter(workshop);
    await fromTheFilter(workshop);
    workshop.path.value = ['batches', workshop.batch, 'step'];
    reload(workshop);
    expect(screen.getByRole('link', { name: /^Dilute the acid/ })).toBeTruthy();
    const filter = screen.getByRole('link', { name: /^Filter the leach liquor/ });
    expect(filter.textContent).toMatch(/Cleared until/);
    expect(filter.getAttribute('href')).toBe(`#/clearance/${cleared(workshop)?.entryId}`);
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
