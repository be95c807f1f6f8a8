/** One container: the drawing, what is in it, what it takes to neutralise it, and what went in and out. */

import { containerFigures } from '../../ledger/container-figures';
import { lifeOf, mayBeDone } from '../../ledger/container-life';
import { reportedElements } from '../../ledger/lab-levels';
import type { ContainerState, State } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Met } from '../apart/met';
import { apartWords } from '../apart/words';
import { CandidatesDoor } from '../candidates/door';
import { ClosedFindings } from '../findings/rows';
import { Frame } from '../frame';
import { LoadDoor } from '../hand-overs/load-door';
import { Reported } from '../lab-report/reported';
import { PhotoStrip } from '../photos/photo-strip';
import { useShell } from '../shell';
import { words } from '../words';
import { BaseRows } from './base-rows';
import { ContainerClock, StorageAside } from './container-clock';
import { ContainerDrawing } from './container-drawing';
import { ContainerFlags } from './container-flags';
import { ContainerLevels } from './container-levels';
import { ContainerMovements } from './container-movements';
import { Never, Residues, Volumes } from './container-parts';
import { ContainerTreatment, TreatmentRunning } from './container-treatment';
import { contentsText } from './contents-text';
import { doingHref } from './doing';
import { Determined, LifeState, TestAndAsk } from './life-state';
import { doingWords, lifeWords } from './life-words';
import { LoadTable, NotDetermined } from './load-table';
import { containerWords as w } from './words';

/** What is likeliest now, and the way to all the rest. */
function Thumb({ state, container }: { readonly state: State; readonly container: ContainerState }) {
  const { containerId } = container.body;
  const [first, second] = mayBeDone(state, container);
  return (
    <Buttons side>
      {first && (
        <Button look="primary" centred href={doingHref(container, first)}>
          {doingWords[first].short}
        </Button>
      )}
      {second && (
        <Button centred href={doingHref(container, second)}>
          {doingWords[second].short}
        </Button>
      )}
      <Button look="plain" centred href={`#/containers/${containerId}/more`}>
        {w.more}
      </Button>
    </Buttons>
  );
}

export function ContainerScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  if (!container)
    return (
      <Frame place="containers" title={w.title}>
        <Part>
          <p>{w.gone}</p>
        </Part>
      </Frame>
    );
  const { containerId, code } = container.body;
  const figures = containerFigures(state.value, containerId);
  const here = container.goneSince === null;
  const props = { state: state.value, container, figures };
  return (
    <Frame
      place="containers"
      title={w.container(unbroken(code))}
      second={
        lifeOf(state.value, container).is === 'not-determined'
          ? undefined
          : contentsText(state.value, container)
      }
      aside={<StorageAside {...props} />}
      actions={<Thumb {...props} />}
    >
      <Met {...props} />
      <LifeState {...props} />
      <LoadDoor {...props} />
      <Part>
        <ContainerDrawing {...props} />
      </Part>
      <TreatmentRunning {...props} />
      <Determined {...props} />
      <TestAndAsk {...props} />
      <ContainerFlags {...props} />
      <CandidatesDoor {...props} />
      <Never {...props} />
      <ContainerClock {...props} />
      <Part rule width="edge">
        <Rows>
          <Row
            title={apartWords.lookUp}
            second={apartWords.lookUpSecond}
            href={`#/containers/${containerId}/meets`}
          />
        </Rows>
      </Part>
      {figures.load && (
        <>
          <Part rule>
            <LoadTable figures={figures} containerId={containerId} />
          </Part>
          <Part width="edge">
            <NotDetermined figures={figures} reported={reportedElements(container.reports)} />
            <Volumes {...props} />
          </Part>
        </>
      )}
      <Residues {...props} />
      <Reported {...props} />
      {here && figures.load && <BaseRows {...props} />}
      {here && <ContainerTreatment {...props} />}
      <ContainerMovements {...props} />
      <ContainerLevels {...props} />
      <ClosedFindings containerId={containerId} />
      <Part rule width="edge">
        <Rows>
          <Row
            title={lifeWords.history}
            second={lifeWords.historySecond}
            href={`#/containers/${containerId}/history`}
          />
        </Rows>
      </Part>
      {container.body.photos && (
        <Part>
          <PhotoStrip photos={container.body.photos} />
        </Part>
      )}
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
