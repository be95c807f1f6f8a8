/** Logging a liquid: volume, evidence of what is dissolved, into which container. Load and vessel change with each key. */

import * as z from 'zod/mini';
import type { Liquor } from '../../chemistry/liquor';
import { metals as metalData } from '../../reference/tables';
import type { StreamKind } from '../../safety/stream-kind';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Vessel } from '../../ui/vessel';
import { shown } from '../amounts';
import { capital } from '../containers/load-table';
import { useForm } from '../form';
import { useShell } from '../shell';
import { WhenDraft } from '../when';
import { words } from '../words';
import { feedTold } from './evidence-from-batch';
import { emptyInto, IntoDraft } from './into-container';
import { draftLiquor, emptyLiquid, LiquidDraft, readLiquid } from './liquid-draft';
import { LiquidLines } from './liquid-lines';
import styles from './log.module.css';
import { LogPage } from './log-page';
import { previewVessel } from './preview-vessel';
import { logWords as w } from './words';

const Draft = z.extend(LiquidDraft, { into: IntoDraft, colour: z.string(), when: WhenDraft });
type Draft = z.infer<typeof Draft>;

const empty = (): Draft => ({ ...emptyLiquid(), into: emptyInto('jerrican'), colour: '', when: '' });

/** Vessel and load as they would be, changing with each key. */
function Preview({ draft, liquor }: { readonly draft: Draft; readonly liquor: Liquor | null }) {
  const { state, sign } = useShell();
  const figures = [
    ...(['Cu', 'Ni'] as const).map(
      (m) => [capital(metalData[m].name), liquor?.metals.get(m)?.best.all] as const,
    ),
    [w.acid, liquor?.freeAcid?.best.all] as const,
  ];
  return (
    <div class={styles.preview}>
      <Vessel {...previewVessel(state.value, draft.into, liquor)} scale={0.55} />
      <dl class={styles.figures} aria-live="polite">
        {figures.map(([name, figure]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{figure ? <FigureValue {...shown(figure, sign.value)} /> : words.notDetermined}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

type Props = { readonly batchId: string; readonly kind: StreamKind };

export function LogLiquid({ batchId, kind }: Props) {
  const form = useForm(`log/${batchId}/${kind}`, Draft, empty);
  const { value: draft, change } = form;
  const batch = useShell().state.value.batches.get(batchId);
  const feed = feedTold(batch, kind);
  const { liquid, wrong } = readLiquid(draft, feed);
  const liquor = draftLiquor(liquid, batchId);
  return (
    <LogPage
      batchId={batchId}
      kind={kind}
      form={form}
      readable={liquid && !wrong ? { part: { liquid }, amount: liquid.volume } : null}
      above={
        <Part>
          <div class={styles.room}>
            <Preview draft={draft} liquor={liquor} />
          </div>
        </Part>
      }
      lines={(tried) => (
        <LiquidLines draft={draft} change={change} batch={batch} feed={feed} liquor={liquor} tried={tried} />
      )}
    />
  );
}
