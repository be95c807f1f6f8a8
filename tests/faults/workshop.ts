/** A made-up workshop of two phones, to which anything may befall: one step a seed. */
import { decide } from '../../src/ledger/decide';
import type { Entry } from '../../src/ledger/entries/entry';
import { fold } from '../../src/ledger/fold';
import type { Intention } from '../../src/ledger/intention';
import { type Decided, refused } from '../../src/ledger/refusal';
import { seal } from '../../src/ledger/seal';
import { emptyState, type State } from '../../src/ledger/state';
import { anyIntention, type Wanted } from './any-intention';
import { Chance } from './chance';

export type Stepped = {
  readonly intention: Intention;
  readonly decided: Decided;
  readonly before: State;
  readonly written: readonly Entry[];
  /** It was written down as it happened, and nothing was said to have happened later. */
  readonly inOrder: boolean;
};

const uuid = (sort: string, n: number): string =>
  `${sort.padEnd(8, '0')}-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;

/** What no form gives is a fault of our own, and may be thrown like one: written it is never. */
function orThrown(decides: () => Decided): Decided {
  try {
    return decides();
  } catch (error) {
    return refused({ code: 'does-not-fit', details: { path: '', message: String(error) } });
  }
}

const begin = Date.UTC(2026, 2, 2, 8);

export class Workshop {
  state: State = emptyState;
  readonly entries: Entry[] = [];
  readonly #heads: Record<'da' | 'db', Entry | undefined> = { da: undefined, db: undefined };
  #ids = 0;
  #minute = 0;
  #latest = '';

  /** Minutes pass, or the clock is set back; no two of these moments are the same. */
  #moment(minutes: number): string {
    return new Date(begin + minutes * 60_000 + this.entries.length).toISOString();
  }

  #write(device: 'da' | 'db', body: Entry['body'], now: string, happenedAt: string): Entry {
    const head = this.#heads[device];
    const entry = seal({
      id: uuid('e', ++this.#ids),
      device: uuid(device, 0),
      counter: (head?.counter ?? 0) + 1,
      writtenAt: head && head.writtenAt > now ? head.writtenAt : now,
      happenedAt,
      zone: 'Europe/Paris',
      who: null,
      previous: head?.hash ?? null,
      body,
    });
    this.#heads[device] = entry;
    this.entries.push(entry);
    return entry;
  }

  /** What would be wanted by that seed now. */
  wish = (seed: number): Wanted => anyIntention(this.state, new Chance(seed));

  step(seed: number): Stepped {
    const { intention, spoilt } = this.wish(seed);
    const chance = new Chance(~seed);
    const device = chance.one(['da', 'da', 'db']);
    this.#minute += chance.one([0, 1, 5, 60, 60, 60 * 24, -90]);
    const now = this.#moment(this.#minute);
    const happenedAt = chance.oneIn(6) ? this.#moment(this.#minute - chance.below(3000)) : now;
    const inOrder = happenedAt > this.#latest;
    const before = this.state;
    const newId = (): string => uuid('f', ++this.#ids);
    const decides = () => decide(before, intention, { now, newId, who: null });
    const decided = spoilt ? orThrown(decides) : decides();
    const bodies = decided.ok ? decided.bodies : [];
    const written = bodies.map((body) => this.#write(device, body, now, happenedAt));
    this.state = written.reduce(fold, before);
    if (written.length > 0 && inOrder) this.#latest = happenedAt;
    return { intention, decided, before, written, inOrder };
  }
}
