/**
 * What containers hold, as chemistry, taken through everything that happened in its order. Only what is asked for is
 * followed, from when the container was last empty, and each transfer from what its source held just then.
 */
import { asHeld, isNothing } from './amounts';
import {
  type Contents,
  contentsOfStream,
  dried,
  joined,
  measured,
  nothing,
  type Parted,
  parted,
  placed,
  planned,
  treated,
} from './container-load';
import type { Amount } from './entries/containers';
import type { ContainerState, Happening, State } from './state';

/** What a happening made of what one container holds; a transfer changes two, the one that it was taken from first. */
export type Change = {
  readonly happening: Happening;
  readonly containerId: string;
  readonly before: Contents;
  readonly after: Contents;
};

/** What something came to, and what that rests on besides what it was made of. */
type Made<T> = { readonly restsOn: readonly unknown[]; readonly value: T };

/**
 * The same again for the very same contents and the very same thing that befell them, in whatever state: so an entry that
 * is added makes anew only what comes after it in its container.
 */
function remembering<T>() {
  const known = new WeakMap<Contents, WeakMap<Happening['body'], Made<T>>>();
  return (before: Contents, { entryId, body }: Happening, rests: readonly unknown[], make: () => T): T => {
    const restsOn = [entryId, ...rests];
    const ofContents = known.get(before) ?? new WeakMap<Happening['body'], Made<T>>();
    known.set(before, ofContents);
    const made = ofContents.get(body);
    if (made?.restsOn.every((one, i) => one === restsOn[i])) return made.value;
    const value = make();
    ofContents.set(body, { restsOn, value });
    return value;
  };
}

const afterOnce = remembering<Contents>();
const partedOnce = remembering<Parted>();

/** Containers that it may change: of a transfer the one that it was taken from first. */
function concernedBy(state: State, { body }: Happening): readonly string[] {
  switch (body.kind) {
    case 'stream-placed':
    case 'water-lost':
    case 'contents-determined':
      return [body.containerId];
    case 'contents-moved':
      return body.toContainerId === null || body.toContainerId === body.fromContainerId
        ? [body.fromContainerId]
        : [body.fromContainerId, body.toContainerId];
    case 'dose-added':
    case 'treatment-ended':
    case 'pot-read': {
      const id = state.treatments.get(body.treatmentId)?.body.containerId;
      return id === undefined ? [] : [id];
    }
    default:
      return [];
  }
}

/** Whether this entry put what its container holds through the treatment. */
function treats(state: State, { body, entryId }: Happening): boolean {
  if (body.kind === 'dose-added') return !isNothing(asHeld(body.mass));
  if (body.kind !== 'treatment-ended' || body.outcome !== 'reached') return false;
  const told = state.treatments.get(body.treatmentId);
  return told?.ended?.entryId === entryId && told.doses.length === 0;
}

const emptiedIn = new WeakMap<ContainerState['movements'], ReadonlySet<string>>();

/** Movements after which the ledger saw it empty: what chemistry has left of it then is rounding. */
function emptiedBy(state: State, containerId: string): ReadonlySet<string> {
  const movements = state.containers.get(containerId)?.movements ?? [];
  const known = emptiedIn.get(movements);
  if (known) return known;
  const found = new Set(
    movements.flatMap(({ entryId, purpose, after }) =>
      isNothing(after) && purpose !== 'evaporated' ? [entryId] : [],
    ),
  );
  emptiedIn.set(movements, found);
  return found;
}

/** Something that may have changed what a container holds, with its place among all that happened. */
type Own = { readonly happening: Happening; readonly place: number };

/** Told of as a change even where it made no difference, since something was poured. */
const alwaysChanges: ReadonlySet<Happening['body']['kind']> = new Set<Happening['body']['kind']>([
  'stream-placed',
  'contents-moved',
  'water-lost',
]);

class Following {
  readonly #state: State;
  readonly #own = new Map<string, Own[]>();
  /** By container, what it held after each of its own; undefined where nothing had ever been in it. */
  readonly #after = new Map<string, Map<number, Contents | undefined>>();

  constructor(state: State) {
    this.#state = state;
    for (const [place, happening] of state.happenings.entries())
      for (const id of concernedBy(state, happening)) {
        const own = this.#own.get(id);
        if (own) own.push({ happening, place });
        else this.#own.set(id, [{ happening, place }]);
      }
  }

  /** The last of a container's own before `place`: -1 where there is none. */
  #lastBefore(containerId: string, place: number): number {
    const own = this.#own.get(containerId) ?? [];
    let [low, high] = [0, own.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((own[middle]?.place ?? place) < place) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  #afterOf(containerId: string): Map<number, Contents | undefined> {
    const after = this.#after.get(containerId) ?? new Map<number, Contents | undefined>();
    this.#after.set(containerId, after);
    return after;
  }

  /** What it holds after all that happened before `place`; after everything where none is given. */
  held(containerId: string, place = Number.POSITIVE_INFINITY): Contents | undefined {
    const nth = this.#lastBefore(containerId, place);
    const after = this.#afterOf(containerId);
    if (nth >= 0 && !after.has(nth)) this.#follow(containerId, nth);
    return after.get(nth);
  }

