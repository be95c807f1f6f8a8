import { describe, expect, test } from 'vitest';
import { asHeld, restToPlace, stillUnplaced, unitsOf } from '../../../src/ledger/amounts';
import { describedFault } from '../../../src/ledger/described-container';
import type { Amount } from '../../../src/ledger/entries/containers';
import { emptyState, type StreamState } from '../../../src/ledger/state';
import { grams, id, litres, Scribe, wash } from './scribe';

const gallons = (value: string) => ({ value, unit: 'US gal' }) as const;

/** A stream of this volume of which some was placed. */
function stream(volume: ReturnType<typeof litres> | ReturnType<typeof gallons>, placed: Amount): StreamState {
  const scribe = new Scribe();
  scribe.write({ ...wash(1, '1'), liquid: { volume, findings: [], freeAcid: [] } });
  const logged = scribe.state.streams.get(id('50', 1));
  if (!logged) throw new Error('nothing was logged');
  const unplaced = stillUnplaced(logged.amount, asHeld(placed));
  return { ...logged, placed: asHeld(placed), unplaced };
}

describe('what of a stream is still to be placed', () => {
  test.each([
    [gallons('1.3'), litres('0'), gallons('1.3')],
    [gallons('1.3'), litres('1.00'), litres('3.921')],
    [litres('3.40'), litres('1.15'), litres('2.25')],
    [litres('1'), litres('0.9995'), litres('0.001')],
  ])('%o logged, %o placed: %o', (logged, placed, rest) => {
    expect(restToPlace(stream(logged, placed))).toEqual(rest);
  });

  test.each([
    [litres('1'), litres('0.9995'), '0.0005'],
    [litres('1'), litres('0.9996'), '0'],
    [gallons('1.3'), litres('4.921'), '0'],
    [litres('0.0004'), litres('0'), '0.0004'],
  ])('%o logged, %o placed leaves %s L: less than a vessel can show is nothing', (logged, placed, left) => {
    expect(stream(logged, placed).unplaced.volume.toFixed()).toBe(left);
  });
});

test.each([
  [litres('1'), ['L', 'mL', 'US gal']],
  [grams('1'), ['g', 'kg', 'lb']],
  [grams('0'), ['L', 'mL', 'US gal', 'g', 'kg', 'lb']],
])('%o in a container can be taken out in %j', (held, units) => {
  expect(unitsOf(asHeld(held))).toEqual(units);
});

test.each([
  ['4.50', null],
  ['4.51', 'over-fill-limit'],
  ['5.00', 'over-fill-limit'],
  ['5.01', 'over-capacity'],
])('%s L into a container described with 5 L: %s', (volume, code) => {
  const described = {
    do: 'open-container',
    vessel: 'jerrican',
    capacity: litres('5'),
    material: 'HDPE',
    cap: 'vented',
    openedOn: '2026-03-02',
  } as const;
  const filling = { added: asHeld(litres(volume)), side: [{ thing: 'wash-water' }], field: 'into' };
  expect(describedFault(emptyState, described, filling)?.code ?? null).toBe(code);
});
