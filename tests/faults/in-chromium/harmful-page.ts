/** Writes a workshop whose every text is a script, markup or a formula: all of it is valid, and none of it is more than text. */
import { v7 } from 'uuid';
import { openBook } from '../../../src/app/open-book';
import type { Intention } from '../../../src/ledger/intention';

declare global {
  interface Window {
    writeHarm: (text: string) => Promise<void>;
  }
}

const day = '2026-03-02';

/** @param text of at most 100 characters */
async function writeHarm(text: string): Promise<void> {
  const opened = await openBook('real');
  if (!opened.ok) throw new Error(opened.failure.code);
  const book = opened.value;
  const does = async (intention: Intention): Promise<void> => {
    const result = await book.perform(intention, null);
    if (!result.ok) throw new Error(JSON.stringify(result));
  };
  const first = (things: ReadonlyMap<string, unknown>): string => [...things.keys()][0] ?? v7();
  const code = text.slice(0, 16);
  await does({
    do: 'describe-workshop',
    name: text,
    address: text,
    mapReference: text,
    generatorNumber: text,
    emergencyNumber: text,
    noSignal: text,
    authority: { name: text, contact: text },
    collector: { name: text, contact: text, licence: text },
    hazardousWasteCounter: text,
  });
  await does({ do: 'add-person', name: text, phone: text });
  await does({ do: 'add-station', name: text, station: { is: 'outdoors' }, note: text });
  await does({
    do: 'state-local-rule',
    stated: { rule: 'generator-category', value: text },
    saidBy: text,
    saidOn: day,
    document: text,
  });
  await does({
    do: 'open-batch',
    code,
    feed: { capacitors: 'mixed', era: 'lead-free', mass: { value: '500', unit: 'g' } },
    note: text,
  });
  const batchId = first(book.state.value.batches);
  await does({ do: 'log-step-happened', batchId, step: 'leach', clearance: null, note: text });
  await does({
    do: 'open-container',
    code,
    vessel: 'drum',
    capacity: { value: '60', unit: 'L' },
    material: 'other',
    otherMaterial: text,
    cap: 'vented',
    place: text,
    tray: text,
    openedOn: day,
  });
  const containerId = first(book.state.value.containers);
  const volume = { value: '2', unit: 'L' } as const;
  await does({
    do: 'log-stream',
    batchId,
    stepId: null,
    stream: 'wash-water',
    liquid: { volume, findings: [], freeAcid: [] },
    colour: text,
    layers: text,
    note: text,
    placements: [{ containerId, amount: volume }],
  });
  await does({ do: 'mark-container', containerId, mark: 'contents-doubtful', doubt: 'other', note: text });
  await does({
    do: 'answer-candidate',
    containerId,
    scheme: 'rcra',
    code: text,
    answer: 'accepted',
    saidBy: text,
    saidOn: day,
    document: text,
    note: text,
  });
  await does({
    do: 'log-lab-report',
    containerId,
    laboratory: text,
    document: text,
    sampledOn: day,
    ph: { value: '2', unit: '1' },
    results: [],
    note: text,
  });
  await does({ do: 'state-price', what: 'iron', amount: { value: '1', unit: 'EUR' }, saidBy: text });
  await does({
    do: 'log-hand-over',
    collector: { name: text, licence: text, contact: text },
    driver: text,
    vehicle: text,
    document: text,
    destination: text,
    containers: [{ containerId, note: text }],
    signatures: {},
    note: text,
  });
  const entry = book.state.value.log.find(({ body }) => body.kind === 'person-added');
  if (entry?.body.kind === 'person-added')
    await does({ do: 'correct-entry', corrects: entry.id, body: entry.body, reason: text });
  book.close();
}

window.writeHarm = writeHarm;
