/** What a disposal paper says of a container is the same where only what still matters of a long record is at hand. */
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll, fold } from '../../../src/ledger/fold';
import type { ContainerState, State } from '../../../src/ledger/state';
import type { Asked } from '../../../src/paperwork/disposal/asked';
import { howItArose, shortName, whatItIs } from '../../../src/paperwork/disposal/origins';
import { seededWorkshop } from '../../support/seeded-workshop';
import { dayBefore, reopened } from '../ledger/opened-again';
import { at, can, id, litres, pour, Scribe, wash } from '../ledger/scribe';

const asked = (state: State, now: string): Asked => ({
  state,
  now,
  zone: 'Europe/Berlin',
  madeBy: 'Maren',
  sign: '.',
  demo: false,
});

const all = [...seededWorkshop({ entries: 6000, seed: 7 })];
const now = (all.at(-1) as Entry).writtenAt;
const whole = applyAll(all);
const opened = reopened(applyAll(all.slice(0, 5700)), dayBefore(now, 30), dayBefore(now, 20));
const state = all.slice(5700).reduce(fold, opened);
const here = [...whole.containers.values()].filter(({ goneSince }) => goneSince === null);

/** What is said of each container that stands here. */
function told<T>(
  of: State,
  says: (asked: Asked, container: ContainerState) => T,
): readonly (T | undefined)[] {
  const ask = asked(of, now);
  return here.map(({ body }) => {
    const container = of.containers.get(body.containerId);
    return container && says(ask, container);
  });
}

/** How often something came in or went out, and from where. */
const movementsIn = (asked: Asked, container: ContainerState): readonly string[] =>
  howItArose(asked, container).filter((said) => /or poured in|was poured over/.test(said));

const isOfNone = (says: string): boolean => says.includes('of no one batch');

test.each([
  ['what it is', ({ state }: Asked, container: ContainerState) => whatItIs(state, container)],
  ['what it is, in short', ({ state }: Asked, container: ContainerState) => shortName(state, container)],
  ['what came in and went out', movementsIn],
  ['which wastes are of no batch', (...of: [Asked, ContainerState]) => howItArose(...of).filter(isOfNone)],
])('%s', (_, says) => {
  const ofWhole = told<unknown>(whole, says);
  expect(ofWhole.length).toBeGreaterThan(20);
  expect(told<unknown>(state, says)).toEqual(ofWhole);
});

test('what came in before it was last empty is none of what it holds', () => {
  const scribe = new Scribe();
  const moved = { kind: 'contents-moved', v: 1, fromContainerId: id('c0', 1), purpose: 'transfer' } as const;
  for (const body of [can(1), can(2), wash(1, '3'), pour(1, 1, '1'), pour(1, 1, '1')]) scribe.write(body);
  const said = () =>
    movementsIn(asked(scribe.state, at(9)), scribe.state.containers.get(id('c0', 1)) as ContainerState);
  expect(said()).toEqual(['Put or poured in twice, 2\u00a0Mar\u00a02026.']);
  scribe.write({ ...moved, toContainerId: id('c0', 2), amount: litres('2') });
  scribe.write(pour(1, 1, '1'));
  expect(said()).toEqual(['Since it was last empty, put or poured in once, 2\u00a0Mar\u00a02026.']);
});
