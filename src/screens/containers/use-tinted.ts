/** The drawing of a container in a long list: at once in its outline, in its colour once the page rests. */
import { useEffect, useState } from 'preact/hooks';
import type { ContainerState, State } from '../../ledger/state';
import { idle } from '../../ui/idle';
import type { VesselDrawing } from '../../ui/vessel';
import { vesselDrawing, vesselOutline } from '../vessel-drawing';

/** Colours as they were worked out last, to be drawn until they are again. */
const lastTints = new Map<string, VesselDrawing['tint']>();

export function useTinted(state: State, container: ContainerState): VesselDrawing {
  const { containerId } = container.body;
  const outline = vesselOutline(state, container);
  const [tint, setTint] = useState(lastTints.get(containerId) ?? outline.tint);
  useEffect(
    () =>
      idle(() => {
        const worked = vesselDrawing(state, container).tint;
        lastTints.set(containerId, worked);
        setTint(worked);
      }),
    [state, container, containerId],
  );
  // A doubt shows at once, whatever the colour was.
  return outline.tint === 'unknown' ? outline : { ...outline, tint };
}
