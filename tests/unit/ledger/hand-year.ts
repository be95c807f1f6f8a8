/** A year of a small shelf that was worked by hand, for whoever tells of it. */
import type { Body, PlainBody } from '../../../src/ledger/entries/body';
import type { State } from '../../../src/ledger/state';
import { batch, liquid, shelf, solid } from './dated';
import { at, begun, dose, grams, id, potRead, pour, Scribe, tip, treatmentEnd } from './scribe';

/** Minutes as the notebook counts, of a moment in UTC. */
export const minutesAt = (iso: string): number => (Date.parse(iso) - Date.parse(at(0))) / 60_000;

export const withCopper = (
  [n, volume, density, stream]: [number, string, string, 'barren-liquor' | 'wash-water'],
  copper: string,
  inBatch: number | null = null,
): PlainBody => {
  const body = liquid(n, volume, density, stream, inBatch) as Extract<PlainBody, { kind: 'stream-logged' }>;
  if (!body.liquid) throw new Error('no liquid');
  const findings = [{ by: 'assay', metal: 'Cu', concentration: { value: copper, unit: 'g/L' } } as const];
  return { ...body, liquid: { ...body.liquid, findings } };
};

export const handOver = (n: number, ...cans: readonly number[]): PlainBody => ({
  kind: 'handed-over',
  v: 1,
  handOverId: id('40', n),
  collector: { name: 'Fen Carriers' },
  destination: 'Salt Quay works',
  containers: cans.map((can) => ({ containerId: id('c0', can) })),
  signatures: {},
});

/*
 * 2028 of a shelf in Berlin, worked by hand. Copper in g, mass in kg.
 *
 *  2027-11-10  1: barren liquor, 10.0 L × 6.0 g/L (written as 5.0, corrected in 2029) = 60.0, 10.0 × 1.100 = 11.0   into C-01
 *  2028-02-01  2: wash water, 20.0 L × 0.50 = 10.0; 20.0 × 1.000 = 20.0                                            into C-02
 *  2028-03-05  3: barren liquor of B-01, 8.0 L × 5.0 = 40.0; 8.0 × 1.100 = 8.8                                     into C-03
 *  2028-03-06  40.0 of silver weighed, of B-01
 *  2028-03-20  C-01 handed over; on 2028-03-25 it comes back
 *  2028-04-10  C-01 and C-02 handed over: 60.0 + 10.0 = 70.0; 11.0 + 20.0 = 31.0
 *  2028-05-02  0.5 L of C-03 as a sample: 40.0 × 0.5 / 8.0 = 2.5; 37.5 and 7.5 L stay
 *  2028-06-01  C-03 treated; 0.020 g/L read in it: 7.5 × 0.020 = 0.15 still dissolved, 37.35 taken out of solution
 *  2028-06-10  4: sludge of B-01, 1.5 kg, in no container
 *  2028-12-31 23:30 UTC  5: wash water, 4.0 L × 1.0 = 4.0; 4.0: the next year in Berlin
 *
 *  In:  60.0 at the start + 50.0 that arose = 110.0
 *  Out: 70.0 handed over + 2.5 sample + 37.35 treated + 0.15 at the end = 110.0
 *  Arose: 20.0 in February, 8.8 in March, 28.8 in the year; at the start 11.0.
 *  Copper for a gram of silver, of B-01: 40.0 / 40.0 = 1.0; waste 8800 / 40.0 = 220.
 *  Range of what arose: 5 % for the vessel, 5 % for the assay, so 7.07 % of each; √(0.707² + 2.828²) = 2.915.
 */
export function handYear(): State {
  const scribe = new Scribe();
  const writes = (moment: string, ...bodies: readonly Body[]) =>
    bodies.map((body) => scribe.write(body, minutesAt(moment)));
  writes('2027-11-01T08:00:00.000Z', ...shelf(3), batch(1));
  const [first] = writes(
    '2027-11-10T08:00:00.000Z',
    withCopper([1, '10.0', '1.100', 'barren-liquor'], '5.0'),
    pour(1, 1, '10.0'),
  );
  writes(
    '2028-02-01T08:00:00.000Z',
    withCopper([2, '20.0', '1.000', 'wash-water'], '0.50'),
    pour(2, 2, '20.0'),
  );
  writes(
    '2028-03-05T08:00:00.000Z',
    withCopper([3, '8.0', '1.100', 'barren-liquor'], '5.0', 1),
    pour(3, 3, '8.0'),
  );
  writes('2028-03-06T08:00:00.000Z', {
    kind: 'batch-recovered',
    v: 1,
    batchId: id('ba', 1),
    recovery: { what: 'silver', mass: grams('40.0') },
  });
  writes('2028-03-20T08:00:00.000Z', handOver(1, 1));
  writes('2028-03-25T08:00:00.000Z', {
    kind: 'load-rejected',
    v: 1,
    handOverId: id('40', 1),
    containerIds: [id('c0', 1)],
    why: 'cap leaked',
  });
  writes('2028-04-10T08:00:00.000Z', handOver(2, 1, 2));
  writes('2028-05-02T08:00:00.000Z', { ...tip(3, null, '0.5'), purpose: 'sample' });
  const findings = [
    {
      by: 'photometer',
      metal: 'Cu',
      concentration: { value: '0.020', unit: 'g/L' },
      reference: 'x',
    } as const,
  ];
  writes(
    '2028-06-01T08:00:00.000Z',
    begun(1, 3),
    dose(1, '400'),
    potRead(1, '9', { findings }),
    treatmentEnd(1),
  );
  writes('2028-06-10T08:00:00.000Z', solid(4, '1500', 'hydroxide-sludge', 1));
  writes('2028-12-31T23:30:00.000Z', withCopper([5, '4.0', '1.000', 'wash-water'], '1.0'));
  if (first)
    writes('2029-02-01T08:00:00.000Z', {
      kind: 'entry-corrected',
      v: 1,
      corrects: first.id,
      body: withCopper([1, '10.0', '1.100', 'barren-liquor'], '6.0'),
      reason: 'misread',
    });
  return scribe.state;
}
