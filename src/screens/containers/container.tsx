/** One container: the drawing, what is in it, what it takes to neutralise it, and what went in and out. */

import { containerFigures } from '../../ledger/container-figures';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { contentsTitle } from '../amounts';
import { Met } from '../apart/met';
import { apartWords } from '../apart/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { BaseRows } from './base-rows';
import { ContainerDrawing, StorageAside } from './container-drawing';
import { ContainerMovements } from './container-movements';
import { Never, Residues, Volumes } from './container-parts';
import { ContainerTreatment, TreatmentRunning } from './container-treatment';
import { LoadTable, NotDetermined } from './load-table';
import { containerWords as w } from './words';

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
  const props = { state: state.value, container, figures };
  return (
    <Frame
      place="containers"
      title={w.container(unbroken(code))}
      second={contentsTitle(state.value, containerId) || w.empty}
      aside={<StorageAside {...props} />}
      actions={
        <Buttons side>
          <Button look="primary" centred href={`#/containers/${containerId}/in`}>
            {w.putIn}
          </Button>
          <Button centred href={`#/containers/${containerId}/out`}>
            {w.takeOut}
          </Button>
          <Button look="plain" centred href={`#/containers/${containerId}/more`}>
            {w.more}
          </Button>
        </Buttons>
      }
    >
      <Met {...props} />
      <Part>
        <ContainerDrawing {...props} />
      </Part>
      <TreatmentRunning {...props} />
      {container.doubtfulSince !== null && <Notice mark="unknown">{w.doubtful}</Notice>}
      {figures.contents.unaccounted && <Notice mark="unknown">{w.unaccounted}</Notice>}
      <Never {...props} />
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
            <NotDetermined figures={figures} />
            <Volumes {...props} />
          </Part>
        </>
      )}
      <Residues {...props} />
      {figures.load && <BaseRows {...props} />}
      <ContainerTreatment {...props} />
      <ContainerMovements {...props} />
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
