/** Which check of the ventilation still speaks of a step, at a place, now. */
import { expect, test } from 'vitest';
import type { IntentionOf } from '../../../src/ledger/intention';
import { gramsInLot, ventilationFound } from '../../../src/ledger/ventilation-found';
import { at, litres, Scribe } from './scribe';

const feed = { capacitors: 'mixed', era: 'unknown', mass: { value: '1', unit: 'kg' } } as const;

function atTheYard() {
  const scribe = new Scribe();
  scribe.does({ do: 'open-batch', feed }, 0);
  scribe.does({ do: 'add-station', name: 'Yard', station: { is: 'outdoors' } }, 1);
  scribe.does({ do: 'add-station', name: 'Hood', station: { is: 'ductless-hood' } }, 1);
  const [batchId = ''] = scribe.state.batches.keys();
  const [stationId = '', hood = ''] = scribe.state.stations.keys();
  const check: IntentionOf<'log-ventilation-check'> = {
    do: 'log-ventilation-check',
    batchId,
    stationId,
    charge: {
      step: 'leach',
      metals: { known: 'total', mass: { value: '8', unit: 'g' } },
      acid: { volume: litres('0.4'), strength: { value: '7.9', unit: 'mol/L' } },
      release: { value: '2', unit: 'h' },
      limit: 'niosh-15-min',
    },
    verdict: 'enough',
    portion: { value: '0.008', unit: 'kg' },
  };
  const asked = { batchId, stationId, step: 'leach', since: at(0) };
  return { scribe, check, asked, hood };
}

test('the newest one of this step, batch and place', () => {
  const { scribe, check, asked, hood } = atTheYard();
  expect(ventilationFound(scribe.state, asked)).toBeNull();
  scribe.does({ ...check, verdict: 'split' }, 5);
  scribe.does(check, 6);
  const found = ventilationFound(scribe.state, asked);
  expect(found).toMatchObject({ at: at(6), body: { verdict: 'enough' } });
  expect(found && gramsInLot(found.body)).toBe('8');
  for (const other of [
    { batchId: null },
    { step: 'cementation' },
    { stationId: hood },
    { stationId: undefined },
  ])
    expect(ventilationFound(scribe.state, { ...asked, ...other })).toBeNull();
});

test('from that moment on, and none from before it', () => {
  const { scribe, check, asked } = atTheYard();
  scribe.does(check, 5);
  expect(ventilationFound(scribe.state, { ...asked, since: at(5) })).not.toBeNull();
  expect(ventilationFound(scribe.state, { ...asked, since: at(6) })).toBeNull();
});

test('none from before the place was last described: its fan may be another one', () => {
  const { scribe, check, asked } = atTheYard();
  scribe.does(check, 5);
  const { stationId } = asked;
  scribe.does({ do: 'change-station', stationId, name: 'Yard', station: { is: 'outdoors' } }, 6);
  expect(ventilationFound(scribe.state, asked)).toBeNull();
  scribe.does(check, 7);
  expect(ventilationFound(scribe.state, asked)?.at).toBe(at(7));
});
