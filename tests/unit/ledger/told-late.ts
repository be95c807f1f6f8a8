/** Records of which much is told late, arrives before what came first, or is changed before it has come. */
import fc from 'fast-check';
import type { Body, PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { toldOfContents } from './any-record';
import {
  begun,
  benchTest,
  can,
  dose,
  grams,
  id,
  marked,
  pour,
  put,
  Scribe,
  tip,
  treatmentEnd,
  wash,
} from './scribe';

/** Measured after it was logged; kg/L. */
export const tested = (stream: number, density: string) =>
  ({
    kind: 'stream-tested',
    v: 1,
    streamId: id('50', stream),
    density: { value: density, unit: 'kg/L' },
    findings: [],
    freeAcid: [],
  }) satisfies PlainBody;

export const taken = (handOver: number, container: number) =>
  ({
    kind: 'handed-over',
    v: 1,
    handOverId: id('40', handOver),
    collector: { name: 'Fen Carriers' },
    containers: [{ containerId: id('c0', container) }],
    signatures: {},
  }) satisfies PlainBody;

/** Sent back by who had taken it. */
export const lent = (handOver: number, container: number) =>
  ({
    kind: 'load-rejected',
    v: 1,
    handOverId: id('40', handOver),
    containerIds: [id('c0', container)],
    why: 'drum leaked',
  }) satisfies PlainBody;

const two = fc.integer({ min: 1, max: 2 });
const volume = fc.constantFrom('0', '0.5', '1', '2', '3');
const reason = 'misread';

const befalls: fc.Arbitrary<PlainBody> = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(two, two, volume).map(([s, c, v]) => pour(s, c, v)) },
  { weight: 2, arbitrary: fc.tuple(two, two).map(([s, c]) => put(s, c, '550')) },
  { weight: 4, arbitrary: fc.tuple(two, fc.option(two), volume).map(([a, b, v]) => tip(a, b, v)) },
  {
    weight: 5,
    arbitrary: fc
      .tuple(
        two,
        fc.constantFrom(
          'closed',
          'reopened',
          'held',
          'let-go',
          'leaving',
          'staying',
          'gone',
          'came-back',
          'damaged',
          'mended',
          'contents-doubtful',
          'contents-known',
          'emptied',
        ),
      )
      .map(([n, mark]) => marked(n, mark)),
  },
  { weight: 2, arbitrary: fc.tuple(two, fc.constantFrom('1.0', '1.1')).map(([s, by]) => tested(s, by)) },
  { weight: 2, arbitrary: fc.tuple(two, two).map(([n, c]) => begun(n, c)) },
  { weight: 2, arbitrary: two.map((n) => dose(n, '20')) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(two, fc.constantFrom('reached', 'stopped'))
      .map(([n, outcome]) => treatmentEnd(n, outcome)),
  },
  fc.tuple(two, two).map(([h, c]) => taken(h, c)),
  fc.tuple(two, two).map(([h, c]) => lent(h, c)),
  two.map(benchTest),
  ...toldOfContents(two, volume),
);

const things: readonly PlainBody[] = [
  can(1, '10'),
  can(2, '10'),
  wash(1, '2'),
  { ...wash(2, '3'), liquid: { ...wash(2, '3').liquid, density: { value: '1.1', unit: 'kg/L' } } },
  {
    kind: 'batch-opened',
    v: 1,
    batchId: id('ba', 1),
    code: 'B-1',
    feed: { capacitors: 'unknown', era: 'unknown', mass: grams('500') },
  },
];

type Line = {
  readonly device: 'a' | 'b';
  /** Minutes from eight, each on its own: a clock may be behind, and much is told of late. */
  readonly written: number;
  readonly happened: number;
  readonly body: PlainBody;
  /** Of which it is a change, if it is one: corrected to `body`, or withdrawn. */
  readonly changes: { readonly which: number; readonly how: 'corrects' | 'withdraws' } | null;
};

const minute = fc.nat(40);

const line: fc.Arbitrary<Line> = fc.record({
  device: fc.constantFrom('a', 'b'),
  written: minute,
  happened: minute,
  body: befalls,
  changes: fc.option(
    fc.record({ which: fc.nat(), how: fc.constantFrom('corrects' as const, 'withdraws' as const) }),
    { freq: 4 },
  ),
});

/** A correction that is of another kind counts for nothing: here it mostly is of the same. */
function changed(target: Entry, how: 'corrects' | 'withdraws', body: PlainBody): Body {
  if (how === 'withdraws') return { kind: 'entry-withdrawn', v: 1, withdraws: target.id, reason };

  const same =
    target.body.kind === body.kind ? body : target.body.kind === 'stream-placed' ? pour(1, 2, '1') : body;
  return { kind: 'entry-corrected', v: 1, corrects: target.id, body: same, reason };
}

/** In the order in which the entries arrive. */
export const anyLateRecord: fc.Arbitrary<readonly Entry[]> = fc
  .tuple(fc.array(line, { minLength: 4, maxLength: 16, size: 'max' }), fc.boolean())
  .chain(([lines, thingsFirst]) => {
    const scribes = { a: new Scribe('a'), b: new Scribe('b') };
    const all = things.map((body, i) => scribes.b.write(body, i, 0));
    for (const { device, written, happened, body, changes } of lines) {
      const target = changes ? all[changes.which % all.length] : undefined;
      const said = changes && target ? changed(target, changes.how, body) : body;
      all.push(scribes[device].write(said, written, happened));
    }
    const [first, rest] = thingsFirst ? [all.slice(0, things.length), all.slice(things.length)] : [[], all];
    return fc.shuffledSubarray(rest, { minLength: rest.length }).map((jumbled) => [...first, ...jumbled]);
  });
