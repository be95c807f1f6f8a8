/** The generator's statement in words, and a place to sign it; the set can be made from here. */
import { toldOf } from '../../ledger/readiness';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { SignHere } from '../signing';
import { useMakeSet } from './make-set';
import { setHref } from './set-address';
import { useSet } from './set-draft';
import { setWords as w } from './set-words';
import { useStatement } from './use-statement';

export function SignSet({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const set = at.set ?? '';
  const begun = useSet(set);
  const { form, containers, signed, wanted } = begun;
  const { page, act } = useMakeSet(begun);
  const statement = useStatement(containers);
  if (page) return page;
  return (
    <Frame
      title={w.statementTitle}
      second={containers.map(({ body }) => unbroken(body.code)).join(', ')}
      ways={[{ label: w.toCheck, href: setHref(set) }]}
      actions={containers.length > 0 && act(null)}
    >
      <Part>{statement?.map((line) => <p key={line}>{line}</p>) ?? <p role="status">{w.looking}</p>}</Part>
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
