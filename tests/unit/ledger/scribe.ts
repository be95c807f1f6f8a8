/** A person with a notebook in a made-up workshop: writes sealed entries with given times and ids. */
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

export const marked = (container: number, mark: BodyOf<'container-marked'>['mark']) =>
  ({ kind: 'container-marked', v: 1, containerId: id('c0', container), mark }) satisfies PlainBody;
