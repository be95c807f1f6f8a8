/** Logging a wet solid: mass, moisture, and which liquor it still holds. */
import * as z from 'zod/mini';
import { residueFrom } from '../../ledger/container-load';
import type { SolidPart } from '../../ledger/entries/streams';
import type { StreamKind } from '../../safety/stream-kind';
import { FigureValue } from '../../ui/figure-value';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import { dayText, heldText, shown } from '../amounts';
import { readTyped, Typed, typed, useForm } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { WhenDraft } from '../when';
import { streamName, words } from '../words';
import { moistureLines } from './evidence-asks';
import { emptyMoisture, fitted, MoistureDraft, readMoisture } from './evidence-draft';
import { EvidenceLines } from './evidence-lines';
import { emptyInto, IntoDraft } from './into-container';
import { LogPage } from './log-page';
import { logWords as w } from './words';

const Draft = z.object({
  wetMass: Typed,
  moisture: MoistureDraft,
  /** The stream whose liquor it holds, or 'not-determined'. */
  holds: z.string(),
  into: IntoDraft,
  colour: z.string(),
  when: WhenDraft,
});
type Draft = z.infer<typeof Draft>;

const readMass = (draft: Draft) =>
  readTyped<SolidPart['wetMass']['unit']>(draft.wetMass, { aboveZero: true, most: 1_000_000 });

function readSolid(draft: Draft): { readonly solid: SolidPart | null; readonly wrong: boolean } {
  const [mass, moisture] = [readMass(draft), readMoisture(draft.moisture)];
  const wrong = mass.state !== 'written' || moisture.state === 'wrong';
  if (mass.state !== 'written') return { solid: null, wrong };
  return {
    wrong,
    solid: {
      wetMass: mass.written,
      moisture: moisture.state === 'known' ? moisture.value : { by: 'not-determined' },
      holds: { liquor: draft.holds as SolidPart['holds']['liquor'] },
    },
  };
}

type Props = { readonly batchId: string; readonly kind: StreamKind };

export function LogSolid({ batchId, kind }: Props) {
  const { state, sign, now } = useShell();
  const batch = state.value.batches.get(batchId);
  const liquors = (batch?.streamIds ?? []).filter((id) => state.value.streams.get(id)?.body.liquid);
  const form = useForm(`log/${batchId}/${kind}`, Draft, () => ({
    wetMass: typed('g'),
    moisture: emptyMoisture(),
    holds: kind === 'ceramic-residue' ? (liquors[0] ?? 'not-determined') : 'not-determined',
    into: emptyInto('tub'),
    colour: '',
    when: '',
  }));
  const { value: draft, change } = form;
  const { solid, wrong } = readSolid(draft);
  const held = solid && residueFrom(state.value, 'draft', kind, solid).held;
  const { moisture } = draft;
  // Its batch is that of the page; a step that ran thrice gave three of the same name.
  const liquorText = (id: string): string => {
    const liquor = state.value.streams.get(id);
    if (!liquor) return words.notDetermined;
    const { body, amount, at } = liquor;
    return [streamName[body.stream], heldText(amount, sign.value), dayText(at, now.value)].join(', ');
  };
  return (
    <LogPage
      batchId={batchId}
      kind={kind}
      form={form}
      readable={solid && !wrong ? { part: { solid }, amount: solid.wetMass } : null}
      lines={(tried) => (
        <>
          <NumberField
            label={w.wetMass}
            field={draft.wetMass}
            units={['g', 'kg', 'lb']}
            onChange={(wetMass) => change({ wetMass })}
            read={readMass(draft)}
            tried={tried}
          />
          <EvidenceLines
            name={w.moisture}
            by={moisture.by}
            ways={(Object.entries(w.moistureBy) as [MoistureDraft['by'], string][]).map(([value, label]) => ({
              value,
              label,
            }))}
            knownLabel={words.howKnown}
            onBy={(by) => change({ moisture: fitted({ ...moisture, by }, moistureLines(by)) })}
            draft={moisture}
            lines={moistureLines(moisture.by)}
            onLine={(key, field) => change({ moisture: { ...moisture, [key]: field } })}
            read={readMoisture(moisture)}
            tried={tried}
          />
          <SelectField
            label={w.holds}
            value={draft.holds}
            options={[
              ...liquors.map((id) => ({ value: id, label: liquorText(id) })),
              { value: 'not-determined', label: w.holdsNone },
            ]}
            onChoose={(holds) => change({ holds })}
          />
          {held && (
            <Rows>
              <Row title={w.held} figure={<FigureValue {...shown(held.volume, sign.value)} />} />
            </Rows>
          )}
        </>
      )}
    />
  );
}
