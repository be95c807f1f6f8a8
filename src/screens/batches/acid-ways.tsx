/** Free acid of a liquor, known in one way or several. */
import { disagreements } from '../../chemistry/disagreement';
import { howKnownWords } from '../../chemistry/evidence-words';
import type { Liquor } from '../../chemistry/liquor';
import { shortIn } from '../../ledger/disagreements';
import type { BatchState } from '../../ledger/state';
import { Notice } from '../../ui/notice';
import { SelectField } from '../../ui/select-field';
import { acidLines } from './evidence-asks';
import { type AcidDraft, emptyAcid, fitted, readAcid } from './evidence-draft';
import { acidFilledFrom } from './evidence-from-batch';
import { EvidenceLines } from './evidence-lines';
import { evidenceWords } from './evidence-words';
import { WaysFoot } from './ways-foot';
import { logWords as w } from './words';

const ways = ['titration', 'titration-volumes', 'charged-minus-consumed', 'ph', 'assumed'] as const;

type WayProps = {
  readonly batch: BatchState | undefined;
  readonly draft: AcidDraft;
  readonly name: string;
  readonly tried: boolean;
  readonly onChange: (draft: AcidDraft) => void;
};

const Way = ({ draft, name, batch, tried, onChange }: WayProps) => (
  <EvidenceLines
    name={name}
    by={draft.by}
    ways={ways.map((value) => ({ value, label: howKnownWords[value] ?? value }))}
    knownLabel={w.known}
    onBy={(by) =>
      onChange(
        acidFilledFrom(batch, fitted({ ...draft, by }, acidLines(by, name), acidLines(draft.by, name))),
      )
    }
    draft={draft}
    lines={acidLines(draft.by, name)}
    onLine={(key, field) => onChange({ ...draft, [key]: field })}
    read={readAcid(draft)}
    tried={tried}
  >
    {draft.by === 'titration-volumes' && <p>{w.strengthHint}</p>}
    {draft.by === 'ph' && (
      <SelectField
        label={w.instrument}
        value={draft.instrument}
        options={[
          { value: 'paper', label: w.paper },
          { value: 'meter', label: w.meter },
        ]}
        onChoose={(instrument) => onChange({ ...draft, instrument })}
      />
    )}
  </EvidenceLines>
);

/** The acid does not come out: more was taken than charged, or about all of it. */
function Short({ liquor }: { readonly liquor: Liquor }) {
  const taken = shortIn(liquor);
  if (!taken) return null;
  const against = taken.low.gt(0);
  return (
    <Notice mark={against ? 'wrong' : 'unknown'} size="small" role="status">
      {against ? evidenceWords.short : evidenceWords.usedUp}
    </Notice>
  );
}

type Props = {
  readonly batch: BatchState | undefined;
  readonly drafts: readonly AcidDraft[];
  readonly onChange: (drafts: AcidDraft[]) => void;
  readonly liquor: Liquor | null;
  readonly tried: boolean;
};

export function AcidWays({ drafts, onChange, batch, liquor, tried }: Props) {
  const taken = new Set(drafts.map(({ by }) => by));
  const next = ways.find((by) => !taken.has(by));
  const known = drafts.every((draft) => readAcid(draft).state === 'known');
  const add = (by: AcidDraft['by']): void =>
    onChange([...drafts, acidFilledFrom(batch, fitted({ ...emptyAcid(), by }, acidLines(by, w.acid)))]);
  return (
    <>
      {drafts.map((draft, i) => (
        <Way
          key={i}
          draft={draft}
          batch={batch}
          name={i === 0 ? w.acid : w.way(w.acid, i + 1)}
          tried={tried}
          onChange={(changed) => onChange(drafts.map((one, j) => (j === i ? changed : one)))}
        />
      ))}
      {liquor && <Short liquor={liquor} />}
      <WaysFoot
        name={w.acidLower}
        known={liquor?.freeAcid}
        disputed={liquor?.freeAcid !== undefined && disagreements(liquor.freeAcid).length > 0}
        more={known && next !== undefined}
        onMore={() => next && add(next)}
      />
    </>
  );
}
