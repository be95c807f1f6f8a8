/** One candidate: the rule in words, the numbers against their limits, what is missing, and whose word there is. */
import { candidateBy, wordIn } from '../../ledger/candidate-words';
import { answerTo, type ContainerCandidates } from '../../ledger/container-candidates';
import { Scheme } from '../../ledger/entries/candidates';
import type { Law } from '../../ledger/entries/local-rules';
import { lawsOf } from '../../ledger/laws';
import type { ContainerState } from '../../ledger/state';
import { codeText, meaningOf, namesOfLacks, schemeWords } from '../../paperwork/candidate-words';
import { capital } from '../../paperwork/words';
import type { Candidate } from '../../rules/candidate';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { candidatePath, candidatesPath } from './addresses';
import { Numbers, Said } from './candidate-parts';
import styles from './candidates.module.css';
import { Cited } from './cited-rules';
import { DilutionPart } from './dilution';
import { TransportParts } from './transport-parts';
import { useCandidates } from './use-candidates';
import { WasteListParts } from './waste-list-parts';
import { candidateWords as w } from './words';

type Address = { readonly scheme: Scheme; readonly code: string };

/** Whose rule against diluting it is. */
const ofLaw: Partial<Readonly<Record<Scheme, Law>>> = {
  rcra: 'us-federal',
  'rcra-ldr': 'us-federal',
  california: 'us-california',
  'eu-hp': 'eu',
  'waste-list': 'eu',
};

type Ruled = {
  readonly container: ContainerState;
  readonly all: ContainerCandidates;
  readonly candidate: Candidate;
};

/** What is only there for some laws. */
function OfScheme({ all, candidate, workingOf }: Ruled & { readonly workingOf: (key: string) => string }) {
  const { scheme, code } = candidate;
  const entry = all.wasteList?.candidates.find((one) => one.code === code);
  if (scheme === 'waste-list' && all.wasteList && entry)
    return <WasteListParts list={all.wasteList} candidate={entry} />;
  const carried = all.transport.candidates.find((one) => one.code === code);
  return scheme === 'transport' && carried ? (
    <TransportParts transport={all.transport} candidate={carried} workingOf={workingOf} />
  ) : null;
}

function Rule(props: Ruled) {
  const { state } = useShell();
  const { candidate, container } = props;
  const { scheme, standing, citation, lacks } = candidate;
  const law = ofLaw[scheme];
  const workingOf = (key: string) =>
    `#/${candidatePath(container.body.containerId, candidate)}/working/${key}`;
  return (
    <>
      <Part rule title={w.rule}>
        <p>
          <b>{w.stands[standing]}</b>
        </p>
        <Cited citation={citation} />
      </Part>
      <Numbers candidate={candidate} workingOf={workingOf} />
      {lacks.length > 0 && (
        <Part rule title={w.lacks}>
          <Notice mark="unknown">{`${namesOfLacks(lacks)}: ${words.notDetermined}`}</Notice>
        </Part>
      )}
      <OfScheme {...props} workingOf={workingOf} />
      <DilutionPart laws={law === undefined ? lawsOf(state.value) : [law]} />
    </>
  );
}

function OfCandidate({
  container,
  address,
}: {
  readonly container: ContainerState;
  readonly address: Address;
}) {
  const { containerId, code: container_ } = container.body;
  const { scheme, code } = address;
  const all = useCandidates(container);
  const word = wordIn(answerTo(container, address));
  const candidate = all === undefined || typeof all === 'string' ? undefined : candidateBy(all, scheme, code);
  const meaning = meaningOf(candidate ?? address);
  return (
    <Frame
      title={codeText(code)}
      above={<p class={styles.quiet}>{w.candidateOf(unbroken(container_), schemeWords[scheme])}</p>}
      second={meaning === '' ? undefined : capital(meaning)}
      ways={[{ label: words.back, href: `#/${candidatesPath(containerId)}` }]}
      actions={
        <Button look="primary" href={`#/${candidatePath(containerId, address)}/said`}>
          {word.is === 'waiting' ? w.sayDoor : w.sayAgain}
        </Button>
      }
    >
      <Said word={word} scheme={scheme} />
      {all === undefined && (
        <Part>
          <p role="status">{w.workingOut}</p>
        </Part>
      )}
      {all !== undefined && !candidate && (
        <Part>
          <p>{all === 'not-determined' ? w.goneContents : w.gone}</p>
        </Part>
      )}
      {all !== undefined && typeof all !== 'string' && candidate && (
        <Rule container={container} all={all} candidate={candidate} />
      )}
      <Part rule>
        <Buttons>
          <Button href={`#/${candidatesPath(containerId)}/another`} second={w.anotherSecond}>
            {w.anotherDoor}
          </Button>
          <Button href={`#/containers/${containerId}/history`} second={w.entryDoorSecond}>
            {w.historyDoor}
          </Button>
        </Buttons>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function CandidateScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  const scheme = Scheme.safeParse(at.scheme);
  return container && scheme.success ? (
    <OfCandidate container={container} address={{ scheme: scheme.data, code: at.code ?? '' }} />
  ) : (
    <Frame place="containers" title={w.unknownAddress} />
  );
}
