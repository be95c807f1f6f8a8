/** What the laws make of what a container holds: candidates, law by law, with what came close and what is not determined. */
import { bySchemes, type ContainerCandidates } from '../../ledger/container-candidates';
import type { NoMixture } from '../../ledger/container-mixture';
import { lawsOf, lawsStated } from '../../ledger/laws';
import type { ContainerState } from '../../ledger/state';
import { lawNames } from '../../paperwork/rule-words';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { containerWords } from '../containers/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { candidatesPath } from './addresses';
import { GivenRow } from './candidate-row';
import styles from './candidates.module.css';
import { DilutionPart } from './dilution';
import { NotDeterminedPart } from './not-determined';
import { SchemePart } from './scheme-part';
import { Summary } from './summary';
import { useCandidates } from './use-candidates';
import { candidateWords as w } from './words';

function Laws() {
  const { state } = useShell();
  const stated = lawsStated(state.value);
  const laws = lawsOf(state.value).map((law) => lawNames[law]);
  return (
    <Part>
      {!stated && (
        <Notice mark="unknown" second={w.lawsOpenSecond}>
          {w.lawsOpen}
        </Notice>
      )}
      {stated && <p class={styles.quiet}>{w.lawsChosen(laws.join('; '))}</p>}
      <Buttons>
        <Button look="plain" href="#/record/rules/laws">
          {stated ? w.lawsChange : w.lawsDoor}
        </Button>
      </Buttons>
    </Part>
  );
}

/** What was said before stays to be read where no rule can be put to it. */
function SaidBefore({ container }: { readonly container: ContainerState }) {
  if (container.answers.length === 0) return null;
  return (
    <Part rule title={w.said} width="edge">
      <Rows label={w.said}>
        {container.answers.map((answer) => (
          <GivenRow key={`${answer.body.scheme} ${answer.body.code}`} container={container} answer={answer} />
        ))}
      </Rows>
    </Part>
  );
}

function NoRule({ container, why }: { readonly container: ContainerState; readonly why: NoMixture }) {
  const { containerId } = container.body;
  return (
    <>
      <Part>
        {why === 'empty' ? (
          <Notice mark="emptied" second={w.emptySecond}>
            {w.empty}
          </Notice>
        ) : (
          <>
            <Notice mark="unknown" second={w.notDeterminedSecond}>
              {w.notDetermined}
            </Notice>
            <Buttons>
              <Button href={`#/containers/${containerId}/unknown`}>{w.notDeterminedDoor}</Button>
            </Buttons>
          </>
        )}
      </Part>
      <SaidBefore container={container} />
    </>
  );
}

function Found({
  container,
  all,
}: {
  readonly container: ContainerState;
  readonly all: ContainerCandidates;
}) {
  const { state } = useShell();
  const props = { container, all };
  const shown = bySchemes(all);
  const others = container.answers.filter(({ body }) => shown.every(([scheme]) => scheme !== body.scheme));
  return (
    <>
      <Summary {...props} />
      <Laws />
      {shown.map(([scheme, candidates]) => (
        <SchemePart key={scheme} {...props} scheme={scheme} candidates={candidates} />
      ))}
      {others.length > 0 && (
        <Part rule title={w.besides} width="edge">
          <Rows label={w.besides}>
            {others.map((answer) => (
              <GivenRow
                key={`${answer.body.scheme} ${answer.body.code}`}
                container={container}
                answer={answer}
              />
            ))}
          </Rows>
        </Part>
      )}
      <NotDeterminedPart {...props} />
      <DilutionPart laws={lawsOf(state.value)} />
    </>
  );
}

function OfContainer({ container }: { readonly container: ContainerState }) {
  const { containerId, code } = container.body;
  const all = useCandidates(container);
  return (
    <Frame
      title={w.title(unbroken(code))}
      second={w.second}
      ways={[{ label: words.back, href: `#/containers/${containerId}` }]}
      actions={<Button href={`#/${candidatesPath(containerId)}/another`}>{w.anotherDoor}</Button>}
    >
      {all === undefined ? (
        <Part>
          <p role="status">{w.workingOut}</p>
        </Part>
      ) : typeof all === 'string' ? (
        <NoRule container={container} why={all} />
      ) : (
        <Found container={container} all={all} />
      )}
      <Part rule width="edge">
        <Rows>
          <Row
            title={w.historyDoor}
            second={w.entryDoorSecond}
            href={`#/containers/${containerId}/history`}
          />
        </Rows>
      </Part>
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function CandidatesScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  return container ? (
    <OfContainer container={container} />
  ) : (
    <Frame place="containers" title={containerWords.gone} />
  );
}
