/** The vessels of an invented workshop, each for one sort of waste, filled one after the other and closed when full. */
import type { Amount, ContainerOpened } from '../../../src/ledger/entries/containers';
import { type Book, day, minute, type Story } from './book';

/** Sorts of waste that stay apart, and what stands for years. */
export type Sort =
  | 'barren'
  | 'wash'
  | 'residue'
  | 'chloride'
  | 'ammonia'
  | 'filters'
  | 'slurry'
  | 'work'
  | 'jug'
  | 'pot';

type Vessel = Pick<ContainerOpened, 'vessel' | 'cap' | 'material'> & {
  readonly litres: number;
  readonly tray: string;
  /** Solids are weighed. */
  readonly weighed?: true;
};

const vessels: Readonly<Record<Sort, Vessel>> = {
  barren: { vessel: 'jerrican', litres: 3, cap: 'vented', material: 'HDPE', tray: 'nitrate tray' },
  wash: { vessel: 'jerrican', litres: 8, cap: 'vented', material: 'HDPE', tray: 'nitrate tray' },
  residue: { vessel: 'tub', litres: 5, cap: 'lid', material: 'PP', tray: 'dry tray', weighed: true },
  chloride: { vessel: 'bottle', litres: 1, cap: 'vented', material: 'HDPE', tray: 'chloride tray' },
  ammonia: { vessel: 'bottle', litres: 1, cap: 'vented', material: 'HDPE', tray: 'ammonia tray' },
  filters: { vessel: 'tub', litres: 5, cap: 'lid', material: 'PP', tray: 'dry tray', weighed: true },
  slurry: { vessel: 'drum', litres: 20, cap: 'lid', material: 'HDPE', tray: 'lime tray' },
  work: { vessel: 'jerrican', litres: 10, cap: 'vented', material: 'HDPE', tray: 'bench tray' },
  jug: { vessel: 'jerrican', litres: 20, cap: 'open', material: 'HDPE', tray: 'bench tray' },
  pot: { vessel: 'tub', litres: 60, cap: 'open', material: 'PP', tray: 'lime tray' },
};

/** `held` and `room` in whole mL, or g where it is weighed. */
export type Can = {
  readonly id: string;
  readonly sort: Sort;
  readonly room: number;
  held: number;
  state: 'open' | 'closed' | 'gone';
};

export const amount = (can: Pick<Can, 'sort'>, much: number): Amount =>
  vessels[can.sort].weighed
    ? { value: String(much), unit: 'g' }
    : { value: (much / 1000).toFixed(2), unit: 'L' };

/** Nine tenths of a litre, or of what weighs 1.6 kg to the litre. */
const roomIn = ({ litres, weighed }: Vessel): number => litres * (weighed ? 1440 : 900);

export class Shelf {
  /** What stands here. */
  readonly cans: Can[] = [];
  #number = 0;
  constructor(readonly book: Book) {}

  open(sort: Sort): Can {
    const { book } = this;
    const { litres, weighed: _, ...vessel } = vessels[sort];
    this.#number += 1;
    const containerId = book.newId();
    book.write({
      kind: 'container-opened',
      v: 1,
      containerId,
      code: `C-${String(this.#number).padStart(2, '0')}`,
      capacity: { value: String(litres), unit: 'L' },
      ...vessel,
      place: book.oneOf(['Shed, north wall', 'Shed, by the door', 'Lean-to']),
      ...(sort === 'work' ? { area: 'near-work' as const } : { area: 'store' as const }),
      ...book.pictures(0.42),
      openedOn: book.today,
    });
    if (sort !== 'work' && sort !== 'jug' && sort !== 'pot') this.#labels(containerId);
    const can: Can = { id: containerId, sort, room: roomIn(vessels[sort]), held: 0, state: 'open' };
    this.cans.push(can);
    return can;
  }

