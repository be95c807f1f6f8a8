import { screen } from '@testing-library/preact';
import { expect, it } from 'vitest';
import { hood, itemOf, station } from './at-the-bench';
import { runState, user } from './treatment-run-state';

const { ask: warm } = itemOf('neutralise-lime', 'lim-hot');
const { ask: after } = itemOf('neutralise-lime', 'lim-ph');

/** A treatment that runs on its clearance. */
async function running() {
  const phone = await runState();
  await phone.allows();
  const cleared = await phone.clears();
  const { body } = await phone.does({
    do: 'log-treatment-happened',
    containerId: phone.barren,
    stages: [{ agent: 'hydrated-lime', targetPh: { value: '9', unit: '1' } }],
    targetPh: { value: '9', unit: '1' },
    clearance: cleared.id,
  });
  const treatmentId = body.kind === 'treatment-begun' ? body.treatmentId : '';
  phone.show(`treatment/${treatmentId}`);
  return { ...phone, treatmentId };
}

it('a treatment asks on its page what its list asks while it runs, and comes back there', async () => {
  const phone = await running();
  expect(await screen.findByRole('link', { name: new RegExp(`^Asked after it: ${after}`) })).toBeTruthy();
  await phone.follow(new RegExp(`^Asked while it runs: ${warm}`));
  phone.pass(1_000);
  for (const name of ['4', '0', /^Enter/]) await user.click(screen.getByRole('button', { name }));
  expect(phone.shell.path.value).toEqual(['treatment', phone.treatmentId]);
  phone.show();
  await phone.title(/./);
  expect(screen.queryByText(new RegExp(`^Asked while it runs: ${warm}`))).toBeNull();
});

it('the end of a treatment names what was not asked, and is not kept from ending', async () => {
  const phone = await running();
  phone.show(`treatment/${phone.treatmentId}/end`);
  expect(await screen.findByText(`Not answered yet: ${warm}; ${after}.`)).toBeTruthy();
  await user.click(screen.getByRole('radio', { name: 'Stopped before the end' }));
  await user.type(screen.getByLabelText(/^Why, or what else/), 'Dark.');
  await user.click(screen.getByRole('button', { name: 'End it' }));
  expect(phone.state.value.treatments.get(phone.treatmentId)?.ended).not.toBeNull();
  phone.show(`treatment/${phone.treatmentId}`);
  expect(await screen.findByRole('link', { name: new RegExp(`^Asked after it: ${after}`) })).toBeTruthy();
});

it('a treatment does not begin on a list that was gone through at another place', async () => {
  const phone = await runState();
  await phone.allows();
  const { id, body } = await phone.clears();
  if (body.kind !== 'checklist-finished') throw new Error('no list was finished');
  await phone.does({ do: 'withdraw-entry', withdraws: id, reason: 'It says where, from now on.' });
  const { kind: _, v: __, ...list } = body;
  const hoodId = await station(phone, 'Hood 1', hood);
  const yardId = await station(phone, 'Yard', { is: 'outdoors' });
  const runId = phone.shell.newId();
  await phone.does({ do: 'finish-checklist', ...list, runId, stationId: hoodId, place: 'Hood 1' });
  phone.station.value = hoodId;
  phone.show(`treatment/begin/${phone.barren}`);
  expect(await screen.findByText('Nothing that is known holds it back.')).toBeTruthy();
  phone.station.value = yardId;
  phone.show();
  expect(await screen.findByText(/gone through at another place/)).toBeTruthy();
});
