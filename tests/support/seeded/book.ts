/** Who writes what when in an invented workshop: stories that go on side by side, each resumed at its time. */
import type { Body } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Photo } from '../../../src/ledger/entries/photos';
import { seal } from '../../../src/ledger/seal';
import { photoHash } from '../../../src/storage/photos';
import { chanceOf } from '../chance';
import { photo } from './photo';
import { thinkAgain } from './second-thoughts';

export const minute = 60_000;
export const hour = 60 * minute;
export const day = 24 * hour;

/** Says at each yield when it goes on, in milliseconds. */
export type Story = Generator<number, void, void>;

type Waiting = { readonly at: number; readonly story: Story };
type Device = { readonly id: string; counter: number; hash: string | null };

/** Written down later than it happened now and then: nothing else rests on the hour of these. */
const mayBeLate: ReadonlySet<Body['kind']> = new Set<Body['kind']>([
  'batch-charged',
  'batch-recovered',
  'stream-tested',
  'level-read',
  'lab-reported',
  'bench-tested',
  'container-changed',
  'container-inspected',
  'checklist-answered-later',
  'candidate-answered',
  'step-ended',
  'clock-stopped',
  'finding-closed',
]);

const hex = (value: number, digits: number): string => value.toString(16).padStart(digits, '0');

export class Book {
  /** The moment, in milliseconds; no two resumed stories share one. */
  now: number;
  readonly chance: () => number;
  written = 0;
  /** Taken so far. */
  photos = 0;
  /** Entries since they were taken last. */
  #fresh: Entry[] = [];
  #waiting: Waiting[] = [];
  #named = 0;
  #devices: readonly [Device, Device];
  #device: Device;
  #who: string | null = null;
  readonly people = new Map<string, string>();

  /** @param sealing whether entries are made; without, it only counts them */
  constructor(
    start: number,
    seed: number,
    readonly sealing: boolean,
  ) {
    this.now = start;
    this.chance = chanceOf(seed);
    this.#devices = [
      { id: this.newId(), counter: 0, hash: null },
      { id: this.newId(), counter: 0, hash: null },
    ];
    this.#device = this.#devices[0];
  }

  get iso(): string {
    return this.after(0);
  }
  get today(): string {
    return this.iso.slice(0, 10);
  }
  after = (ms: number): string => new Date(this.now + ms).toISOString();
  between = (low: number, high: number): number => low + (high - low) * this.chance();
  whole = (low: number, high: number): number => Math.floor(this.between(low, high + 1));
  /** Digits as somebody would write them. */
  digits = (low: number, high: number, decimals = 1): string => this.between(low, high).toFixed(decimals);
  oneOf = <T>(all: readonly [T, ...(readonly T[])]): T =>
    all[Math.floor(this.chance() * all.length)] ?? all[0];
  often = (share: number): boolean => this.chance() < share;

  /** The hour of the day so many days on. */
  on(days: number, hours: number, minutes = 0): number {
    return Math.floor(this.now / day) * day + days * day + hours * hour + minutes * minute;
  }

  /** UUID of version 7: sorts by the moment, and within it in the order in which they were given. */
  newId(): string {
    this.#named += 1;
    const time = hex(this.now, 12);
    const rest = hex(Math.floor(this.chance() * 2 ** 46), 12);
    return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(this.#named, 3)}-8${rest.slice(0, 3)}-${rest}`;
  }

  /** Begins a story now, or at `at`. */
  tell(story: Story, at = this.now): void {
    let [low, high] = [0, this.#waiting.length];
    // Latest first, so that the next one is taken off the end; of the same moment, in the order in which they were told.
    while (low < high) {
      const middle = (low + high) >> 1;
      const other = this.#waiting[middle];
      if (other && other.at > at) low = middle + 1;
      else high = middle;
    }
    this.#waiting.splice(low, 0, { at, story });
  }

  /** Goes on with the story whose time has come. @returns the entries that it wrote; null once there is no story left */
  goOn(): readonly Entry[] | null {
    const next = this.#waiting.pop();
    if (!next) return null;
    const now = Math.max(this.now + 1, Math.floor(next.at));
    this.now = now;
    this.#named = 0;
    this.#sitDown();
    const { value, done } = next.story.next();
    if (!done) this.tell(next.story, Math.max(value, this.now + 1));
    const fresh = this.#fresh;
    this.#fresh = [];
    return fresh;
  }

  /** One of the people takes a device up: the phone mostly, else the tablet. */
  #sitDown(): void {
    this.#device = this.often(0.15) ? this.#devices[1] : this.#devices[0];
    const all = [...this.people.keys()];
    this.#who = all[Math.floor(this.chance() * all.length)] ?? null;
  }

  get who(): string {
    return this.people.get(this.#who ?? '') ?? 'Nobody yet';
  }

  /** Takes the next picture, so often; of eight pixels by eight. */
  pictures(share = 1): { readonly photos?: Photo[] } {
    if (!this.often(share)) return {};
    const taken = photo(this.photos);
    this.photos += 1;
    const hash = this.sealing ? photoHash(taken) : '';
    return { photos: [{ hash, type: 'image/jpeg', bytes: taken.length, width: 8, height: 8 }] };
  }

  /** Writes one body down. @returns the id of its entry */
  write(body: Body, happenedAt = this.#happened(body)): string {
    const id = this.newId();
    this.written += 1;
    if (this.sealing) {
      const device = this.#device;
      device.counter += 1;
      const { counter, hash: previous } = device;
      const envelope = { zone: 'Europe/Paris', who: this.#who, device: device.id, counter, previous };
      const entry = seal({ id, writtenAt: this.iso, happenedAt, body, ...envelope });
      device.hash = entry.hash;
      this.#fresh.push(entry);
    }
    if (body.kind !== 'entry-corrected' && body.kind !== 'entry-withdrawn') thinkAgain(this, id, body);
    return id;
  }

  /** One in fifteen of what may wait was written later: minutes mostly, hours, a day or three. */
  #happened({ kind }: Body): string {
    if (!mayBeLate.has(kind) || this.often(0.92)) return this.iso;
    const kinds = this.chance();
    const late =
      kinds < 0.75
        ? this.whole(4, 55) * minute
        : kinds < 0.92
          ? this.whole(2, 9) * hour
          : this.whole(1, 3) * day;
    return this.after(-late);
  }
}
