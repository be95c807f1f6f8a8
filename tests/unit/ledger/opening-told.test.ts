/** What is read of an opening is what is read of the whole record, of all that stands, runs, is due or awaited. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll, fold } from '../../../src/ledger/fold';
import { nearWork } from '../../../src/ledger/near-work';
import { seededWorkshop } from '../../support/seeded-workshop';
import type { Asking } from './asking';
import { dayBefore, reopened } from './opened-again';
import { differences } from './same-told';
import { at, can, id, pour, Scribe, wash } from './scribe';
import { toldBeforeTreating } from './told-before-treating';
import { toldOfContainers } from './told-of-containers';
import { toldOfPlace } from './told-of-place';

const zone = 'Europe/Berlin';

describe('of a workshop of some months', () => {
  const all = [...seededWorkshop({ entries: 6000, seed: 7 })];
  const now = (all.at(-1) as Entry).writtenAt;
  const since = dayBefore(now, 60);
  const when = { now, zone, since };
  const whole = applyAll(all);
  const opened = reopened(applyAll(all.slice(0, 5700)), since, dayBefore(now, 45));
  const state = all.slice(5700).reduce(fold, opened);

  test('nothing reached behind it', () => {
    expect(state.earlier?.reachedBehind).toBe(false);
  });

  test.each<readonly [string, Asking]>([
    ['the place, its walks, lists and months, and what runs in it', toldOfPlace],
    ['each container that stands here', toldOfContainers],
    ['what there is to know before one is treated', toldBeforeTreating],
  ])('%s', (_, told) => {
    const toldOfWhole = [...told(whole, when)];
    expect(toldOfWhole.length).toBeGreaterThan(20);
    expect(differences(told(state, when), toldOfWhole)).toEqual([]);
  });
});

test('what is too much beside the work is so since the same day, though one that made it so is gone', () => {
  const scribe = new Scribe();
  const oneDay = 24 * 60;
  const stated = { rule: 'near-work-limit', value: { value: '1.5', unit: 'L' } } as const;
  const beside = [1, 2, 3].map((n) => ({ ...can(n), area: 'near-work' }) as const);
  scribe.write({ kind: 'local-rule-stated', v: 1, stated, saidBy: 'County office', saidOn: '2026-03-01' });
  for (const body of [...beside, wash(1, '3'), pour(1, 1, '1'), pour(1, 2, '1')]) scribe.write(body);
  scribe.write(pour(1, 3, '1'), oneDay);
  const second = { kind: 'container-marked', v: 1, containerId: id('c0', 2) } as const;
  scribe.write({ ...second, mark: 'gone' }, 2 * oneDay);
  scribe.write({ ...second, mark: 'proof-filed' }, 3 * oneDay);
  const whole = scribe.state;
  const opened = reopened(whole, at(10 * oneDay), at(10 * oneDay));
  const [since, ofOpened] = [whole, opened].map(
    (state) => nearWork(state, at(11 * oneDay), zone)?.passed?.since,
  );
  expect(since).toBe('2026-03-02');
  expect(ofOpened).toBe(since);
});
