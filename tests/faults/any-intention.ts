/** Whatever a person may want to write down, sensible or not, about what a record holds and what it does not. */
import type { Amount } from '../../src/ledger/entries/containers';
import type { Intention } from '../../src/ledger/intention';
import type { State } from '../../src/ledger/state';
import type { Chance } from './chance';

/** A thing that nobody has told of. */
const nobodys = 'dead0000-0000-7000-8000-000000000000';

class Wish {
  constructor(
    readonly state: State,
    readonly chance: Chance,
  ) {}

  idOf(things: ReadonlyMap<string, unknown>): string {
    if (this.chance.oneIn(40)) return nobodys;
    return this.chance.any(things.keys()) ?? nobodys;
  }

  container = (): string => this.idOf(this.state.containers);
  stream = (): string => this.idOf(this.state.streams);
  treatment = (): string => this.idOf(this.state.treatments);
  step = (): string => this.idOf(this.state.steps);
  batch = (): string => this.idOf(this.state.batches);
  handOver = (): string => this.idOf(this.state.handOvers);

  /** Up to about three litres, at times in gallons or with nine decimals, at times nothing, at times far too much. */
  litres(): Extract<Amount, { unit: 'L' | 'mL' | 'US gal' }> {
    const { chance } = this;
    const unit = chance.one(['L', 'L', 'L', 'mL', 'US gal']);
    const whole = chance.one([`${chance.below(4)}`, `${chance.below(4)}`, '0', '999999999']);
    const part = chance.one(['', '.5', '.25', '.001', `.${chance.below(1_000_000_000) + 1}`]);
    return { value: unit === 'mL' ? `${chance.below(3000)}` : `${whole}${part}`, unit };
  }

  grams(): Extract<Amount, { unit: 'g' | 'kg' | 'mg' | 'lb' }> {
    const { chance } = this;
    const unit = chance.one(['g', 'g', 'kg', 'mg', 'lb']);
    return { value: `${chance.below(unit === 'g' ? 2000 : 3)}${chance.one(['', '.5', '.123456789'])}`, unit };
  }

  amount = (): Amount => (this.chance.oneIn(3) ? this.grams() : this.litres());

  /** All of it, a part of it, or whatever comes to mind. */
  amountOf(containerId: string): Amount {
    const held = this.state.containers.get(containerId)?.holds;
    if (!held || this.chance.oneIn(4)) return this.amount();
    const share = this.chance.one([1, 0.5, 0.3]);
    return held.volume.isZero()
      ? { value: held.mass.times(share).toDecimalPlaces(3).toFixed(), unit: 'g' }
      : { value: held.volume.times(share).toDecimalPlaces(6).toFixed(), unit: 'L' };
  }

  restOf(streamId: string): Amount {
    const rest = this.state.streams.get(streamId)?.unplaced;
    if (!rest || this.chance.oneIn(3)) return this.amount();
    return rest.volume.isZero()
      ? { value: rest.mass.toDecimalPlaces(3).toFixed(), unit: 'g' }
      : { value: rest.volume.toDecimalPlaces(6).toFixed(), unit: 'L' };
  }

  waste(): Omit<Extract<Intention, { do: 'determine-contents' }>['stream'], never> {
    const { chance } = this;
    const stream = chance.one([
      'leach-liquor',
      'barren-liquor',
      'wash-water',
      'treated-slurry',
      'hydroxide-sludge',
      'chloride-test-waste',
      'ammonia-test-waste',
    ]);
    const liquid = {
      volume: this.litres(),
      ...(chance.oneIn(3)
        ? { density: { value: chance.one(['1.05', '1.2', '0']), unit: 'kg/L' } as const }
        : {}),
      findings: chance.oneIn(2)
        ? [
            {
              by: 'assay',
              metal: 'Cu',
              concentration: { value: `${chance.below(30)}`, unit: 'g/L' },
            } as const,
          ]
        : [],
      freeAcid: chance.oneIn(2)
        ? [{ by: 'titration', result: { value: chance.one(['0.5', '2']), unit: 'mol/L' } } as const]
        : [],
    };
    const solid = {
      wetMass: this.grams(),
      moisture: { by: 'not-determined' },
      holds: { liquor: 'not-determined' },
    } as const;
    const is = chance.one(['liquid', 'liquid', 'liquid', 'solid', 'both']);
    return {
      stream,
      ...(is === 'solid' ? {} : { liquid }),
      ...(is === 'liquid' ? {} : { solid }),
    };
  }
}

