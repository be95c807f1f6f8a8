/** The generator's statement in words, and a place to sign it; the set can be made from here. */
import { useState } from 'preact/hooks';
import { toldOf } from '../../ledger/readiness';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { SignHere } from '../signing';
import { useMakeSet } from './make-set';
import { setHref } from './set-address';
import { useSet } from './set-draft';
import { setWords as w } from './set-words';
import { statementAtOnce, useStatement } from './use-statement';

/** Of more the phone would stand still under the finger that signs. */
const gatheredAtOnce = 6;

export function SignSet({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const set = at.set ?? '';
  const begun = useSet(set);
  const { form, containers, signed, wanted } = begun;
  const { page, act } = useMakeSet(begun);
  const [asked, setAsked] = useState(false);
  const whole = asked || containers.length <= gatheredAtOnce;
  const statement = useStatement(containers, whole);
  if (page) return page;
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
            form.change({ signing, signedOver: toldOf(state.value, wanted.containerIds) })
          }
          hint={w.signHint}
          error={signed === 'signed-before' ? `${w.signedBefore}. ${w.signedBeforeSecond}` : undefined}
        />
      </Part>
    </Frame>
  );
}