  #labels(containerId: string): void {
    const { book } = this;
    if (!book.often(0.3)) return;
    const contentHash = `${containerId}${containerId}`.replaceAll('-', '').slice(0, 64);
    const paper = { paperId: book.newId(), containerIds: [containerId], contentHash };
    book.write({
      kind: 'paper-made',
      v: 1,
      ...paper,
      fileName: 'labels.pdf',
      format: 'pdf',
      paper: 'labels',
    });
  }

  /** The vessel that is in use for a sort. */
  inUse(sort: Sort): Can {
    return this.cans.find((can) => can.sort === sort && can.state === 'open') ?? this.open(sort);
  }

  /** Pours a waste that was logged into as many vessels as it takes. */
  place(streamId: string, sort: Sort, much: number): void {
    for (let rest = much; rest > 0; ) {
      const can = this.inUse(sort);
      const part = Math.min(rest, can.room - can.held);
      const placed = { streamId, containerId: can.id, amount: amount(can, part) };
      this.book.write({ kind: 'stream-placed', v: 1, ...placed });
      can.held += part;
      rest -= part;
      this.#fillUp(can);
    }
  }

  /** Moves up to `much` of one into vessels of a sort, or out of the shelf. */
  move(
    from: Can,
    to: Sort | null,
    much: number,
    purpose: 'transfer' | 'sample' | 'spill' | 'treatment',
  ): void {
    for (let rest = Math.min(much, from.held); rest > 0; ) {
      const can = to === null ? null : this.inUse(to);
      const part = can ? Math.min(rest, can.room - can.held) : rest;
      const ends = { fromContainerId: from.id, toContainerId: can?.id ?? null };
      this.book.write({ kind: 'contents-moved', v: 1, ...ends, amount: amount(from, part), purpose });
      from.held -= part;
      if (can) can.held += part;
      rest -= part;
      if (can) this.#fillUp(can);
    }
  }

  #fillUp(can: Can): void {
    const leastRoom = vessels[can.sort].weighed ? 300 : 150;
    if (can.sort === 'work' || can.sort === 'pot' || can.sort === 'jug') return;
    if (can.room - can.held >= leastRoom) return;
    can.state = 'closed';
    this.book.tell(this.closes(can), this.book.now + this.book.whole(3, 40) * minute);
  }

  /** The cap goes on; later somebody has a word with the collector about its codes. */
  *closes(can: Can): Story {
    const { book } = this;
    const containerId = can.id;
    if (book.often(0.5)) this.readLevel(can);
    book.write({ kind: 'container-marked', v: 1, containerId, mark: 'closed', ...book.pictures(0.08) });
    if (book.often(0.1)) {
      const place = book.oneOf(['Lean-to, upper shelf', 'Shed, south wall']);
      book.write({ kind: 'container-changed', v: 1, containerId, place });
    }
    if (!book.often(0.55)) return;
    yield book.now + book.between(0.2, 9) * day;
    if (can.state === 'gone') return;
    const said = {
      saidBy: 'Fenwater Collection',
      saidOn: book.today,
      document: 'acceptance (invented)',
    } as const;
    const word = { kind: 'candidate-answered', v: 1, containerId, ...said } as const;
    book.write({ ...word, scheme: 'waste-list', code: '11 01 06*', answer: 'accepted' });
    if (book.often(0.4))
      book.write({ ...word, scheme: 'rcra', code: book.oneOf(['D002', 'D011', 'D008']), answer: 'accepted' });
  }

  readLevel(can: Can): void {
    const read = vessels[can.sort].weighed ? can.held : Math.round(can.held / 100) * 100;
    const level = vessels[can.sort].weighed
      ? amount(can, read)
      : ({ value: (read / 1000).toFixed(1), unit: 'L' } as const);
    this.book.write({ kind: 'level-read', v: 1, containerId: can.id, level, ...this.book.pictures(0.05) });
  }

  /** Emptied into others: it is taken into use again. */
  emptied(can: Can): void {
    if (can.held > 0) return;
    this.book.write({ kind: 'container-marked', v: 1, containerId: can.id, mark: 'emptied' });
    if (can.state === 'closed')
      this.book.write({ kind: 'container-marked', v: 1, containerId: can.id, mark: 'reopened' });
    can.state = 'open';
  }

  /** It is here no more. */
  leaves(can: Can): void {
    can.state = 'gone';
    this.cans.splice(this.cans.indexOf(can), 1);
  }
}
