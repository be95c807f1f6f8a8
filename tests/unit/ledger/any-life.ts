/** Lives of two containers: what may befall them and the wastes in them. */
import fc from 'fast-check';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { begun, can, dose, grams, id, litres, marked, potRead, pour, Scribe, tip, wash } from './scribe';

/** 2 L with all its acid and some of its metals told; a slurry with its mud weighed. */
export const lifeStreams: readonly PlainBody[] = [
  {
    ...wash(1, '2', 'leach-liquor'),
    liquid: {
      volume: litres('2'),
      ph: { value: { value: '1.4', unit: '1' }, instrument: 'paper' },
      findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '12', unit: 'g/L' } }],
      freeAcid: [{ by: 'titration', result: { value: '1.31', unit: 'mol/L' } }],
    },
  },
  {
    ...wash(3, '1', 'leach-liquor'),
    stream: 'treated-slurry',
    solid: {
      wetMass: grams('300'),
      moisture: { by: 'not-determined' },
      holds: { liquor: 'not-determined' },
    },
  },
];

const two = fc.integer({ min: 1, max: 2 });
const few = fc.integer({ min: 1, max: 3 });
const amount = fc.constantFrom(litres('0'), litres('0.5'), litres('2'), grams('100'), grams('300'));

const befalls: fc.Arbitrary<PlainBody> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.tuple(few, two, amount).map(([s, c, a]) => ({ ...pour(s, c, '1'), amount: a })),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(two, fc.option(two), amount).map(([a, b, x]) => ({ ...tip(a, b, '1'), amount: x })),
  },
  fc
    .tuple(two, fc.constantFrom('0.5', '1', '2', '3'))
    .map(([n, v]): PlainBody => ({ kind: 'water-lost', v: 1, containerId: id('c0', n), amount: litres(v) })),
  fc.tuple(two, few).map(
    ([n, s]): PlainBody => ({
      kind: 'contents-determined',
      v: 1,
      containerId: id('c0', n),
      streamId: id('50', s),
      how: 'tests',
      saidBy: 'Maren',
    }),
  ),
  fc
    .tuple(two, amount)
    .map(([n, level]): PlainBody => ({ kind: 'level-read', v: 1, containerId: id('c0', n), level })),
  fc
    .tuple(
      two,
      fc.constantFrom('contents-doubtful', 'contents-known', 'gone', 'came-back', 'damaged', 'emptied'),
    )
    .map(([n, mark]) => marked(n, mark)),
  two.map((n) => begun(n, n)),
  two.map((n) => dose(n, '20')),
  fc.tuple(two, fc.constantFrom('1.5', '9.2')).map(([n, ph]) => potRead(n, ph)),
);

/** Test waste that nobody knows anything of, or that there was none of in the end. */
const testWaste: fc.Arbitrary<PlainBody> = fc
  .tuple(
    fc.constantFrom('0', '3'),
    fc.constantFrom('chloride-test-waste' as const, 'ammonia-test-waste' as const),
    fc.boolean(),
  )
  .map(([v, stream, told]) => ({
    ...wash(2, v),
    stream,
    liquid: {
      volume: litres(v),
      findings: [],
      freeAcid: told ? [{ by: 'titration', result: { value: '0.5', unit: 'mol/L' } } as const] : [],
    },
  }));

/** Two containers and three wastes, and all that may befall them; one entry, whichever, may have been withdrawn. */
export const anyLife: fc.Arbitrary<readonly Entry[]> = fc
  .tuple(testWaste, fc.array(befalls, { minLength: 1, maxLength: 10 }), fc.option(fc.nat(14)))
  .map(([test, befallen, withdrawn]) => {
    const scribe = new Scribe();
    for (const body of [test, ...lifeStreams, can(1, '10'), can(2, '10'), ...befallen]) scribe.write(body);
    const target = withdrawn === null ? undefined : scribe.entries[withdrawn]?.id;
    if (target) scribe.write({ kind: 'entry-withdrawn', v: 1, withdraws: target, reason: 'did not happen' });
    return scribe.entries;
  });
