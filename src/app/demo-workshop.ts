/**
 * The invented workshop that a person can try things in: no such place, people or office exists. Two batches over some
 * weeks, one in the leach now, a can that a collector took, and a shelf on which something is wrong on purpose.
 */
import { v7 } from 'uuid';
import type { Finding } from '../ledger/entries/findings';
import { type Layers, layBatch, type Shelf } from './demo-batch';
import { layHandOver } from './demo-hand-over';
import { NotLaid, penOf, timesBefore } from './demo-pen';
import type { Book } from './open-book';

const litres = (value: string) => ({ value, unit: 'L' }) as const;

/** The tub, cans and bottles, oldest first. The keys are how the batches name them. */
async function layShelf({ pen, when }: Layers) {
  const opened = when.at(38, '10:20');
  const openedOn = opened.slice(0, 10);
  const can = async (
    code: string,
    vessel: 'jerrican' | 'bottle' | 'tub',
    capacity: string,
    cap: 'vented' | 'lid' | 'tight',
    tray: string,
  ): Promise<string> => {
    const intention = {
      do: 'open-container',
      code,
      vessel,
      capacity: litres(capacity),
      cap,
      tray,
      openedOn,
    } as const;
    const container = { ...intention, material: 'HDPE', place: 'Shed, north wall' } as const;
    return (await pen.told('container-opened', container, opened)).containerId;
  };
  return {
    wash: await can('C-01', 'jerrican', '20', 'vented', 'nitrate tray'),
    barren: await can('C-02', 'jerrican', '10', 'vented', 'nitrate tray'),
    firstWash: await can('C-03', 'jerrican', '5', 'tight', 'nitrate tray'),
    doubtful: await can('C-04', 'jerrican', '5', 'vented', 'nitrate tray'),
    work: await can('C-05', 'jerrican', '5', 'vented', 'nitrate tray'),
    residue: await can('C-06', 'tub', '12', 'lid', 'dry tray'),
    ammonia: await can('C-07', 'bottle', '1', 'vented', 'ammonia tray'),
    rinse: await can('R-01', 'jerrican', '5', 'vented', 'nitrate tray'),
  };
}

/** The place, its two people, and the local rules as far as somebody has said them. */
async function layPlace({ pen, when, second }: Layers): Promise<void> {
  const first = when.at(41, '16:05');
  const ines = await pen.told('person-added', { do: 'add-person', name: 'Ines Halvard' }, first);
  pen.holds(ines.personId);
  await pen.writes(
    {
      do: 'describe-workshop',
      name: 'Mill Race shed',
      address: '3 Mill Race Lane, Karrowby',
      emergencyNumber: '112',
      noSignal: 'No signal inside the shed. Walk to the gate on Mill Race Lane.',
      mapReference: 'blue gate, 40 m past the weir',
      authority: { name: 'Karrowby county waste office', contact: '01632 960 021 (invented)' },
      collector: {
        name: 'Fenwater Collection',
        contact: '01632 960 077 (invented)',
        licence: 'FC-0000 (invented)',
      },
    },
    when.at(41, '16:12'),
  );
  await pen.writes({ do: 'add-person', name: second, phone: '01632 960 134' }, when.at(41, '16:14'));
  const said = { saidBy: 'Karrowby county waste office', saidOn: when.at(40, '12:00').slice(0, 10) };
  const storage = { rule: 'storage-days', value: { value: '180', unit: 'days' } } as const;
  await pen.writes(
    { do: 'state-local-rule', stated: storage, ...said, document: 'letter 14/207' },
    when.at(39, '18:30'),
  );
  const looks = { rule: 'inspection-days', value: { value: '7', unit: 'days' } } as const;
  await pen.writes({ do: 'state-local-rule', stated: looks, ...said }, when.at(39, '18:32'));
  const proofs = { rule: 'proof-days', value: { value: '30', unit: 'days' } } as const;
  await pen.writes({ do: 'state-local-rule', stated: proofs, ...said }, when.at(39, '18:34'));
  const lime = { do: 'describe-base', base: 'hydrated-lime', saidBy: 'as on the bag' } as const;
  await pen.writes({ ...lime, purity: { value: '94', unit: '%' } }, when.at(39, '18:36'));
}

/** The hood of the shed, measured, and the lee of its wall. */
async function layStations({ pen, when }: Layers): Promise<void> {
  const cm = (value: string) => ({ value, unit: 'cm' }) as const;
  const hood = {
    is: 'ducted-hood',
    width: cm('90'),
    height: cm('32'),
    face: { speed: { value: '0.52', unit: 'm/s' }, measuredOn: when.at(39, '12:00').slice(0, 10) },
  } as const;
  const at = when.at(39, '18:40');
  const { stationId } = await pen.told(
    'station-described',
    { do: 'add-station', name: 'Shed hood', station: hood },
    at,
  );
  await pen.writes({ do: 'add-station', name: 'Yard, lee side', station: { is: 'outdoors' } }, at);
  pen.stands({ id: stationId, name: 'Shed hood', kind: 'ducted-hood' });
}

