/** The shelf as it is followed through a time: what is in which container, what of a waste is in none, and what came and went. */
import {
  asHeld,
  isNothing,
  loggedAmount,
  nothing as nothingHeld,
  placedAmount,
  plus,
  stillUnplaced,
} from './amounts';
import { type Contents, contentsOfStream } from './container-load';
import type { Change } from './contents-followed';
import type { ContentsMoved, StreamPlaced } from './entries/containers';
import type { Held, State, StreamState } from './state';
import { type CameAs, cameAs, holdsNothing } from './year-arising';
import type { When } from './year-days';

/**
 * Ways in. `in-work`: leach liquor that stood here and went on to cementation, no waste yet. `left-of-treating`: measured in
 * what a treatment left. `determined`: a waste that was logged because somebody said what is in a container. `came-back`: of
 * loads that left before. `from-elsewhere`: poured over from a container that is gone, or that nobody told of.
 */
export type InLine = CameAs | 'came-back' | 'from-elsewhere';
/**
 * Ways out. `replaced`: what the record held where somebody said what is in a container. `lost-sight`: dried to nothing, so
 * that nobody knows what it is by now.
 */
export type OutLine =
  | 'treated'
  | 'handed-over'
  | 'into-work'
  | 'sample'
  | 'spill'
  | 'taken-out'
  | 'gone'
  | 'replaced'
  | 'to-elsewhere'
  | 'lost-sight';

export type Thing = { readonly of: 'stream' | 'container' | 'treatment' | 'hand-over'; readonly id: string };

/** What is held or goes is all of `plus` less all of `less`. */
export type Portion = {
  readonly of: Thing;
  readonly plus: readonly Contents[];
  readonly less: readonly Contents[];
};
export type Flow = Portion & { readonly line: InLine | OutLine; readonly entryId?: string };

/** A container as it left; `handOverId` is null where it went some other way, `cameBack` says that it did within the time. */
export type Leaving = {
  readonly containerId: string;
  readonly entryId: string;
  readonly at: string;
  readonly handOverId: string | null;
  readonly contents: Contents;
  readonly cameBack: boolean;
};

const nothing: Contents = { residues: [], unaccounted: false };

/** Of one waste what was put into containers. */
type Loose = { readonly stream: StreamState; plus: Contents[]; less: Contents[]; placed: Held };

type Left = { readonly leaving: Leaving; readonly when: When };

/** The shelf as it is followed. */
export class Shelf {
  readonly held = new Map<string, Contents>();
  readonly away = new Map<string, Left>();
  readonly loose = new Map<string, Loose>();
  /** Wastes that went into a container since it was empty. */
  readonly streamsIn = new Map<string, ReadonlySet<string>>();
  readonly flows: Flow[] = [];
  readonly leavings: Leaving[] = [];
  readonly notFollowed: { entryId: string; containerId: string }[] = [];
  constructor(readonly state: State) {}

  isHere = (id: string): boolean => this.state.containers.has(id) && !this.away.has(id);

  notes(when: When, flow: Flow): void {
    if (when === 'in') this.flows.push(flow);
  }

  arises(when: When, stream: StreamState): void {
    const line = cameAs(this.state, stream);
    const { streamId } = stream.body;
    if (line === 'in-work') return;
    const whole = contentsOfStream(this.state, stream);
    this.loose.set(streamId, { stream, plus: [whole], less: [], placed: nothingHeld });
    const of = { of: 'stream', id: streamId } as const;
    this.notes(when, { line, of, entryId: stream.entryId, plus: [whole], less: [] });
  }

  /** Out of what was loose of a waste, into a container. */
  puts(when: When, { containerId, before, after, happening }: Change, streamId: string, held: Held): void {
    if (!this.state.containers.has(containerId)) return;
    const loose = this.loose.get(streamId);
    const { entryId } = happening;
    const [plusOf, lessOf] = [{ plus: [after], less: [before] }, [after]];
    if (loose) {
      loose.plus.push(before);
      loose.less.push(...lessOf);
      loose.placed = plus(loose.placed, held);
    } else if (this.state.streams.has(streamId))
      this.notes(when, { line: 'in-work', of: { of: 'stream', id: streamId }, entryId, ...plusOf });
    if (!this.isHere(containerId))
      this.notes(when, {
        line: 'to-elsewhere',
        of: { of: 'container', id: containerId },
        entryId,
        ...plusOf,
      });
  }

  moves(when: When, { containerId, before, after, happening }: Change, body: ContentsMoved): void {
    const { fromContainerId: from, toContainerId: to, purpose } = body;
    if (from === to) return;
    const { entryId } = happening;
    const of = { of: 'container', id: containerId } as const;
    if (containerId !== from) {
      if (!this.isHere(from) && this.isHere(containerId))
        this.notes(when, { line: 'from-elsewhere', of, entryId, plus: [after], less: [before] });
      return;
    }
    if (!this.isHere(from) || (to !== null && this.isHere(to))) return;
    const line = to !== null ? 'to-elsewhere' : this.outBy(from, purpose);
    this.notes(when, { line, of, entryId, plus: [before], less: [after] });
  }