const stages = [{ agent: 'hydrated-lime', targetPh: { value: '9.0', unit: '1' } }] as const;

const newContainer = (w: Wish): Intention => ({
  do: 'open-container',
  vessel: w.chance.one(['jerrican', 'bottle', 'tub', 'drum']),
  capacity: { value: w.chance.one(['5', '20', '60', '0']), unit: 'L' },
  material: w.chance.one(['HDPE', 'PP', 'glass']),
  cap: w.chance.one(['vented', 'tight', 'lid', 'open']),
  openedOn: '2026-03-02',
  ...(w.chance.oneIn(6) ? { code: w.chance.one(['C-01', 'C-02', 'old drum']) } : {}),
  ...(w.chance.oneIn(6) ? { doubt: { doubt: 'found' } as const } : {}),
  ...(w.chance.oneIn(6) ? { level: w.litres() } : {}),
});

/** By how often each comes up; what moves waste comes up most. */
const wishes: readonly [(wish: Wish) => Intention, ...((wish: Wish) => Intention)[]] = [
  (w) => ({ do: 'log-stream', batchId: null, stepId: null, ...w.waste() }),
  (w) => ({ do: 'log-stream', batchId: w.batch(), stepId: null, ...w.waste() }),
  (w) => {
    const waste = w.waste();
    const amount = w.chance.oneIn(3) ? w.amount() : (waste.liquid?.volume ?? w.grams());
    const placements = [{ containerId: w.container(), amount }];
    return { do: 'log-stream', batchId: null, stepId: null, ...waste, placements };
  },
  (w) => {
    const streamId = w.stream();
    return { do: 'place-stream', streamId, containerId: w.container(), amount: w.restOf(streamId) };
  },
  (w) => {
    const streamId = w.stream();
    return { do: 'log-placement-happened', streamId, containerId: w.container(), amount: w.restOf(streamId) };
  },
  (w) => {
    const from = w.container();
    const to = w.chance.oneIn(3) ? null : w.container();
    const purpose = w.chance.one(['transfer', 'sample', 'spill', 'treatment']);
    return {
      do: 'move-contents',
      fromContainerId: from,
      toContainerId: to,
      amount: w.amountOf(from),
      purpose,
    };
  },
  (w) => {
    const from = w.container();
    const to = w.chance.oneIn(3) ? null : w.container();
    const purpose = w.chance.one(['transfer', 'sample', 'spill', 'treatment']);
    return {
      do: 'log-move-happened',
      fromContainerId: from,
      toContainerId: to,
      amount: w.amountOf(from),
      purpose,
    };
  },
  (w) => ({ do: 'move-all', fromContainerId: w.container(), toContainerId: w.container() }),
  (w) => ({ do: 'log-water-lost', containerId: w.container(), amount: w.litres() }),
  (w) => ({ do: 'log-level', containerId: w.container(), level: w.amount() }),
  (w) => ({
    do: 'determine-contents',
    containerId: w.container(),
    how: w.chance.one(['assay', 'tests', 'papers', 'witness']),
    saidBy: 'Maren',
    stream: w.waste(),
  }),
  newContainer,
  (w) => ({
    do: 'mark-container',
    containerId: w.container(),
    mark: w.chance.one([
      'closed',
      'reopened',
      'contents-doubtful',
      'contents-known',
      'held',
      'let-go',
      'leaving',
      'staying',
      'gone',
      'came-back',
      'came-back',
      'emptied',
      'damaged',
      'mended',
      'proof-filed',
    ]),
  }),
  (w) => ({
    do: 'log-hand-over',
    collector: { name: 'Fen Carriers' },
    containers: [w.container(), w.container()].map((containerId) => ({ containerId })),
    signatures: {},
  }),
  (w) => ({
    do: 'log-rejected-load',
    handOverId: w.handOver(),
    containerIds: [w.container()],
    why: 'the drum leaked',
  }),
  (w) => {
    const handOverId = w.handOver();
    const left = w.state.handOvers.get(handOverId)?.parts ?? [];
    const containerIds = left.length > 0 ? left.map(({ containerId }) => containerId) : [w.container()];
    return w.chance.oneIn(2)
      ? { do: 'log-rejected-load', handOverId, containerIds, why: 'the papers did not fit' }
      : { do: 'file-proof', handOverId, containerIds };
  },
  (w) => ({
    do: 'log-treatment-happened',
    containerId: w.container(),
    stages: [...stages],
    clearance: null,
  }),
  (w) => ({
    do: 'begin-treatment',
    containerId: w.container(),
    stages: [...stages],
    clearance: w.chance.any(w.state.log)?.id ?? nobodys,
  }),
  (w) => ({
    do: 'log-dose',
    treatmentId: w.treatment(),
    agent: w.chance.one(['hydrated-lime', 'iron']),
    mass: w.grams(),
  }),
  (w) => ({
    do: 'log-pot-reading',
    treatmentId: w.treatment(),
    ph: { value: { value: w.chance.one(['1.5', '9.2']), unit: '1' }, instrument: 'paper' },
  }),
  (w) => ({ do: 'end-treatment', treatmentId: w.treatment(), outcome: w.chance.one(['reached', 'stopped']) }),
  (w) => ({
    do: 'log-bench-test',
    containerId: w.container(),
    sampleVolume: { value: '100', unit: 'mL' },
    agent: 'hydrated-lime',
    mass: w.grams(),
    endPh: { value: '9.1', unit: '1' },
    instrument: 'meter',
  }),
  (w) => ({
    do: 'withdraw-entry',
    withdraws: w.chance.any(w.state.log)?.id ?? nobodys,
    reason: 'it did not happen',
  }),
  (w) => {
    const written = w.chance.any(w.state.log.filter(({ body }) => body.kind === 'stream-logged'))?.body;
    const target = w.state.log.find(({ body }) => body === written);
    if (written?.kind !== 'stream-logged' || !target)
      return { do: 'withdraw-entry', withdraws: nobodys, reason: 'nothing to correct' };
    const { liquid: _, solid: __, ...rest } = written;
    const { stream: kind, ...parts } = w.waste();
    const body = { ...rest, stream: kind, ...parts };
    return { do: 'correct-entry', corrects: target.id, body, reason: 'it was misread' };
  },
  (w) => {
    const moves = w.state.log.filter(
      ({ body }) => body.kind === 'contents-moved' || body.kind === 'stream-placed',
    );
    const target = w.chance.any(moves);
    if (!target || (target.body.kind !== 'contents-moved' && target.body.kind !== 'stream-placed'))
      return { do: 'withdraw-entry', withdraws: nobodys, reason: 'nothing to correct' };
    const body = { ...target.body, amount: w.amount() };
    const happenedAt = w.chance.any(w.state.log)?.happenedAt ?? target.happenedAt;
    return { do: 'correct-entry', corrects: target.id, body, happenedAt, reason: 'it was misread' };
  },
  (w) => ({
    do: 'log-stream-test',
    streamId: w.stream(),
    findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '3', unit: 'g/L' } }],
    freeAcid: [],
  }),
  (w) => ({
    do: 'change-container',
    containerId: w.container(),
    cap: w.chance.one(['vented', 'tight']),
    area: w.chance.one(['near-work', 'store']),
  }),
  (w) => ({
    do: 'say-counting',
    streamId: w.stream(),
    counted: w.chance.one(['counted', 'not-hazardous']),
    saidBy: 'Maren',
  }),
  (w) => ({
    do: 'answer-candidate',
    containerId: w.container(),
    scheme: 'rcra',
    code: 'D002',
    answer: w.chance.one(['accepted', 'refused']),
    saidBy: 'Collector',
    saidOn: '2026-03-02',
  }),
  (w) => ({
    do: 'log-lab-report',
    containerId: w.container(),
    laboratory: 'Weir Laboratory',
    sampledOn: '2026-03-03',
    results: [{ element: 'As', in: 'tclp', level: { value: `${w.chance.below(9)}`, unit: 'mg/L' } }],
  }),
  (w) => ({
    do: 'open-batch',
    feed: { capacitors: 'mixed', era: 'lead-free', mass: w.grams() },
    ...(w.chance.oneIn(4) ? { code: w.chance.one(['B-01', 'B-02']) } : {}),
  }),
  (w) => ({ do: 'log-step-happened', batchId: w.batch(), step: 'leach', clearance: null }),
  (w) => ({ do: 'start-step', batchId: w.batch(), step: 'leach', clearance: nobodys }),
  (w) => ({ do: 'end-step', stepId: w.step() }),
  (w) => ({
    do: 'log-charge',
    batchId: w.batch(),
    charge: { what: 'acid', volume: w.litres(), strength: { value: '68', unit: '%' } },
  }),
  (w) => ({ do: 'log-recovery', batchId: w.batch(), recovery: { what: 'silver', mass: w.grams() } }),
  (w) => ({ do: 'add-person', name: w.chance.one(['Ana', 'Ben', '  ', '<img src=x onerror=alert(1)>']) }),
  (w) => ({ do: 'person-leaves', personId: w.idOf(w.state.people) }),
  (w) => ({
    do: 'state-local-rule',
    stated: w.chance.oneIn(2)
      ? { rule: 'treatment-allowed', value: 'yes' }
      : { rule: 'fill-limit', value: { value: '90', unit: '%' } },
    saidBy: 'County office',
    saidOn: '2026-03-02',
  }),
  (w) => ({
    do: 'start-clock',
    of: 'check-in',
    due: '2026-03-02T10:00:00.000Z',
    batchId: w.chance.oneIn(2) ? null : w.batch(),
  }),
  (w) => ({ do: 'stop-clock', clockId: w.idOf(w.state.clocks), how: 'done' }),
  (w) => ({ do: 'state-price', what: 'iron', amount: { value: `${w.chance.below(50)}`, unit: 'EUR' } }),
];

