/** A container while it is followed: what it holds, part by part, and what changes in it. Taken to be mixed. */
import { type Quantity, quantity } from '../quantities/quantity';
import { isNothing, isRounding, less, noMass, nothing, noVolume, plus } from './amounts';
import type { BenchTestState, ContainerMovement, ContainerState, ContentsPart, Held } from './state';

export type Pot = {
  holds: Held;
  /** By stream and the treatments that it went through. */
  parts: Map<string, ContentsPart>;
  since: string | null;
  readonly movements: ContainerMovement[];
  benchTests: BenchTestState[];
  levels: ContainerState['levels'];
  determined: ContainerState['determined'];
  /** Since when it holds what it holds now, its amount aside: something came in, or it was treated. */
  othersSince: string | null;
  /** Treatments that run in it. */
  running: readonly string[];
};

export const newPot = (): Pot => ({
  holds: nothing,
  parts: new Map(),
  since: null,
  movements: [],
  benchTests: [],
  levels: [],
  determined: null,
  othersSince: null,
  running: [],
});

/** To be changed while the other stays as it is. */
export const copyOf = (pot: Pot): Pot => ({
  ...pot,
  parts: new Map(pot.parts),
  movements: [...pot.movements],
});

const keyOf = ({ streamId, treatedBy }: ContentsPart): string => `${streamId} ${treatedBy.join(' ')}`;

function addPart(parts: Map<string, ContentsPart>, part: ContentsPart): void {
  const before = parts.get(keyOf(part));
  parts.set(keyOf(part), { ...before, ...part, ...plus(before ?? nothing, part) });
}

const earlier = (a: string | null, b: string): string => (a !== null && a < b ? a : b);

/** From then on a trial made on the bench says nothing of what is in it. */
export function noteOtherContents(pot: Pot, at: string): void {
  pot.othersSince = at;
  pot.benchTests = pot.benchTests.map((test) =>
    test.staleSince === null ? { ...test, staleSince: at } : test,
  );
}

export function putIn(pot: Pot, parts: readonly ContentsPart[], since: string): void {
  for (const part of parts) {
    addPart(pot.parts, part);
    pot.holds = plus(pot.holds, part);
  }
  pot.since = earlier(pot.since, since);
}

const shareOf = <U extends 'L' | 'g'>(taken: Quantity<U>, all: Quantity<U>, part: Quantity<U>, unit: U) =>
  quantity(taken.gte(all) ? part : part.times(taken).div(all), unit);

/**
 * Takes `taken` out: each part gives its share of the volume, or of the mass.
 * @returns what was taken; what the pot did not hold by the ledger is of no stream
 */
export function takeOut(pot: Pot, taken: Held, at: string): readonly ContentsPart[] {
  const out = new Map<string, ContentsPart>();
  const before = pot.holds;
  for (const [key, part] of pot.parts) {
    const given: Held = {
      volume: taken.volume.isZero() ? noVolume : shareOf(taken.volume, before.volume, part.volume, 'L'),
      mass: taken.mass.isZero() ? noMass : shareOf(taken.mass, before.mass, part.mass, 'g'),
    };
    if (isNothing(given)) continue;
    out.set(key, { ...part, ...given });
    const left = less(part, given);
    if (isNothing(left)) pot.parts.delete(key);
    else pot.parts.set(key, { ...part, ...left });
  }
  pot.holds = less(before, taken);
  if (isNothing(pot.holds)) {
    pot.parts.clear();
    pot.since = null;
    noteOtherContents(pot, at);
  }
  const missing = less(taken, before);
  if (!isRounding(missing)) addPart(out, { streamId: null, treatedBy: [], ...missing });
  return [...out.values()];
}

/**
 * Each liquid has its share of less volume; what is dissolved in it is for the chemistry to keep. Where no liquid is left,
 * what was dissolved is, and no logged waste tells how much that comes to.
 */
export function dryOut(pot: Pot, lost: Held['volume']): void {
  const before = pot.holds.volume;
  const left = quantity(lost.gte(before) ? 0 : before.minus(lost), 'L');
  if (before.isZero()) return;
  if (left.isZero()) addPart(pot.parts, { streamId: null, treatedBy: [], ...nothing });
  for (const [key, part] of pot.parts)
    if (!part.volume.isZero())
      pot.parts.set(key, {
        ...part,
        volume: quantity(part.volume.times(left).div(before), 'L'),
        lessWater: true,
      });
  pot.holds = { ...pot.holds, volume: left };
}

/** All that is in it is this part, from then on; empty when the part is nothing. @param known as old as that, or older */
export function becomes(pot: Pot, part: ContentsPart, known: string): void {
  const since = earlier(pot.since, known);
  pot.parts = new Map();
  pot.holds = nothing;
  pot.since = null;
  if (!isNothing(part)) putIn(pot, [part], since);
}

/** Everything in it has been through the treatment from now on. */
export function putThrough(pot: Pot, treatmentId: string, at: string): void {
  const before = [...pot.parts.values()];
  pot.parts = new Map();
  for (const part of before) {
    const { treatedBy } = part;
    const through = treatedBy.includes(treatmentId) ? treatedBy : [...treatedBy, treatmentId];
    addPart(pot.parts, { ...part, treatedBy: through });
  }
  noteOtherContents(pot, at);
}
