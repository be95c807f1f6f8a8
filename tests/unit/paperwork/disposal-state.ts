/** An invented workshop with one can of barren liquor whose copper, nickel and acid are known, and one nobody measured. */
import type { IntentionOf } from '../../../src/ledger/intention';
import { workshopInMemory } from '../../support/shell-in-memory';

type Liquid = NonNullable<IntentionOf<'log-stream'>['liquid']>;

const litres = (value: string) => ({ value, unit: 'L' }) as const;

export const barrenLiquor: Liquid = {
  volume: litres('6.70'),
  ph: { value: { value: '0.2', unit: '1' }, instrument: 'paper' },
  findings: [
    { by: 'photometer', metal: 'Cu', concentration: { value: '17.6', unit: 'g/L' }, on: '2026-05-11' },
    { by: 'photometer', metal: 'Ni', concentration: { value: '6.2', unit: 'g/L' }, on: '2026-05-11' },
  ],
  freeAcid: [{ by: 'titration', result: { value: '0.58', unit: 'mol/L' } }],
};

export async function disposalState() {
  const memory = await workshopInMemory('2026-05-12T08:00:00.000Z', ['papers']);
  const { does, batch } = memory;
  const opens = async (code: string, capacity: string, cap: 'vented' | 'tight' = 'vented') => {
    const { body } = await does({
      do: 'open-container',
      code,
      vessel: 'jerrican',
      capacity: litres(capacity),
      material: 'HDPE',
      cap,
      place: 'Shed, north wall',
      tray: 'nitrate tray',
      openedOn: '2026-05-01',
    });
    return body.kind === 'container-opened' ? body.containerId : '';
  };
  const begins = async (step: string) => {
    const { body } = await does({ do: 'log-step-happened', batchId: batch, step, clearance: null });
    return body.kind === 'step-started' ? body.stepId : '';
  };
  const logs = async (
    containerId: string,
    stepId: string | null,
    stream: 'barren-liquor' | 'wash-water' | 'ammonia-test-waste',
    liquid: Liquid,
    more: { readonly colour?: string } = {},
  ) => {
    const { body } = await does({
      do: 'log-stream',
      batchId: batch,
      stepId,
      stream,
      liquid,
      ...more,
      placements: [{ containerId, amount: liquid.volume }],
    });
    return body.kind === 'stream-logged' ? body.streamId : '';
  };
  const leach = await begins('leach');
  memory.pass(26 * 3_600_000);
  await does({ do: 'end-step', stepId: leach });
  const cementation = await begins('cementation');
  memory.pass(4 * 86_400_000);
  await does({ do: 'end-step', stepId: cementation });
  const barren = await opens('C-07', '10');
  const barrenStream = await logs(barren, cementation, 'barren-liquor', barrenLiquor, {
    colour: 'blue-green',
  });
  const wash = await opens('C-02', '20');
  const washStream = await logs(wash, null, 'wash-water', {
    volume: litres('14.0'),
    findings: [],
    freeAcid: [],
  });
  memory.pass(2 * 3_600_000);
  return { ...memory, barren, wash, barrenStream, washStream, opens, begins, logs };
}
