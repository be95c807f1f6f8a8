/** What nobody determined, gathered by what it takes: which codes wait for it, what to do, whom to ask. */
import { type Lacking, lackingIn } from '../../ledger/candidate-words';
import type { ContainerCandidates } from '../../ledger/container-candidates';
import type { ContainerState } from '../../ledger/state';
import { codeText, lackWords, namesOfLacks } from '../../paperwork/candidate-words';
import { joined } from '../../paperwork/words';
import { Button, Buttons } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { streamTitle } from '../amounts';
import recordStyles from '../record/record.module.css';
import { useShell } from '../shell';
import { candidateHref } from './addresses';
import styles from './candidates.module.css';
import { candidateWords as w } from './words';

type Props = { readonly container: ContainerState; readonly all: ContainerCandidates };

function One({ lacking, containerId }: { readonly lacking: Lacking; readonly containerId: string }) {
  const { kind, what, decides } = lacking;
  const codes = joined(decides.map(({ code }) => codeText(code)));
  return (
    <li>
      <Notice mark="unknown" second={what.length === 1 ? w.decides(codes) : w.decide(codes)}>
        {w.lacking(namesOfLacks(what.map(({ name }) => name)))}
      </Notice>
      <p>
        <b>{w.whatToDo}:</b> {lackWords[kind]}
      </p>
      <details class={recordStyles.fold}>
        <summary>
          <span>{w.each}</span>
        </summary>
        <ul class={styles.codes}>
          {what.map((one) => (
            <li key={one.name}>
              <b>{namesOfLacks([one.name])}:</b>{' '}
              {one.decides.map((candidate, at) => (
                <span key={`${candidate.scheme} ${candidate.code}`}>
                  {at > 0 && ', '}
                  <a href={candidateHref(containerId, candidate)}>{codeText(candidate.code)}</a>
                </span>
              ))}
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}

export function NotDeterminedPart({ container, all }: Props) {
  const { state } = useShell();
  const lacking = lackingIn(all);
  if (lacking.length === 0) return null;
  const { authority, collector } = state.value.workshop?.body ?? {};
  const whom = [authority, collector].flatMap((one) => (one ? [`${one.name} (${one.contact})`] : []));
  const streams = [...new Set(container.contents.flatMap(({ streamId }) => streamId ?? []))];
  return (
    <Part rule title={w.open}>
      <p class={styles.quiet}>{w.openSecond}</p>
      <ul class={styles.list}>
        {lacking.map((one) => (
          <One key={one.kind} lacking={one} containerId={container.body.containerId} />
        ))}
      </ul>
      {whom.length > 0 && <p>{w.ask(joined(whom))}</p>}
      <Buttons>
        {streams.map((id) => (
          <Button key={id} look="plain" href={`#/streams/${id}/found-later`}>
            {w.findLater(streamTitle(state.value, id))}
          </Button>
        ))}
      </Buttons>
    </Part>
  );
}
