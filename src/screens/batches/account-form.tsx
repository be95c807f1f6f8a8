/** What a batch was charged with or gave back: one reading at a time, and the next without leaving. */

import { useRef, useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { acidFault } from '../../chemistry/evidence-faults';
import type { Charge, Recovery } from '../../ledger/entries/accounts';
import type { Intention } from '../../ledger/intention';
import { codeOfBatch } from '../../ledger/put-away';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { Begun } from '../begun';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { chargeWords, recoveryWords, accountWords as w } from './account-words';
import { faultWords } from './evidence-draft';

const charges = ['acid', 'dilution-water', 'wash-water', 'copper'] as const;
const recoveries = ['copper', 'silver', 'palladium', 'residue'] as const;
const What = z.enum([
  ...charges.map((what) => `charge ${what}` as const),
  ...recoveries.map((what) => `recovery ${what}` as const),
] as ['charge acid', ...(`charge ${Charge['what']}` | `recovery ${Recovery['what']}`)[]]);
type What = z.infer<typeof What>;

const Draft = z.object({ what: What, amount: Typed, strength: Typed, when: WhenDraft });
type Draft = z.infer<typeof Draft>;

const litres = ['L', 'mL', 'US gal'] as const;
const grams = ['g', 'kg', 'lb'] as const;
const strengths = ['%', 'mol/L', 'kg/L'] as const;

const isVolume = (what: What): boolean => what.startsWith('charge') && what !== 'charge copper';
const unitsFor = (what: What) => (isVolume(what) ? litres : grams);

const emptyOf = (what: What): Draft => ({
  what,
  amount: typed(unitsFor(what)[0]),
  strength: typed('%'),
  when: '',
});

const readAmount = ({ amount }: Draft) => readTyped<string>(amount, { most: 1_000_000 });
const readStrength = ({ strength }: Draft) => readTyped<string>(strength, { aboveZero: true, most: 100 });

/** What is typed, as it would be written; null while a line is missing or wrong. */
function stated(batchId: string, draft: Draft): Intention | null {
  const [amount, strength] = [readAmount(draft), readStrength(draft)];
  if (amount.state !== 'written') return null;
  const [sort, what = ''] = draft.what.split(' ');
  const measured = { [isVolume(draft.what) ? 'volume' : 'mass']: amount.written };
  if (sort === 'recovery')
    return { do: 'log-recovery', batchId, recovery: { what, ...measured } as Recovery };
  if (what !== 'acid') return { do: 'log-charge', batchId, charge: { what, ...measured } as Charge };
  if (strength.state !== 'written') return null;
  return { do: 'log-charge', batchId, charge: { what, ...measured, strength: strength.written } as Charge };
}

/** A strength that the table of nitric acid does not know. */
function strengthFault(draft: Draft): string | null {
  const strength = readStrength(draft);
  if (draft.what !== 'charge acid' || strength.state !== 'written') return null;
  const fault = acidFault({
    by: 'charged-minus-consumed',
    volume: { value: '1', unit: 'L' },
    strength: strength.written as Extract<Charge, { what: 'acid' }>['strength'],
  });
  return fault && faultWords(fault);
}

type FieldsProps = {
  readonly draft: Draft;
  readonly change: (part: Partial<Draft>) => void;
  readonly tried: boolean;
};

function Fields({ draft, change, tried }: FieldsProps) {
  const { what } = draft;
  const against = strengthFault(draft);
  return (
    <>
      <SelectField
        label={w.what}
        value={what}
        options={[
          ...charges.map((one) => ({ value: `charge ${one}` as const, label: chargeWords[one] })),
          ...recoveries.map((one) => ({ value: `recovery ${one}` as const, label: recoveryWords[one] })),
        ]}
        onChoose={(chosen) =>
          change({
            what: chosen,
            ...(isVolume(chosen) === isVolume(what) ? {} : { amount: typed(unitsFor(chosen)[0]) }),
          })
        }
      />
      <NumberField
        label={isVolume(what) ? w.volume : w.mass}
        field={draft.amount}
        units={unitsFor(what)}
        onChange={(amount) => change({ amount })}
        read={readAmount(draft)}
        tried={tried}
      />
      {what === 'charge acid' && (
        <NumberField
          label={w.strength}
          field={draft.strength}
          units={strengths}
          onChange={(strength) => change({ strength })}
          read={readStrength(draft)}
          tried={tried}
        />
      )}
      {against !== null && (
        <Notice mark="wrong" size="small" role="alert">
          {against}
        </Notice>
      )}
    </>
  );
}

export function AccountForm({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, moment } = useShell();
  const batchId = at.batch ?? '';
  // After one is written the form begins again with the same thing: it often goes in several times.
  const last = useRef<What>('charge acid');
  const form = useForm(`account/${batchId}`, Draft, () => emptyOf(last.current));
  const { write, fault, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const [kept, setKept] = useState<Draft | null>(null);
  const draft = form.value;
  async function keep(): Promise<void> {
    const intention = stated(batchId, draft);
    const happened = momentStated(draft.when, moment());
    if (!intention || happened === null || strengthFault(draft) !== null) return tryNow();
    if (!(await write(intention, happened))) return;
    last.current = draft.what;
    form.reset();
    setKept(form.latest());
  }
  return (
    <Frame
      title={w.formTitle(unbroken(codeOfBatch(state.value, batchId) ?? ''))}
      ways={[{ label: words.back, href: `#/batches/${batchId}` }]}
      actions={<KeepButton fault={fault} busy={busy} keep={keep} label={w.keep} />}
    >
      {kept === null && <Begun form={form} />}
      <Part>
        <Fields draft={draft} change={form.change} tried={tried && draft !== kept} />
        <When value={draft.when} onInput={(when) => form.change({ when })} />
        {kept === draft && <p role="status">{w.again}</p>}
      </Part>
    </Frame>
  );
}
