/** Withdraws an entry that did not happen. */
import * as z from 'zod/mini';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { missing, useTried } from '../tried';
import { words } from '../words';
import { entryTitle, entryWords as w } from './entry-words';

const WithdrawFields = z.object({ reason: z.string() });

export function WithdrawScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign } = useShell();
  const id = at.entry ?? '';
  const entry = state.value.log.find((one) => one.id === id);
  const { value, change, done } = useForm(`withdraw:${id}`, WithdrawFields, () => ({ reason: '' }));
  const leave = (): void => {
    done();
    go(`record/entry/${id}`);
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const lacks = missing(value.reason);
  async function keep(): Promise<void> {
    tryNow();
    if (lacks !== undefined) return;
    if (!(await write({ do: 'withdraw-entry', withdraws: id, reason: value.reason }))) return;
    leave();
  }
  if (!entry) return <Frame place="record" title={w.gone} />;
  return (
    <Frame
      place="record"
      title={`${w.withdrawTitle}: ${entryTitle(state.value, entry.body, sign.value)}`}
      second={w.withdrawHint}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keepWithdrawal, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule>
        <TextField
          label={w.withdrawWhy}
          kind="lines"
          value={value.reason}
          onInput={(reason) => change({ reason })}
          error={tried ? lacks : undefined}
          maxLength={2000}
          required
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}