/** What became of the vessels themselves: a cap was changed, a level read, and one came with the shed that nobody knows. */
async function layVessels({ pen, when }: Layers, { firstWash, wash }: Awaited<ReturnType<typeof layShelf>>) {
  await pen.writes(
    { do: 'change-container', containerId: firstWash, cap: 'vented', note: 'Was bought with a tight one.' },
    when.at(12, '17:20'),
  );
  await pen.writes({ do: 'log-level', containerId: wash, level: litres('9.8') }, when.at(5, '10:10'));
  await pen.writes(
    {
      do: 'open-container',
      code: 'C-08',
      vessel: 'bottle',
      capacity: litres('2.5'),
      material: 'other',
      cap: 'tight',
      tray: 'nitrate tray',
      openedOn: when.at(5, '10:30').slice(0, 10),
      doubt: { doubt: 'inherited', note: 'Behind the old sink. “Spül 2” in pencil, no other label.' },
      level: litres('1.1'),
    },
    when.at(5, '10:30'),
  );
}

/** The label came off a can of rinse water: nobody knows any more what went in. */
async function layDoubt({ pen, when }: Layers, containerId: string): Promise<void> {
  await pen.told(
    'stream-logged',
    {
      do: 'log-stream',
      batchId: null,
      stepId: null,
      stream: 'wash-water',
      liquid: { volume: litres('2.1'), findings: [], freeAcid: [] },
      note: 'Rinse of beakers and funnels.',
      placements: [{ containerId, amount: litres('2.1') }],
    },
    when.at(17, '17:40'),
  );
  const note = 'Label came off. Nobody is sure whether the chloride test rinse went in as well.';
  await pen.writes(
    { do: 'mark-container', containerId, mark: 'contents-doubtful', note },
    when.at(9, '10:02'),
  );
}

/** The weekly walk, which is due again by now: it found the can whose label had come off, and that was closed. */
async function layWalk({ pen, when }: Layers, shelf: Shelf & { readonly doubtful: string }): Promise<void> {
  const found = {
    findingId: v7(),
    look: 'insp-label',
    ask: 'Label readable, dated',
    answer: 'no: contents not known, marked so',
    note: 'The label lies in the tray, washed out.',
  };
  const ids = [shelf.wash, shelf.barren, shelf.doubtful, shelf.residue, shelf.ammonia];
  await pen.walks({
    seen: ids.map((containerId) => ({ containerId, found: containerId === shelf.doubtful ? [found] : [] })),
    at: when.at(9, '09:40'),
    said: { 'insp-temp': '12' },
  });
  const done = 'Marked as contents not known, set apart for the collector to ask.';
  await pen.writes({ do: 'close-finding', findingId: found.findingId, done }, when.at(9, '10:04'));
}

/** The collector has agreed to one code of the barren liquor; of the rest of its candidates nobody has said a word. */
async function layWord({ pen, when }: Layers, containerId: string): Promise<void> {
  const said = when.at(1, '11:40');
  await pen.writes(
    {
      do: 'answer-candidate',
      containerId,
      scheme: 'waste-list',
      code: '11 02 07*',
      answer: 'accepted',
      saidBy: 'Fenwater Collection',
      saidOn: said.slice(0, 10),
      document: 'acceptance FC-211 (invented)',
    },
    said,
  );
}

/** The first portion of today's batch, against the hood; what it came to is held by a test. */
async function checksVentilation({ pen, when }: Layers, batchId: string): Promise<void> {
  const stationId = pen.station();
  if (stationId === null) return;
  const grams = (metal: 'Ag' | 'Pd' | 'Ni' | 'Cu', value: string) => ({
    metal,
    mass: { value, unit: 'g' } as const,
  });
  await pen.writes(
    {
      do: 'log-ventilation-check',
      batchId,
      stationId,
      charge: {
        step: 'leach',
        metals: {
          known: 'each',
          masses: [grams('Ag', '3.7'), grams('Pd', '1.0'), grams('Ni', '1.0'), grams('Cu', '0.3')],
        },
        acid: { volume: litres('0.80'), strength: { value: '2.0', unit: 'mol/L' } },
        release: { value: '24', unit: 'h' },
        limit: 'niosh-15-min',
      },
      verdict: 'enough',
      portion: { value: '6.29', unit: 'g' },
    },
    when.at(1, '13:38'),
  );
}

