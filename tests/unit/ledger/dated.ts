/** A notebook whose entries happen at moments of the calendar, told in UTC. */
import type { BodyOf, PlainBody } from '../../../src/ledger/entries/body';
import type { LocalRule } from '../../../src/ledger/entries/local-rules';
import type { State } from '../../../src/ledger/state';
import { at, can, grams, id, litres, Scribe } from './scribe';

/** As the notebook counts: minutes after its first morning. */
const minutesAt = (iso: string): number => (Date.parse(iso) - Date.parse(at(0))) / 60_000;

/** Entries in the order given, each at its moment. */
export function recorded(...lines: readonly (readonly [at: string, ...bodies: PlainBody[]])[]): State {
  const scribe = new Scribe();
  for (const [moment, ...bodies] of lines) for (const body of bodies) scribe.write(body, minutesAt(moment));
  return scribe.state;
}

/** "C-01" for 1. */
export const code = (n: number): string => `C-0${n}`;
export const containerId = (n: number): string => id('c0', n);

export const rule = (stated: LocalRule): PlainBody => ({
  kind: 'local-rule-stated',
  v: 1,
  stated,
  saidBy: 'County office',
  saidOn: '2027-10-01',
});

export const days = (
  name: 'storage-days' | 'inspection-days' | 'near-work-days' | 'proof-days',
  value: string,
): PlainBody => rule({ rule: name, value: { value, unit: 'days' } });

export const mark = (
  n: number,
  as: BodyOf<'container-marked'>['mark'],
  more: Partial<BodyOf<'container-marked'>> = {},
): PlainBody => ({ kind: 'container-marked', v: 1, containerId: containerId(n), mark: as, ...more });

export const area = (n: number, is: 'near-work' | 'store'): PlainBody => ({
  kind: 'container-changed',
  v: 1,
  containerId: containerId(n),
  area: is,
});

type Stream = BodyOf<'stream-logged'>['stream'];

/** A liquid with a density that was measured, so that its mass is volume times density. */
export const liquid = (
  n: number,
  volume: string,
  density: string,
  stream: Stream = 'barren-liquor',
  batch: number | null = null,
): PlainBody => ({
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', n),
  batchId: batch === null ? null : id('ba', batch),
  stepId: null,
  stream,
  liquid: { volume: litres(volume), density: { value: density, unit: 'kg/L' }, findings: [], freeAcid: [] },
});

/** A wet solid, weighed in grams. */
export const solid = (
  n: number,
  mass: string,
  stream: Stream = 'spent-filters',
  batch: number | null = null,
): PlainBody => ({
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', n),
  batchId: batch === null ? null : id('ba', batch),
  stepId: null,
  stream,
  solid: { wetMass: grams(mass), moisture: { by: 'not-determined' }, holds: { liquor: 'not-determined' } },
});

export const batch = (n: number): PlainBody => ({
  kind: 'batch-opened',
  v: 1,
  batchId: id('ba', n),
  code: `B-0${n}`,
  feed: { capacitors: 'mixed', era: 'unknown', mass: { value: '500', unit: 'g' } },
});

export const saidOf = (n: number, counted: BodyOf<'counting-said'>['counted']): PlainBody => ({
  kind: 'counting-said',
  v: 1,
  streamId: id('50', n),
  counted,
  saidBy: 'State agency',
});

/** Containers 1 to n of 60 L, opened a month before anything else. */
export const shelf = (n: number): readonly PlainBody[] =>
  Array.from({ length: n }, (_, i) => ({ ...can(i + 1, '60'), openedOn: '2027-11-01' }));

/** A walk along these containers. */
export const walked = (n: number, ...containers: readonly number[]): readonly PlainBody[] => {
  const walkId = id('3a', n);
  const startedAt = at(0);
  return [
    ...containers.map(
      (one): PlainBody => ({
        kind: 'container-inspected',
        v: 1,
        walkId,
        containerId: containerId(one),
        looks: ['insp-label'],
        found: [],
        startedAt,
      }),
    ),
    {
      kind: 'walk-finished',
      v: 1,
      walkId,
      list: { id: 'container-inspection', version: '1', hash: 'a'.repeat(64), title: 'Walk' },
      startedAt,
      containerIds: containers.map(containerId),
      notSeen: [],
      looks: [],
      readings: [],
      found: [],
    },
  ];
};
