/** A container as a drawn vessel: true fill, tinted by its copper and nickel where that can be worked out. */
import { tint } from '../chemistry/tint';
import { asHeld, plus } from '../ledger/amounts';
import { type ContainerFigures, containerFigures } from '../ledger/container-figures';
import { capacityOf, fillLimitPercent, takesUp } from '../ledger/fill';
import type { ContainerState, Held, State } from '../ledger/state';
import { seenIn } from '../ledger/whole-of';
import type { VesselDrawing } from '../ui/vessel';

/** Wastes whose colour copper and nickel do not make: ammine blue, mud, paper. */
const colourOfItsOwn = new Set([
  'ammonia-test-waste',
  'chloride-test-waste',
  'treated-slurry',
  'hydroxide-sludge',
]);

function tintOf(state: State, container: ContainerState, figures: ContainerFigures): string {
  if (container.doubtfulSince !== null || figures.contents.unaccounted) return 'unknown';
  const kinds = container.contents.map(
    ({ streamId }) => streamId && state.streams.get(streamId)?.body.stream,
  );
  const metal = (symbol: string) => figures.metals.find((m) => m.metal === symbol);
  const [copper, nickel] = [metal('Cu'), metal('Ni')];
  const coloured = ['Fe', 'Pd'].some((symbol) => metal(symbol)?.all);
  const told = [copper, nickel].every((m) => m?.perLitre && m.openIn.length === 0);
  if (!told || !copper?.perLitre || !nickel?.perLitre || coloured) return 'not-computed';
  if (container.contents.some(({ treatedBy }) => treatedBy.length > 0)) return 'not-computed';
  if (kinds.some((kind) => kind && colourOfItsOwn.has(kind))) return 'not-computed';
  return tint(copper.perLitre.value.toNumber(), nickel.perLitre.value.toNumber());
}

const family = (container: ContainerState): VesselDrawing['family'] =>
  container.body.vessel === 'drum' ? 'tub' : container.body.vessel;

/** As it was read last, or by the record, as a share of the capacity: how high it stands can be known where its contents are not. */
function lastLevel(container: ContainerState): number | undefined {
  const seen = seenIn(container);
  if (seen.length === 0) return undefined;
  return takesUp(seen.map(asHeld).reduce(plus)).div(capacityOf(container)).toNumber();
}

/** Without its colour, which takes the chemistry of all that is in it. */
export function vesselOutline(state: State, container: ContainerState): VesselDrawing {
  const capacityL = capacityOf(container).toNumber();
  const roomL = takesUp(container.holds).toNumber();
  const solidsL = roomL - container.holds.volume.toNumber();
  const known = container.doubtfulSince === null;
  const read = lastLevel(container);
  return {
    family: family(container),
    capacityL,
    ...(known ? { volumeL: roomL } : read === undefined ? {} : { guessShare: read }),
    tint: known ? 'not-computed' : 'unknown',
    cap: container.body.cap === 'tight' || container.body.cap === 'lid' ? 'tight' : 'vented',
    code: container.body.code,
    ...(solidsL > 0 ? { solidsShare: Math.min(1, solidsL / capacityL) } : {}),
    limitShare: Number(fillLimitPercent(state).percent) / 100,
  };
}

/** @param figures given when they are worked out already */
export const vesselDrawing = (
  state: State,
  container: ContainerState,
  figures: ContainerFigures = containerFigures(state, container.body.containerId),
): VesselDrawing => ({ ...vesselOutline(state, container), tint: tintOf(state, container, figures) });

/** A waste that stands in no container by the record, in whatever it may stand in. */
export function unplacedDrawing({ volume, mass }: Held): VesselDrawing {
  const litres = volume.toNumber();
  const family = litres === 0 && !mass.isZero() ? 'tub' : litres > 2.5 ? 'jerrican' : 'bottle';
  const capacityL = Math.max(family === 'bottle' ? 1 : 5, litres * 1.25);
  return { family, capacityL, volumeL: litres, tint: 'not-computed', cap: 'vented' };
}