/** The batch of today: in the leach since yesterday, looked at a while ago. */
async function layRunning({ pen, when, second }: Layers): Promise<void> {
  const feed = { capacitors: 'mixed', era: 'unknown', mass: { value: '520', unit: 'g' } } as const;
  const { batchId } = await pen.told(
    'batch-opened',
    { do: 'open-batch', code: 'B-03', feed },
    when.at(1, '13:10'),
  );
  const ready = { 'rdy-run': '2', 'rdy-kit': '3.5' };
  await pen.clears({ list: 'spill-response-readiness', at: when.at(1, '13:30'), said: ready, second });
  await checksVentilation({ pen, when, second }, batchId);
  const cleared = await pen.clears({
    list: 'leach-start',
    batchId,
    at: when.at(1, '13:44'),
    said: { 'lst-first': '6' },
    second,
  });
  const { entry: clearance, step, stationId } = cleared;
  const begun = {
    do: 'log-step-happened',
    batchId,
    step,
    clearance,
    ...(stationId === undefined ? {} : { stationId }),
  } as const;
  await pen.writes(begun, when.at(1, '13:52'));
  await pen.clears({ list: 'spill-response-readiness', at: when.minutesAgo(240), said: ready, second });
  await pen.clears({
    list: 'leach-check',
    batchId,
    at: when.minutesAgo(228),
    said: { 'lck-temp': '27' },
    second,
  });
}

const photometer = (metal: 'Cu' | 'Ni', value: string): Finding => ({
  by: 'photometer',
  metal,
  concentration: { value, unit: 'g/L' },
  reference: 'diluted 1 to 100',
});

const silverAssay: Finding = {
  by: 'assay',
  metal: 'Ag',
  concentration: { value: '12.6', unit: 'g/L' },
  reference: 'KW-4471 (invented)',
};

/** Somebody forgot the dilution: it cannot be true beside the photometer. */
const nickelStrip: Finding = {
  by: 'strip',
  metal: 'Ni',
  concentration: { value: '500', unit: 'mg/L' },
  steps: { below: { value: '250', unit: 'mg/L' }, above: { value: '1000', unit: 'mg/L' } },
};

/**
 * Writes the invented scenario into an empty record. What the disk refuses in the middle of it is left out.
 * @returns the person who holds the phone in it, and the place where that is
 */
export async function layDemo(perform: Book['perform'], now: string) {
  const pen = penOf(perform, now);
  const layers: Layers = { pen, when: timesBefore(now), second: 'Joost Merrin' };
  try {
    await layPlace(layers);
    await layStations(layers);
    const shelf = await layShelf(layers);
    await layHandOver(layers, shelf.rinse, 'Ines Halvard');
    await layBatch(layers, shelf, {
      code: 'B-01',
      began: 26,
      feed: {
        capacitors: 'precious-metal-electrode',
        era: 'may-hold-lead',
        mass: { value: '900', unit: 'g' },
      },
      leach: {
        volume: '3.55',
        metals: [photometer('Cu', '0.42'), photometer('Ni', '2.9'), silverAssay],
        acid: '0.95',
      },
      charged: { acid: '0.33', water: '3.50', washWater: '9.7', copper: '120.0', copperLeft: '97.6' },
      residue: '1.04',
      recovered: { silver: '44.1', palladium: '14.0' },
      barren: { volume: '3.35', metals: [photometer('Cu', '6.5'), photometer('Ni', '3.0')], acid: '0.71' },
      wash: { into: 'wash', volume: '9.8', metals: [photometer('Cu', '0.21'), photometer('Ni', '0.34')] },
    });
    await layDoubt(layers, shelf.doubtful);
    await layWalk(layers, shelf);
    await layBatch(layers, shelf, {
      code: 'B-02',
      began: 7,
      feed: { capacitors: 'precious-metal-electrode', era: 'lead-free', mass: { value: '760', unit: 'g' } },
      leach: { volume: '3.45', metals: [photometer('Cu', '0.38'), photometer('Ni', '2.5')], acid: '1.48' },
      residue: '0.88',
      recovered: { silver: '37.2', palladium: '11.9' },
      barren: {
        volume: '3.30',
        metals: [photometer('Cu', '5.6'), photometer('Ni', '2.6'), nickelStrip],
        acid: '0.66',
      },
      wash: {
        into: 'firstWash',
        volume: '4.7',
        metals: [photometer('Cu', '0.35'), photometer('Ni', '0.52')],
      },
    });
    await layVessels(layers, shelf);
    await layWord(layers, shelf.barren);
    await layRunning(layers);
  } catch (error) {
    if (!(error instanceof NotLaid)) throw error;
  }
  return { person: pen.holder(), station: pen.station() };
}
