/** A person with a notebook in a made-up workshop: writes sealed entries with given times and ids. */
import fc from 'fast-check';
import { decide } from '../../../src/ledger/decide';
import type { Body, BodyOf, PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll } from '../../../src/ledger/fold';
import type { Intention } from '../../../src/ledger/intention';
import type { Decided } from '../../../src/ledger/refusal';
import { seal } from '../../../src/ledger/seal';
import type { State } from '../../../src/ledger/state';

/** The nth identifier of a sort; `sort` keeps entries, things and devices apart. */
export const id = (sort: string, n: number): string =>
  `${sort.padEnd(8, '0').slice(0, 8)}-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;

/** Minutes after eight in the morning of a day. */
export const at = (minutes: number): string => new Date(Date.UTC(2026, 2, 2, 8, minutes)).toISOString();

export const litres = (value: string) => ({ value, unit: 'L' }) as const;
export const grams = (value: string) => ({ value, unit: 'g' }) as const;

export class Scribe {
  readonly entries: Entry[] = [];
  #things = 0;
  constructor(
    readonly letter = 'a',
    readonly who: string | null = null,
  ) {}

  write(body: Body, minutes = this.entries.length, happened = minutes): Entry {
    const counter = this.entries.length + 1;
    const entry = seal({
      id: id(`e${this.letter}`, counter),
      device: id(`d${this.letter}`, 0),
      counter,
      writtenAt: at(minutes),
      happenedAt: at(happened),
      zone: 'Europe/Paris',
      who: this.who,
      previous: this.entries.at(-1)?.hash ?? null,
      body,
    });
    this.entries.push(entry);
    return entry;
  }

  get state(): State {
    return applyAll(this.entries);
  }

  tries(intention: Intention, minutes = this.entries.length): Decided {
    const newId = () => id(`f${this.letter}`, ++this.#things);
    return decide(this.state, intention, { now: at(minutes), newId, who: this.who });
  }

  /** Decides and writes; what is refused is a fault of the test. */
  does(intention: Intention, minutes = this.entries.length, happened = minutes): readonly Entry[] {
    const result = this.tries(intention, minutes);
    if (!result.ok) throw new Error(JSON.stringify(result.refusal));
    return result.bodies.map((body) => this.write(body, minutes, happened));
  }
}

/** The state after these entries, a minute apart. */
export function written(...bodies: readonly PlainBody[]): State {
  const scribe = new Scribe();
  for (const body of bodies) scribe.write(body);
  return scribe.state;
}

export const wash = (n: number, volume: string, stream: 'wash-water' | 'leach-liquor' = 'wash-water') =>
  ({
    kind: 'stream-logged',
    v: 1,
    streamId: id('50', n),
    batchId: null,
    stepId: null,
    stream,
    liquid: { volume: litres(volume), findings: [], freeAcid: [] },
  }) satisfies PlainBody;

export const can = (n: number, capacity = '5', cap: 'vented' | 'tight' = 'vented') =>
  ({
    kind: 'container-opened',
    v: 1,
    containerId: id('c0', n),
    code: `C-0${n}`,
    vessel: 'jerrican',
    capacity: litres(capacity),
    material: 'HDPE',
    cap,
    openedOn: '2026-03-02',
  }) satisfies PlainBody;

export const pour = (stream: number, into: number, volume: string) =>
  ({
    kind: 'stream-placed',
    v: 1,
    streamId: id('50', stream),
    containerId: id('c0', into),
    amount: litres(volume),
  }) satisfies PlainBody;

/** The same of what is weighed. */
export const put = (stream: number, into: number, mass: string) =>
  ({ ...pour(stream, into, '0'), amount: grams(mass) }) satisfies PlainBody;

export const tip = (from: number, to: number | null, volume: string) =>
  ({
    kind: 'contents-moved',
    v: 1,
    fromContainerId: id('c0', from),
    toContainerId: to === null ? null : id('c0', to),
    amount: litres(volume),
    purpose: 'transfer',
  }) satisfies PlainBody;

export const begun = (n: number, container: number, clearance: string | null = null) =>
  ({
    kind: 'treatment-begun',
    v: 1,
    treatmentId: id('7e', n),
    containerId: id('c0', container),
    stages: [
      { agent: 'limestone', targetPh: { value: '5', unit: '1' } },
      { agent: 'hydrated-lime', targetPh: { value: '9.0', unit: '1' } },
    ],
    targetPh: { value: '9.0', unit: '1' },
    clearance,
    allowed: 'yes',
  }) satisfies PlainBody;

export const dose = (treatment: number, mass: string, agent: 'hydrated-lime' | 'iron' = 'hydrated-lime') =>
  ({
    kind: 'dose-added',
    v: 1,
    treatmentId: id('7e', treatment),
    agent,
    mass: grams(mass),
  }) satisfies PlainBody;

export const potRead = (treatment: number, ph: string, more: Partial<BodyOf<'pot-read'>> = {}) =>
  ({
    kind: 'pot-read',
    v: 1,
    treatmentId: id('7e', treatment),
    ph: { value: { value: ph, unit: '1' }, instrument: 'paper' },
    ...more,
  }) satisfies PlainBody;

export const treatmentEnd = (treatment: number, outcome: 'reached' | 'stopped' = 'reached') =>
  ({ kind: 'treatment-ended', v: 1, treatmentId: id('7e', treatment), outcome }) satisfies PlainBody;

export const benchTest = (container: number) =>
  ({
    kind: 'bench-tested',
    v: 1,
    containerId: id('c0', container),
    sampleVolume: { value: '100', unit: 'mL' },
    agent: 'hydrated-lime',
    mass: grams('4.1'),
    endPh: { value: '9.1', unit: '1' },
    instrument: 'meter',
  }) satisfies PlainBody;

const few = fc.integer({ min: 1, max: 3 });
const volume = fc.integer({ min: 0, max: 9999 }).map((n) => (n / 1000).toFixed(3));

/** Water lost, levels read and contents determined of a few containers: each told of once or over again. */
export const toldOfContents = (
  few: fc.Arbitrary<number>,
  volume: fc.Arbitrary<string>,
): readonly fc.Arbitrary<PlainBody>[] => [
  fc
    .tuple(few, volume)
    .map(([n, v]): PlainBody => ({ kind: 'water-lost', v: 1, containerId: id('c0', n), amount: litres(v) })),
  fc
    .tuple(few, volume)
    .map(([n, v]): PlainBody => ({ kind: 'level-read', v: 1, containerId: id('c0', n), level: litres(v) })),
  fc.tuple(few, few).map(
    ([n, s]): PlainBody => ({
      kind: 'contents-determined',
      v: 1,
      containerId: id('c0', n),
      streamId: id('50', s),
      how: 'tests',
      saidBy: 'Maren',
    }),
  ),
];

const plain: fc.Arbitrary<PlainBody> = fc.oneof(
  fc.tuple(few, volume).map(([n, v]) => wash(n, v)),
  fc.tuple(few, volume).map(([n, v]) => can(n, v)),
  fc.tuple(few, few, volume).map(([s, c, v]) => pour(s, c, v)),
  fc.tuple(few, fc.option(few), volume).map(([a, b, v]) => tip(a, b, v)),
  few.map((n): PlainBody => ({ kind: 'person-added', v: 1, personId: id('aa', n), name: `P${n}` })),
  few.map((n): PlainBody => ({ kind: 'person-left', v: 1, personId: id('aa', n) })),
  fc
    .tuple(
      few,
      fc.constantFrom(
        'closed',
        'reopened',
        'contents-doubtful',
        'contents-known',
        'held',
        'gone',
        'came-back',
        'damaged',
        'emptied',
      ),
    )
    .map(([n, mark]): PlainBody => ({ kind: 'container-marked', v: 1, containerId: id('c0', n), mark })),
  fc.constantFrom('5', '7').map(
    (max): PlainBody => ({
      kind: 'list-changed',
      v: 1,
      change: { change: 'range', list: 'leach-start', item: 'lst-first', max },
    }),
  ),
  few.map(
    (n): PlainBody => ({
      kind: 'station-described',
      v: 1,
      stationId: id('5a', n),
      name: `Bench ${n}`,
      station: { is: 'outdoors' },
    }),
  ),
  few.map((n): PlainBody => ({ kind: 'station-given-up', v: 1, stationId: id('5a', n) })),
  fc.tuple(few, few).map(
    ([n, s]): PlainBody => ({
      kind: 'ventilation-checked',
      v: 1,
      checkId: id('5b', n),
      batchId: null,
      stationId: id('5a', s),
      station: { is: 'outdoors' },
      charge: { step: 'acid-dilution' },
      verdict: 'enough',
    }),
  ),
  few.map(
    (n): PlainBody => ({
      kind: 'clock-started',
      v: 1,
      clockId: id('c1', n),
      of: 'check-in',
      due: at(90),
      batchId: null,
    }),
  ),
  few.map((n): PlainBody => ({ kind: 'clock-stopped', v: 1, clockId: id('c1', n), how: 'done' })),
  fc.tuple(few, few).map(
    ([n, c]): PlainBody => ({
      kind: 'checklist-answered-later',
      v: 1,
      checklist: id('ea', c),
      answer: { item: 'lime-after', ask: 'pH', kind: 'reading', answer: `${n}`, unit: 'pH', at: at(n) },
    }),
  ),
  few.map(
    (n): PlainBody => ({
      kind: 'silver-checked',
      v: 1,
      checkId: id('5c', n),
      batchId: id('ba', n),
      looks: [{ look: 'chloride', seen: 'curd', at: at(n) }],
      outcome: 'not-conclusive',
      streamIds: [id('50', n)],
    }),
  ),
  few.map(
    (n): PlainBody => ({
      kind: 'step-started',
      v: 1,
      stepId: id('57', n),
      batchId: id('ba', n),
      step: 'leach',
      clearance: null,
    }),
  ),
  fc.tuple(few, few).map(([n, c]) => begun(n, c)),
  fc
    .tuple(few, volume, fc.constantFrom('hydrated-lime' as const, 'iron' as const))
    .map(([n, v, agent]) => dose(n, v, agent)),
  fc.tuple(few, fc.constantFrom('1.5', '9.2')).map(([n, ph]) => potRead(n, ph)),
  fc
    .tuple(few, volume)
    .map(([n, value]) =>
      potRead(n, '9', { findings: [{ by: 'strip', metal: 'Cu', concentration: { value, unit: 'mg/L' } }] }),
    ),
  fc
    .tuple(few, fc.constantFrom('reached' as const, 'stopped' as const))
    .map(([n, outcome]) => treatmentEnd(n, outcome)),
  few.map(benchTest),
  fc.tuple(few, fc.constantFrom('vented' as const, 'tight' as const)).map(
    ([n, cap]): PlainBody => ({
      kind: 'container-changed',
      v: 1,
      containerId: id('c0', n),
      cap,
      tray: null,
      area: cap === 'tight' ? 'near-work' : 'store',
    }),
  ),
  ...toldOfContents(few, volume),
  fc.tuple(few, volume).map(
    ([n, value]): PlainBody => ({
      kind: 'stream-tested',
      v: 1,
      streamId: id('50', n),
      findings: [{ by: 'assay', metal: 'Cu', concentration: { value, unit: 'mg/L' } }],
      freeAcid: [],
    }),
  ),
  fc.tuple(few, fc.constantFrom('counted' as const, 'recycled-at-once' as const)).map(
    ([n, counted]): PlainBody => ({
      kind: 'counting-said',
      v: 1,
      streamId: id('50', n),
      counted,
      saidBy: 'Maren',
    }),
  ),
  fc.tuple(few, fc.constantFrom('accepted' as const, 'refused' as const)).map(
    ([n, answer]): PlainBody => ({
      kind: 'candidate-answered',
      v: 1,
      containerId: id('c0', n),
      scheme: 'rcra',
      code: 'D002',
      answer,
      saidBy: 'Collector',
      saidOn: '2026-03-02',
    }),
  ),
  fc.tuple(few, few).map(
    ([n, w]): PlainBody => ({
      kind: 'container-inspected',
      v: 1,
      walkId: id('3a', w),
      containerId: id('c0', n),
      looks: ['insp-shape'],
      found: [{ findingId: id('f1', n), look: 'insp-shape', ask: 'Shape', answer: 'sucked in' }],
      startedAt: at(n),
    }),
  ),
  few.map(
    (n): PlainBody => ({
      kind: 'walk-finished',
      v: 1,
      walkId: id('3a', n),
      list: { id: 'container-inspection', version: '2', hash: '0'.repeat(64), title: 'Walk' },
      startedAt: at(n),
      containerIds: [id('c0', n)],
      notSeen: [],
      looks: [],
      readings: [],
      found: [],
    }),
  ),
  fc.tuple(few, few, few).map(
    ([n, a, b]): PlainBody => ({
      kind: 'handed-over',
      v: 1,
      handOverId: id('40', n),
      collector: { name: 'Fen Carriers' },
      containers: [...new Set([a, b])].map((c) => ({ containerId: id('c0', c) })),
      signatures: {},
    }),
  ),
  fc.tuple(few, few).map(
    ([n, c]): PlainBody => ({
      kind: 'load-rejected',
      v: 1,
      handOverId: id('40', n),
      containerIds: [id('c0', c)],
      why: 'drum leaked',
    }),
  ),
  fc.tuple(few, few).map(
    ([n, c]): PlainBody => ({
      kind: 'proof-filed',
      v: 1,
      handOverId: id('40', n),
      containerIds: [id('c0', c)],
    }),
  ),
  fc.tuple(few, volume).map(
    ([n, v]): PlainBody => ({
      kind: 'lab-reported',
      v: 1,
      containerId: id('c0', n),
      laboratory: 'Weir Laboratory',
      sampledOn: '2026-03-01',
      results: [{ element: 'As', in: 'tclp', level: { value: v, unit: 'mg/L' } }],
    }),
  ),
  few.map((n): PlainBody => ({ kind: 'finding-closed', v: 1, findingId: id('f1', n), done: 'vent freed' })),
  fc.tuple(fc.constantFrom('iron' as const, 'collection-visit' as const), volume).map(
    ([what, value]): PlainBody => ({
      kind: 'price-stated',
      v: 1,
      what,
      amount: { value, unit: 'EUR' },
    }),
  ),
  fc.tuple(few, volume).map(
    ([n, v]): PlainBody => ({
      kind: 'batch-charged',
      v: 1,
      batchId: id('ba', n),
      charge: { what: 'acid', volume: litres(v), strength: { value: '68', unit: '%' } },
    }),
  ),
  fc.tuple(few, volume).map(
    ([n, v]): PlainBody => ({
      kind: 'batch-recovered',
      v: 1,
      batchId: id('ba', n),
      recovery: { what: 'silver', mass: grams(v) },
    }),
  ),
  few.map(
    (n): PlainBody => ({
      kind: 'batch-opened',
      v: 1,
      batchId: id('ba', n),
      code: `B-${n}`,
      feed: { capacitors: 'unknown', era: 'unknown', mass: grams('500') },
    }),
  ),
);

type Line = {
  readonly device: 'a' | 'b';
  readonly wait: number;
  readonly body:
    | PlainBody
    | { readonly change: 'corrects' | 'withdraws'; readonly back: number; readonly by: PlainBody };
};

const line: fc.Arbitrary<Line> = fc.record({
  device: fc.constantFrom('a' as const, 'b' as const),
  wait: fc.integer({ min: 0, max: 90 }),
  body: fc.oneof(
    { weight: 4, arbitrary: plain },
    {
      weight: 1,
      arbitrary: fc.record({
        change: fc.constantFrom('corrects' as const, 'withdraws' as const),
        back: fc.nat(30),
        by: plain,
      }),
    },
  ),
});

function bodyOf(said: Line['body'], so: readonly Entry[]): Body {
  if ('kind' in said) return said;
  const target = so[said.back % Math.max(1, so.length)]?.id ?? id('e9', 9);
  return said.change === 'corrects'
    ? { kind: 'entry-corrected', v: 1, corrects: target, body: said.by, reason: 'misread' }
    : { kind: 'entry-withdrawn', v: 1, withdraws: target, reason: 'did not happen' };
}

/** Any record of two devices, with mistakes, corrections, withdrawals and things that nobody told of. */
export const anyRecord: fc.Arbitrary<readonly Entry[]> = fc.array(line, { maxLength: 30 }).map((lines) => {
  const scribes = { a: new Scribe('a'), b: new Scribe('b') };
  const all: Entry[] = [];
  for (const { device, wait, body } of lines)
    all.push(scribes[device].write(bodyOf(body, all), all.length, all.length + 60 - wait));
  return all;
});

/** 2 L with all its acid and some of its metals told; a slurry with its mud weighed. */
export const lifeStreams: readonly PlainBody[] = [
  {
    ...wash(1, '2', 'leach-liquor'),
    liquid: {
      volume: litres('2'),
      ph: { value: { value: '1.4', unit: '1' }, instrument: 'paper' },
      findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '12', unit: 'g/L' } }],
      freeAcid: [{ by: 'titration', result: { value: '1.31', unit: 'mol/L' } }],
    },
  },
  {
    ...wash(3, '1', 'leach-liquor'),
    stream: 'treated-slurry',
    solid: {
      wetMass: grams('300'),
      moisture: { by: 'not-determined' },
      holds: { liquor: 'not-determined' },
    },
  },
];

const two = fc.integer({ min: 1, max: 2 });
const amount = fc.constantFrom(litres('0'), litres('0.5'), litres('2'), grams('100'), grams('300'));

const befalls: fc.Arbitrary<PlainBody> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.tuple(few, two, amount).map(([s, c, a]) => ({ ...pour(s, c, '1'), amount: a })),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(two, fc.option(two), amount).map(([a, b, x]) => ({ ...tip(a, b, '1'), amount: x })),
  },
  fc
    .tuple(two, fc.constantFrom('0.5', '1', '2', '3'))
    .map(([n, v]): PlainBody => ({ kind: 'water-lost', v: 1, containerId: id('c0', n), amount: litres(v) })),
  fc.tuple(two, few).map(
    ([n, s]): PlainBody => ({
      kind: 'contents-determined',
      v: 1,
      containerId: id('c0', n),
      streamId: id('50', s),
      how: 'tests',
      saidBy: 'Maren',
    }),
  ),
  fc
    .tuple(two, amount)
    .map(([n, level]): PlainBody => ({ kind: 'level-read', v: 1, containerId: id('c0', n), level })),
  fc
    .tuple(
      two,
      fc.constantFrom('contents-doubtful', 'contents-known', 'gone', 'came-back', 'damaged', 'emptied'),
    )
    .map(([n, mark]): PlainBody => ({ kind: 'container-marked', v: 1, containerId: id('c0', n), mark })),
  two.map((n) => begun(n, n)),
  two.map((n) => dose(n, '20')),
  fc.tuple(two, fc.constantFrom('1.5', '9.2')).map(([n, ph]) => potRead(n, ph)),
);

/** Test waste that nobody knows anything of, or that there was none of in the end. */
const testWaste: fc.Arbitrary<PlainBody> = fc
  .tuple(
    fc.constantFrom('0', '3'),
    fc.constantFrom('chloride-test-waste' as const, 'ammonia-test-waste' as const),
    fc.boolean(),
  )
  .map(([v, stream, told]) => ({
    ...wash(2, v),
    stream,
    liquid: {
      volume: litres(v),
      findings: [],
      freeAcid: told ? [{ by: 'titration', result: { value: '0.5', unit: 'mol/L' } } as const] : [],
    },
  }));

/** Two containers and three wastes, and all that may befall them; one entry, whichever, may have been withdrawn. */
export const anyLife: fc.Arbitrary<readonly Entry[]> = fc
  .tuple(testWaste, fc.array(befalls, { minLength: 1, maxLength: 10 }), fc.option(fc.nat(14)))
  .map(([test, befallen, withdrawn]) => {
    const scribe = new Scribe();
    for (const body of [test, ...lifeStreams, can(1, '10'), can(2, '10'), ...befallen]) scribe.write(body);
    const target = withdrawn === null ? undefined : scribe.entries[withdrawn]?.id;
    if (target) scribe.write({ kind: 'entry-withdrawn', v: 1, withdraws: target, reason: 'did not happen' });
    return scribe.entries;
  });
