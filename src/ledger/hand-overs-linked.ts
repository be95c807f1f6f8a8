/** Hand-overs with what came of them, and what they say of each container: it is gone, or here again. */
import { nothing } from './amounts';
import type { ContainerMarked } from './entries/containers';
import { asHappened, byId, grouped, mapped } from './grouping';
import { sinceMarked } from './since-marked';
import type { SortedFacts } from './sorted-facts';
import type { ContainerMovement, HandedOverPart, HandOverState, Told, Trouble, Upset } from './state';

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

/** Who hands a container over says that it is gone, and who rejects a load that it is back: both are marks of it as well. */
export function marksOf(facts: SortedFacts): Marks {
  const left = facts['handed-over'].flatMap((told) =>
    told.body.containers.map(({ containerId }) => asMark(told, containerId, 'gone')),
  );
  const back = facts['load-rejected'].flatMap((told) =>
    told.body.containerIds.map((id) => asMark(told, id, 'came-back')),
  );
  const all = [...facts['container-marked'], ...left, ...back];
  // Identifiers sort by time: of the same moment, what was written first comes first.
  const inOrder = all.toSorted((a, b) => (a.entryId < b.entryId ? -1 : a.entryId > b.entryId ? 1 : 0));
  return grouped(asHappened(inOrder), ({ body }) => body.containerId);
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

/** Each hand-over by its id, in the order in which they happened. */
export function handOversOf(
  facts: SortedFacts,
  movementsOf: (containerId: string) => readonly ContainerMovement[],
  troubles: Trouble[],
): Map<string, HandOverState> {
  const rejected = grouped(asHappened(facts['load-rejected']), ({ body }) => body.handOverId);
  const proofs = grouped(asHappened(facts['proof-filed']), ({ body }) => body.handOverId);
  const made = byId(asHappened(facts['handed-over']), ({ handOverId }) => handOverId, troubles);
  return mapped(made, (fact, id) => {
    const [refused, proved] = [rejected.get(id) ?? [], proofs.get(id) ?? []];
    const parts = fact.body.containers.map((taken): HandedOverPart => {
      const { containerId } = taken;
      const movements = movementsOf(containerId);
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
export const handedOverWhileGone = (facts: SortedFacts, marks: Marks): readonly Upset[] =>
  facts['handed-over'].flatMap(({ entryId, body }) =>
    body.containers.flatMap(({ containerId }): Upset[] => {
      const told = marks.get(containerId) ?? [];
      const before = told.slice(
        0,
        told.findIndex((mark) => mark.entryId === entryId),
      );
      return sinceMarked(before, 'gone', 'came-back') === null
        ? []
        : [{ code: 'handed-over-while-gone', entryId, containerId }];
    }),
  );
