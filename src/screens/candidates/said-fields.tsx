/** The form of somebody's word: what stands in it, what is wrong with it, and its fields. */
import * as z from 'zod/mini';
import { Scheme } from '../../ledger/entries/candidates';
import { Photos } from '../../ledger/entries/photos';
import { schemeWords } from '../../paperwork/candidate-words';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { PickOrWrite } from '../pick-or-write';
import { saidFaults } from '../record/said-fields';
import { useShell } from '../shell';
import { missing } from '../tried';
import { words } from '../words';
import { codeExample, candidateWords as w } from './words';

export const SaidDraft = z.object({
  scheme: z.optional(Scheme),
  code: z.string(),
  answer: z.optional(z.enum(['accepted', 'refused'])),
  saidBy: z.string(),
  saidOn: z.string(),
  document: z.string(),
  note: z.string(),
  photos: Photos,
});
export type SaidDraft = z.infer<typeof SaidDraft>;

export const faultsOf = (draft: SaidDraft, today: string) => ({
  scheme: draft.scheme === undefined ? words.choice.missing : undefined,
  code: missing(draft.code),
  answer: draft.answer === undefined ? words.choice.missing : undefined,
  ...saidFaults(draft, today),
});

type Fields = {
  readonly draft: SaidDraft;
  readonly change: (part: Partial<SaidDraft>) => void;
  readonly faults: ReturnType<typeof faultsOf>;
  readonly tried: boolean;
};

export const CodeFields = ({ draft, change, faults, tried }: Fields) => (
  <>
    <SelectField
      label={w.scheme}
      value={draft.scheme}
      none={words.choose}
      options={Scheme.options.map((value) => ({ value, label: schemeWords[value] }))}
      onChoose={(scheme) => change({ scheme })}
      error={tried ? faults.scheme : undefined}
    />
    <TextField
      label={w.code}
      value={draft.code}
      onInput={(code) => change({ code })}
      hint={draft.scheme && w.codeHint(codeExample[draft.scheme])}
      error={tried ? faults.code : undefined}
      maxLength={120}
      required
    />
  </>
);

export function WhoFields({ draft, change, faults, tried }: Fields) {
  const { state } = useShell();
  const { authority, collector } = state.value.workshop?.body ?? {};
  return (
    <>
      <PickOrWrite
        label={w.who}
        value={draft.saidBy}
        onInput={(saidBy) => change({ saidBy })}
        known={[authority, collector].flatMap((one) => (one ? [one.name] : []))}
        error={tried ? faults.saidBy : undefined}
      />
      <TextField
        label={w.when}
        kind="date"
        value={draft.saidOn}
        onInput={(saidOn) => change({ saidOn })}
        error={tried || draft.saidOn !== '' ? faults.saidOn : undefined}
        required
      />
      <TextField
        label={w.document_}
        value={draft.document}
        onInput={(document) => change({ document })}
        hint={`${w.documentHint} (${words.optional})`}
        maxLength={120}
      />
      <TextField
        label={w.note}
        value={draft.note}
        onInput={(note) => change({ note })}
        hint={words.optional}
        maxLength={500}
      />
    </>
  );
}
