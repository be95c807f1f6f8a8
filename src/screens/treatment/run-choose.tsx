/** Which container is treated: asked where a clearance was given before anybody said. */

import { runningTreatment } from '../../ledger/treatment';
import { treatable } from '../../ledger/treatment-begin';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { contentsTitle, heldText } from '../amounts';
import { containerWords } from '../containers/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { runWords as w } from './run-words';

export function ChooseTreated() {
  const { state, sign } = useShell();
  const all = treatable(state.value);
  return (
    <Frame title={w.chooseTitle} second={w.chooseSecond} ways={[{ label: words.back, href: '#/today' }]}>
      <Part width="edge">
        <Rows>
          {all.length === 0 && <Row title={w.chooseNone} href="#/containers" />}
          {all.map(({ body, holds }) => {
            const running = runningTreatment(state.value, body.containerId);
            const to = running ? running.body.treatmentId : `begin/${body.containerId}`;
            return (
              <Row
                key={body.containerId}
                title={containerWords.container(unbroken(body.code))}
                second={running ? w.chooseRuns : contentsTitle(state.value, body.containerId)}
                figure={heldText(holds, sign.value)}
                href={`#/treatment/${to}`}
              />
            );
          })}
        </Rows>
      </Part>
    </Frame>
  );
}
