/** Checklists as somebody went through them: each once by the rules of the app, then told again for other days. */
import { givenTo, gone } from '../../../src/app/demo-pen';
import type { BodyOf } from '../../../src/ledger/entries/body';
import { answerOf, finishedRun } from '../../../src/ledger/finished-run';
import { bandOf, basesOf, type Planned } from '../../../src/ledger/list-bounds';
import { answeredAs, begin, stillToAsk } from '../../../src/safety/checklist-run';
import { checklists } from '../../../src/safety/checklists';
import type { Context } from '../../../src/safety/run-schema';
import type { Book } from './book';
import type { Place } from './office';

type Finished = BodyOf<'checklist-finished'>;
type Later = BodyOf<'checklist-answered-later'>['answer'];
type Template = { readonly body: Finished; readonly later: readonly Later[]; readonly atPlace: boolean };

const base = '2026-01-05T09:00:00.000Z';
const nobody = '00000000-0000-7000-8000-000000000000';
const second = 'Second person';

/** Answers that keep their order of magnitude. */
const said: Readonly<Record<string, string>> = {
  ...{ 'rdy-run': '3', 'rdy-kit': '3.5', 'lst-first': '6', 'fil-temp': '18', 'cem-acid': '1' },
  ...{ 'am-drop': '0.25', 'wdw-rinse': '6', 'wdw-oven': '90', 'lck-temp': '27', 'ho-count': '8' },
  ...{ 'lim-base': 'limestone', 'lim-room': '24', 'lim-temp0': '17', 'lim-hot': '31', 'lim-ph': '9.0' },
};

/** What the app knows by the plan of a treatment before anybody is asked. */
function knownBy(planned: Planned | undefined): Pick<Context, 'planBases' | 'bounds'> {
  const band = planned && bandOf(planned);
  if (!planned || !band) return {};
  const from = `plan of the treatment, pH ${band.aim}`;
  const bounds = { 'plan-ph': { min: band.min, max: band.max, from } };
  return { planBases: { bases: [...basesOf(planned)], from }, bounds };
}

function templateOf(id: string, planned: Planned | undefined): Template {
  const list = checklists.get(id);
  if (!list) throw new Error(`no checklist ${id}`);
  const atPlace = list.station !== undefined;
  const place = { id: nobody, name: 'Hood', kind: 'ducted-hood' } as const;
  const context = { person: '', batchId: null, ...knownBy(planned), ...(atPlace ? { place } : {}) };
  const { run, at } = gone(begin(list, context, base), said, { name: second }, base);
  const { do: _, ...told } = finishedRun(nobody, run, at);
  const later = stillToAsk(run, []).map((item) => {
    const answered = answeredAs(run, item, givenTo(item, said, { name: second }), at, at);
    if (!answered.ok) throw new Error(`${id} does not go on after the step: ${answered.failure.code}`);
    return answerOf(answered.value);
  });
  return { body: { kind: 'checklist-finished', v: 1, ...told }, later, atPlace };
}

const templates = new Map<string, Template>();
function template(id: string, planned: Planned | undefined): Template {
  const name = JSON.stringify([id, planned]);
  const known = templates.get(name) ?? templateOf(id, planned);
  templates.set(name, known);
  return known;
}

const isInstant = /^\d{4}-\d\d-\d\dT[\d:]{8}\.\d{3}Z$/;

/** The same at another time, with somebody else standing by. */
function retold<T>(value: T, by: number, other: string): T {
  if (typeof value === 'string') {
    if (value === second) return other as T;
    return isInstant.test(value) ? (new Date(Date.parse(value) + by).toISOString() as T) : value;
  }
  if (Array.isArray(value)) return value.map((part) => retold(part, by, other)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, retold(part, by, other)])) as T;
}

type For = {
  readonly batchId?: string;
  readonly containerId?: string;
  readonly place: Place;
  readonly planned?: Planned;
};

/** Goes through a list that ends now, with the clock of whoever rings. @returns the entry that clears the step */
export function goThrough(book: Book, id: string, { batchId, containerId, place, planned }: For): string {
  const { body, atPlace } = template(id, planned);
  const by = book.now - Date.parse(body.finishedAt);
  const other = book.oneOf(['Joost', 'Femke', 'Anselm', 'Petra']);
  const told: Finished = {
    ...retold(body, by, other),
    runId: book.newId(),
    batchId: batchId ?? null,
    ...(containerId === undefined ? {} : { containerId }),
    ...(atPlace ? { stationId: place.stationId, place: place.name } : {}),
  };
  const entry = book.write(told);
  const due = told.second?.at;
  if (due !== undefined && due > told.finishedAt) {
    const clockId = book.newId();
    const clock = { clockId, of: 'check-in', due, batchId: batchId ?? null, name: other } as const;
    book.write({ kind: 'clock-started', v: 1, ...clock });
    book.tell(rings(book, clockId), Date.parse(due));
  }
  return entry;
}

function* rings(book: Book, clockId: string) {
  book.write({ kind: 'clock-stopped', v: 1, clockId, how: book.often(0.95) ? 'done' : 'not-needed' });
  yield* [];
}

/** What a list asks while its step runs and after it. */
export function answersLater(book: Book, id: string, checklist: string, planned?: Planned): void {
  for (const answer of template(id, planned).later)
    book.write({ kind: 'checklist-answered-later', v: 1, checklist, answer: { ...answer, at: book.iso } });
}
