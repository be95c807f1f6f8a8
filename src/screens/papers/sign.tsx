/** The generator's statement in words, and a place to sign it; the set can be made from here. */
import { useState } from 'preact/hooks';
import { signedOver } from '../../ledger/signed-over';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { SignHere } from '../signing';
import { SetPage, type SetPageProps } from './make-set';
import { setHref } from './set-address';
import { setWords as w } from './set-words';
import { statementAtOnce, useStatement } from './use-statement';

/** Of more the phone would stand still under the finger that signs. */
const gatheredAtOnce = 6;

function Sign({ set, begun, act }: SetPageProps) {
  const { state } = useShell();
  const { form, containers, signed, wanted } = begun;
  const [asked, setAsked] = useState(false);
  const whole = asked || containers.length <= gatheredAtOnce;
  const statement = useStatement(containers, whole);
  return (
    <Frame
      title={w.statementTitle}
      second={containers.map(({ body }) => unbroken(body.code)).join(', ')}
      ways={[{ label: w.toCheck, href: setHref(set) }]}
      actions={containers.length > 0 && act(null)}
    >
      <Part>
        {(statement ?? statementAtOnce(state.value, containers.length)).map((line) => (
          <p key={line}>{line}</p>
        ))}
        {!whole && <Button onTap={() => setAsked(true)}>{w.wholeStatement}</Button>}
        {whole && !statement && <p role="status">{w.looking}</p>}
      </Part>
      <Part rule>
        <SignHere
          label={w.signHere}
          value={form.value.signing}
          latest={() => form.latest().signing}
          onChange={(signing) =>
            form.change({ signing, signedOver: signedOver(state.value, wanted.containerIds) })
          }
          hint={w.signHint}
          error={signed === 'signed-before' ? `${w.signedBefore}. ${w.signedBeforeSecond}` : undefined}
        />
      </Part>
    </Frame>
  );
}

export const SignSet = ({ at }: { readonly at: Readonly<Record<string, string>> }) => (
  <SetPage set={at.set ?? ''} page={Sign} />
);
