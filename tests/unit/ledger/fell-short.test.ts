/** A treatment that was told to have reached its end, and whose last pH says otherwise, is told of where its waste stands. */
import { expect, test } from 'vitest';
import { flags } from '../../../src/ledger/flags';
import { begun, can, dose, id, potRead, pour, Scribe, tip, treatmentEnd, wash } from './scribe';

const gone = (n: number) =>
  ({ kind: 'container-marked', v: 1, containerId: id('c0', n), mark: 'gone' }) as const;

function treated(ph: string): Scribe {
  const scribe = new Scribe();
  const told = [can(1), can(2), wash(1, '2', 'leach-liquor'), pour(1, 1, '2'), begun(1, 1), dose(1, '20')];
  for (const body of [...told, potRead(1, ph), treatmentEnd(1)]) scribe.write(body);
  return scribe;
}

const toldAt = ({ state }: Scribe) =>
  flags(state).flatMap((flag) => (flag.code === 'treatment-fell-short' ? flag.about.containerId : []));

test('it is where it was treated', () => {
  expect(toldAt(treated('7.5'))).toEqual([id('c0', 1)]);
  expect(toldAt(treated('9'))).toEqual([]);
});

test('what stands here comes before what is gone, and what went last before what went first', () => {
  const scribe = treated('7.5');
  scribe.write(tip(1, 2, '1'));
  scribe.write(gone(1));
  expect(toldAt(scribe)).toEqual([id('c0', 2)]);
  scribe.write(gone(2));
  expect(toldAt(scribe)).toEqual([id('c0', 2)]);
});
