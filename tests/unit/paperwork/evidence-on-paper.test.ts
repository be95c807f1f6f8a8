/** How an amount is known, and that two ways disagree, stands on the paper too. */
import { expect, test } from 'vitest';
import type { Finding } from '../../../src/ledger/entries/findings';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { disposalState } from './disposal-state';

async function paperOf(findings: Finding[]) {
  const memory = await disposalState();
  const container = await memory.opens('C-09', '10');
  const volume = { value: '3.00', unit: 'L' } as const;
  await memory.logs(container, null, 'barren-liquor', { volume, findings, freeAcid: [] });
  const asked = {
    state: memory.state.value,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.' as const,
    demo: false,
  };
  const [paper] = disposalData([container], asked).containers;
  if (!paper) throw new Error('no paper');
  return paper;
}

test('what is known by the kind of feed alone is called typical, not worked out', async () => {
  const paper = await paperOf([
    {
      by: 'typical',
      metal: 'Ni',
      capacitors: 'precious-metal-electrode',
      liquor: 'barren',
      feed: { value: '500', unit: 'g' },
    },
  ]);
  const nickel = paper.substances.find(({ symbol }) => symbol === 'Ni');
  expect(nickel?.howKnown).toBe('typical of the feed');
});

test('two readings that disagree are said on it', async () => {
  const photometer = (value: string): Finding => ({
    by: 'photometer',
    metal: 'Ni',
    concentration: { value, unit: 'g/L' },
  });
  const said = 'Two ways of knowing what is dissolved in it disagree beyond their uncertainty.';
  expect((await paperOf([photometer('2.0'), photometer('4.0')])).flags).toContain(said);
  expect((await paperOf([photometer('2.0'), photometer('2.1')])).flags).not.toContain(said);
});
