import { act, screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { requiredBefore } from '../../../src/ledger/step-offers';
import type { Item } from '../../../src/safety/checklist-item';
import { checklists } from '../../../src/safety/checklists';
import { dayField } from '../../../src/safety/stated-time';
import { workshopInMemory } from '../../support/shell-in-memory';
import {
  answerInOrder,
  answerUntil,
  finished,
  goTo,
  heading,
  hood,
  itemOf,
  leadsTo,
  opened,
  reload,
  show,
  station,
  tap,
  type Workshop,
} from './at-the-bench';

const place = itemOf('filtration', 'sta-place');
const { ask: where } = place;
const { ask: ribbon } = itemOf('filtration', 'sta-ribbon');
const { ask: wind } = itemOf('filtration', 'sta-wind');
const { ask: gloves } = itemOf('filtration', 'fil-gloves');
const noDuct =
  place.kind === 'choice' ? place.choices.find(({ station: kind }) => kind === 'ductless-hood')?.answer : '';
const doorOf = ({ doors }: Item): string => doors?.find(({ leads }) => leads === 'answer-again')?.do ?? '';

async function withStations(): Promise<Workshop & { hoodId: string; yardId: string }> {
  const workshop = await opened('filtration');
  const hoodId = await station(workshop, 'Hood 1', hood);
  const yardId = await station(workshop, 'Yard', { is: 'outdoors' });
  show(workshop);
  return { ...workshop, hoodId, yardId };
}

const cleared = async (workshop: Workshop): Promise<void> => {
  await tap(workshop, /^Hood 1/);
  await answerUntil(workshop);
};

describe('the place of a list', () => {
  it('is asked once among the stations in use, stands in the top line and is the answer', async () => {
    const workshop = await withStations();
    await workshop.does({ do: 'give-up-station', stationId: workshop.yardId });
    expect(heading()).toBe(where);
    expect(screen.queryByRole('button', { name: /^Yard/ })).toBeNull();
    await tap(workshop, /^Hood 1/);
    expect(workshop.station.value).toBe(workshop.hoodId);
    expect(heading()).toBe(ribbon);
    expect(screen.getByText(/^Filter the leach liquor, B.01, Hood 1$/)).toBeTruthy();
    await goTo(workshop, `check/${workshop.batch}/cementation`);
    expect(heading()).toBe(ribbon);
  });

  it('stands on the clearance, which ends when the place changes', async () => {
    const workshop = await withStations();
    await cleared(workshop);
    expect(heading()).toBe('Filtration may start.');
    expect(screen.getByText('Hood 1')).toBeTruthy();
    expect(finished(workshop)?.body).toMatchObject({ stationId: workshop.hoodId, place: 'Hood 1' });
    await act(async () => workshop.shell.chooseStation(workshop.yardId));
    expect(heading()).toBe('This clearance does not hold.');
    expect(screen.getByRole('alert').textContent).toMatch(/gone through at another place/);
  });

  it('that has no duct stops at once, with a door to another place', async () => {
    const workshop = await withStations();
    const cabinet = await station(workshop, 'Filter cabinet', { is: 'ductless-hood' });
    await tap(workshop, /^Filter cabinet/);
    expect(workshop.station.value).toBe(cabinet);
    expect(screen.getByText('STOP')).toBeTruthy();
    await tap(workshop, doorOf(place));
    await tap(workshop, /^Yard/);
    expect(heading()).toBe(wind);
    expect(workshop.station.value).toBe(workshop.yardId);
  });

  it('whose air was measured too slow stops the list and says why, and measured again lets it begin', async () => {
    const workshop = await withStations();
    const measured = (value: string) =>
      ({
        ...hood,
        face: { speed: { value, unit: 'm/s' }, measuredOn: dayField(workshop.now.value) },
      }) as const;
    const stationId = await station(workshop, 'Lab hood', measured('0.30'));
    await tap(workshop, /^Lab hood/);
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(screen.getByText(/Too slow: it lets gas out/)).toBeTruthy();
    await act(async () => {
      await workshop.does({ do: 'change-station', stationId, name: 'Lab hood', station: measured('0.50') });
    });
    await tap(workshop, 'Begin again');
    expect(heading()).toBe(ribbon);
  });

  it('that nobody has measured goes on with the ribbon, and that stays in the record', async () => {
    const workshop = await withStations();
    await cleared(workshop);
    expect(finished(workshop)?.body.answers[0]).toMatchObject({
      item: 'sta-place',
      reason: 'Nobody has measured the air in the opening. Have it measured.',
    });
  });

  it('is not one that was given up, though the phone was there', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Hood 1/);
    await act(async () => {
      await workshop.does({ do: 'give-up-station', stationId: workshop.hoodId });
    });
    expect(heading()).toBe(where);
  });

  it('keeps a stop of the place before in the record', async () => {
    const workshop = await withStations();
    await station(workshop, 'Filter cabinet', { is: 'ductless-hood' });
    await tap(workshop, /^Filter cabinet/);
    await tap(workshop, doorOf(place));
    await cleared(workshop);
    const stops = finished(workshop)?.body.answers.filter(({ stopped }) => stopped);
    expect(stops?.map(({ answer }) => answer)).toEqual([noDuct]);
  });

  it('that is not written down may be answered by hand, and stays visible', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Somewhere else/);
    expect(leadsTo(/^Describe this place/)).toBe(
      `#/record/stations/new/for/check/${workshop.batch}/filtration`,
    );
    await answerInOrder(workshop);
    await answerUntil(workshop);
    expect(finished(workshop)?.body.place).toBeUndefined();
    expect(screen.getByText('not written down')).toBeTruthy();
    await tap(workshop, 'Begin filtering');
    expect(screen.getByText(/cleared, place not written down/)).toBeTruthy();
  });

  it('can be changed before the first answer', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Hood 1/);
    await tap(workshop, 'Other place');
    await tap(workshop, /^Yard/);
    expect(heading()).toBe(wind);
  });

  it('is taken as it is now where nothing was answered yet', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Hood 1/);
    await act(async () => workshop.shell.chooseStation(workshop.yardId));
    expect(heading()).toBe(wind);
  });

  it('that was described as another kind meanwhile begins the list again', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Hood 1/);
    await answerInOrder(workshop);
    await act(async () => {
      await workshop.does({
        do: 'change-station',
        stationId: workshop.hoodId,
        name: 'Hood 1',
        station: { is: 'ductless-hood' },
      });
    });
    expect(screen.getByText(/^Hood 1 was described anew/)).toBeTruthy();
    await tap(workshop, 'Begin again');
    expect(screen.getByText('STOP')).toBeTruthy();
  });

  it('begins the list again when the phone has moved, and says so', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Hood 1/);
    await answerInOrder(workshop);
    await act(async () => workshop.shell.chooseStation(workshop.yardId));
    expect(screen.getByText(/begun at Hood 1, and the phone is at Yard now/)).toBeTruthy();
    await tap(workshop, 'Begin again');
    expect(heading()).toBe(wind);
  });

  it('is the same after a reload', async () => {
    const workshop = await withStations();
    await tap(workshop, /^Hood 1/);
    await answerInOrder(workshop);
    reload(workshop);
    expect(screen.getByText(/Hood 1$/)).toBeTruthy();
    expect(heading()).toBe(gloves);
  });

  it('that is known asks for less, and the choice of steps counts only what will be asked', async () => {
    const workshop = await withStations();
    workshop.shell.chooseStation(workshop.hoodId);
    await goTo(workshop, `batches/${workshop.batch}/step`);
    const told = screen.getByRole('link', { name: /^Filter the leach liquor/ }).textContent;
    const count = Number(/(\d+) questions first/.exec(told ?? '')?.[1]);
    await goTo(workshop, `check/${workshop.batch}/filtration`);
    const [, at, of] = /(\d+) of (\d+)/.exec(screen.getByText(/^\d+ of \d+$/).textContent ?? '') ?? [];
    expect(count).toBe(Number(of) - Number(at) + 1);
  });

  it('of the walk round is kept with it: elsewhere another walk comes first', async () => {
    const workshop = await workshopInMemory();
    const { shell, batch } = workshop;
    const hoodId = await station(workshop, 'Hood 1', hood);
    const yardId = await station(workshop, 'Yard', { is: 'outdoors' });
    shell.chooseStation(hoodId);
    show(workshop);
    await goTo(workshop, 'check/-/spill-response-readiness');
    await answerUntil(workshop);
    expect(finished(workshop)?.body).toMatchObject({ step: 'readiness', stationId: hoodId });
    const filter = checklists.get('filtration');
    const first = (stationId: string) => {
      const asking = { batchId: batch, stationId, who: shell.person.value, at: shell.now.value };
      return filter && requiredBefore(shell.state.value, filter, asking).map(({ id }) => id);
    };
    expect(first(hoodId)).toEqual([]);
    expect(first(yardId)).toEqual(['spill-response-readiness']);
  });

  it('is said or changed where a step is started', async () => {
    const workshop = await withStations();
    await goTo(workshop, `batches/${workshop.batch}/step`);
    expect(screen.getByRole('link', { name: /^Place/ }).textContent).toMatch(/Not chosen yet/);
    await goTo(workshop, leadsTo(/^Place/));
    await tap(workshop, 'Yard');
    expect(screen.getByRole('link', { name: /^Place/ }).textContent).toMatch(/Yard/);
  });
});
