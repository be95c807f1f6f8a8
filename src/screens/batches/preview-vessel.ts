/** The vessel a liquid is about to go into, drawn as it would be. */
import type { Liquor } from '../../chemistry/liquor';
import { tint } from '../../chemistry/tint';
import { isNothing } from '../../ledger/amounts';
import { fillLimitPercent } from '../../ledger/fill';
import type { State } from '../../ledger/state';
import { inUnit } from '../../quantities/quantity';
import type { VesselDrawing } from '../../ui/vessel';
import { readCapacity, type VesselDraft } from '../containers/vessel-form';
import { vesselDrawing } from '../vessel-drawing';
import { chosenContainer, type IntoDraft } from './into-container';

/** Drawn until a capacity can be read. */
const usualCapacityL = 5;

function described(state: State, draft: VesselDraft): VesselDrawing {
  const capacity = readCapacity(draft);
  return {
    family: draft.vessel === 'drum' ? 'tub' : draft.vessel,
    capacityL: capacity.state === 'written' ? inUnit(capacity.written, 'L').toNumber() : usualCapacityL,
    volumeL: 0,
    tint: 'not-computed',
    cap: draft.cap === 'tight' || draft.cap === 'lid' ? 'tight' : 'vented',
    limitShare: Number(fillLimitPercent(state).percent) / 100,
  };
}

/** Tinted by the liquor alone, so only where nothing else is in it. */
function tintOf(liquor: Liquor): string {
  const perLitre = (metal: 'Cu' | 'Ni') => liquor.metals.get(metal)?.best.perLitre.value.toNumber();
  const [copper, nickel] = [perLitre('Cu'), perLitre('Ni')];
  return copper === undefined || nickel === undefined ? 'not-computed' : tint(copper, nickel);
}

/** @param liquor null until it has a volume @returns without a level where nobody knows what is in the container */
export function previewVessel(state: State, into: IntoDraft, liquor: Liquor | null): VesselDrawing {
  const container = chosenContainer(state, into);
  const before = container ? vesselDrawing(state, container) : described(state, into.vessel);
  const alone = container === undefined || isNothing(container.holds);
  const added = liquor?.volume.value.toNumber() ?? 0;
  return {
    ...before,
    ...(before.volumeL === undefined ? {} : { volumeL: before.volumeL + added }),
    tint: alone && liquor && before.volumeL !== undefined ? tintOf(liquor) : before.tint,
  };
}
