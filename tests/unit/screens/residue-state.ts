/** An invented workshop with a can that holds barren liquor, and a tub with the wet ceramic that holds some of it. */

import { openCan } from '../../support/waste-in-cans';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';

export async function residueState() {
  const memory = await disposalState();
  const tub = await openCan(memory, {
    code: 'C-09',
    vessel: 'tub',
    place: 'Shed, north wall',
    tray: 'nitrate tray',
  });
  const holds = async (wet: string, liquor: string): Promise<void> => {
    await memory.does({
      do: 'log-stream',
      batchId: memory.batch,
      stepId: null,
      stream: 'ceramic-residue',
      solid: {
        wetMass: { value: wet, unit: 'g' },
        moisture: { by: 'stated', percent: { value: '25', unit: '%' } },
        holds: { liquor },
      },
      placements: [{ containerId: tub, amount: { value: wet, unit: 'g' } }],
    });
  };
  await holds('400', memory.barrenStream);
  return { ...memory, tub, holds, barrenLiquor };
}
