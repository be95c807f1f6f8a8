import { describe, expect, test } from 'vitest';
import type { IntentionOf } from '../../../src/ledger/intention';
import { disposalPaper } from '../../../src/paperwork/disposal/disposal-paper';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { disposalState } from './disposal-state';

const hour = 3_600_000;
const grams = (value: string) => ({ value, unit: 'g' }) as const;
const ph = (value: string) => ({ value, unit: '1' }) as const;

/** The can of barren liquor, treated: begun at 09:00 in May 2026, an hour from one entry to the next. */
async function treated(doses: boolean = true) {
  const memory = await disposalState();
  const does = async (intention: Parameters<typeof memory.does>[0]) => {
    const { body } = await memory.does(intention);
    memory.pass(hour);
    return body;
  };
  const body = await does({
    do: 'log-treatment-happened',
    containerId: memory.barren,
    stages: [{ agent: 'iron' }, { agent: 'hydrated-lime', targetPh: ph('9.0') }],
    targetPh: ph('9.0'),
    clearance: null,
  });
  const treatmentId = body.kind === 'treatment-begun' ? body.treatmentId : '';
  if (doses) {
    await does({ do: 'log-dose', treatmentId, agent: 'iron', mass: grams('120') });
    await does({ do: 'log-dose', treatmentId, agent: 'hydrated-lime', mass: grams('200') });
    await does({ do: 'log-dose', treatmentId, agent: 'hydrated-lime', mass: grams('210.5') });
  }
  const reads = (more: Partial<IntentionOf<'log-pot-reading'>>) =>
    does({ do: 'log-pot-reading', treatmentId, ...more });
  const sheet = (id = memory.barren) => {
    const [container] = disposalData([id], {
      state: memory.state.value,
      now: memory.now.value,
      zone: 'Europe/Paris',
      madeBy: null,
      sign: '.',
      demo: false,
    }).containers;
    if (!container) throw new Error('no sheet');
    return container;
  };
  return { ...memory, does, treatmentId, reads, sheet };
}

const dissolved = (sheet: Awaited<ReturnType<Awaited<ReturnType<typeof treated>>['sheet']>>) =>
  sheet.substances.filter(({ inAll }) => inAll !== 'not determined').map(({ symbol }) => symbol);

