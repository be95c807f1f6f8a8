/** Facts sorted by what they tell of. A new kind of entry is given its place here; until then this does not compile. */
import type { PlainBody } from './entries/body';
import type { Fact, Movement, Told } from './state';

type Told1<K extends PlainBody['kind']> = Told<Extract<PlainBody, { kind: K }>>;

/** One list for each kind, in the order of the log. */
export type SortedFacts = { readonly [K in PlainBody['kind']]: readonly Told1<K>[] };

type Lists = { [K in PlainBody['kind']]: Told1<K>[] };

const emptyLists = (): Lists => ({
  'workshop-described': [],
  'person-added': [],
  'person-left': [],
  'local-rule-stated': [],
  'base-described': [],
  'batch-opened': [],
  'checklist-finished': [],
  'step-started': [],
  'step-ended': [],
  'stream-logged': [],
  'container-opened': [],
  'stream-placed': [],
  'contents-moved': [],
  'container-marked': [],
  'paper-made': [],
});

export function sorted(facts: readonly Fact[]): SortedFacts {
  const lists = emptyLists();
  for (const fact of facts) (lists[fact.body.kind] as Fact[]).push(fact);
  return lists;
}

const isMovement = (fact: Fact): fact is Movement =>
  fact.body.kind === 'stream-placed' || fact.body.kind === 'contents-moved';

/** Movements of both kinds in one list: which of two in the same minute came first is told by the log alone. */
export const movementsIn = (facts: readonly Fact[]): readonly Movement[] => facts.filter(isMovement);
