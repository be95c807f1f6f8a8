/** Any record at all: of two devices, in whatever order, with mistakes and changes. */
import fc from 'fast-check';
import type { Body, PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import {
  at,
  begun,
  benchTest,
  can,
  dose,
  grams,
  id,
  litres,
  marked,
  potRead,
  pour,
  Scribe,
  tip,
  treatmentEnd,
  wash,
} from './scribe';

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
    .map(([n, mark]) => marked(n, mark)),
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
