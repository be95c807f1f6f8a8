import { describe, expect, test } from 'vitest';
import { liquorFrom } from '../../../src/chemistry/liquor';
import { writtenLiquor } from '../../../src/ledger/container-load';
import { emptyState } from '../../../src/ledger/state';
import { emptyInto } from '../../../src/screens/batches/into-container';
import { previewVessel } from '../../../src/screens/batches/preview-vessel';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';

const liquor = (value: string, unit: 'L' | 'mL') =>
  liquorFrom(writtenLiquor('draft', { volume: { value, unit }, findings: [], freeAcid: [] }));

const into = (typed: string, unit: string) => {
  const empty = emptyInto('jerrican');
  return { ...empty, where: 'new', vessel: { ...empty.vessel, capacity: { typed, unit } } };
};

describe('the vessel drawn while a liquid is logged', () => {
  test.each([
    ['500', 'mL', 0.5],
    ['2.5', 'US gal', 9.46352946],
    ['5', 'L', 5],
    ['', 'L', 5],
    ['0', 'L', 5],
    ['five', 'L', 5],
  ])('a new one described with “%s” %s is drawn as %f L', (typed, unit, capacityL) => {
    expect(previewVessel(emptyState, into(typed, unit), null)).toMatchObject({ capacityL, volumeL: 0 });
  });

  test('holds what is about to go in', () => {
    expect(previewVessel(emptyState, into('5', 'L'), liquor('250', 'mL')).volumeL).toBe(0.25);
  });

  test('one that is there is drawn in litres with what it holds, and without a level when that is doubtful', async () => {
    const { does, state, batch } = await workshopInMemory();
    const where = await openCan(
      { does },
      { vessel: 'bottle', capacity: { value: '500', unit: 'mL' }, material: 'glass' },
    );
    await logLiquid({ does, batch }, 'wash-water', { value: '100', unit: 'mL' }, where);
    const chosen = { ...emptyInto('jerrican'), where };
    expect(previewVessel(state.value, chosen, liquor('250', 'mL'))).toMatchObject({
      family: 'bottle',
      capacityL: 0.5,
      volumeL: 0.35,
    });
    await does({ do: 'mark-container', containerId: where, mark: 'contents-doubtful' });
    expect(previewVessel(state.value, chosen, liquor('250', 'mL')).volumeL).toBeUndefined();
  });
});
