/** Facts sorted by what they tell of. A new kind of entry is given its place here; until then this does not compile. */
import type { PlainBody } from './entries/body';
import { goesOn, isSame } from './memory';
import type { Fact, Happening, Told } from './state';

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
  'checklist-answered-later': [],
  'list-changed': [],
  'clock-started': [],
  'clock-stopped': [],
  'silver-checked': [],
  'station-described': [],
  'station-given-up': [],
  'ventilation-checked': [],
  'step-started': [],
  'step-ended': [],
  'batch-charged': [],
  'batch-recovered': [],
  'stream-logged': [],
  'stream-tested': [],
  'counting-said': [],
  'container-opened': [],
  'container-changed': [],
  'stream-placed': [],
  'contents-moved': [],
  'water-lost': [],
  'level-read': [],
  'contents-determined': [],
  'container-marked': [],
  'candidate-answered': [],
  'lab-reported': [],
  'container-inspected': [],
  'walk-finished': [],
  'finding-closed': [],
  'paper-made': [],
  'handed-over': [],
  'load-rejected': [],
  'proof-filed': [],
  'treatment-begun': [],
  'dose-added': [],
  'pot-read': [],
  'bench-tested': [],
  'treatment-ended': [],
  'price-stated': [],
});

export type Sorted = { readonly facts: readonly Fact[]; readonly lists: SortedFacts };

/** @param last lists that hold the same as then are the same arrays, so that what rests on them is not worked out again */
export function sorted(facts: readonly Fact[], last?: Sorted): Sorted {
  const added = last && goesOn(facts, last.facts) ? facts.slice(last.facts.length) : facts;
  const lists = emptyLists();
  for (const fact of added) (lists[fact.body.kind] as Fact[]).push(fact);
  if (!last) return { facts, lists };
  const kinds = Object.keys(lists) as PlainBody['kind'][];
  const merged = kinds.map((kind): [string, readonly Fact[]] => {
    const [now, before] = [lists[kind] as readonly Fact[], last.lists[kind] as readonly Fact[]];
    if (added === facts) return [kind, isSame(now, before) ? before : now];
    return [kind, now.length === 0 ? before : [...before, ...now]];
  });
  return { facts, lists: Object.fromEntries(merged) as SortedFacts };
}

const happenings: ReadonlySet<PlainBody['kind']> = new Set<Happening['body']['kind']>([
  'stream-placed',
  'contents-moved',
  'water-lost',
  'level-read',
  'contents-determined',
  'treatment-begun',
  'dose-added',
  'pot-read',
  'bench-tested',
  'treatment-ended',
]);

const isHappening = (fact: Fact): fact is Happening => happenings.has(fact.body.kind);

/**
 * What befell contents, of all kinds in one list: which of two in the same minute came first is told by the log alone.
 * @param last the same array where it holds the same
 */
export function happeningsIn(facts: readonly Fact[], last?: readonly Happening[]): readonly Happening[] {
  const found = facts.filter(isHappening);
  return last && isSame(found, last) ? last : found;
}
