/** Any year of a small shelf in which everything is told and nothing is taken that is not there. */
import fc from 'fast-check';
import { isNothing, readably } from '../../../src/ledger/amounts';
import type { Amount } from '../../../src/ledger/entries/containers';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Held } from '../../../src/ledger/state';
import { mark } from './dated';
import { begun, can, dose, id, litres, potRead, Scribe, treatmentEnd } from './scribe';

const doings = [
  'log',
  'log',
  'place',
  'place',
  'place',
  'pour-over',
  'pour-over',
  'take-out',
  'dry',
  'treat',
  'hand-over',
  'hand-over',
  'reject',
  'come-back',
  'determine',
] as const;

const doing = fc.record({
  does: fc.constantFrom(...doings),
  a: fc.integer({ min: 1, max: 3 }),
  b: fc.integer({ min: 1, max: 3 }),
  share: fc.constantFrom(0.25, 0.5, 1),
  purpose: fc.constantFrom('sample' as const, 'spill' as const, 'treatment' as const, 'transfer' as const),
});

type Doing = typeof doing extends fc.Arbitrary<infer D> ? D : never;

/** Writes down what a person with this shelf would, so many minutes after eight; what cannot be done is not. */
class Shelf {
  readonly scribe = new Scribe();
  #streams = 0;
  #treatments = 0;
  #handOvers = 0;

  logs(amount = '2'): string {
    this.#streams += 1;
    const n = this.#streams;
    this.scribe.write({
      kind: 'stream-logged',
      v: 1,
      streamId: id('50', n),
      batchId: null,
      stepId: null,
      stream: (['barren-liquor', 'wash-water', 'leach-liquor'] as const)[n % 3] ?? 'wash-water',
      liquid: {
        volume: litres(amount),
        findings: [{ by: 'assay', metal: 'Cu', concentration: { value: `${n + 1}.5`, unit: 'g/L' } }],
        freeAcid: [{ by: 'titration', result: { value: `0.${n}`, unit: 'mol/L' } }],
      },
    });
    return id('50', n);
  }

  amountOf(held: Held | undefined, share: number): Amount | null {
    if (!held || isNothing(held)) return null;
    return share === 1
      ? { value: held.volume.toFixed(), unit: 'L' }
      : readably(held.volume.times(share), 'L');
  }

  isHere = (n: number): boolean => this.scribe.state.containers.get(id('c0', n))?.goneSince === null;
  holding = (n: number): Held | undefined => this.scribe.state.containers.get(id('c0', n))?.holds;

  does({ does, a, b, share, purpose }: Doing): void {
    const { scribe } = this;
    if (does === 'log') this.logs();
    else if (does === 'place') {
      const stream = [...scribe.state.streams.values()].find(({ unplaced }) => !isNothing(unplaced));
      const amount = this.amountOf(stream?.unplaced, share);
      if (stream && amount && this.isHere(a)) {
        const { streamId } = stream.body;
        scribe.write({ kind: 'stream-placed', v: 1, streamId, containerId: id('c0', a), amount });
      }
    } else if (does === 'pour-over' || does === 'take-out') {
      const amount = this.amountOf(this.holding(a), share);
      if (!amount || !this.isHere(a) || (does === 'pour-over' && a === b)) return;
      const to = does === 'pour-over' ? id('c0', b) : null;
      scribe.write({
        kind: 'contents-moved',
        v: 1,
        fromContainerId: id('c0', a),
        toContainerId: to,
        amount,
        purpose,
      });
    } else if (does === 'dry') {
      const amount = this.amountOf(this.holding(a), 0.25);
      if (amount && this.isHere(a))
        scribe.write({
          kind: 'water-lost',
          v: 1,
          containerId: id('c0', a),
          amount: litres(amount.value),
        });
    } else if (does === 'treat') this.treats(a, share);
    else this.leaves(does, a, b);
  }

  treats(a: number, share: number): void {
    if (!this.isHere(a) || isNothing(this.holding(a) ?? ({ volume: 0, mass: 0 } as never))) return;
    this.#treatments += 1;
    const n = this.#treatments;
    const findings = [
      {
        by: 'photometer',
        metal: 'Cu',
        concentration: { value: '0.4', unit: 'g/L' },
        reference: 'x',
      } as const,
    ];
    this.scribe.write(begun(n, a));
    this.scribe.write(dose(n, '20'));
    if (share < 1) this.scribe.write(potRead(n, '8', { findings }));
    this.scribe.write(dose(n, '5'));
    if (share < 0.5) this.scribe.write(potRead(n, '9', { findings }));
    this.scribe.write(treatmentEnd(n));
  }

  leaves(does: Doing['does'], a: number, b: number): void {
    const { scribe } = this;
    if (does === 'hand-over' && this.isHere(a)) {
      this.#handOvers += 1;
      scribe.write({
        kind: 'handed-over',
        v: 1,
        handOverId: id('40', this.#handOvers),
        collector: { name: 'Fen Carriers' },
        containers: [...new Set([a, b])].filter(this.isHere).map((n) => ({ containerId: id('c0', n) })),
        signatures: {},
      });
    } else if (does === 'reject' && this.#handOvers > 0 && !this.isHere(a))
      scribe.write({
        kind: 'load-rejected',
        v: 1,
        handOverId: id('40', this.#handOvers),
        containerIds: [id('c0', a)],
        why: 'drum leaked',
      });
    else if (does === 'come-back' && !this.isHere(a)) scribe.write(mark(a, 'came-back'));
    else if (does === 'determine' && this.isHere(a)) {
      const streamId = this.logs('1');
      scribe.write({
        kind: 'contents-determined',
        v: 1,
        containerId: id('c0', a),
        streamId,
        how: 'tests',
        saidBy: 'Maren',
      });
    }
  }
}

/** Two wastes and three cans of which two hold something, then whatever befalls them, an entry a minute. */
export const anyYear: fc.Arbitrary<readonly Entry[]> = fc
  .array(doing, { minLength: 4, maxLength: 12 })
  .map((all) => {
    const shelf = new Shelf();
    for (const n of [1, 2, 3]) shelf.scribe.write(can(n, '20'));
    const begin = { does: 'place', b: 1, share: 1, purpose: 'transfer' } as const;
    shelf.logs();
    shelf.does({ ...begin, a: 1 });
    shelf.logs();
    shelf.does({ ...begin, a: 2, share: 0.5 });
    for (const one of all) shelf.does(one);
    return shelf.scribe.entries;
  });
