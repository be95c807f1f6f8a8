/**
 * An invented workshop of many containers, the same each time: in each stand several wastes of two batches, known in several
 * ways, some moved on. Bundled before it is run.
 */
import type { Entry } from '../../src/ledger/entries/entry';
import type { Finding, Metal } from '../../src/ledger/entries/findings';
import type { IntentionOf } from '../../src/ledger/intention';
import { chanceOf } from '../support/chance';
import { shellInMemory } from '../support/shell-in-memory';

type Logged = IntentionOf<'log-stream'>;

const litres = (value: string) => ({ value, unit: 'L' }) as const;
const said = { saidBy: 'Invented county office', saidOn: '2026-01-12', document: 'letter 7' } as const;
const looks = ['label-there', 'cap-sits', 'tray-dry', 'walls-sound', 'level-as-written'];

/** Everything that somebody wrote down there over some months. */
export async function manyContainers(containers: number, seed = 20261130): Promise<readonly Entry[]> {
  const chance = chanceOf(seed);
  const between = (low: number, high: number, digits = 1) => (low + (high - low) * chance()).toFixed(digits);
  const memory = shellInMemory('2026-01-12T08:00:00.000Z');
  const { does, pass, shell } = memory;
  const hours = (n: number): void => pass(n * 3_600_000);

  const measured = (metal: Metal, low: number, high: number): Finding => ({
    by: 'photometer',
    metal,
    concentration: { value: between(low, high, 2), unit: 'g/L' },
    spread: { plusMinus: { value: '8', unit: '%' }, as: 'k2' },
    on: '2026-02-02',
  });
  const traces = (): readonly Finding[] =>
    (['Pb', 'Ba', 'Zn', 'Fe', 'Ag'] as const).map((metal) => ({
      by: 'assay',
      metal,
      concentration: { value: between(1, 90), unit: 'mg/L' },
      reference: 'Report 26-114',
    }));

  async function logs(containerId: string, volume: string, stream: Omit<Logged, 'do' | 'placements'>) {
    const placements = [{ containerId, amount: litres(volume) }];
    const { body } = await does({ do: 'log-stream', ...stream, placements });
    return body.kind === 'stream-logged' ? body.streamId : '';
  }

  async function begins(batchId: string, step: string): Promise<string> {
    const { body } = await does({ do: 'log-step-happened', batchId, step, clearance: null });
    return body.kind === 'step-started' ? body.stepId : '';
  }

  async function opensBatch(): Promise<string> {
    const { body } = await does({
      do: 'open-batch',
      feed: {
        capacitors: chance() < 0.7 ? 'precious-metal-electrode' : 'mixed',
        era: chance() < 0.5 ? 'may-hold-lead' : 'lead-free',
        mass: { value: between(400, 900, 0), unit: 'g' },
      },
    });
    return body.kind === 'batch-opened' ? body.batchId : '';
  }

  /** Barren liquor, wash water and a second wash of one batch. */
  async function fills(containerId: string, batchId: string): Promise<void> {
    const stepId = await begins(batchId, 'cementation');
    hours(50);
    const barren = between(2, 4, 2);
    const streamId = await logs(containerId, barren, {
      batchId,
      stepId,
      stream: 'barren-liquor',
      colour: 'blue-green',
      liquid: {
        volume: litres(barren),
        ph: { value: { value: '0.5', unit: '1' }, instrument: 'paper' },
        findings: [
          measured('Cu', 10, 30),
          measured('Ni', 2, 12),
          {
            by: 'metals-recovered',
            metal: 'Cu',
            silver: { value: between(8, 22), unit: 'g' },
            palladium: { value: between(2, 9), unit: 'g' },
          },
        ],
        freeAcid: [{ by: 'titration', result: { value: between(0.3, 1.4, 2), unit: 'mol/L' } }],
      },
    });
    await does({ do: 'end-step', stepId });
    const wash = between(1, 3, 2);
    await logs(containerId, wash, {
      batchId,
      stepId: null,
      stream: 'wash-water',
      liquid: {
        volume: litres(wash),
        findings: [
          { by: 'strip', metal: 'Cu', concentration: { value: '100', unit: 'mg/L' } },
          { by: 'not-determined', metal: 'Ni' },
        ],
        freeAcid: [{ by: 'ph', ph: { value: '2', unit: '1' }, instrument: 'paper' }],
      },
    });
    if (chance() < 0.5)
      await does({ do: 'log-stream-test', streamId, findings: [...traces()], freeAcid: [] });
  }

  async function opens(number: number): Promise<string> {
    const { body } = await does({
      do: 'open-container',
      vessel: number % 3 === 0 ? 'bottle' : 'jerrican',
      capacity: litres('20'),
      material: 'HDPE',
      cap: 'vented',
      place: 'Shed, north wall',
      tray: 'nitrate tray',
      openedOn: shell.moment().slice(0, 10),
    });
    return body.kind === 'container-opened' ? body.containerId : '';
  }

  await does({
    do: 'describe-workshop',
    name: 'Invented workshop of many cans',
    address: 'Weir Yard 6, Ostermill',
    emergencyNumber: '112',
    noSignal: 'Phone at Weir Yard 4.',
    mapReference: '4471 0926',
    authority: { name: 'Invented county office', contact: '01632 960 021' },
    collector: { name: 'Invented collector', contact: '01632 960 077', licence: 'IC-0000' },
  });
  await does({ do: 'add-person', name: 'Maren' });
  await does({ do: 'state-local-rule', stated: { rule: 'laws', value: ['eu', 'us-federal'] }, ...said });
  const days = { rule: 'storage-days', value: { value: '180', unit: 'days' } } as const;
  await does({ do: 'state-local-rule', stated: days, ...said });

  let before: string | undefined;
  for (let number = 1; number <= containers; number += 1) {
    const containerId = await opens(number);
    await fills(containerId, await opensBatch());
    await fills(containerId, await opensBatch());
    // A part of one goes into the next, so that what is in it comes of four batches.
    if (before !== undefined && number % 4 === 0)
      await does({
        do: 'log-move-happened',
        fromContainerId: before,
        toContainerId: containerId,
        amount: litres('2'),
        purpose: 'transfer',
      });
    const walkId = shell.newId();
    const startedAt = shell.moment();
    await does({ do: 'log-inspected', walkId, containerId, looks, found: [], startedAt });
    before = containerId;
    hours(6);
  }
  return memory.state.value.log;
}
