/** Which containers of a load: all of those that can be meant, unless some are taken out. */
import { Tick, TickGroup } from '../../ui/choices';
import { contentsText } from '../containers/contents-text';
import { useShell } from '../shell';
import { codesOf } from './load';
import { handOverWords as w } from './words';

type Props = {
  readonly legend: string;
  readonly ids: readonly string[];
  readonly left: readonly string[];
  readonly onLeave: (left: string[]) => void;
  readonly tried: boolean;
};

/** @param left those that are not meant: what is new to the load is, until somebody says otherwise */
export function WhichOfLoad({ legend, ids, left, onLeave, tried }: Props) {
  const { state } = useShell();
  const none = ids.every((id) => left.includes(id));
  return (
    <TickGroup legend={legend} error={tried && none ? w.chooseOne : undefined}>
      {ids.map((id) => {
        const container = state.value.containers.get(id);
        return (
          <Tick
            key={id}
            label={codesOf(state.value, [id])}
            second={container && contentsText(state.value, container)}
            checked={!left.includes(id)}
            onChange={(meant) => onLeave(meant ? left.filter((one) => one !== id) : [...left, id])}
          />
        );
      })}
    </TickGroup>
  );
}
