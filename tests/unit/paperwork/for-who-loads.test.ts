/** What somebody who has nothing but the set needs before the load is lifted. */
import { describe, expect, test } from 'vitest';
import type { Law } from '../../../src/ledger/entries/local-rules';
import { disposalPaper } from '../../../src/paperwork/disposal/disposal-paper';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { paperVessel } from '../../../src/screens/papers/paper-vessel';
import { usualSheet } from '../../../src/screens/papers/sheet';
import { disposalState } from './disposal-state';

type Memory = Awaited<ReturnType<typeof disposalState>>;

const dataOf = (memory: Memory) =>
  disposalData([memory.barren, memory.wash], {
    state: memory.state.value,
    now: memory.now.value,
    zone: 'America/Los_Angeles',
    madeBy: null,
    sign: '.',
    demo: false,
  });

/** All that is printed, as the blocks of the paper. */
const printed = (memory: Memory): string =>
  JSON.stringify(
    disposalPaper(dataOf(memory), { paper: 'Letter', working: false, drawings: new Map() }).parts,
  );

const lawsAre = (memory: Memory, value: Law[]) =>
  memory.does({
    do: 'state-local-rule',
    stated: { rule: 'laws', value },
    saidBy: 'Weir County office',
    saidOn: '2026-03-03',
  });

describe('a container that nobody closed', () => {
  test('says so on the cover, the list and its sheet, until somebody closed it', async () => {
    const memory = await disposalState();
    const flagsOf = () => dataOf(memory).containers.map(({ flags }) => flags.join(' '));
    for (const flags of flagsOf()) expect(flags).toContain('Not written down as closed.');
    const words = printed(memory);
    expect(words.match(/Not written down as closed\./g)?.length).toBe(6);
    expect(words).not.toContain('nothing flagged');
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'closed' });
    const [barren, wash] = flagsOf();
    expect(barren).not.toContain('closed.');
    expect(wash).toContain('Not written down as closed.');
  });
});

test('criteria of California stand under its name, on the sheet as among the data for a manifest', async () => {
  const memory = await disposalState();
  await lawsAre(memory, ['us-federal', 'us-california']);
  const [barren] = dataOf(memory).containers;
  expect(barren?.candidates[1]?.says).toMatch(
    /^D002 \(candidates\); California: .*STLC.Cu, .*\(candidates\)$/,
  );
  expect(printed(memory)).toMatch(
    /"D002, nobody has confirmed it; California: Corrosive, STLC.Cu, [^;"]*, nobody has confirmed it"/,
  );
});

test('pH keeps its small letter where a sentence begins with it', async () => {
  const words = printed(await disposalState());
  expect(words).toMatch(/\bpH as it is now\./);
  expect(words).not.toMatch(/\bPH\b/);
});

test.each([
  { laws: ['us-federal', 'us-california'], language: 'en-GB', sheet: 'Letter' },
  { laws: ['eu'], language: 'en-US', sheet: 'A4' },
  { laws: ['us-federal', 'eu'], language: 'de-DE', sheet: 'A4' },
  { laws: undefined, language: 'en-US', sheet: 'Letter' },
  { laws: undefined, language: 'el', sheet: 'A4' },
] as const)('under $laws a phone in $language prints on $sheet', async ({ laws, language, sheet }) => {
  const memory = await disposalState();
  if (laws) await lawsAre(memory, [...laws]);
  expect(usualSheet(language, memory.state.value)).toBe(sheet);
});

test('the tab with a long code is no wider than the vessel, beside which its level stands', async () => {
  const memory = await disposalState();
  const drawnWith = async (code: string) => {
    const id = await memory.opens(code, '10');
    const container = memory.state.value.containers.get(id);
    if (!container) throw new Error('not opened');
    const { texts = [], shapes } = paperVessel(memory.state.value, container, '.');
    const level = texts.find(({ anchor }) => anchor === undefined)?.x ?? 0;
    const [, from = 0, width = 0] =
      /^M([\d.-]+) [\d.-]+h([\d.]+)/.exec(shapes.at(-1)?.path ?? '')?.map(Number) ?? [];
    return { from, to: from + width, level, size: texts[0]?.size };
  };
  const long = await drawnWith('BARREN-LIQUOR-KI');
  expect(long.from).toBeGreaterThanOrEqual(0);
  expect(long.to).toBeLessThan(long.level);
  expect((await drawnWith('C-11')).size).toBe(10.5);
});
