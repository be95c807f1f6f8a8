/** What a list shows of what is known: that it has changed, what the app worked out, an hour that has passed. */
import { act, fireEvent, screen } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { workshopInMemory } from '../../support/shell-in-memory';
import {
  answerInOrder,
  answerUntil,
  finished,
  goTo,
  heading,
  hood,
  itemOf,
  key,
  leadsTo,
  opened,
  readies,
  reload,
  show,
  station,
  tap,
  type Workshop,
} from './at-the-bench';

const { ask: where } = itemOf('filtration', 'sta-place');
const { ask: ribbon } = itemOf('filtration', 'sta-ribbon');

const radio = {
  change: 'item-added',
  list: 'filtration',
  item: {
    id: 'own-radio',
    kind: 'confirm',
    ask: 'Radio off',
    stop: false,
    reason: 'The pump is not heard over it.',
  },
} as const;

describe('a list that is other than the last time', () => {
  const changed = async (): Promise<Workshop> => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerUntil(workshop);
    await workshop.does({ do: 'change-list', change: radio });
    await goTo(workshop, `check/${workshop.batch}/filtration`);
    return workshop;
  };

  it('says what is new before its first question, once', async () => {
    const workshop = await changed();
    expect(heading()).toBe('This list has changed since you last went through it');
    expect(screen.getByText('Radio off')).toBeTruthy();
    expect(screen.getByText('New question of this workshop')).toBeTruthy();
    await tap(workshop, 'I have read it. Begin.');
    expect(heading()).toBe(where);
    await answerInOrder(workshop);
    reload(workshop);
    expect(heading()).toBe(ribbon);
  });

  it('says nothing to somebody who has never gone through it', async () => {
    const workshop = await changed();
    await act(async () => {
      workshop.person.value = workshop.tobias;
      await readies(workshop);
    });
    expect(heading()).toBe(where);
  });

  it('begins again where it was changed in the middle', async () => {
    const workshop = await opened('filtration');
    show(workshop);
    await answerInOrder(workshop);
    await act(async () => {
      await workshop.does({ do: 'change-list', change: radio });
    });
    expect(heading()).toBe('Begin this list again');
    expect(screen.getByText(/The list was changed since/)).toBeTruthy();
    await tap(workshop, 'Begin again');
    expect(heading()).toBe(where);
  });
});

type Charge = Extract<Parameters<Workshop['does']>[0], { do: 'log-ventilation-check' }>['charge'];

