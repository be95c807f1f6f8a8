/** Logging a liquid: volume, evidence of what is dissolved, into which container. Load and vessel change with each key. */

import * as z from 'zod/mini';
import { type Liquor, liquorFrom } from '../../chemistry/liquor';
import { writtenLiquor } from '../../ledger/container-load';
import type { Finding } from '../../ledger/entries/findings';
import type { LiquidPart } from '../../ledger/entries/streams';
import { metals as metalData } from '../../reference/tables';
import type { StreamKind } from '../../safety/stream-kind';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Vessel } from '../../ui/vessel';
import { shown } from '../amounts';
import { capital } from '../containers/load-table';
import { readTyped, Typed, typed, useForm } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { WhenDraft } from '../when';
import { words } from '../words';
import { AcidWays } from './acid-ways';
import {
  AcidDraft,
  emptyAcid,
  emptyMetal,
  type FeedTold,
  MetalDraft,
  readAcid,
  readMetal,
} from './evidence-draft';
import { feedTold } from './evidence-from-batch';
import { emptyInto, IntoDraft } from './into-container';
import styles from './log.module.css';
import { LogPage } from './log-page';
import { MetalWays } from './metal-ways';
import { previewVessel } from './preview-vessel';
import { logWords as w } from './words';

const Draft = z.object({
  volume: Typed,
  density: Typed,
  acid: AcidDraft,
  /** Further ways of knowing it; a draft of an earlier version has none. */
  moreAcid: z._default(z.array(AcidDraft), []),
  metals: z.array(MetalDraft),
  into: IntoDraft,
  colour: z.string(),
  when: WhenDraft,
});
type Draft = z.infer<typeof Draft>;

const empty = (): Draft => ({
  volume: typed('L'),
  density: typed('kg/L'),
  acid: emptyAcid(),
  moreAcid: [],
  metals: [emptyMetal('Cu'), emptyMetal('Ni')],
  into: emptyInto('jerrican'),
  colour: '',
  when: '',
});

const readVolume = (draft: Draft) =>
  readTyped<LiquidPart['volume']['unit']>(draft.volume, { aboveZero: true, most: 100_000 });
const readDensity = (draft: Draft) => readTyped<'kg/L' | 'g/mL'>(draft.density, { aboveZero: true, most: 3 });

/** What is known of each metal, in every way that can be read; a metal of which nothing can is not determined. */
function findingsIn(drafts: readonly MetalDraft[], feed: FeedTold | null): readonly Finding[] {
  const known = drafts.flatMap((draft) => {
    const read = readMetal(draft, feed);
    return read.state === 'known' ? [read.value] : [];
  });
  const told = new Set(known.map(({ metal }) => metal));
  const untold = [...new Set(drafts.map(({ metal }) => metal))].filter((metal) => !told.has(metal));
  return [...known, ...untold.map((metal) => ({ by: 'not-determined' as const, metal }))];
}

/** What can be read of the form so far; null without a volume. `wrong`: some line cannot be read. */
function readLiquid(
  draft: Draft,
  feed: FeedTold | null,
): { readonly liquid: LiquidPart | null; readonly wrong: boolean } {
  const [volume, density] = [readVolume(draft), readDensity(draft)];
  const acids = [draft.acid, ...draft.moreAcid].map(readAcid);
  const groups = [...acids, ...draft.metals.map((m) => readMetal(m, feed))];
  const wrong =
    volume.state !== 'written' || density.state === 'wrong' || groups.some((g) => g.state === 'wrong');
  if (volume.state !== 'written') return { liquid: null, wrong };
  const freeAcid = acids.flatMap((read) => (read.state === 'known' ? [read.value] : []));
  return {
    wrong,
    liquid: {
      volume: volume.written,
      ...(density.state === 'written' ? { density: density.written } : {}),
      findings: [...findingsIn(draft.metals, feed)],
      freeAcid: freeAcid.length > 0 ? freeAcid : [{ by: 'not-determined' }],
    },
  };
}

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
  const liquor = liquid && liquorFrom(writtenLiquor('draft', liquid, batchId));
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
        <>
          <NumberField
            label={w.volume}
            field={draft.volume}
            units={['L', 'mL', 'US gal']}
            onChange={(volume) => change({ volume })}
            read={readVolume(draft)}
            tried={tried}
            evidence={w.volumeHow}
          />
          <MetalWays
            drafts={draft.metals}
            onChange={(metals) => change({ metals })}
            batch={batch}
            feed={feed}
            liquor={liquor}
            tried={tried}
          />
          <AcidWays
            drafts={[draft.acid, ...draft.moreAcid]}
            onChange={([acid = draft.acid, ...moreAcid]) => change({ acid, moreAcid })}
            batch={batch}
            liquor={liquor}
            tried={tried}
          />
          <NumberField
            label={w.density}
            field={draft.density}
            units={['kg/L', 'g/mL']}
            onChange={(density) => change({ density })}
            read={readDensity(draft)}
            tried={tried}
            optional
            hint={w.densityHint}
          />
        </>
      )}
    />
  );
}
