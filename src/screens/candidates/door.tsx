/** The way to a container's candidates: there at once, with what they come to once that is worked out. */
import { useEffect, useState } from 'preact/hooks';
import type { ContainerState, State } from '../../ledger/state';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { candidatesPath } from './addresses';
import type { DoorLine } from './door-line';
import { candidateWords as w } from './words';

type Props = { readonly state: State; readonly container: ContainerState };

/** Undefined until the page has been drawn, the code is there and it is worked out. */
function useLine({ state, container }: Props): DoorLine | undefined {
  const [line, setLine] = useState<DoorLine>();
  useEffect(() => {
    let wanted = true;
    const timer = setTimeout(() => {
      import('./door-line').then(
        ({ doorLine }) => wanted && setLine(doorLine(state, container)),
        // A first visit that lost the network: the door is there all the same.
        (cause) => console.warn('what the laws make of it is not on the phone yet', cause),
      );
    }, 0);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [state]);
  return line;
}

export function CandidatesDoor(props: Props) {
  const line = useLine(props);
  return (
    <Part rule width="edge">
      <Rows>
        <Row
          mark={<Mark kind={line?.mark ?? 'candidate'} />}
          title={w.door}
          second={line?.text ?? w.doorSecond}
          href={`#/${candidatesPath(props.container.body.containerId)}`}
        />
      </Rows>
    </Part>
  );
}
