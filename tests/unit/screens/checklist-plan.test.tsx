/** What a list before neutralising takes from the plan of its container: the base, the room for foam, the band of pH. */
import { screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { beginDraftName } from '../../../src/screens/treatment/run-stages';
import { logLiquid, openCan } from '../../support/waste-in-cans';
import {
  answerInOrder,
  answerUntil,
  goTo,
  heading,
  hood,
  itemOf,
  key,
  readied,
  show,
  station,
  tap,
} from './at-the-bench';

const room = itemOf('neutralise-lime', 'lim-room').ask;
const bag = itemOf('neutralise-lime', 'lim-base').ask;
const worn = itemOf('neutralise-lime', 'lim-face').ask;
const after = itemOf('neutralise-lime', 'lim-ph');

type Stage = { readonly agent: 'limestone' | 'hydrated-lime'; readonly ph: string };

/** At the list for a can of 5 L that holds 2.00 L, with a plan chosen. */
async function planned(...stages: readonly Stage[]) {
  const workshop = await readied();
  const containerId = await openCan(workshop);
  await logLiquid(workshop, 'barren-liquor', { value: '2.00', unit: 'L' }, containerId);
  workshop.shell.chooseStation(await station(workshop, 'Hood by the window', hood));
  workshop.shell.draft.keep(beginDraftName(containerId), {
    stages: stages.map(({ agent, ph }) => ({ agent, target: { typed: ph, unit: '1' } })),
    note: '',
    when: '',
  });
  show(workshop);
  await goTo(workshop, `check/container-${containerId}/neutralise-lime`);
  return { ...workshop, containerId };
}

const limestoneFirst = [
  { agent: 'limestone', ph: '5' },
  { agent: 'hydrated-lime', ph: '9.2' },
] as const;

describe('a list before neutralising', () => {
  it('stops at a vessel that is too full for the foam of limestone, and says why', async () => {
    const workshop = await planned(...limestoneFirst);
    await answerUntil(workshop, room);
    await key(workshop, '40');
    expect(heading()).toMatch(/Vessel fill before the base: 40/);
    expect(document.body.textContent).toMatch(/a carbonate: its foam needs two thirds of the vessel/);
    expect(document.body.textContent).toMatch(/By the record it is 40 % full/);
  });

  it('takes the same vessel for lime alone, which does not foam', async () => {
    const workshop = await planned({ agent: 'hydrated-lime', ph: '9.2' });
    await answerUntil(workshop, room);
    await key(workshop, '40');
    expect(heading()).not.toMatch(/Vessel fill/);
  });

  it('stops at a bag that is not of the plan', async () => {
    const workshop = await planned({ agent: 'hydrated-lime', ph: '9.2' });
    await answerUntil(workshop, bag);
    await tap(workshop, 'Limestone');
    expect(screen.getByText('STOP')).toBeTruthy();
  });

  it('takes limestone where the plan has it', async () => {
    const workshop = await planned(...limestoneFirst);
    await answerUntil(workshop, bag);
    await tap(workshop, 'Limestone');
    expect(heading()).not.toBe(bag);
    expect(screen.queryByText('STOP')).toBeNull();
  });
});

it('the pH after it has the band of the treatment that was begun', async () => {
  const workshop = await planned(...limestoneFirst);
  while (heading() !== 'Neutralisation may start.') {
    if (heading() === bag) await tap(workshop, 'Limestone');
    else if (heading() === worn) await tap(workshop, 'Goggles, gloves, mask');
    else await answerInOrder(workshop);
  }
  const clearance = [...workshop.state.value.checklists.keys()].at(-1) ?? '';
  await workshop.does({
    do: 'state-local-rule',
    stated: { rule: 'treatment-allowed', value: 'yes' },
    saidBy: 'County office',
    saidOn: '2026-05-02',
  });
  const ph = (value: string) => ({ value, unit: '1' }) as const;
  await workshop.does({
    do: 'log-treatment-happened',
    containerId: workshop.containerId,
    stages: [{ agent: 'hydrated-lime', targetPh: ph('9.2') }],
    targetPh: ph('9.2'),
    clearance,
  });
  await goTo(workshop, `later/${clearance}/${after.id}`);
  await key(workshop, '8.6');
  expect(document.body.textContent).toMatch(/Wanted: 8.7 to pH\s9.7/);
  expect(document.body.textContent).toMatch(/The plan goes to pH 9.2/);
});