/** What no form gives, but a fault of our own or a broken file might. */
const rubbish: readonly [unknown, ...unknown[]] = [
  '-1',
  '1e9',
  'NaN',
  '',
  '1,5',
  '9999999999',
  '\ud800',
  null,
  { value: '1' },
  [],
];

/** One leaf of it is not what it should be. */
function spoilt(intention: Intention, chance: Chance): Intention {
  const copy = structuredClone(intention) as Record<string, unknown>;
  const keys = Object.keys(copy).filter((key) => key !== 'do');
  const key = chance.any(keys);
  if (key === undefined) return intention;
  const inner = copy[key];
  if (typeof inner === 'object' && inner !== null && !Array.isArray(inner) && 'value' in inner)
    copy[key] = { ...inner, value: chance.one(rubbish) };
  else if (typeof inner === 'string') copy[key] = chance.one(rubbish);
  return copy as Intention;
}

export type Wanted = { readonly intention: Intention; readonly spoilt: boolean };

/** The same chance and the same state make the same wish. */
export function anyIntention(state: State, chance: Chance): Wanted {
  const wish = new Wish(state, chance);
  // Nothing can befall a shelf that is bare.
  const made = state.containers.size < 3 && chance.oneIn(2) ? newContainer : chance.one(wishes);
  const intention = made(wish);
  return chance.oneIn(25)
    ? { intention: spoilt(intention, chance), spoilt: true }
    : { intention, spoilt: false };
}
