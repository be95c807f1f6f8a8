import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asHeld, isRounding, less, nothing, plus } from '../../../src/ledger/amounts';
import { candidatesOf } from '../../../src/ledger/container-candidates';
import { containerFigures } from '../../../src/ledger/container-figures';
import { decide } from '../../../src/ledger/decide';
import { Entry } from '../../../src/ledger/entries/entry';
import { flags } from '../../../src/ledger/flags';
import { applyAll, fold } from '../../../src/ledger/fold';
import type { Intention } from '../../../src/ledger/intention';
import { joined } from '../../../src/ledger/order';
import { pressing } from '../../../src/ledger/pressing';
import { emptyState, type Held } from '../../../src/ledger/state';
import { verifyChain } from '../../../src/ledger/verify';
import type { Figure } from '../../../src/quantities/figure';
import { anyLife, lifeStreams } from './any-life';
import { anyRecord } from './any-record';
import { at, can, grams, id, litres, pour, Scribe, tip, wash } from './scribe';

const runs = { numRuns: 150 };

/** But for thirds, which no decimal holds. */
const isSame = (a: Held, b: Held): boolean => isRounding(less(a, b)) && isRounding(less(b, a));

describe('laws of the record', () => {
  test('entries told one by one add up to the same as all at once', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        expect(entries.reduce(fold, emptyState)).toEqual(applyAll(entries));
      }),
      runs,
    );
  });

  test('a record folded in two parts is the record folded at once', () => {
    fc.assert(
      fc.property(anyRecord, fc.nat(30), (entries, cut) => {
        const first = applyAll(entries.slice(0, cut));
        expect(entries.slice(cut).reduce(fold, first)).toEqual(applyAll(entries));
      }),
      runs,
    );
  });

  test('entries may arrive in any order, and twice', () => {
    const shuffled = (record: typeof anyRecord) =>
      record.chain((entries) =>
        fc.tuple(
          fc.constant(entries),
          fc.shuffledSubarray([...entries, ...structuredClone(entries)], { minLength: entries.length * 2 }),
        ),
      );
    fc.assert(
      fc.property(fc.oneof(shuffled(anyRecord), shuffled(anyLife)), ([entries, arrived]) => {
        expect(arrived.reduce(fold, emptyState)).toEqual(applyAll(entries));
      }),
      runs,
    );
  });

  test('the log runs by written-at, then device, then counter', () => {
    const [late, early] = [new Scribe('a'), new Scribe('b')];
    const written = [
      late.write(wash(1, '1'), 5),
      early.write(wash(1, '1'), 4),
      early.write(wash(1, '1'), 5),
      late.write(wash(1, '1'), 5),
    ];
    const [a1, b1, b2, a2] = written;
    expect(applyAll(written).log).toEqual([b1, a1, a2, b2]);
  });

  test('of two entries that claim one id the same is kept on every device', () => {
    const [one, other] = [new Scribe('a').write(wash(1, '1')), new Scribe('a').write(wash(1, '2'))];
    expect(joined([one], [other])).toEqual(joined([other], [one]));
    expect(applyAll([one, other])).toEqual([other, one].reduce(fold, emptyState));
    expect(applyAll([one, other]).log).toHaveLength(1);
  });

  test('two devices joined from either side hold the same record', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const device = entries[0]?.device;
        const own = entries.filter((entry) => entry.device === device);
        const other = entries.filter((entry) => entry.device !== device);
        expect(joined(own, other)).toEqual(joined(other, own));
        expect(applyAll([...other, ...own])).toEqual(applyAll(entries));
      }),
      runs,
    );
  });

  test('a record taken through JSON is the same record, and whole', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const back = (JSON.parse(JSON.stringify(entries)) as unknown[]).map((raw) => Entry.parse(raw));
        expect(verifyChain(back)).toMatchObject({ whole: true, entries: entries.length });
        expect(applyAll(back)).toEqual(applyAll(entries));
      }),
      runs,
    );
  });

  test('no container and no stream ever holds less than nothing', () => {
    fc.assert(
      fc.property(fc.oneof(anyRecord, anyLife), (entries) => {
        const { containers, streams } = applyAll(entries);
        const held = [
          ...[...containers.values()].flatMap(({ holds, contents }) => [holds, ...contents]),
          ...[...streams.values()].map(({ unplaced }) => unplaced),
        ];
        for (const { volume, mass } of held) {
          expect(volume.isNegative()).toBe(false);
          expect(mass.isNegative()).toBe(false);
        }
      }),
      runs,
    );
  });

  test('the parts of a container add up to what it holds', () => {
    fc.assert(
      fc.property(fc.oneof(anyRecord, anyLife), (entries) => {
        for (const { holds, contents } of applyAll(entries).containers.values()) {
          const sum = contents.reduce((total, { volume }) => total.plus(volume), holds.volume.times(0));
          expect(sum.minus(holds.volume).abs().lt('1e-12')).toBe(true);
        }
      }),
      runs,
    );
  });

  test('what is in containers is what came in less what went out, moved over or not', () => {
    fc.assert(
      fc.property(anyLife, (entries) => {
        const { containers } = applyAll(entries);
        for (const { movements, holds } of containers.values()) {
          let so = nothing;
          for (const { way, amount, purpose, after } of movements) {
            const moved = asHeld(amount);
            // A waste that was logged for it replaces what was there, and may be liquid and solid at once.
            if (purpose === 'determined') so = after;
            else so = way === 'in' ? plus(so, moved) : less(so, moved);
            expect(isSame(so, after)).toBe(true);
          }
          expect(isSame(so, holds)).toBe(true);
        }
      }),
      runs,
    );
  });

  test('water that goes off takes none of what is dissolved with it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1999 }), fc.integer({ min: 1, max: 2999 }), (lost, more) => {
        const scribe = new Scribe();
        for (const body of [...lifeStreams, can(1, '10'), pour(1, 1, '2'), tip(1, null, '0.5')])
          scribe.write(body);
        const copper = (): Figure<'g'> | undefined =>
          containerFigures(scribe.state, id('c0', 1)).metals.find(({ metal }) => metal === 'Cu')?.all;
        const before = copper()?.value;
        scribe.write({
          kind: 'water-lost',
          v: 1,
          containerId: id('c0', 1),
          amount: litres((Math.min(lost, 1499) / 1000).toFixed(3)),
        });
        scribe.write(wash(9, '3'));
        scribe.write(pour(9, 1, (more / 1000).toFixed(3)));
        expect(
          copper()
            ?.value.minus(before ?? 0)
            .abs()
            .toNumber(),
        ).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test('whatever was written stays in the history, and flags can always be raised', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const state = applyAll(entries);
        expect(state.history.map(({ entry }) => entry.id).sort()).toEqual(entries.map(({ id }) => id).sort());
        expect(() => flags(state)).not.toThrow();
      }),
      runs,
    );
  });

  test('of whatever was written, hazards, amounts and last days can be worked out', () => {
    fc.assert(
      fc.property(fc.oneof(anyRecord, anyLife), (entries) => {
        const state = applyAll(entries);
        for (const container of state.containers.values())
          expect(() => candidatesOf(state, container)).not.toThrow();
        expect(() => pressing(state, at(600), 'Europe/Paris')).not.toThrow();
      }),
      runs,
    );
  });

  test('any waste may be told of in any unit: it is answered, with an entry or a reason', () => {
    const amounts = [litres('0.4'), grams('150')];
    fc.assert(
      fc.property(anyLife, fc.constantFrom(...amounts), (entries, amount) => {
        const state = applyAll(entries);
        const context = { now: at(600), newId: () => id('f0', 1), who: null };
        const ids = [...state.containers.keys()];
        const tells: Intention[] = ids.flatMap((containerId) => [
          ...[...state.streams.keys()].flatMap((streamId): Intention[] => [
            { do: 'place-stream', streamId, containerId, amount },
            { do: 'log-placement-happened', streamId, containerId, amount },
          ]),
          ...ids.flatMap((toContainerId): Intention[] => [
            { do: 'move-all', fromContainerId: containerId, toContainerId },
            {
              do: 'log-move-happened',
              fromContainerId: containerId,
              toContainerId,
              amount,
              purpose: 'transfer',
            },
          ]),
        ]);
        for (const intention of tells) expect(() => decide(state, intention, context)).not.toThrow();
      }),
      { numRuns: 60 },
    );
  });

  test('nothing is known to be dissolved in what was treated and not measured since', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const state = applyAll(entries);
        for (const [containerId, { contents }] of state.containers) {
          const measured = [...state.treatments.values()].some(({ readings }) =>
            readings.some(({ body }) => (body.findings ?? []).length > 0),
          );
          const figures = containerFigures(state, containerId);
          if (contents.length > 0 && contents.every(({ treatedBy }) => treatedBy.length > 0)) {
            expect(figures.acid.figure).toBeUndefined();
            expect(figures.bases.size).toBe(0);
            if (!measured) expect(figures.metals.filter(({ all }) => all)).toEqual([]);
          }
        }
      }),
      runs,
    );
  });

  test('whatever befell is kept in one list, in the order in which it happened', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const { happenings, movements } = applyAll(entries);
        const times = happenings.map(({ at }) => at);
        expect(times).toEqual([...times].sort());
        expect(happenings.filter((one) => movements.some(({ entryId }) => entryId === one.entryId))).toEqual(
          movements,
        );
      }),
      runs,
    );
  });
});
