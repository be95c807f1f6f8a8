import { describe, expect, test } from 'vitest';
import type { State } from '../../../src/ledger/state';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { hazardsOf } from '../../../src/safety/load-hazards';
import { StreamKind } from '../../../src/safety/stream-kind';
import { reopened } from '../ledger/opened-again';
import { barrenLiquor, disposalState } from './disposal-state';

type Memory = Awaited<ReturnType<typeof disposalState>>;

type Told = { readonly state: { readonly value: State }; readonly now: Memory['now'] };

const dataOf = (memory: Told, ids: readonly string[], madeBy: string | null = null) =>
  disposalData(ids, {
    state: memory.state.value,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy,
    sign: '.',
    demo: false,
  });

describe('how much a load is', () => {
  test('is the sum of its containers, and names those of which the mass is not determined', async () => {
    const memory = await disposalState();
    const found = await memory.opens('C-11', '5');
    await memory.does({ do: 'log-level', containerId: found, level: { value: '1.1', unit: 'L' } });
    await memory.does({
      do: 'mark-container',
      containerId: found,
      mark: 'contents-doubtful',
      note: 'Found.',
    });
    const { load, containers } = dataOf(memory, [memory.barren, memory.wash, found]);
    expect(load.liquid).toMatchObject({ value: '21.8', unit: 'L' });
    expect(containers.map(({ quantity }) => quantity.solid)).toEqual(['none', 'none', 'none']);
    expect(load.withoutMass).toEqual(['C\u201111']);
    expect(containers[2]).toMatchObject({ name: 'Contents not known for sure', empty: false });
  });
});

describe('what is not determined of a container', () => {
  test('stands in one place', async () => {
    const memory = await disposalState();
    const [, wash] = dataOf(memory, [memory.barren, memory.wash]).containers;
    const [amounts] = wash?.notDetermined ?? [];
    expect(amounts).toMatch(/^how much copper, nickel, .*free nitric acid and nitrate$/);
    for (const what of ['pH as it is now', 'colour', 'layers', 'hazard class', 'transport entry'])
      expect(wash?.notDetermined).toContain(what);
  });

  test('is the pH once water went off, whatever was read before', async () => {
    const memory = await disposalState();
    const before = dataOf(memory, [memory.barren]).containers[0];
    expect(before?.ph).toMatch(/^0\.2 by paper/);
    await memory.does({
      do: 'log-water-lost',
      containerId: memory.barren,
      amount: { value: '0.5', unit: 'L' },
    });
    const after = dataOf(memory, [memory.barren]).containers[0];
    expect(after?.ph).toMatch(/^not determined since water went off; before that 0\.2 by paper/);
    expect(after?.notDetermined).toContain('pH as it is now');
    expect(after?.colour).toMatch(/^not determined since water went off/);
  });
});

describe('what a load must be kept apart', () => {
  test('is told once for each reason, with the containers on either side', async () => {
    const memory = await disposalState();
    const ammonia = await memory.opens('C-12', '1');
    await memory.logs(ammonia, null, 'ammonia-test-waste', {
      volume: { value: '0.2', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    const { apart, emergency } = dataOf(memory, [memory.barren, memory.wash, ammonia]);
    expect(apart).toHaveLength(1);
    const [one] = apart;
    expect([one?.one, one?.other].map((codes) => codes?.join())).toEqual(
      expect.arrayContaining(['C\u201112', 'C\u201102,C\u201107']),
    );
    expect(emergency.hazards[0]).toMatchObject({ containers: ['C\u201112'] });
    expect(emergency.cards.map(({ title }) => title)).toContain('Old ammonia and silver');
  });
});

describe('the statement', () => {
  test('lists what mixing made disappear, and says so only then', async () => {
    const memory = await disposalState();
    const clean = dataOf(memory, [memory.barren]).statement;
    expect(clean.diluted).toEqual([]);
    expect(clean.says.join(' ')).toContain('nothing was mixed with another waste');
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'laws', value: ['us-federal'] },
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
    const wide = await memory.opens('C-13', '60');
    await memory.logs(wide, null, 'wash-water', {
      volume: { value: '40', unit: 'L' },
      ph: { value: { value: '6', unit: '1' }, instrument: 'paper' },
      findings: ['Cu', 'Ni', 'Ag', 'Pb', 'Ba'].map((metal) => ({
        by: 'assay',
        metal: metal as 'Cu',
        concentration: { value: '0.0001', unit: 'g/L' },
        reference: 'X',
      })),
      freeAcid: [{ by: 'titration', result: { value: '0.0001', unit: 'mol/L' } }],
    });
    const silver = await memory.opens('C-14', '1');
    await memory.logs(silver, null, 'wash-water', {
      ...barrenLiquor,
      volume: { value: '0.5', unit: 'L' },
      findings: [{ by: 'assay', metal: 'Ag', concentration: { value: '0.02', unit: 'g/L' }, reference: 'X' }],
    });
    await memory.does({
      do: 'log-move-happened',
      fromContainerId: silver,
      toContainerId: wide,
      amount: { value: '0.5', unit: 'L' },
      purpose: 'transfer',
    });
    const { diluted, says } = dataOf(memory, [wide]).statement;
    expect(diluted).toHaveLength(1);
    expect(diluted[0]?.codes).toContain('D011');
    expect(diluted[0]?.what).toBe('C\u201114 into C\u201113');
    expect(says.join(' ')).toContain('count as if they still held');
    const later = '2026-09-01T00:00:00.000Z';
    const opened = () => ({ ...memory, state: { value: reopened(memory.state.value, later, later) } });
    expect(dataOf(opened(), [wide]).statement.diluted).toEqual(diluted);
    // What was mixed in it has left with what it was mixed with.
    memory.pass(60_000);
    const emptied = {
      fromContainerId: wide,
      toContainerId: null,
      purpose: 'spill',
    } as const;
    await memory.does({ do: 'log-move-happened', ...emptied, amount: { value: '40.5', unit: 'L' } });
    memory.pass(60_000);
    await memory.logs(wide, null, 'wash-water', { ...barrenLiquor, volume: { value: '3', unit: 'L' } });
    for (const record of [memory, opened()]) expect(dataOf(record, [wide]).statement.diluted).toEqual([]);
  });

  test('waits for a pen, or bears the signature that was given', async () => {
    const memory = await disposalState();
    expect(dataOf(memory, [memory.barren]).statement.signature).toBe('not signed');
    const signature = { name: 'Maren', signedAt: '2026-05-17T10:00:00.000Z', typed: true } as const;
    const asked = { state: memory.state.value, now: memory.now.value, zone: 'Europe/Paris' };
    const signed = disposalData([memory.barren], {
      ...asked,
      madeBy: null,
      sign: '.',
      demo: false,
      signature,
    });
    expect(signed.statement.signature).toEqual(signature);
  });
});

describe('what a load may be', () => {
  test('is said of every kind of waste, and of what nobody knows', () => {
    for (const kind of StreamKind.options) expect(hazardsOf([kind], false).length, kind).toBeGreaterThan(0);
    expect(hazardsOf([], true).map(({ id }) => id)).toEqual(['unknown']);
    expect(hazardsOf([], false)).toEqual([]);
  });

  test('keeps everything from old ammonia waste, and sawdust from nitrate', () => {
    const notUsed = (kind: StreamKind) =>
      hazardsOf([kind], false)
        .flatMap((hazard) => hazard.notUsed)
        .join(' ');
    expect(notUsed('ammonia-test-waste')).toMatch(/no acid, lime or bleach/);
    expect(notUsed('barren-liquor')).toMatch(/No sawdust/);
  });
});
