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

export type Sorted = {
  readonly facts: readonly Fact[];
  readonly lists: SortedFacts;
  /** What befell contents, of all kinds in one list: which of two in the same minute came first is told by the log alone. */
  readonly befell: readonly Happening[];
};

/** @param last lists that hold the same as then are the same arrays, so that what rests on them is not worked out again */
export function sorted(facts: readonly Fact[], last?: Sorted): Sorted {
  const goes = last !== undefined && goesOn(facts, last.facts);
  const added = goes ? facts.slice(last.facts.length) : facts;
  const lists = emptyLists();
  for (const fact of added) (lists[fact.body.kind] as Fact[]).push(fact);
  const befell = added.filter(isHappening);
  if (!last) return { facts, lists, befell };
  const merged = <T>(now: readonly T[], before: readonly T[]): readonly T[] => {
    if (!goes) return isSame(now, before) ? before : now;
    return now.length === 0 ? before : [...before, ...now];
  };
  const kinds = Object.keys(lists) as PlainBody['kind'][];
  const all = kinds.map((kind) => [kind, merged<Fact>(lists[kind], last.lists[kind])]);
  return { facts, lists: Object.fromEntries(all) as SortedFacts, befell: merged(befell, last.befell) };
}
