/** The lines that ask for a wet solid: mass, moisture, and which liquor it still holds. */
import { residueFrom } from '../../ledger/container-load';
import type { StreamKind } from '../../safety/stream-kind';
import { FigureValue } from '../../ui/figure-value';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import { dayText, heldText, shown, streamTitle } from '../amounts';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { streamName, words } from '../words';
import { moistureLines } from './evidence-asks';
import { fitted, type MoistureDraft, readMoisture } from './evidence-draft';
import { EvidenceLines } from './evidence-lines';
import { readMass, readSolid, type SolidDraft } from './solid-draft';
import { logWords as w } from './words';

type Props = {
  readonly kind: StreamKind;
  readonly draft: SolidDraft;
  readonly change: (part: Partial<SolidDraft>) => void;
  /** Liquors that it may hold; those of one batch are told apart by volume and day alone. */
  readonly liquors: readonly string[];
  readonly ofOneBatch?: boolean;
  readonly tried: boolean;
};

export function SolidLines({ kind, draft, change, liquors, ofOneBatch = false, tried }: Props) {
  const { state, sign, now } = useShell();
  const { solid } = readSolid(draft);
  const held = solid && residueFrom(state.value, 'draft', kind, solid).held;
  const { moisture } = draft;
  // Its batch is that of the page; a step that ran thrice gave three of the same name.
  const liquorText = (id: string): string => {
    const liquor = state.value.streams.get(id);
    if (!liquor) return words.notDetermined;
    const { body, amount, at } = liquor;
    const name = ofOneBatch ? streamName[body.stream] : streamTitle(state.value, id);
    return [name, heldText(amount, sign.value), dayText(at, now.value)].join(', ');
  };
  return (
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
  );
}
