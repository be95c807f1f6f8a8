/** Logging a liquid: volume, evidence of what is dissolved, into which container. Load and vessel change with each key. */

import * as z from 'zod/mini';
import { howKnownWords } from '../../chemistry/evidence-words';
import { type Liquor, liquorFrom } from '../../chemistry/liquor';
import { writtenLiquor } from '../../ledger/container-load';
import type { LiquidPart } from '../../ledger/entries/streams';
import { metals as metalData, metalSymbols } from '../../reference/tables';
import type { StreamKind } from '../../safety/stream-kind';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { Vessel } from '../../ui/vessel';
import { shown } from '../amounts';
import { capital } from '../containers/load-table';
import { readTyped, Typed, typed, useForm } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { WhenDraft } from '../when';
import { words } from '../words';
import {
  AcidDraft,
  acidLines,
  emptyAcid,
  emptyMetal,
  fitted,
  MetalDraft,
  metalLines,
  readAcid,
  readMetal,
  withLine,
} from './evidence-draft';
import { EvidenceLines } from './evidence-lines';
import { emptyInto, IntoDraft } from './into-container';
import styles from './log.module.css';
import { LogPage } from './log-page';
import { previewVessel } from './preview-vessel';
import { logWords as w } from './words';

const Draft = z.object({
  volume: Typed,
  density: Typed,
  acid: AcidDraft,
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
  metals: [emptyMetal('Cu'), emptyMetal('Ni')],
  into: emptyInto('jerrican'),
  colour: '',
  when: '',
});

const readVolume = (draft: Draft) =>
  readTyped<LiquidPart['volume']['unit']>(draft.volume, { aboveZero: true, most: 100_000 });
const readDensity = (draft: Draft) => readTyped<'kg/L' | 'g/mL'>(draft.density, { aboveZero: true, most: 3 });

/** What can be read of the form so far; null without a volume. `wrong`: some line cannot be read. */
function readLiquid(draft: Draft): { readonly liquid: LiquidPart | null; readonly wrong: boolean } {
  const [volume, density, acid] = [readVolume(draft), readDensity(draft), readAcid(draft.acid)];
  const found = draft.metals.map((m) => ({ metal: m.metal, read: readMetal(m) }));
  const wrong =
    volume.state !== 'written' ||
    density.state === 'wrong' ||
    [acid, ...found.map((f) => f.read)].some((g) => g.state === 'wrong');
  if (volume.state !== 'written') return { liquid: null, wrong };
  const findings = found.map(({ metal, read }) =>
    read.state === 'known' ? read.value : { by: 'not-determined' as const, metal },
  );
  return {
    wrong,
    liquid: {
      volume: volume.written,
      ...(density.state === 'written' ? { density: density.written } : {}),
      findings,
      freeAcid: [acid.state === 'known' ? acid.value : { by: 'not-determined' }],
    },
  };
}

const ways = <B extends string>(...by: B[]) =>
  by.map((value) => ({ value, label: howKnownWords[value] ?? value }));
const metalWays = (metal: string) =>
  metal === 'Cu'
    ? ways('photometer', 'assay', 'strip', 'copper-weighed', 'metals-recovered', 'weighing', 'assumed')
    : ways('photometer', 'assay', 'strip', 'weighing', 'assumed');
const acidWays = ways('titration', 'titration-volumes', 'charged-minus-consumed', 'ph', 'assumed');

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

type Fields = {
  readonly draft: Draft;
  readonly change: (part: Partial<Draft>) => void;
  readonly tried: boolean;
};

function Metals({ draft, change, tried }: Fields) {
  const set = (i: number, metal: MetalDraft) =>
    change({ metals: draft.metals.map((m, j) => (j === i ? metal : m)) });
  const rest = metalSymbols.filter((m) => !draft.metals.some(({ metal }) => metal === m));
  return (
    <>
      {draft.metals.map((m, i) => {
        const name = capital(metalData[m.metal].name);
        return (
          <EvidenceLines
            key={m.metal}
            name={name}
            by={m.by}
            ways={metalWays(m.metal)}
            knownLabel={w.known}
            onBy={(by) => set(i, fitted({ ...m, by }, metalLines(by, name)))}
            draft={m}
            lines={metalLines(m.by, name)}
            onLine={(key, field) => set(i, withLine(m, metalLines(m.by, name), key, field))}
            read={readMetal(m)}
            tried={tried}
          />
        );
      })}
      {rest.length > 0 && (
        <SelectField
          label={w.addMetal}
          value={undefined}
          none={w.addMetalNone}
          options={rest.map((m) => ({ value: m, label: capital(metalData[m].name) }))}
          onChoose={(metal) => change({ metals: [...draft.metals, emptyMetal(metal)] })}
        />
      )}
    </>
  );
}

const Acid = ({ draft, change, tried }: Fields) => (
  <EvidenceLines
    name={w.acid}
    by={draft.acid.by}
    ways={acidWays}
    knownLabel={w.known}
    onBy={(by) => change({ acid: fitted({ ...draft.acid, by }, acidLines(by)) })}
    draft={draft.acid}
    lines={acidLines(draft.acid.by)}
    onLine={(key, field) => change({ acid: { ...draft.acid, [key]: field } })}
    read={readAcid(draft.acid)}
    tried={tried}
  >
    {draft.acid.by === 'ph' && (
      <SelectField
        label={w.instrument}
        value={draft.acid.instrument}
        options={[
          { value: 'paper', label: w.paper },
          { value: 'meter', label: w.meter },
        ]}
        onChoose={(instrument) => change({ acid: { ...draft.acid, instrument } })}
      />
    )}
  </EvidenceLines>
);

type Props = { readonly batchId: string; readonly kind: StreamKind };

export function LogLiquid({ batchId, kind }: Props) {
  const form = useForm(`log/${batchId}/${kind}`, Draft, empty);
  const { value: draft, change } = form;
  const { liquid, wrong } = readLiquid(draft);
  const liquor = liquid && liquorFrom(writtenLiquor('draft', liquid));
  return (
    <LogPage
      batchId={batchId}
      kind={kind}
      form={form}
      readable={liquid && !wrong ? { part: { liquid }, amount: liquid.volume } : null}
      above={
        <Part>
          <Preview draft={draft} liquor={liquor} />
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
          <Metals draft={draft} change={change} tried={tried} />
          <Acid draft={draft} change={change} tried={tried} />
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
