/** What leaves together: containers to tick, one by one or several at once. */
import { useState } from 'preact/hooks';
import type { ContainerState } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { Tick } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import type { VesselDrawing } from '../../ui/vessel';
import { contentsTitle, heldText } from '../amounts';
import { Fault } from '../fault';
import { Frame } from '../frame';
import record from '../record/record.module.css';
import { useShell } from '../shell';
import { useOneByOne } from '../treatment/use-worked-out';
import { vesselDrawing } from '../vessel-drawing';
import { words } from '../words';
import { SmallVessel } from './container-check';
import styles from './papers.module.css';
import { chosenSet, setPath } from './set-address';
import { leavingIds, useSet } from './set-draft';
import { setWords as w } from './set-words';

type ChoiceProps = {
  readonly container: ContainerState;
  readonly drawing: VesselDrawing | undefined;
  readonly chosen: boolean;
  readonly onChoose: (chosen: boolean) => void;
};

function Choice({ container, drawing, chosen, onChoose }: ChoiceProps) {
  const { state, sign } = useShell();
  const { body, holds, leavingSince, goneSince } = container;
  const what = w.what(contentsTitle(state.value, body.containerId), heldText(holds, sign.value));
  const aside = leavingSince !== null && goneSince === null;
  return (
    <li class={styles.choice}>
      <SmallVessel drawing={drawing} />
      <Tick
        label={unbroken(body.code)}
        second={aside ? w.what(what, w.setAside) : what}
        checked={chosen}
        onChange={onChoose}
      />
    </li>
  );
}

const idOf = ({ body }: ContainerState): string => body.containerId;

export function ChooseSet() {
  const { state, go } = useShell();
  const { form, wanted } = useSet(chosenSet);
  const [fault, setFault] = useState<string | null>(null);
  const all = [...state.value.containers.values()];
  const here = all.filter(
    ({ goneSince, contents, doubtfulSince }) =>
      goneSince === null && (contents.length > 0 || doubtfulSince !== null),
  );
  const gone = all.filter(({ goneSince, handOverId }) => goneSince !== null || handOverId !== null);
  const leaving = leavingIds(state.value);
  const drawings = useOneByOne(
    [...here, ...gone],
    (container) => vesselDrawing(state.value, container),
    state.value,
  );
  const chosen = wanted.containerIds;
  const choose = (ids: readonly string[]): void => {
    setFault(null);
    form.change({ chosen: [...ids] });
  };
  const check = (): void => (chosen.length === 0 ? setFault(w.chooseOne) : go(setPath(chosenSet)));
  const choices = (containers: readonly ContainerState[]) => (
    <ul class={styles.choices}>
      {containers.map((container) => {
        const id = idOf(container);
        return (
          <Choice
            key={id}
            container={container}
            drawing={drawings.get(container)}
            chosen={chosen.includes(id)}
            onChoose={(ticked) => choose(ticked ? [...chosen, id] : chosen.filter((one) => one !== id))}
          />
        );
      })}
    </ul>
  );
  return (
    <Frame
      title={w.title}
      second={w.chooseSecond}
      ways={[{ label: words.back, href: '#/papers' }]}
      actions={
        <>
          <Fault words={fault} />
          <Button look="primary" voice="serif" second={w.checkSecond} onTap={check}>
            {chosen.length === 0 ? w.checkNone : w.check(chosen.length)}
          </Button>
        </>
      }
    >
      {here.length === 0 && (
        <Part>
          <p>{w.noContainers}</p>
        </Part>
      )}
      {here.length > 1 && (
        <Part>
          <section aria-label={w.quick}>
            <Buttons side>
              {leaving.length > 0 && (
                <Button centred onTap={() => choose(leaving)}>
                  {w.allLeaving(leaving.length)}
                </Button>
              )}
              <Button centred onTap={() => choose(here.map(idOf))}>
                {w.all(here.length)}
              </Button>
              <Button centred onTap={() => choose([])}>
                {w.none}
              </Button>
            </Buttons>
          </section>
        </Part>
      )}
      {choices(here)}
      {gone.length > 0 && (
        <Part>
          <details class={record.fold}>
            <summary>
              <span>{w.alreadyGone(gone.length)}</span>
            </summary>
            {choices(gone)}
          </details>
        </Part>
      )}
    </Frame>
  );
}
