/** What is decided on an opening is what is decided on the whole record, of the same intention. */
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { decide } from '../../../src/ledger/decide';
import type { Entry } from '../../../src/ledger/entries/entry';
import { flags } from '../../../src/ledger/flags';
import { applyAll, fold } from '../../../src/ledger/fold';
import type { Intention } from '../../../src/ledger/intention';
import type { Decided } from '../../../src/ledger/refusal';
import { seal } from '../../../src/ledger/seal';
import type { State } from '../../../src/ledger/state';
import { anyIntention } from '../../faults/any-intention';
import { Chance } from '../../faults/chance';
import { seededWorkshop } from '../../support/seeded-workshop';
import { dayBefore, reopened } from './opened-again';
import { id } from './scribe';

const isUnknown = (decided: Decided): boolean => !decided.ok && decided.refusal.code === 'unknown';

/** The whole record and an opening of it, to which the same befalls. */
class Both {
  #ids = 0;
  #last: Entry | undefined;
  #moment: number;
  /** How often the whole record had to be read. */
  asked = 0;

  constructor(
    public whole: State,
    public opened: State,
  ) {
    this.#moment = Date.parse(whole.log.at(-1)?.writtenAt ?? '');
  }

  /** Of which both must be the same. */
  decides(intention: Intention): readonly [Decided, Decided] {
    this.#moment += 60_000;
    const now = new Date(this.#moment).toISOString();
    const of = (state: State): Decided => {
      let ids = this.#ids;
      return decide(state, intention, { now, who: null, newId: () => id('f9', ++ids) });
    };
    const [ofOpened, ofWhole] = [of(this.opened), of(this.whole)];
    // Where an opening does not know it the whole record is read, and asked again.
    if (!isUnknown(ofOpened)) return [ofOpened, ofWhole];
    this.asked += 1;
    return [ofWhole, ofWhole];
  }

  write(decided: Decided): void {
    const now = new Date(this.#moment).toISOString();
    for (const body of decided.ok ? decided.bodies : []) {
      this.#ids += 10;
      const entry = seal({
        id: id('e9', this.#ids),
        device: id('d9', 0),
        counter: (this.#last?.counter ?? 0) + 1,
        writtenAt: now,
        happenedAt: now,
        zone: 'Europe/Berlin',
        who: null,
        previous: this.#last?.hash ?? null,
        body,
      });
      this.#last = entry;
      this.whole = fold(this.whole, entry);
      this.opened = fold(this.opened, entry);
    }
  }
}

const all = [...seededWorkshop({ entries: 3000, seed: 11 })];
const now = (all.at(-1) as Entry).writtenAt;
const whole = applyAll(all);
const opened = reopened(whole, dayBefore(now, 20), dayBefore(now, 10));

const standing = [...whole.containers.values()].filter(({ goneSince }) => goneSince === null);
const ids = standing.map(({ body }) => body.containerId);
const half = { value: '0.5', unit: 'L' } as const;
const chance = new Chance(20261130);
const one = (): string => chance.any(ids) ?? '';

const stages = [{ agent: 'hydrated-lime', targetPh: { value: '9', unit: '1' } }] as const;

/** Everything that begins on a list, on each that was gone through of late. */
const begun = [...whole.checklists.values()].slice(-40).flatMap(({ entryId, body }): Intention[] => [
  { do: 'begin-treatment', containerId: body.containerId ?? one(), stages: [...stages], clearance: entryId },
  { do: 'start-step', batchId: body.batchId, step: body.step, clearance: entryId },
]);

const marks = ['closed', 'reopened', 'leaving', 'held', 'let-go', 'gone', 'damaged', 'emptied'] as const;

const vessel = {
  vessel: 'jerrican',
  capacity: { value: '5', unit: 'L' },
  material: 'HDPE',
  cap: 'vented',
  openedOn: '2026-11-30',
} as const;

const ofContainers: readonly (readonly [string, readonly Intention[]])[] = [
  [
    'a wash is poured into each',
    ids.map((containerId) => ({
      do: 'log-stream',
      batchId: null,
      stepId: null,
      stream: 'wash-water',
      liquid: { volume: half, findings: [], freeAcid: [] },
      placements: [{ containerId, amount: half }],
    })),
  ],
  [
    'each waste that is in none is poured into one',
    [...whole.streams.keys()]
      .slice(-60)
      .map((streamId) => ({ do: 'place-stream', streamId, containerId: one(), amount: half })),
  ],
  [
    'some of each is moved into another',
    ids.map((fromContainerId) => ({
      do: 'move-contents',
      fromContainerId,
      toContainerId: one(),
      amount: half,
      purpose: 'transfer',
    })),
  ],
  [
    'all of each is moved into another',
    ids.map((fromContainerId) => ({ do: 'move-all', fromContainerId, toContainerId: one() })),
  ],
  [
    'each is marked',
    ids.flatMap((containerId) =>
      marks.map((mark): Intention => ({ do: 'mark-container', containerId, mark })),
    ),
  ],
  ['something is begun on a list', begun],
  [
    'one is opened or a batch begun with a code that is taken, or by itself',
    [
      { do: 'open-container', ...vessel },
      ...[...whole.containers.values()].map(
        ({ body }): Intention => ({ do: 'open-container', ...vessel, code: body.code }),
      ),
      ...[undefined, ...[...whole.batches.values()].map(({ body }) => body.code)].map(
        (code): Intention => ({
          do: 'open-batch',
          feed: { capacitors: 'mixed', era: 'unknown', mass: { value: '500', unit: 'g' } },
          ...(code === undefined ? {} : { code }),
        }),
      ),
    ],
  ],
  [
    'each is handed over, and comes back from its load',
    [
      ...ids.map(
        (containerId): Intention => ({
          do: 'log-hand-over',
          collector: { name: 'Fen Carriers' },
          containers: [{ containerId }],
          signatures: {},
        }),
      ),
      ...[...opened.handOvers.values()].flatMap(({ body: { handOverId, containers } }): Intention[] => {
        const containerIds = containers.map(({ containerId }) => containerId);
        return [
          { do: 'log-rejected-load', handOverId, containerIds, why: 'leaked' },
          { do: 'file-proof', handOverId, containerIds },
        ];
      }),
    ],
  ],
  [
    'what runs is ended, what was found closed',
    [
      ...[...whole.treatments.values()].slice(-5).map(
        ({ body }): Intention => ({
          do: 'end-treatment',
          treatmentId: body.treatmentId,
          outcome: 'reached',
        }),
      ),
      ...[...opened.steps.keys()].slice(-30).map((stepId): Intention => ({ do: 'end-step', stepId })),
      ...[...opened.findings.keys()].map(
        (findingId): Intention => ({ do: 'close-finding', findingId, done: 'wiped' }),
      ),
      ...[...opened.clocks.keys()].map((clockId): Intention => ({ do: 'stop-clock', clockId, how: 'done' })),
    ],
  ],
];

describe('the same is decided', () => {
  test.each(ofContainers)('where %s', (_, intentions) => {
    const both = new Both(whole, opened);
    const answers = intentions.map((intention) => ({ intention, decided: both.decides(intention) }));
    expect(answers.length).toBeGreaterThan(10);
    expect(both.asked).toBeLessThan(answers.length / 5);
    for (const { intention, decided } of answers)
      if (!isDeepStrictEqual(...decided))
        expect({ intention, is: decided[0] }).toEqual({ intention, is: decided[1] });
  });
});

describe('whatever befalls both', () => {
  test('the same is decided, step after step, and the same is wrong of it then', () => {
    const chance = new Chance(7);
    const both = new Both(whole, opened);
    const before = new Set(flags(opened).map((flag) => JSON.stringify(flag)));
    let written = 0;
    for (let i = 0; i < 300; i += 1) {
      const { intention, spoilt } = anyIntention(both.opened, chance);
      if (spoilt || intention.do === 'withdraw-entry' || intention.do === 'correct-entry') continue;
      const [of, ofWhole] = both.decides(intention);
      expect({ intention, is: of }).toEqual({ intention, is: ofWhole });
      both.write(of);
      written += of.ok ? 1 : 0;
      if (both.opened.earlier?.reachedBehind)
        both.opened = reopened(both.whole, dayBefore(now, 20), dayBefore(now, 10));
    }
    expect(written).toBeGreaterThan(100);
    expect(both.asked).toBeLessThan(written / 5);
    const fresh = (state: State) =>
      flags(state)
        .map((flag) => JSON.stringify(flag))
        .filter((flag) => !before.has(flag));
    const wrongOfWhole = new Set(fresh(both.whole));
    expect(fresh(both.opened).filter((flag) => !wrongOfWhole.has(flag))).toEqual([]);
  });
});
