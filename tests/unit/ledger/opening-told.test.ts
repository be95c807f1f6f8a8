/** What is read of an opening is what is read of the whole record, of all that stands, runs, is due or awaited. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll, fold } from '../../../src/ledger/fold';
import { seededWorkshop } from '../../support/seeded-workshop';
import { dayBefore, reopened } from './opened-again';
import { differences } from './same-told';
import { type Asking, toldBeforeTreating, toldOfContainers, toldOfPlace } from './told-of';

const zone = 'Europe/Berlin';

describe('of a workshop of some months', () => {
  const all = [...seededWorkshop({ entries: 6000, seed: 7 })];
  const now = (all.at(-1) as Entry).writtenAt;
  const since = dayBefore(now, 60);
  const when = { now, zone, since };
  const whole = applyAll(all);
  const opened = reopened(applyAll(all.slice(0, 5700)), since, dayBefore(now, 30));
  const state = all.slice(5700).reduce(fold, opened);

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
