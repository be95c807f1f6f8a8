/** One invented batch from opening to clean metal, with its wastes on the shelf. */
import type { Feed } from '../ledger/entries/batches';
import type { Finding } from '../ledger/entries/findings';
import type { IntentionOf } from '../ledger/intention';
import type { Pen, timesBefore } from './demo-pen';

export type Layers = {
  readonly pen: Pen;
  readonly when: ReturnType<typeof timesBefore>;
  /** Who stands by. */
  readonly second: string;
};

export type Shelf = Readonly<
  Record<'wash' | 'barren' | 'firstWash' | 'work' | 'ammonia' | 'residue', string>
>;

/** What the two people wrote down. Volumes in L, concentrations in g/L, acid in mol/L, masses in g, residue in kg. */
export type BatchNotes = {
  readonly code: string;
  /** Days before now on which it was opened; it is worked on over the next five days. */
  readonly began: number;
  readonly feed: Feed;
  readonly leach: { readonly volume: string; readonly metals: readonly Finding[]; readonly acid: string };
  readonly residue: string;
  readonly recovered: { readonly silver: string; readonly palladium: string };
  /** Acid of 68 %, water and copper as charged, where they wrote it down. */
  readonly charged?: {
    readonly acid: string;
    readonly water: string;
    readonly washWater: string;
    readonly copper: string;
    readonly copperLeft: string;
  };
  readonly barren: { readonly volume: string; readonly metals: readonly Finding[]; readonly acid: string };
  readonly wash: {
    readonly into: 'wash' | 'firstWash';
    readonly volume: string;
    readonly metals: readonly Finding[];
  };
};

const litres = (value: string) => ({ value, unit: 'L' }) as const;
const grams = (value: string) => ({ value, unit: 'g' }) as const;
const molar = (value: string) => ({ value, unit: 'mol/L' }) as const;

type Batch = Layers & { readonly shelf: Shelf; readonly notes: BatchNotes; readonly batchId: string };

type Doing = {
  readonly list: string;
  readonly at: string;
  readonly said?: Readonly<Record<string, string>>;
  readonly returnAt?: string;
};

/** Goes through a list and begins its step. */
async function begins({ pen, batchId, second }: Batch, doing: Doing): Promise<string> {
  const { entry, finishedAt, ...cleared } = await pen.clears({ ...doing, batchId, second });
  const begun = { do: 'log-step-happened', batchId, clearance: entry, ...cleared } as const;
  return (await pen.told('step-started', begun, finishedAt)).stepId;
}

const ends = async ({ pen }: Batch, stepId: string, at: string, note?: string): Promise<void> =>
  void (await pen.writes({ do: 'end-step', stepId, ...(note === undefined ? {} : { note }) }, at));

const readies = ({ pen, second }: Batch, at: string) =>
  pen.clears({
    list: 'spill-response-readiness',
    at,
    said: { 'rdy-run': '3', 'rdy-kit': '3.5' },
    second,
  });

type Charge = IntentionOf<'log-charge'>['charge'];
type Recovery = IntentionOf<'log-recovery'>['recovery'];

const charges = async ({ pen, batchId, notes }: Batch, at: string, ...all: Charge[]): Promise<void> => {
  if (notes.charged) for (const charge of all) await pen.writes({ do: 'log-charge', batchId, charge }, at);
};
const getsBack = async ({ pen, batchId, notes }: Batch, at: string, ...all: Recovery[]): Promise<void> => {
  if (notes.charged)
    for (const recovery of all) await pen.writes({ do: 'log-recovery', batchId, recovery }, at);
};

/** A day and a half in dilute acid, then the filter; the liquor stands in the can for work in hand. */
async function leaches(batch: Batch): Promise<void> {
  const { pen, when, notes, batchId, shelf } = batch;
  const { began, leach, residue } = notes;
  await readies(batch, when.at(began, '09:10'));
  const leachId = await begins(batch, {
    list: 'leach-start',
    at: when.at(began, '09:32'),
    said: { 'lst-first': '8' },
  });
  await charges(
    batch,
    when.at(began, '09:50'),
    { what: 'dilution-water', volume: litres(notes.charged?.water ?? '0') },
    {
      what: 'acid',
      volume: litres(notes.charged?.acid ?? '0'),
      strength: { value: '68', unit: '%' },
    },
  );
  await ends(batch, leachId, when.at(began - 1, '15:20'), 'No bubbles for two hours.');
  await readies(batch, when.at(began - 1, '15:24'));
  const stepId = await begins(batch, {
    list: 'filtration',
    at: when.at(began - 1, '15:40'),
    said: { 'fil-temp': '18' },
  });
  const logged = when.at(began - 1, '17:05');
  const liquor = await pen.told(
    'stream-logged',
    {
      do: 'log-stream',
      batchId,
      stepId,
      stream: 'leach-liquor',
      liquid: {
        volume: litres(leach.volume),
        findings: [...leach.metals],
        freeAcid: [{ by: 'titration', result: molar(leach.acid) }],
      },
      colour: 'green',
      placements: [{ containerId: shelf.work, amount: litres(leach.volume) }],
    },
    logged,
  );
  await pen.writes(
    {
      do: 'log-stream',
      batchId,
      stepId,
      stream: 'ceramic-residue',
      solid: {
        wetMass: { value: residue, unit: 'kg' },
        moisture: { by: 'assumed', low: { value: '15', unit: '%' }, high: { value: '30', unit: '%' } },
        holds: { liquor: liquor.streamId },
      },
      placements: [{ containerId: shelf.residue, amount: { value: residue, unit: 'kg' } }],
    },
    logged,
  );
  await ends(batch, stepId, when.at(began - 1, '17:20'));
}

