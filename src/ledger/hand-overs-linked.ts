/** Hand-overs with what came of them, and what they say of each container: it is gone, or here again. */
import { nothing } from './amounts';
import type { Followed } from './contents';
import type { ContainerMarked } from './entries/containers';
import type { HandedOver, LoadRejected } from './entries/hand-overs';
import { asHappened, type ById } from './grouping';
import { isSame, type Remembering } from './memory';
import type { Pot } from './pot';
import { sinceMarked } from './since-marked';
import type { SortedFacts } from './sorted-facts';
import type { ContainerMovement, HandedOverPart, HandOverState, Told, Upset } from './state';

type Marks = ReadonlyMap<string, readonly Told<ContainerMarked>[]>;

const asMark = (
  told: Told<unknown>,
  containerId: string,
  mark: 'gone' | 'came-back',
): Told<ContainerMarked> => ({
  entryId: told.entryId,
  at: told.at,
  who: told.who,
  body: { kind: 'container-marked', v: 1, containerId, mark },
});

const marksToldWith = new WeakMap<object, readonly Told<ContainerMarked>[]>();

/** The same marks for the same fact, so that what rests on them is not worked out again. */
function marksIn(told: Told<HandedOver | LoadRejected>): readonly Told<ContainerMarked>[] {
  const known = marksToldWith.get(told);
  if (known) return known;
  const { body } = told;
  const marks =
    body.kind === 'handed-over'
      ? body.containers.map(({ containerId }) => asMark(told, containerId, 'gone'))
      : body.containerIds.map((id) => asMark(told, id, 'came-back'));
  marksToldWith.set(told, marks);
  return marks;
}

/** Who hands a container over says that it is gone, and who rejects a load that it is back: both are marks of it as well. */
export function marksOf(facts: SortedFacts, told: Remembering): Marks {
  const { 'container-marked': marked, 'handed-over': left, 'load-rejected': back } = facts;
  const inOrder = told.once('marks in order', [marked, left, back], () =>
    // Identifiers sort by time: of the same moment, what was written first comes first.
    [...marked, ...left.flatMap(marksIn), ...back.flatMap(marksIn)].toSorted((a, b) =>
      a.entryId < b.entryId ? -1 : a.entryId > b.entryId ? 1 : 0,
    ),
  );
  return told.grouped('marks', asHappened(inOrder), ({ body }) => body.containerId);
}

/** What the record says it held just then. */
const heldAt = (movements: readonly ContainerMovement[], at: string) =>
  movements.findLast((movement) => movement.at <= at)?.after ?? nothing;

const naming = <
  T extends { readonly at: string; readonly body: { readonly containerIds: readonly string[] } },
>(
  told: readonly T[],
  containerId: string,
): T | undefined => told.findLast(({ body }) => body.containerIds.includes(containerId));

type PotsOfLoads = ReadonlyMap<string, readonly (Pot | undefined)[]>;

/** By hand-over; the same array where all of them are as they were. */
const potsOfLoads = (
  loads: ReadonlyMap<string, Told<HandedOver>>,
  pots: Followed['pots'],
  last: PotsOfLoads = new Map(),
): PotsOfLoads =>
  new Map(
    [...loads].map(([id, { body }]) => {
      const now = body.containers.map(({ containerId }) => pots.get(containerId));
      const before = last.get(id);
      return [id, before && isSame(before, now) ? before : now];
    }),
  );

/** Each hand-over by its id, in the order in which they happened. */
export function handOversOf(
  facts: SortedFacts,
  told: Remembering,
  made: ById<HandedOver>,
  { pots }: Followed,
): ReadonlyMap<string, HandOverState> {
  const rejected = told.grouped(
    'rejected',
    asHappened(facts['load-rejected']),
    ({ body }) => body.handOverId,
  );
  const proofs = told.grouped('proofs', asHappened(facts['proof-filed']), ({ body }) => body.handOverId);
  const inLoads = told.once('pots of a load', [made.things, pots], (last?: PotsOfLoads) =>
    potsOfLoads(made.things, pots, last),
  );
  return told.each('hand-overs', made.things, [rejected, proofs, inLoads], (fact, id) => {
    const [refused, proved] = [rejected.get(id) ?? [], proofs.get(id) ?? []];
    const parts = fact.body.containers.map((taken): HandedOverPart => {
      const { containerId } = taken;
      const movements = pots.get(containerId)?.movements ?? [];
      return {
        ...taken,
        held: heldAt(movements, fact.at),
        asItLeft: movements.every(({ at }) => at <= fact.at),
        backAt: naming(refused, containerId)?.at ?? null,
        proofAt: naming(proved, containerId)?.at ?? null,
      };
    });
    return { ...fact, rejected: refused, proofs: proved, parts };
  });
}

/** Containers that were gone already when they were handed over: each has one fate at a time. */
export const handedOverWhileGone = (facts: SortedFacts, told: Remembering, marks: Marks): readonly Upset[] =>
  told.once('handed over while gone', [facts['handed-over'], marks], () =>
    facts['handed-over'].flatMap(({ entryId, body }) =>
      body.containers.flatMap(({ containerId }): Upset[] => {
        const all = marks.get(containerId) ?? [];
        const before = all.slice(
          0,
          all.findIndex((mark) => mark.entryId === entryId),
        );
        return sinceMarked(before, 'gone', 'came-back') === null
          ? []
          : [{ code: 'handed-over-while-gone', entryId, containerId }];
      }),
    ),
  );