  outBy(containerId: string, purpose: ContentsMoved['purpose']): OutLine {
    if (purpose === 'sample' || purpose === 'spill') return purpose;
    const streams = [...(this.streamsIn.get(containerId) ?? [])];
    const inWork = streams
      .map((id) => this.state.streams.get(id))
      .every((one) => one && cameAs(this.state, one) === 'in-work');
    if (streams.length > 0 && inWork) return 'into-work';
    return purpose === 'treatment' ? 'treated' : 'taken-out';
  }

  changes(when: When, change: Change): void {
    const { happening, containerId, before, after } = change;
    const { entryId, body } = happening;
    const of = { of: 'container', id: containerId } as const;
    if (body.kind === 'stream-placed') {
      const stream = this.state.streams.get(body.streamId);
      this.puts(when, change, body.streamId, stream ? heldOf(stream, body) : nothingHeld);
    } else if (body.kind === 'contents-moved') this.moves(when, change, body);
    else if (body.kind === 'contents-determined') {
      if (this.isHere(containerId) && !holdsNothing(before))
        this.notes(when, { line: 'replaced', of, entryId, plus: [before], less: [] });
      const stream = this.state.streams.get(body.streamId);
      if (stream) this.puts(when, { ...change, before: nothing }, body.streamId, loggedAmount(stream.body));
    } else if (this.isHere(containerId) && 'treatmentId' in body)
      this.notes(when, {
        line: 'treated',
        of: { of: 'treatment', id: body.treatmentId },
        entryId,
        plus: [before],
        less: [after],
      });
    else if (
      this.isHere(containerId) &&
      body.kind === 'water-lost' &&
      after.unaccounted &&
      !before.unaccounted
    )
      this.notes(when, { line: 'lost-sight', of, entryId, plus: [before], less: [after] });
    if (when === 'in' && this.isHere(containerId) && after.unaccounted && !before.unaccounted)
      this.notFollowed.push({ entryId, containerId });
    this.follows(change);
  }

  follows({ happening: { body }, containerId, after }: Change): void {
    this.held.set(containerId, after);
    const before = this.streamsIn.get(containerId) ?? new Set();
    if (body.kind === 'contents-determined') this.streamsIn.set(containerId, new Set([body.streamId]));
    else if (body.kind === 'stream-placed')
      this.streamsIn.set(containerId, new Set([...before, body.streamId]));
    else if (body.kind === 'contents-moved' && containerId === body.toContainerId)
      this.streamsIn.set(
        containerId,
        new Set([...before, ...(this.streamsIn.get(body.fromContainerId) ?? [])]),
      );
  }

  leaves(when: When, containerId: string, entryId: string, at: string): void {
    if (this.away.has(containerId)) return;
    const contents = this.held.get(containerId) ?? nothing;
    const handOver = [...this.state.handOvers.values()].find((one) => one.entryId === entryId);
    const handOverId = handOver?.body.handOverId ?? null;
    const leaving: Leaving = { containerId, entryId, at, handOverId, contents, cameBack: false };
    this.away.set(containerId, { leaving, when });
    if (when === 'in') this.leavings.push(leaving);
  }

  comesBack(when: When, containerId: string, entryId: string): void {
    const left = this.away.get(containerId);
    if (!left) return;
    this.away.delete(containerId);
    if (when !== 'in') return;
    const contents = this.held.get(containerId) ?? nothing;
    const at = this.leavings.indexOf(left.leaving);
    if (at >= 0) this.leavings[at] = { ...left.leaving, cameBack: true };
    const of = { of: 'container', id: containerId } as const;
    // What left within the time and came back as it was has not gone anywhere.
    if (left.when === 'in' && contents === left.leaving.contents) return;
    if (left.when === 'in') this.flows.push(leftAs(left.leaving));
    this.flows.push({ line: 'came-back', of, entryId, plus: [contents], less: [] });
  }

  standing(): ReadonlyMap<string, Contents> {
    return new Map(
      [...this.state.containers.keys()].flatMap((id): [string, Contents][] => {
        const contents = this.held.get(id);
        return contents && !holdsNothing(contents) && this.isHere(id) ? [[id, contents]] : [];
      }),
    );
  }

  unplaced(): ReadonlyMap<string, Held> {
    return new Map(
      [...this.loose].flatMap(([id, { stream, placed }]): [string, Held][] => {
        const rest = stillUnplaced(loggedAmount(stream.body), placed);
        return isNothing(rest) ? [] : [[id, rest]];
      }),
    );
  }

  portions(): readonly Portion[] {
    const loose = [...this.unplaced().keys()].map((id): Portion => {
      const { plus = [], less = [] } = this.loose.get(id) ?? {};
      return { of: { of: 'stream', id }, plus: [...plus], less: [...less] };
    });
    const standing = [...this.standing()].map(
      ([id, contents]): Portion => ({ of: { of: 'container', id }, plus: [contents], less: [] }),
    );
    return [...standing, ...loose];
  }
}

const heldOf = ({ body }: StreamState, { amount }: StreamPlaced): Held =>
  placedAmount(amount, body) ?? asHeld(amount);

export const leftAs = ({ containerId, entryId, handOverId, contents }: Leaving): Flow => ({
  line: handOverId === null ? 'gone' : 'handed-over',
  of: handOverId === null ? { of: 'container', id: containerId } : { of: 'hand-over', id: handOverId },
  entryId,
  plus: [contents],
  less: [],
});
