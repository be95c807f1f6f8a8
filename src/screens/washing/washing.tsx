/** Washing of a residue: the form, what stays, what keeps a limit. For planning: it writes nothing. */
import { contentsOf } from '../../ledger/contents-followed';
import { type Metal, metals } from '../../reference/tables';
import { washWays } from '../../reference/washing-tables';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { streamTitle } from '../amounts';
import { Begun } from '../begun';
import { containerWords } from '../containers/words';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { words } from '../words';
import {
  draftName,
  emptyWashing,
  type HoldingResidue,
  holding,
  limitUnits,
  readWashing,
  volumeUnits,
  WashingDraft,
  type WashingReads,
} from './draft';
import { AfterWashing } from './result';
import { UnderTheLimit } from './under-limit';
import { washingWords as w } from './words';

type FieldsProps = {
  readonly form: Form<WashingDraft>;
  readonly reads: WashingReads;
  readonly residues: readonly HoldingResidue[];
};

/** The metal chosen, and those that the held liquor tells of. */
const metalsOf = (chosen: Metal, residue: HoldingResidue | undefined): readonly Metal[] => {
  const told = [...(residue?.held.load.metals ?? [])].flatMap(([m, { figure }]) => (figure ? [m] : []));
  return told.includes(chosen) ? told : [chosen, ...told];
};

function Fields({ form, reads, residues }: FieldsProps) {
  const { state } = useShell();
  const { value: draft, change } = form;
  return (
    <Part>
      {residues.length > 1 && (
        <SelectField
          label={w.residue}
          value={draft.residue}
          options={residues.map((r, i) => ({ value: `${i}`, label: streamTitle(state.value, r.streamId) }))}
          onChoose={(residue) => change({ residue })}
        />
      )}
      <SelectField
        label={w.way}
        value={draft.way}
        options={washWays.map((way) => ({ value: way, label: w.ways[way] }))}
        onChoose={(way) => change({ way })}
      />
      {draft.way === 'settled' && (
        <NumberField
          label={w.level}
          field={draft.level}
          units={volumeUnits}
          onChange={(level) => change({ level })}
          read={reads.level}
          hint={w.levelHint}
        />
      )}
      <NumberField
        label={w.volume}
        field={draft.volume}
        units={volumeUnits}
        onChange={(volume) => change({ volume })}
        read={reads.volume}
      />
      <NumberField
        label={w.washes}
        field={draft.washes}
        units={['1']}
        onChange={(washes) => change({ washes })}
        read={reads.washes}
      />
      <SelectField
        label={w.metal}
        value={draft.metal}
        options={metalsOf(draft.metal, residues[Number(draft.residue)]).map((m) => ({
          value: m,
          label: metals[m].name,
        }))}
        onChoose={(metal) => change({ metal })}
      />
      <NumberField
        label={w.limit}
        field={draft.limit}
        units={limitUnits}
        onChange={(limit) => change({ limit })}
        read={reads.limit}
        hint={w.limitHint}
        optional
      />
    </Part>
  );
}

export function WashingScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const residues = holding(contentsOf(state.value, id).residues);
  const form = useForm(draftName(id), WashingDraft, emptyWashing);
  const back = [{ label: words.back, href: `#/containers/${id}` }];
  const [first] = residues;
  if (!container || !first)
    return (
      <Frame title={w.title} ways={back}>
        <Part>
          <p>{container ? w.noResidue : containerWords.gone}</p>
        </Part>
      </Frame>
    );
  const { reads, outcome } = readWashing(form.value, residues);
  const washed = residues[Number(form.value.residue)] ?? first;
  return (
    <Frame
      title={w.title}
      second={w.of(streamTitle(state.value, washed.streamId), unbroken(container.body.code))}
      ways={back}
    >
      <Begun form={form} />
      <Fields form={form} reads={reads} residues={residues} />
      <AfterWashing outcome={outcome} metal={form.value.metal} containerId={id} />
      <UnderTheLimit outcome={outcome} containerId={id} />
      <Part rule>
        {w.cautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
