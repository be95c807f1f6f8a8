import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { describe, expect, test } from 'vitest';
import { jsonText } from '../../../src/paperwork/disposal/disposal-data';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { disposalState } from './disposal-state';

type Made = Awaited<ReturnType<typeof disposalState>>;

const asked = ({ state, now }: Made) => ({
  state: state.value,
  now: now.value,
  zone: 'Europe/Paris',
  madeBy: 'Maren',
  sign: '.' as const,
  demo: false,
});

/** Every text of a value, wherever it stands. */
const textsIn = (value: unknown): string[] => {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
};

describe('the data of a disposal paper', () => {
  test('carries the SHA-256 of its canonical JSON without the hash itself', async () => {
    const memory = await disposalState();
    const read = JSON.parse(jsonText(disposalData([memory.barren], asked(memory))));
    const { contentHash, ...rest } = read;
    const hash = (value: unknown) =>
      createHash('sha256')
        .update(canonicalize(value) ?? '')
        .digest('hex');
    expect(hash(rest)).toBe(contentHash);
    expect(hash({ ...rest, madeBy: 'somebody else' })).not.toBe(contentHash);
  });

  test('is the same for the same record, time and person', async () => {
    const memory = await disposalState();
    const ask = asked(memory);
    expect(disposalData([memory.barren], ask)).toEqual(disposalData([memory.barren], ask));
  });

  test('says in full what is known of the barren liquor, as printed and with every digit', async () => {
    const memory = await disposalState();
    const [c] = disposalData([memory.barren], asked(memory)).containers;
    const of = (symbol: string) => c?.substances.find((substance) => substance.symbol === symbol);
    expect(of('Cu')).toMatchObject({
      aLitre: { likely: '17.6', unit: 'g/L', value: '17.6' },
      inAll: { likely: '118', unit: 'g', value: '117.92' },
      howKnown: 'photometer, 11\u00a0May\u00a02026',
      evidence: [{ how: 'photometer', on: ['2026-05-11'] }],
    });
    expect(of('Ni')?.inAll).toMatchObject({ likely: '42', value: '41.54' });
    expect(of('HNO3')?.aLitre).toMatchObject({ value: '0.58' });
    expect(c?.ph).toBe('0.2 by paper, 17\u00a0May\u00a02026');
    expect(c?.bases.map(({ base }) => base)).toEqual(['Hydrated lime', 'Limestone', 'Caustic soda']);
    expect(c?.bases.every(({ mass }) => typeof mass === 'object')).toBe(true);
    expect(c?.flags).toContain('Step done without a clearance: leach.');
  });

  test('keeps a step without clearance when its list was gone through afterwards, and says when', async () => {
    const memory = await disposalState();
    const leach = [...memory.state.value.steps.values()].find(({ body }) => body.step === 'leach');
    await memory.does({
      do: 'finish-checklist',
      runId: memory.shell.newId(),
      step: 'leach',
      batchId: memory.batch,
      late: { stepId: leach?.body.stepId ?? '' },
      checklist: { id: 'leach-start', version: '1', hash: 'a'.repeat(64), title: 'Start the leach' },
      outcome: 'cleared',
      startedAt: memory.now.value,
      finishedAt: memory.now.value,
      validUntil: null,
      answers: [{ item: 'lst-gloves', ask: 'Gloves', kind: 'choice', answer: 'butyl', at: memory.now.value }],
    });
    const [c] = disposalData([memory.barren], asked(memory)).containers;
    expect(c?.flags).toContain(
      'Step done without a clearance: leach. Its list was gone through afterwards, 17\u00a0May\u00a02026.',
    );
  });

  test('says "not determined" for what nobody told: never empty, never zero', async () => {
    const memory = await disposalState();
    const data = disposalData([memory.wash], asked(memory));
    const [c] = data.containers;
    for (const { aLitre, inAll, howKnown } of c?.substances ?? [])
      expect([aLitre, inAll, howKnown]).toEqual(Array.from({ length: 3 }, () => 'not determined'));
    for (const { mass, heat, sludgeDry } of c?.bases ?? [])
      expect([mass, heat, sludgeDry]).toEqual(Array.from({ length: 3 }, () => 'not determined'));
    expect([c?.colour, c?.layers, c?.ph, c?.mustLeaveBy]).toEqual(
      Array.from({ length: 4 }, () => 'not determined'),
    );
    expect(c?.candidates.map(({ says }) => says)).toEqual(Array.from({ length: 3 }, () => 'not determined'));
    expect(data.workshop.generatorNumber).toBe('not determined');
    expect(textsIn(data).filter((text) => text.trim() === '')).toEqual([]);
  });

  test('says so of a container whose place, tray and contents nobody wrote down', async () => {
    const memory = await disposalState();
    const { body } = await memory.does({
      do: 'open-container',
      vessel: 'tub',
      capacity: { value: '12', unit: 'L' },
      material: 'other',
      cap: 'lid',
      openedOn: '2026-05-01',
    });
    const id = body.kind === 'container-opened' ? body.containerId : '';
    const [c] = disposalData([id], { ...asked(memory), madeBy: null }).containers;
    expect([c?.place, c?.tray, c?.material, c?.state, c?.firstWasteIn, c?.ammonia, c?.liquor]).toEqual(
      Array.from({ length: 7 }, () => 'not determined'),
    );
    expect(c?.whatItIs).toBe('Nothing: the container is empty by the record.');
  });

  test('counts the room that solids take up: a tub of sludge is not empty', async () => {
    const memory = await disposalState();
    const opened = await memory.does({
      do: 'open-container',
      vessel: 'tub',
      capacity: { value: '10', unit: 'L' },
      material: 'HDPE',
      cap: 'lid',
      openedOn: '2026-05-01',
    });
    const containerId = opened.body.kind === 'container-opened' ? opened.body.containerId : '';
    await memory.does({
      do: 'log-stream',
      batchId: null,
      stepId: null,
      stream: 'hydroxide-sludge',
      solid: {
        wetMass: { value: '8', unit: 'kg' },
        moisture: { by: 'not-determined' },
        holds: { liquor: 'not-determined' },
      },
      placements: [{ containerId, amount: { value: '8', unit: 'kg' } }],
    });
    // 8 kg at 1.6 kg/L is 5 L of 10.
    expect(disposalData([containerId], asked(memory)).containers[0]?.fill.percent).toBe('50\u2009%');
  });

  test('counts the days only by the storage time that was entered', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'storage-days', value: { value: '180', unit: 'days' } },
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
    const [c] = disposalData([memory.barren], asked(memory)).containers;
    expect(c?.firstWasteIn).toBe('2026-05-17');
    expect(c?.mustLeaveBy).toMatchObject({
      day: '2026-11-12',
      otherDay: '2026-11-13',
      from: '2026-05-17',
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
  });

  test('tells the rules of an authorised discharge only where they were stated', async () => {
    const memory = await disposalState();
    const rules = () => disposalData([memory.barren], asked(memory)).localRules;
    const before = rules().length;
    expect(rules().some(({ rule }) => rule.includes('discharge'))).toBe(false);
    for (const stated of [
      {
        rule: 'discharge-limits',
        value: { Cu: { value: '0.50', unit: 'mg/L' }, Ni: { value: '1', unit: 'mg/L' } },
      },
      {
        rule: 'discharge-ph',
        value: { low: { value: '6.5', unit: '1' }, high: { value: '9.5', unit: '1' } },
      },
    ] as const)
      await memory.does({ do: 'state-local-rule', stated, saidBy: 'Works', saidOn: '2026-03-03' });
    expect(rules()).toHaveLength(before + 2);
    expect(rules().map(({ value }) => value.replace(/\s/g, ' '))).toEqual(
      expect.arrayContaining(['Cu 0.50 mg/L, Ni 1 mg/L', 'pH 6.5 to 9.5']),
    );
  });

  test('gives no base where ammonia waste is in it', async () => {
    const memory = await disposalState();
    const id = await memory.opens('C-09', '5');
    await memory.logs(id, null, 'ammonia-test-waste', {
      volume: { value: '0.20', unit: 'L' },
      findings: [],
      freeAcid: [{ by: 'titration', result: { value: '0.1', unit: 'mol/L' } }],
    });
    const [c] = disposalData([id], asked(memory)).containers;
    expect(c?.bases.every(({ mass }) => mass === 'not determined')).toBe(true);
    expect(c?.basesNote).toMatch(/Never lime or caustic/);
    expect(c?.ammonia).toBe('logged, amount not determined');
  });

  test('keeps every figure of the working once, after all that it stands on', async () => {
    const memory = await disposalState();
    const { working, containers } = disposalData([memory.barren, memory.wash], asked(memory));
    const ids = working.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const said = working.map(({ id: _, ...line }) => JSON.stringify(line));
    expect(new Set(said).size).toBe(said.length);
    working.forEach((line, at) => {
      for (const from of line.from) expect(ids.indexOf(from), line.id).toBeLessThan(at);
      if (line.kind === 'worked-out') expect(line.formula).toBeDefined();
      else expect(line.from).toEqual([]);
    });
    const figures = JSON.stringify(containers).match(/"line":"([^"]+)"/g) ?? [];
    expect(figures.length).toBeGreaterThan(20);
    for (const figure of figures) expect(ids).toContain(figure.slice(8, -1));
  });

  test('names the entries behind a container by id and hash, corrections with them, others not', async () => {
    const memory = await disposalState();
    const before = memory.state.value.log.find(({ body }) => body.kind === 'container-opened');
    if (before?.body.kind !== 'container-opened') throw new Error('no container');
    const correction = await memory.does({
      do: 'correct-entry',
      corrects: before.id,
      body: { ...before.body, cap: 'tight' },
      reason: 'The cap has no vent.',
    });
    const data = disposalData([memory.barren], asked(memory));
    const entries = data.containers[0]?.entries ?? [];
    for (const { number, id, hash } of entries)
      expect(memory.state.value.log[number - 1]).toMatchObject({ id, hash });
    expect(entries.map(({ id }) => id)).toContain(correction.id);
    const ofWash = memory.state.value.log.find(
      ({ body }) => body.kind === 'container-opened' && body.containerId === memory.wash,
    );
    expect(entries.map(({ id }) => id)).not.toContain(ofWash?.id);
    expect(data.lastEntry).toMatchObject({ id: correction.id, hash: correction.hash });
    expect(data.containers[0]?.flags.join(' ')).toMatch(/Tight cap/);
  });

  test('names what a walk found at the container, and what was done about it, and nothing of another', async () => {
    const memory = await disposalState();
    const looks = async (containerId: string, answer: string): Promise<string> => {
      const findingId = memory.shell.newId();
      const found = [{ findingId, look: 'insp-leak', ask: 'Leak or crust?', answer }];
      const walkId = memory.shell.newId();
      const startedAt = memory.now.value;
      await memory.does({ do: 'log-inspected', walkId, containerId, looks: ['insp-leak'], found, startedAt });
      return findingId;
    };
    const ours = await looks(memory.barren, 'weep: old crust, dry');
    const another = await looks(memory.wash, 'leak');
    await memory.does({ do: 'close-finding', findingId: ours, done: 'Washed off, dry' });
    await memory.does({ do: 'close-finding', findingId: another, done: 'Moved to a sound can' });
    const said = disposalData([memory.barren], asked(memory)).containers[0]?.entries.map(({ says }) => says);
    expect(said).toContain('Washed off, dry');
    expect(said?.filter((text) => text.includes('Leak or crust? weep: old crust, dry'))).toHaveLength(1);
    expect(said?.join()).not.toMatch(/sound can|leak$/);
  });
});
