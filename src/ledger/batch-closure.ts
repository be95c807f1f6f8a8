/** The account of a batch: volume, copper, silver and acid that went in against what came out, and what nobody wrote down. */
import { capital } from '../chemistry/evidence';
import { acidTaken } from '../chemistry/free-acid';
import { typicalMetal } from '../chemistry/typical';
import { plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import { type Metal, metalSymbols, metals } from '../reference/tables';
import { type Account, accountOf, type Found, known, lacking, type Missing, together } from './account';
import { acidInto, copperFromSheet, recovered, volumeCharged } from './batch-charges';
import {
  acidIn,
  type BatchLiquor,
  isCemented,
  lastLiquors,
  liquorsOf,
  metalIn,
  silentSolids,
} from './batch-streams';
import type { BatchState, State } from './state';

export type BatchClosure = {
  readonly volume: Account<'L'>;
  readonly copper: Account<'g'>;
  readonly silver: Account<'g'>;
  readonly acid: Account<'mol'>;
};
export type Substance = keyof BatchClosure;

/** What the sides of one account are made from. */
type Books = {
  readonly batch: BatchState;
  readonly cemented: boolean;
  readonly all: readonly BatchLiquor[];
  /** What the batch ended in. */
  readonly last: readonly BatchLiquor[];
  /** Solids whose liquor nobody told. */
  readonly silent: readonly string[];
};

/** Every liquor that the batch ended in with its own figure, or that it is missing there. */
const inLast = <U extends Unit>(
  { last, silent }: Books,
  what: Missing['what'],
  figureOf: (one: BatchLiquor) => Figure<U> | undefined,
): Found<U> =>
  together<U>(
    ...last.map((one) => {
      const figure = figureOf(one);
      return figure ? known(figure, one.streamId) : lacking<U>(what, one.liquorId);
    }),
    ...silent.map((id) => lacking<U>('held', id)),
    ...(last.length === 0 ? [lacking<U>('streams')] : []),
  );

const isLeach = (books: Books, id: string): boolean =>
  books.all.some(({ streamId, kind }) => streamId === id && kind === 'leach-liquor');

/** A metal that the feed brought: as measured in the leach liquor once that has become another, else as is typical. */
function ofFeed(books: Books, metal: Metal, what: Missing['what']): Found<'g'> {
  const { batch, cemented, all } = books;
  const leach = cemented ? all.filter(({ liquorId }) => isLeach(books, liquorId)) : [];
  const measured = leach.flatMap((one) => {
    const figure = metalIn(all, one, metal);
    return figure ? [known(figure, one.streamId)] : [];
  });
  if (leach.length > 0 && measured.length === leach.length) return together(...measured);
  const { capacitors, mass } = batch.body.feed;
  const typical = typicalMetal(
    { by: 'typical', metal, capacitors, feed: mass, liquor: 'leach' },
    `batch/${batch.body.batchId}`,
  );
  return typical ? known(typical.all) : lacking(what);
}

function silverOut(books: Books): Found<'g'> {
  const dry = recovered(books.batch, 'silver');
  return together(
    ...dry.map((figure) => known(figure)),
    ...(books.cemented && dry.length === 0 ? [lacking<'g'>('silver-recovered')] : []),
    inLast(books, 'silver', (one) => metalIn(books.all, one, 'Ag')),
  );
}

/**
 * Acid that the metals of a liquor took. Copper that put silver or palladium out took over what those had taken: by
 * either route the reactions give the same for what stays dissolved. Copper and nickel always count, silver before the
 * cementation.
 */
function takenIn(books: Books, one: BatchLiquor, route: Figure<'1'>): Found<'mol'> {
  const silver = isLeach(books, one.liquorId) && books.batch.body.feed.capacitors !== 'base-metal-electrode';
  const needed: Readonly<Partial<Record<Metal, Missing['what']>>> = {
    Cu: 'copper',
    Ni: 'nickel',
    ...(silver ? { Ag: 'silver' } : {}),
  };
  const found = metalSymbols.flatMap((metal): Found<'mol'>[] => {
    const mass = metalIn(books.all, one, metal);
    const taken = mass && acidTaken(metal, mass, route);
    if (taken) return [known(taken)];
    const what = needed[metal];
    return what && !mass ? [lacking(what, one.liquorId)] : [];
  });
  const { parts, missing } = together(...found);
  if (parts.length === 0) return { parts: [], missing };
  const formula = plus(...parts.map(({ figure }) => figure));
  const figure = workedOut({ sentence: 'Taken by the metals dissolved in it', unit: 'mol', formula });
  return { parts: [{ figure, streamId: one.streamId }], missing };
}

function acidOut(books: Books, route: Figure<'1'> | undefined): Found<'mol'> {
  const free = inLast<'mol'>(books, 'acid', (one) => acidIn(books.all, one));
  return route ? together(free, ...books.last.map((one) => takenIn(books, one, route))) : free;
}

/** Worked out once for a state. */
const ofStates = new WeakMap<State, Map<string, BatchClosure>>();

/** The four accounts of a batch. A part that nobody wrote down leaves an account open; it is never taken for nothing. */
export function batchClosure(state: State, batch: BatchState): BatchClosure {
  const ofState = ofStates.get(state) ?? new Map<string, BatchClosure>();
  ofStates.set(state, ofState);
  const closure = ofState.get(batch.body.batchId) ?? workedOutFor(state, batch);
  ofState.set(batch.body.batchId, closure);
  return closure;
}

function workedOutFor(state: State, batch: BatchState): BatchClosure {
  const books: Books = {
    batch,
    cemented: isCemented(state, batch),
    all: liquorsOf(state, batch),
    last: lastLiquors(state, batch),
    silent: silentSolids(state, batch),
  };
  const washed = books.last.some(({ kind }) => kind === 'wash-water');
  const acid = acidInto(batch);
  return {
    volume: accountOf(
      'Volume',
      volumeCharged(batch, washed),
      inLast(books, 'held', (one) => one.held ?? one.liquor.volume),
    ),
    copper: accountOf(
      capital(metals.Cu.name),
      together(copperFromSheet(batch, books.cemented), ofFeed(books, 'Cu', 'copper-of-feed')),
      inLast(books, 'copper', (one) => metalIn(books.all, one, 'Cu')),
    ),
    silver: accountOf(capital(metals.Ag.name), ofFeed(books, 'Ag', 'silver-of-feed'), silverOut(books)),
    acid: accountOf('Nitric acid', acid.found, acidOut(books, acid.route)),
  };
}

/** Every figure of an account by name: "in", "out", "unaccounted", and each line as "in-1", "out-2". */
export function accountFigures(account: Account): ReadonlyMap<string, Figure> {
  const lines = (side: 'in' | 'out'): [string, Figure][] =>
    account[side].parts.map(({ figure }, i) => [`${side}-${i + 1}`, figure]);
  const sums: [string, Figure | undefined][] = [
    ['in', account.in.sum],
    ['out', account.out.sum],
    ['unaccounted', account.unaccounted],
  ];
  const told = sums.filter((pair): pair is [string, Figure] => pair[1] !== undefined);
  return new Map([...told, ...lines('in'), ...lines('out')]);
}
