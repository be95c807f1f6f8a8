/** Who said a local rule, when, and in which document: the part that the form of every rule has. */
import * as z from 'zod/mini';
import type { LocalRuleStated } from '../../ledger/entries/local-rules';
import { Day } from '../../ledger/entries/moments';
import { TextField } from '../../ui/text-field';
import { missing } from '../tried';
import { words } from '../words';
import { recordWords, ruleFormWords as w } from './words';

export const saidShape = { saidBy: z.string(), saidOn: z.string(), document: z.string() };
export type Said = { readonly saidBy: string; readonly saidOn: string; readonly document: string };

/** As stated before, or empty. */
export const saidOf = (body: LocalRuleStated | undefined): Said => ({
  saidBy: body?.saidBy ?? '',
  saidOn: body?.saidOn ?? '',
  document: body?.document ?? '',
});

/** @param today calendar day at the workshop, since nobody can have said it later than that */
export const saidFaults = ({ saidBy, saidOn }: Said, today: string) => ({
  saidBy: missing(saidBy),
  saidOn: Day.safeParse(saidOn).success
    ? saidOn > today
      ? recordWords.dateAhead
      : undefined
    : recordWords.dateMissing,
});

type Props = {
  readonly value: Said;
  readonly change: (part: Partial<Said>) => void;
  readonly faults: ReturnType<typeof saidFaults>;
  readonly tried: boolean;
};

export const SaidFields = ({ value, change, faults, tried }: Props) => (
  <>
    <TextField
      label={w.saidBy}
      value={value.saidBy}
      onInput={(saidBy) => change({ saidBy })}
      hint={w.saidByHint}
      error={tried ? faults.saidBy : undefined}
      maxLength={120}
      required
    />
    <TextField
      label={w.saidOn}
      kind="date"
      value={value.saidOn}
      onInput={(saidOn) => change({ saidOn })}
      error={tried || value.saidOn !== '' ? faults.saidOn : undefined}
      required
    />
    <TextField
      label={w.document}
      value={value.document}
      onInput={(document) => change({ document })}
      hint={`${w.documentHint} (${words.optional})`}
      maxLength={120}
    />
  </>
);
