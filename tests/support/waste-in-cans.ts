/** Cans and waste in them, for tests of screens. */
import type { ContainerOpened } from '../../src/ledger/entries/containers';
import type { StreamLogged } from '../../src/ledger/entries/streams';
import type { StreamKind } from '../../src/safety/stream-kind';
import type { workshopInMemory } from './shell-in-memory';

type Workshop = Awaited<ReturnType<typeof workshopInMemory>>;
type Volume = NonNullable<StreamLogged['liquid']>['volume'];

/** A vented can of 5 L, but for what is said of it. @returns its id */
export async function openCan(
  { does }: Pick<Workshop, 'does'>,
  made: Partial<ContainerOpened> = {},
): Promise<string> {
  const { body } = await does({
    do: 'open-container',
    vessel: 'jerrican',
    capacity: { value: '5', unit: 'L' },
    material: 'HDPE',
    cap: 'vented',
    openedOn: '2026-05-01',
    ...made,
  });
  if (body.kind !== 'container-opened') throw new Error('no container was opened');
  return body.containerId;
}

/** A liquid of the batch of which only the volume is known; it stands in no container where none is named. @returns its id */
export async function logLiquid(
  { does, batch }: Pick<Workshop, 'does' | 'batch'>,
  stream: StreamKind,
  volume: Volume,
  containerId?: string,
): Promise<string> {
  const { body } = await does({
    do: 'log-stream',
    batchId: batch,
    stepId: null,
    stream,
    liquid: { volume, findings: [], freeAcid: [] },
    ...(containerId === undefined ? {} : { placements: [{ containerId, amount: volume }] }),
  });
  if (body.kind !== 'stream-logged') throw new Error('no waste was logged');
  return body.streamId;
}
