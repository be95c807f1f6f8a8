/** What a laboratory found stands on the sheet, in its data and in the tables; and it is not called not determined beside that. */
import { Ajv2020 } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import type { IntentionOf } from '../../../src/ledger/intention';
import { sheetBlocks } from '../../../src/paperwork/disposal/container-sheet';
import { jsonText } from '../../../src/paperwork/disposal/disposal-data';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { disposalTables } from '../../../src/paperwork/tables/tables-of';
import { paperSchema } from '../../support/paper-schema';
import { barrenLiquor, disposalState } from './disposal-state';

const plain = (text: string): string => text.replaceAll(/[\u2009\u202f\u00a0]/g, ' ');

type Results = IntentionOf<'log-lab-report'>['results'];

const some: Results = [
  { element: 'Cd', in: 'tclp', level: { value: '0.05', unit: 'mg/L' }, below: true },
  { element: 'Ag', in: 'filtered', level: { value: '3.20', unit: 'mg/L' } },
];

/** Barren liquor of which copper and nickel are known, sampled on 20 May 2026. */
async function paperOf(results: Results, since: 'nothing' | 'more came in' = 'nothing') {
  const memory = await disposalState();
  memory.pass(Date.parse('2026-05-20T08:00:00Z') - Date.parse(memory.now.value));
  const container = await memory.opens('C-09', '10');
  await memory.logs(container, null, 'barren-liquor', barrenLiquor);
  await memory.does({
    do: 'log-lab-report',
    containerId: container,
    laboratory: 'Weir Laboratory',
    document: 'W 2217',
    sampledOn: '2026-05-20',
    ph: { value: '0.31', unit: '1' },
    results,
  });
  if (since === 'more came in') {
    memory.pass(4 * 24 * 3_600_000);
    await memory.logs(container, null, 'barren-liquor', {
      ...barrenLiquor,
      volume: { value: '1.00', unit: 'L' },
    });
  }
  const data = disposalData([container], {
    state: memory.state.value,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.',
    demo: false,
  });
  const [paper] = data.containers;
  if (!paper) throw new Error('no paper');
  const sheet = plain(JSON.stringify(sheetBlocks(data, paper, undefined)));
  return { data, paper, sheet };
}

describe('a report of a laboratory', () => {
  test('stands on the sheet with its day, and its elements are not called not determined', async () => {
    const { paper, sheet } = await paperOf(some);
    expect(paper.labReports?.[0]).toMatchObject({
      laboratory: 'Weir Laboratory',
      number: 'W 2217',
      ofNow: true,
    });
    expect(sheet).toContain('What a laboratory found');
    expect(sheet).toContain('none found down to 0.05 mg/L');
    expect(sheet).toContain('The TCLP extract');
    expect(sheet).toContain('"20 May 2026"');
    expect(plain(paper.ph)).toBe('0.31, by Weir Laboratory, sample of 20 May 2026');
    const open = paper.notDetermined.join(' ');
    expect(open).toMatch(/\bzinc\b/);
    expect(open).not.toMatch(/how much[^:]*\bsilver\b/);
    expect(sheet).not.toMatch(/silver[^"]*: not determined/);
  });

  test('of what was in it before says so, and its elements are not determined again', async () => {
    const { paper, sheet } = await paperOf(some, 'more came in');
    expect(paper.labReports?.[0]?.ofNow).toBe(false);
    expect(sheet).toContain('20 May 2026: of what was in it before');
    expect(paper.notDetermined.join(' ')).toMatch(/how much[^:]*\bsilver\b/);
    expect(paper.ph).not.toContain('Weir');
  });

  test('that contradicts what its wastes come to is told with both, and flagged', async () => {
    const { paper, sheet } = await paperOf([
      { element: 'Cu', in: 'filtered', level: { value: '9.0', unit: 'g/L' } },
    ]);
    expect(paper.flags.join(' ')).toContain('disagree beyond their uncertainty: copper.');
    expect(sheet).toMatch(/Copper: by what is known of its wastes 17\.6[^"]* g\/L/);
    const agreeing = await paperOf([
      { element: 'Cu', in: 'filtered', level: { value: '17.9', unit: 'g/L' } },
    ]);
    expect(agreeing.paper.flags.join(' ')).not.toContain('laboratory');
  });

  test('is data by the published schema, and a table of its own', async () => {
    const { data } = await paperOf(some);
    const validate = new Ajv2020({ strict: true, validateFormats: false }).compile(JSON.parse(paperSchema()));
    expect(validate(JSON.parse(jsonText(data))), JSON.stringify(validate.errors)).toBe(true);
    const table = disposalTables(data).find(({ name }) => name === 'laboratory');
    const column = (name: string) => table?.columns.findIndex((one) => one.name === name) ?? -1;
    const cells = table?.rows.map((row) =>
      ['symbol', 'level', 'none found'].map((name) => row[column(name)]),
    );
    expect(cells).toEqual([
      ['Cd', '0.05', 'yes'],
      ['Ag', '3.20', 'no'],
    ]);
  });
});