describe('an answer that the app works out', () => {
  const asked = itemOf('leach-start', 'lst-vent');
  const [enough = '', split = ''] =
    asked.kind === 'choice'
      ? ['enough', 'split'].map((is) => asked.choices.find(({ result }) => result === is)?.answer)
      : [];
  const asButton = (answer: string): RegExp => new RegExp(`^${answer}`, 'i');

  const atTheCharge = async (): Promise<Workshop & { hoodId: string }> => {
    const workshop = await opened('leach-start');
    const hoodId = await station(workshop, 'Hood 1', hood);
    workshop.station.value = hoodId;
    show(workshop);
    await answerUntil(workshop, asked.ask);
    return { ...workshop, hoodId };
  };

  const charge: Charge = {
    step: 'leach',
    metals: { known: 'total', mass: { value: '6', unit: 'g' } },
    acid: { volume: { value: '200', unit: 'mL' }, strength: { value: '30', unit: '%' } },
    release: { value: '60', unit: 'min' },
    limit: 'osha-ceiling',
  };

  const worksOut = (
    workshop: Workshop & { hoodId: string },
    verdict: 'enough' | 'split',
    more: { readonly charge?: Charge; readonly portion?: { value: string; unit: 'g' } } = {},
  ) =>
    act(async () => {
      await workshop.does({
        do: 'log-ventilation-check',
        batchId: workshop.batch,
        stationId: workshop.hoodId,
        charge,
        verdict,
        ...more,
      });
    });

  it('cannot be tapped before that, and leads to where it is done', async () => {
    const workshop = await atTheCharge();
    expect(heading()).toBe(asked.ask);
    expect(screen.queryByRole('button', { name: asButton(enough) })).toBeNull();
    expect(screen.getByText(asButton(enough))).toBeTruthy();
    expect(leadsTo(/^Work it out/)).toBe(`#/ventilation/${workshop.batch}/leach-start`);
  });

  it('is given as it was worked out for this batch and place, with a tap', async () => {
    const workshop = await atTheCharge();
    await worksOut(workshop, 'enough');
    await tap(workshop, asButton(enough));
    expect(heading()).not.toBe(asked.ask);
    await answerUntil(workshop);
    const given = finished(workshop)?.body.answers.find(({ item }) => item === asked.id);
    expect(given?.answer).toBe(enough);
  });

  it('brings the largest lot of the place as the limit of the first portion, and says from what', async () => {
    const workshop = await atTheCharge();
    await worksOut(workshop, 'enough', { portion: { value: '4.35', unit: 'g' } });
    await tap(workshop, asButton(enough));
    await answerUntil(workshop, itemOf('leach-start', 'lst-first').ask);
    await key(workshop, '5');
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(document.body.textContent).toMatch(/4\.35.*Ventilation check of .* for Hood 1/);
  });

  it('is not taken from a check of another step', async () => {
    const workshop = await atTheCharge();
    await worksOut(workshop, 'enough', { charge: { step: 'filtration' } });
    expect(screen.queryByRole('button', { name: asButton(enough) })).toBeNull();
  });

  it('stops where the place is not enough', async () => {
    const workshop = await atTheCharge();
    await worksOut(workshop, 'split');
    await tap(workshop, asButton(split));
    expect(screen.getByText('STOP')).toBeTruthy();
  });

  it('is worked out anew once the place is described anew', async () => {
    const workshop = await atTheCharge();
    await worksOut(workshop, 'enough');
    workshop.pass(1_000);
    await act(async () => {
      await workshop.does({
        do: 'change-station',
        stationId: workshop.hoodId,
        name: 'Hood 1',
        station: hood,
      });
    });
    expect(screen.queryByRole('button', { name: asButton(enough) })).toBeNull();
    expect(leadsTo(/^Work it out/)).toMatch(/ventilation/);
  });
});

describe('the hour at which somebody from afar checks', () => {
  const walk = 'spill-response-readiness';
  const { ask: neutraliser } = itemOf(walk, 'rdy-kit');

  /** Tobias is to call at 23:15. */
  async function named(start: string): Promise<Workshop> {
    const workshop = await workshopInMemory(start, ['check', '-', walk]);
    show(workshop);
    await answerUntil(workshop, neutraliser);
    return workshop;
  }

  it('is asked again when it has passed by the end of the list', async () => {
    const workshop = await named('2026-05-12T23:09:00.000Z');
    workshop.pass(6 * 60_000);
    await answerUntil(workshop);
    expect(heading()).toBe('When does Tobias call?');
    expect(screen.getByText('Tobias was to call at 23:15. That has passed.')).toBeTruthy();
    expect(finished(workshop)).toBeUndefined();
    fireEvent.input(screen.getByLabelText('Hour'), { target: { value: '23:50' } });
    await tap(workshop, 'Keep');
    expect(finished(workshop)?.body.second).toEqual({ name: 'Tobias', at: '2026-05-12T23:50:00.000Z' });
    expect(heading()).toBe('Acid may be opened.');
  });

  it('is taken as it stands while it is still to come', async () => {
    const workshop = await named('2026-05-12T20:00:00.000Z');
    await answerUntil(workshop);
    expect(finished(workshop)?.body.second).toEqual({ name: 'Tobias', at: '2026-05-12T23:15:00.000Z' });
  });
});

describe('leaving a leach', () => {
  it('is stopped at an hour of quiet that is longer than the leach has run', async () => {
    const workshop = await opened('leach-check');
    await workshop.does({
      do: 'log-step-happened',
      batchId: workshop.batch,
      step: 'leach',
      clearance: null,
    });
    workshop.pass(60_000);
    workshop.shell.chooseStation(await station(workshop, 'Hood 1', hood));
    show(workshop);
    await answerUntil(workshop, itemOf('leach-check', 'lck-stay').ask);
    await tap(workshop, 'Leaving');
    await answerUntil(workshop, itemOf('leach-check', 'lck-quiet').ask);
    await key(workshop, '90');
    expect(screen.getByText('STOP')).toBeTruthy();
    expect(document.body.textContent).toMatch(/By the record the step began at 08:00/);
  });
});