  /** All that this one rests on and nobody has asked for yet, in its order: back to where each container was empty. */
  #follow(containerId: string, nth: number): void {
    const wanted: (Own & { readonly id: string; readonly i: number })[] = [];
    const open: [id: string, nth: number][] = [[containerId, nth]];
    for (let next = open.pop(); next; next = open.pop()) {
      const [id, last] = next;
      const own = this.#own.get(id) ?? [];
      const after = this.#afterOf(id);
      for (let i = last; i >= 0 && !after.has(i); i -= 1) {
        const one = own[i];
        if (!one) break;
        const isEmptied = emptiedBy(this.#state, id).has(one.happening.entryId);
        after.set(i, isEmptied ? nothing : undefined);
        if (isEmptied) break;
        wanted.push({ ...one, id, i });
        const { body } = one.happening;
        if (body.kind === 'contents-moved' && body.fromContainerId !== id)
          open.push([body.fromContainerId, this.#lastBefore(body.fromContainerId, one.place)]);
      }
    }
    for (const one of wanted.sort((a, b) => a.place - b.place)) {
      const after = this.#afterOf(one.id);
      after.set(one.i, this.#step(one.id, after.get(one.i - 1), one));
    }
  }

  #step(containerId: string, held: Contents | undefined, one: Own): Contents | undefined {
    const state = this.#state;
    const { happening } = one;
    const { entryId, body } = happening;
    const before = held ?? nothing;
    switch (body.kind) {
      case 'stream-placed':
        return afterOnce(before, happening, this.#told(body.streamId), () =>
          placed(state, before, entryId, body),
        );
      case 'contents-moved':
        return this.#moved(containerId, before, one, body);
      case 'water-lost':
        return afterOnce(before, happening, [], () => dried(before, entryId, body));
      case 'contents-determined': {
        const stream = state.streams.get(body.streamId);
        if (!stream) return held;
        return afterOnce(nothing, happening, this.#told(body.streamId), () =>
          contentsOfStream(state, stream),
        );
      }
      case 'pot-read':
        return held && afterOnce(held, happening, [], () => measured(held, entryId, body));
      case 'dose-added':
      case 'treatment-ended':
        return held && treats(state, happening)
          ? afterOnce(held, happening, [], () => treated(held, body.treatmentId))
          : held;
      default:
        return held;
    }
  }

  /** A transfer into the same container takes it out and puts it in again. */
  #moved(
    containerId: string,
    before: Contents,
    { happening, place }: Own,
    { fromContainerId, toContainerId, amount }: Extract<Happening['body'], { kind: 'contents-moved' }>,
  ): Contents {
    const out = containerId === fromContainerId;
    const source = out ? before : (this.held(fromContainerId, place) ?? nothing);
    const { stays, taken } = partedOnce(source, happening, [], () =>
      parted(source, amount, happening.entryId),
    );
    if (containerId !== toContainerId) return stays;
    const into = out ? stays : before;
    return afterOnce(into, happening, [taken], () => joined(into, taken));
  }

  /** What a waste that is put in rests on: its own entry, and that of the liquor that it still holds. */
  #told(streamId: string): readonly unknown[] {
    const { streams } = this.#state;
    const stream = streams.get(streamId)?.body;
    return [stream, streams.get(stream?.solid?.holds.liquor ?? '')?.body];
  }

  /** What the treatment found in its container; undefined while nothing has been added. */
  foundBy(treatmentId: string): Contents | undefined {
    const containerId = this.#state.treatments.get(treatmentId)?.body.containerId ?? '';
    const first = (this.#own.get(containerId) ?? []).find(
      ({ happening, place }) =>
        (happening.body.kind === 'dose-added' || happening.body.kind === 'treatment-ended') &&
        happening.body.treatmentId === treatmentId &&
        treats(this.#state, happening) &&
        this.held(containerId, place) !== undefined,
    );
    return first && this.held(containerId, first.place);
  }

  get changes(): readonly Change[] {
    return this.#state.happenings.flatMap((happening, place) =>
      concernedBy(this.#state, happening).flatMap((containerId): Change[] => {
        const [before, after] = [this.held(containerId, place), this.held(containerId, place + 1)];
        const isSame = before === after && !alwaysChanges.has(happening.body.kind);
        if (after === undefined || isSame) return [];
        return [{ happening, containerId, before: before ?? nothing, after }];
      }),
    );
  }
}

const known = new WeakMap<State, Following>();

function followingOf(state: State): Following {
  const following = known.get(state) ?? new Following(state);
  known.set(state, following);
  return following;
}

/** What a container holds by everything that happened. */
export const contentsOf = (state: State, containerId: string): Contents =>
  followingOf(state).held(containerId) ?? nothing;

/** All that was done to what containers hold, in the order in which it happened. */
export const changesOf = (state: State): readonly Change[] => followingOf(state).changes;

/** What a treatment found in its container; what is there now while nothing has been added. */
export const contentsBefore = (state: State, treatmentId: string): Contents =>
  followingOf(state).foundBy(treatmentId) ??
  contentsOf(state, state.treatments.get(treatmentId)?.body.containerId ?? '');

/** So much of what a container holds, taken out. */
export const contentsTaken = (state: State, containerId: string, amount: Amount): Contents =>
  parted(contentsOf(state, containerId), amount, planned).taken;
