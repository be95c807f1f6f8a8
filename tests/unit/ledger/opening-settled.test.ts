/** Of a record in which nothing was told for long, an opening tells the same of all that stands: nothing is recent, much still holds. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { containerFigures } from '../../../src/ledger/container-figures';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { ContainerMarked } from '../../../src/ledger/entries/containers';
import type { Entry } from '../../../src/ledger/entries/entry';
import { flags } from '../../../src/ledger/flags';
import { applyAll } from '../../../src/ledger/fold';
import { gapsOf } from '../../../src/ledger/readiness';
import type { ContainerState, State } from '../../../src/ledger/state';
import { anyLife, lifeStreams } from './any-life';
import { anyRecord } from './any-record';
import { flagsAtHand, reopened } from './opened-again';
import { differences } from './same-told';
import { at, benchTest, can, id, pour, Scribe, tip, written } from './scribe';
import { toldOfContainers } from './told-of-containers';
import { toldOfPlace } from './told-of-place';

const two = fc.integer({ min: 1, max: 2 });
/** No two papers have one number. */
const many = fc.integer({ min: 1, max: 2 ** 31 });

const marked = fc
  .tuple(two, fc.constantFrom(...ContainerMarked.shape.mark.options))
  .map(([n, mark]): PlainBody => ({ kind: 'container-marked', v: 1, containerId: id('c0', n), mark }));

const changed = fc.tuple(two, fc.constantFrom('near-work', 'store')).map(
  ([n, area]): PlainBody => ({
    kind: 'container-changed',
    v: 1,
    containerId: id('c0', n),
    cap: 'vented',
    area: area as 'near-work' | 'store',
  }),
);

const moved = fc.oneof(
  fc.tuple(two, two).map(([s, n]): PlainBody => pour(s === 1 ? 1 : 3, n, '0.5')),
  fc.tuple(two, fc.option(two)).map(([a, b]): PlainBody => tip(a, b, '0.5')),
  two.map(
    (n): PlainBody => ({
      kind: 'water-lost',
      v: 1,
      containerId: id('c0', n),
      amount: { value: '0.5', unit: 'L' },
    }),
  ),
  two.map(
    (n): PlainBody => ({
      kind: 'level-read',
      v: 1,
      containerId: id('c0', n),
      level: { value: '1', unit: 'L' },
    }),
  ),
);

const printed = (p: number, container: number, paper: 'labels' | 'disposal'): PlainBody => ({
  kind: 'paper-made',
  v: 1,
  paperId: id('9a', p),
  containerIds: [id('c0', container)],
  contentHash: '0'.repeat(64),
  fileName: `paper-${p}.pdf`,
  format: 'pdf',
  paper,
});

/** What was found out, said and printed of them. */
const told = fc.oneof(
  two.map((n): PlainBody => benchTest(n)),
  two.map(
    (n): PlainBody => ({
      kind: 'candidate-answered',
      v: 1,
      containerId: id('c0', n),
      scheme: 'rcra',
      code: 'D002',
      answer: 'accepted',
      saidBy: 'Collector',
      saidOn: '2026-03-02',
    }),
  ),
  fc
    .tuple(many, two, fc.constantFrom('labels' as const, 'disposal' as const))
    .map(([p, n, paper]) => printed(p, n, paper)),
);

/** Two containers that are marked over and over. */
const anyMarks: fc.Arbitrary<readonly Entry[]> = fc
  .array(fc.oneof({ weight: 3, arbitrary: marked }, moved, changed, told), { minLength: 2, maxLength: 14 })
  .map((all) => {
    const scribe = new Scribe();
    for (const body of [...lifeStreams, can(1, '10'), can(2, '10'), ...all]) scribe.write(body);
    return scribe.entries;
  });

/** Ten days after whatever was told. */
const [later, now] = [at(10 * 24 * 60), at(11 * 24 * 60)];
const when = { now, zone: 'Europe/Berlin', since: later };

describe('of what is long ago', () => {
  test.each([
    ['marks', anyMarks, 200],
    ['lives of two containers', anyLife, 100],
    ['whatever was written', anyRecord, 300],
  ] as const)('%s', (_, records, numRuns) => {
    fc.assert(
      fc.property(records.map(applyAll), (whole) => {
        const opened = reopened(whole, later, later);
        expect(flags(whole)).toEqual(expect.arrayContaining([...flags(opened)]));
        expect(flags(opened)).toEqual(expect.arrayContaining([...flagsAtHand(whole, opened)]));
        expect(differences(toldOfPlace(opened, when), toldOfPlace(whole, when))).toEqual([]);
        expect(differences(toldOfContainers(opened, when), toldOfContainers(whole, when))).toEqual([]);
      }),
      { numRuns },
    );
  });

  test('a label that was made before it was last empty is older than what is in it now', () => {
    const [filled, tippedOut] = [pour(1, 1, '1'), tip(1, null, '1')];
    const whole = written(
      can(1),
      ...lifeStreams,
      filled,
      printed(1, 1, 'labels'),
      tippedOut,
      filled,
      printed(2, 2, 'labels'),
    );
    const gapsIn = (state: State) => {
      const container = state.containers.get(id('c0', 1)) as ContainerState;
      return gapsOf(state, container, containerFigures(state, id('c0', 1)), when);
    };
    expect(gapsIn(whole)).toContainEqual({ code: 'label-not-made', made: at(4) });
    expect(gapsIn(reopened(whole, later, later))).toEqual(gapsIn(whole));
  });
});
