/** The wastes of a batch as its account sees them: those that it ended in, each substance as somebody measured it. */
import { inTestWaste } from '../chemistry/closure';
import type { KnownMetal } from '../chemistry/evidence';
import type { KnownAcid } from '../chemistry/free-acid';
import type { Evidenced, Liquor, Piece } from '../chemistry/liquor';
import { times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Metal } from '../reference/tables';
import type { StreamKind } from '../safety/stream-kind';
import { liquorOf, residueFrom } from './container-load';
import type { BatchState, State } from './state';

/** A liquid of the batch, or the liquor that a solid of it holds. */
export type BatchLiquor = {
  readonly streamId: string;
  readonly kind: StreamKind;
  /** The liquor itself, or the one it is a part of. */
  readonly liquor: Liquor;
  readonly liquorId: string;
  /** Held in a solid; absent where the liquor is the stream. */
  readonly held?: Figure<'L'>;
};

/** Wastes that treating the contents of a container gave: what is in them was counted before. */
const later: ReadonlySet<StreamKind> = new Set(['treated-slurry', 'filtrate', 'hydroxide-sludge']);
const tests: ReadonlySet<StreamKind> = new Set(['chloride-test-waste', 'ammonia-test-waste']);

/**
 * Ways of knowing that are worked out from the other side of the account: they would close it with itself. So would what
 * tells only of a part, the copper of the sheet.
 */
const derived: ReadonlySet<string> = new Set(['typical', 'feed-minus-residue', 'charged-minus-consumed']);

const streamsOf = (state: State, batch: BatchState) =>
  batch.streamIds.flatMap((id) => {
    const stream = state.streams.get(id);
    return stream && !later.has(stream.body.stream) ? [stream.body] : [];
  });

/** Whether cementation has made the leach liquor into barren liquor. */
export const isCemented = (state: State, batch: BatchState): boolean =>
  streamsOf(state, batch).some(({ stream }) => stream === 'barren-liquor');

/** Every liquor of the batch, and every one that a solid of it is known to hold. */
export function liquorsOf(state: State, batch: BatchState): readonly BatchLiquor[] {
  return streamsOf(state, batch).flatMap((body): BatchLiquor[] => {
    const { streamId, stream: kind } = body;
    const own = liquorOf(state, streamId);
    const liquid: BatchLiquor[] = own ? [{ streamId, kind, liquor: own, liquorId: streamId }] : [];
    const holds = body.solid?.holds.liquor;
    const mother = holds === undefined || holds === 'not-determined' ? undefined : liquorOf(state, holds);
    const held = body.solid && mother && residueFrom(state, streamId, kind, body.solid).held;
    if (!held || !mother || holds === undefined) return liquid;
    return [...liquid, { streamId, kind, liquor: mother, liquorId: holds, held: held.volume }];
  });
}

/** Those that the batch ended in: the leach liquor became the barren one. */
export function lastLiquors(state: State, batch: BatchState): readonly BatchLiquor[] {
  const cemented = isCemented(state, batch);
  return liquorsOf(state, batch).filter(({ kind }) => !(cemented && kind === 'leach-liquor'));
}

/** Ceramic that nobody can say the liquor of. */
export function silentSolids(state: State, batch: BatchState): readonly string[] {
  const told = new Set(liquorsOf(state, batch).flatMap(({ streamId, held }) => (held ? [streamId] : [])));
  return streamsOf(state, batch)
    .filter((body) => body.solid && body.stream === 'ceramic-residue' && !told.has(body.streamId))
    .map(({ streamId }) => streamId);
}

const own = <K extends { readonly atLeast?: true }>(known: Evidenced<K> | undefined): Piece<K> | undefined =>
  known && [known.best, ...known.others].find(({ by, atLeast }) => !derived.has(by) && !atLeast);

/** A metal in a liquor of the batch as it was measured, g; undefined where nobody measured it. */
export function metalIn(
  all: readonly BatchLiquor[],
  one: BatchLiquor,
  metal: Metal,
): Figure<'g'> | undefined {
  const found = (l: BatchLiquor): Piece<KnownMetal> | undefined => own(l.liquor.metals.get(metal));
  const known = found(one);
  if (known && one.held)
    return workedOut({
      sentence: 'In the liquor it holds',
      unit: 'g',
      formula: times(one.held, known.perLitre),
    });
  if (known || !tests.has(one.kind)) return known?.all;
  const strongest = strongestOf(all.flatMap((l) => found(l)?.perLitre ?? []));
  return (
    strongest && inTestWaste('g', one.liquor.volume, strongest, `stream/${one.streamId}/at-most/${metal}`)
  );
}

/** Free acid in a liquor of the batch as it was measured, mol; undefined where nobody measured it. */
export function acidIn(all: readonly BatchLiquor[], one: BatchLiquor): Figure<'mol'> | undefined {
  const found = (l: BatchLiquor): Piece<KnownAcid> | undefined => own(l.liquor.freeAcid);
  const known = found(one);
  if (known && one.held)
    return workedOut({
      sentence: 'In the liquor it holds',
      unit: 'mol',
      formula: times(one.held, known.perLitre),
    });
  if (known || !tests.has(one.kind)) return known?.all;
  const strongest = strongestOf(all.flatMap((l) => found(l)?.perLitre ?? []));
  return strongest && inTestWaste('mol', one.liquor.volume, strongest, `stream/${one.streamId}/at-most/acid`);
}

const strongestOf = <U extends 'g/L' | 'mol/L'>(all: readonly Figure<U>[]): Figure<U> | undefined =>
  all.reduce<Figure<U> | undefined>((most, one) => (most?.high.gte(one.high) ? most : one), undefined);
