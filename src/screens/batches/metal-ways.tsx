/** Every metal of a liquor, each known in one way or several. */
import { disagreements } from '../../chemistry/disagreement';
import { howKnownWords } from '../../chemistry/evidence-words';
import type { Liquor } from '../../chemistry/liquor';
import type { BatchState } from '../../ledger/state';
import { type Metal, metals as metalData, metalSymbols } from '../../reference/tables';
import { SelectField } from '../../ui/select-field';
import { capital } from '../containers/load-table';
import { metalLines } from './evidence-asks';
import { emptyMetal, type FeedTold, fitted, type MetalDraft, readMetal, withLine } from './evidence-draft';
import { filledFrom, waysOf } from './evidence-from-batch';
import { EvidenceLines } from './evidence-lines';
import { WaysFoot } from './ways-foot';
import { logWords as w } from './words';

type Props = {
  readonly drafts: readonly MetalDraft[];
  readonly onChange: (drafts: MetalDraft[]) => void;
  readonly batch: BatchState | undefined;
  readonly feed: FeedTold | null;
  readonly liquor: Liquor | null;
  readonly tried: boolean;
};

const hints: Readonly<Partial<Record<MetalDraft['by'], string>>> = {
  strip: w.stepsHint,
  typical: w.typicalHint,
  'feed-minus-residue': w.residueHint,
};

type WayProps = Pick<Props, 'batch' | 'feed' | 'tried'> & {
  readonly draft: MetalDraft;
  readonly name: string;
  readonly onChange: (draft: MetalDraft) => void;
};

function Way({ draft, name, batch, feed, tried, onChange }: WayProps) {
  const lines = metalLines(draft.by, name);
  const hint = hints[draft.by];
  return (
    <EvidenceLines
      name={name}
      by={draft.by}
      ways={waysOf(draft.metal, feed).map((value) => ({ value, label: howKnownWords[value] ?? value }))}
      knownLabel={w.known}
      onBy={(by) =>
        onChange(
          filledFrom(batch, fitted({ ...draft, by }, metalLines(by, name), metalLines(draft.by, name))),
        )
      }
      draft={draft}
      lines={lines}
      onLine={(key, field) => onChange(withLine(draft, lines, key, field))}
      read={readMetal(draft, feed)}
      tried={tried}
    >
      {hint !== undefined && <p>{hint}</p>}
    </EvidenceLines>
  );
}

function MetalGroup({ metal, ...props }: Props & { readonly metal: Metal }) {
  const { drafts, onChange, batch, feed, liquor, tried } = props;
  const own = drafts.flatMap((draft, i) => (draft.metal === metal ? [{ draft, i }] : []));
  const name = metalData[metal].name;
  const known = liquor?.metals.get(metal);
  const taken = new Set(own.map(({ draft }) => draft.by));
  const next = waysOf(metal, feed).find((by) => !taken.has(by));
  const lastIsKnown = own.every(({ draft }) => readMetal(draft, feed).state === 'known');
  const add = (by: MetalDraft['by']): void => {
    const empty = { ...emptyMetal(metal), by };
    onChange([...drafts, filledFrom(batch, fitted(empty, metalLines(by, name)))]);
  };
  return (
    <>
      {own.map(({ draft, i }, n) => (
        <Way
          key={i}
          draft={draft}
          name={n === 0 ? capital(name) : w.way(capital(name), n + 1)}
          batch={batch}
          feed={feed}
          tried={tried}
          onChange={(changed) => onChange(drafts.map((one, j) => (j === i ? changed : one)))}
        />
      ))}
      <WaysFoot
        name={name}
        known={known}
        disputed={known !== undefined && disagreements(known).length > 0}
        more={lastIsKnown && next !== undefined}
        onMore={() => next && add(next)}
      />
    </>
  );
}

export function MetalWays(props: Props) {
  const { drafts, onChange } = props;
  const told = [...new Set(drafts.map(({ metal }) => metal))];
  const rest = metalSymbols.filter((metal) => !told.includes(metal));
  return (
    <>
      {told.map((metal) => (
        <MetalGroup key={metal} metal={metal} {...props} />
      ))}
      {rest.length > 0 && (
        <SelectField
          label={w.addMetal}
          value={undefined}
          none={w.addMetalNone}
          options={rest.map((metal) => ({ value: metal, label: capital(metalData[metal].name) }))}
          onChoose={(metal) => onChange([...drafts, emptyMetal(metal)])}
        />
      )}
    </>
  );
}
