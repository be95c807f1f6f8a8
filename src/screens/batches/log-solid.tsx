/** Logging a wet solid: mass, moisture, and which liquor it still holds. */
import * as z from 'zod/mini';
import type { StreamKind } from '../../safety/stream-kind';
import { useForm } from '../form';
import { useShell } from '../shell';
import { WhenDraft } from '../when';
import { emptyInto, IntoDraft } from './into-container';
import { LogPage } from './log-page';
import { emptySolid, readSolid, SolidDraft } from './solid-draft';
import { SolidLines } from './solid-lines';

const Draft = z.extend(SolidDraft, { into: IntoDraft, colour: z.string(), when: WhenDraft });

type Props = { readonly batchId: string; readonly kind: StreamKind };

export function LogSolid({ batchId, kind }: Props) {
  const { state } = useShell();
  const batch = state.value.batches.get(batchId);
  const liquors = (batch?.streamIds ?? []).filter((id) => state.value.streams.get(id)?.body.liquid);
  const form = useForm(`log/${batchId}/${kind}`, Draft, () => ({
    ...emptySolid(kind === 'ceramic-residue' ? liquors[0] : undefined),
    into: emptyInto('tub'),
    colour: '',
    when: '',
  }));
  const { value: draft, change } = form;
  const { solid, wrong } = readSolid(draft);
  return (
    <LogPage
      batchId={batchId}
      kind={kind}
      form={form}
      readable={solid && !wrong ? { part: { solid }, amount: solid.wetMass } : null}
      lines={(tried) => (
        <SolidLines kind={kind} draft={draft} change={change} liquors={liquors} ofOneBatch tried={tried} />
      )}
    />
  );
}