/** Copper sheet for three days; what is left is the barren liquor. */
async function cements(batch: Batch): Promise<void> {
  const { pen, when, notes, batchId, shelf } = batch;
  const { began, leach, recovered, barren } = notes;
  await readies(batch, when.at(began - 2, '09:00'));
  const stepId = await begins(batch, {
    list: 'cementation',
    at: when.at(began - 2, '09:20'),
    said: { 'cem-acid': '1' },
  });
  await pen.writes(
    {
      do: 'log-move-happened',
      fromContainerId: shelf.work,
      toContainerId: null,
      amount: litres(leach.volume),
      purpose: 'treatment',
      note: 'Into the cementation bucket.',
    },
    when.at(began - 2, '09:30'),
  );
  await charges(batch, when.at(began - 2, '09:36'), {
    what: 'copper',
    mass: grams(notes.charged?.copper ?? '0'),
  });
  await pen.writes(
    {
      do: 'log-stream',
      batchId,
      stepId,
      stream: 'barren-liquor',
      liquid: {
        volume: litres(barren.volume),
        findings: [
          ...barren.metals,
          {
            by: 'metals-recovered',
            metal: 'Cu',
            silver: grams(recovered.silver),
            palladium: grams(recovered.palladium),
          },
        ],
        freeAcid: [{ by: 'titration', result: molar(barren.acid) }],
      },
      colour: 'blue-green',
      placements: [{ containerId: shelf.barren, amount: litres(barren.volume) }],
    },
    when.at(began - 4, '11:15'),
  );
  await getsBack(batch, when.at(began - 4, '11:20'), {
    what: 'copper',
    mass: grams(notes.charged?.copperLeft ?? '0'),
  });
  await ends(batch, stepId, when.at(began - 4, '11:30'));
}

/** A drop on a plate against palladium; what is left of it never meets the nitric wastes. */
async function tests(batch: Batch): Promise<void> {
  const { pen, when, notes, batchId, shelf } = batch;
  const { began } = notes;
  await readies(batch, when.at(began - 4, '11:34'));
  const stepId = await begins(batch, {
    list: 'spot-test-ammonia',
    at: when.at(began - 4, '11:42'),
    said: { 'am-drop': '0.25' },
  });
  await pen.writes(
    {
      do: 'log-stream',
      batchId,
      stepId,
      stream: 'ammonia-test-waste',
      liquid: {
        volume: { value: '80', unit: 'mL' },
        findings: [],
        freeAcid: [{ by: 'not-determined' }],
        ph: { value: { value: '3', unit: '1' }, instrument: 'paper' },
      },
      note: 'Acidified with dilute hydrochloric acid the same hour.',
      placements: [{ containerId: shelf.ammonia, amount: { value: '80', unit: 'mL' } }],
    },
    when.at(began - 4, '12:05'),
  );
  await ends(batch, stepId, when.at(began - 4, '12:10'));
}

async function washes(batch: Batch): Promise<void> {
  const { pen, when, notes, batchId, shelf } = batch;
  const { began, wash, recovered } = notes;
  const stepId = await begins(batch, {
    list: 'wash-dry-weigh',
    at: when.at(began - 4, '14:00'),
    said: { 'wdw-rinse': '6', 'wdw-oven': '90' },
  });
  await pen.writes(
    {
      do: 'log-stream',
      batchId,
      stepId,
      stream: 'wash-water',
      liquid: {
        volume: litres(wash.volume),
        findings: [...wash.metals],
        freeAcid: [{ by: 'ph', ph: { value: '2', unit: '1' }, instrument: 'paper' }],
      },
      placements: [{ containerId: shelf[wash.into], amount: litres(wash.volume) }],
    },
    when.at(began - 4, '15:30'),
  );
  await charges(batch, when.at(began - 4, '15:30'), {
    what: 'wash-water',
    volume: litres(notes.charged?.washWater ?? '0'),
  });
  await getsBack(
    batch,
    when.at(began - 5, '08:40'),
    { what: 'silver', mass: grams(recovered.silver) },
    { what: 'palladium', mass: grams(recovered.palladium) },
  );
  const note = `Dry: silver ${recovered.silver} g, palladium ${recovered.palladium} g.`;
  await ends(batch, stepId, when.at(began - 5, '08:50'), note);
}

export async function layBatch(layers: Layers, shelf: Shelf, notes: BatchNotes): Promise<void> {
  const { code, began, feed } = notes;
  const opened = { do: 'open-batch', code, feed } as const;
  const { batchId } = await layers.pen.told('batch-opened', opened, layers.when.at(began, '08:55'));
  const batch: Batch = { ...layers, shelf, notes, batchId };
  await leaches(batch);
  await cements(batch);
  await tests(batch);
  await washes(batch);
}