describe('the sheet of a container that was treated', () => {
  test('says nothing of a treatment where there was none', async () => {
    const { barren, state, now } = await disposalState();
    const [c] = disposalData([barren], {
      state: state.value,
      now: now.value,
      zone: 'Europe/Paris',
      madeBy: null,
      sign: '.',
      demo: false,
    }).containers;
    expect(c?.treated).toBeUndefined();
    expect(c?.state).toBe('Liquid, no solids logged');
  });

  test('tells what was added, what was read and how it ended', async () => {
    const { sheet, reads, does, treatmentId } = await treated();
    await reads({ ph: { value: ph('4.0'), instrument: 'paper' } });
    await reads({ ph: { value: ph('9.2'), instrument: 'meter' }, colour: 'grey-green' });
    await does({ do: 'end-treatment', treatmentId, outcome: 'reached' });
    expect(
      sheet()
        .treated?.join(' ')
        .replace(/[\u00a0\u2009]/g, ' '),
    ).toBe(
      'Treated in C‑07, 17 May 2026, 14:00; iron 120 g in one portion, hydrated lime 411 g in 2 portions; ' +
        'last pH 9.2 by meter, 17 May 2026, 19:00; planned to pH 9.0, end reached 17 May 2026, 20:00. ' +
        'What is dissolved now: not determined, unless measured since. Nitrate stays.',
    );
  });

  test('says that it was not neutralised where the last pH read lies far below the aim', async () => {
    const { sheet, reads, does, treatmentId } = await treated();
    await reads({ ph: { value: ph('8.4'), instrument: 'paper' } });
    await does({ do: 'end-treatment', treatmentId, outcome: 'reached' });
    expect(sheet().treated?.join(' ')).toMatch(/: not neutralised by what was read\./);
    await reads({ ph: { value: ph('8.5'), instrument: 'paper' } });
    expect(sheet().treated?.join(' ')).not.toMatch(/not neutralised/);
  });

  test('tells whether all of it was poured over, or some', async () => {
    const { sheet, does, barren, opens, wash } = await treated(false);
    const pours = (fromContainerId: string, toContainerId: string, value: string) =>
      does({
        do: 'log-move-happened',
        fromContainerId,
        toContainerId,
        purpose: 'transfer',
        amount: { value, unit: 'L' },
      });
    const empty = await opens('C-11', '10');
    await pours(wash, empty, '2');
    expect(sheet(empty).howItArose.join(' ')).toMatch(/All of it was poured over from C.02/);
    await pours(empty, barren, '1');
    expect(sheet(barren).howItArose.join(' ')).toMatch(/Some of it was poured over from C.11/);
  });

  test('calls it treated slurry, with the pH and colour last seen, and gives nothing that was known before', async () => {
    const { sheet, reads } = await treated();
    expect(sheet()).toMatchObject({ ph: 'not determined', colour: 'not determined' });
    await reads({ ph: { value: ph('9.2'), instrument: 'paper' }, colour: 'grey-green' });
    const now = sheet();
    expect(now.whatItIs).toBe(
      'Treated slurry of batch B‑01: liquor with the solids that a base brought down.',
    );
    expect(now.ph).toMatch(/^9\.2 by paper/);
    expect(now.colour).toMatch(/^grey-green/);
    expect(now.state).toMatch(/^Slurry/);
    expect(dissolved(now)).toEqual([]);
    expect(now.bases.every(({ mass }) => mass === 'not determined')).toBe(true);
    expect(now.basesNote).toBe('Not worked out: it has been treated since.');
    expect(now.density).toBe('not determined');
    expect(now.liquor).toMatchObject({ value: '6.7' });
  });

  test('says nothing of layers that were seen before', async () => {
    const { sheet, does, barren, barrenStream, state } = await treated(false);
    const entry = state.value.log.find(
      ({ body }) => body.kind === 'stream-logged' && body.streamId === barrenStream,
    );
    if (entry?.body.kind !== 'stream-logged') throw new Error('not logged');
    const body = { ...entry.body, layers: 'oil on top' };
    await does({ do: 'correct-entry', corrects: entry.id, body, reason: 'left out' });
    expect(sheet().layers).toMatch(/^oil on top/);
    const [treatmentId = ''] = state.value.containers.get(barren)?.treatmentIds ?? [];
    await does({ do: 'log-dose', treatmentId, agent: 'limestone', mass: grams('50') });
    expect(sheet().layers).toBe('not determined');
  });

  test('gives what was measured in the pot since, and how', async () => {
    const { sheet, reads } = await treated();
    await reads({ findings: [{ by: 'strip', metal: 'Cu', concentration: { value: '5', unit: 'mg/L' } }] });
    expect(dissolved(sheet())).toEqual(['Cu']);
    expect(sheet().substances.find(({ symbol }) => symbol === 'Cu')?.howKnown).toMatch(/strip, 17/);
  });

  test('keeps the load of before while nothing has been added, and says that a treatment runs', async () => {
    const { sheet } = await treated(false);
    expect(dissolved(sheet())).toContain('HNO3');
    expect(sheet().treated).toEqual([expect.stringMatching(/nothing logged as added.*still running\.$/)]);
    expect(sheet().flags.join(' ')).toContain('A treatment has been running since');
    expect(sheet().flags).toContain('Treated without a clearance.');
    expect(sheet().flags).toContain('Treated though nobody had said that it is allowed.');
  });

  test('says how the slurry was treated also where it went afterwards', async () => {
    const { sheet, does, barren, opens } = await treated();
    const tub = await opens('C-09', '10');
    await does({
      do: 'log-move-happened',
      fromContainerId: barren,
      toContainerId: tub,
      amount: { value: '2.00', unit: 'L' },
      purpose: 'transfer',
    });
    expect(sheet(tub).treated?.[0]).toContain('C\u201107');
    expect(sheet(tub).flags).toContain('Treated without a clearance.');
    expect(sheet(tub).entries.map(({ kind }) => kind)).toContain('dose added');
  });

  test('prints what was done to it', async () => {
    const { barren, state, now } = await treated();
    const data = disposalData([barren], {
      state: state.value,
      now: now.value,
      zone: 'Europe/Paris',
      madeBy: null,
      sign: '.',
      demo: false,
    });
    const printed = JSON.stringify(disposalPaper(data, { paper: 'A4', working: false, drawings: new Map() }));
    expect(printed).toContain(
      JSON.stringify({ term: 'Treatment', says: data.containers[0]?.treated?.join(' ') }),
    );
  });

  test('names the entries of the treatment among those behind it', async () => {
    const { sheet, treatmentId, does, reads } = await treated();
    await reads({ ph: { value: ph('9.2'), instrument: 'paper' } });
    await does({ do: 'end-treatment', treatmentId, outcome: 'stopped', reason: 'foamed' });
    await does({ do: 'state-price', what: 'iron', amount: { value: '1', unit: 'EUR' } });
    const said = sheet().entries.map(({ kind, says }) => [kind, says.replaceAll('\u2009', ' ')]);
    expect(said.slice(-6)).toEqual([
      ['treatment begun', 'C‑07'],
      ['dose added', 'iron, 120 g'],
      ['dose added', 'hydrated lime, 200 g'],
      ['dose added', 'hydrated lime, 210.5 g'],
      ['pot read', 'pH 9.2'],
      ['treatment ended', 'stopped before the end'],
    ]);
    expect(sheet().treated?.[0]).toContain('(foamed)');
  });
});
