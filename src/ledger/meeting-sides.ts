/** Wastes and containers as sides of a meeting: what they are, what else is in them, how strong their acid is. */
import { liquorFrom } from '../chemistry/liquor';
import { acidPerLitre, loadOf } from '../chemistry/load';
import { type AcidPercent, acidPercent } from '../safety/must-not-meet/acid-percent';
import { type Matter, materialNamed, wettedBy } from '../safety/must-not-meet/matter';
import type { StreamKind } from '../safety/stream-kind';
import { containerFigures } from './container-figures';
import { writtenLiquor } from './container-load';
import type { ContainerOpened } from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type { State } from './state';
import { wasteKinds } from './waste-kinds';

export type Waste = Pick<StreamLogged, 'stream' | 'liquid' | 'solid'>;

function acidOf({ liquid }: Waste): AcidPercent | undefined {
  const figure = liquid && acidPerLitre(loadOf(liquorFrom(writtenLiquor('waste', liquid)), 'waste'));
  return figure && acidPercent(figure);
}

/** The liquor that a wet solid still holds, as far as somebody told. */
function motherOf(state: State, { solid }: Waste): StreamKind | undefined {
  const liquor = solid?.holds.liquor;
  return liquor === undefined ? undefined : state.streams.get(liquor)?.body.stream;
}

/** A waste as it is or would be logged. */
export function wasteSide(state: State, waste: Waste): readonly Matter[] {
  const [acid, mother] = [acidOf(waste), motherOf(state, waste)];
  return [{ thing: waste.stream, ...(acid ? { acid } : {}), ...(mother ? { also: wettedBy(mother) } : {}) }];
}

export function streamSide(state: State, streamId: string): readonly Matter[] {
  const stream = state.streams.get(streamId)?.body;
  return stream ? wasteSide(state, stream) : [];
}

/** The strength of the free acid where every liquor tells of it. */
function acidIn(state: State, containerId: string): AcidPercent | undefined {
  const { acid, acidPerLitre: figure } = containerFigures(state, containerId);
  return figure && acid.openIn.length === 0 ? acidPercent(figure) : undefined;
}

/** What a container holds. What no logged waste accounts for is not in it: ask `wasteKinds` for that. */
export function contentsSide(state: State, containerId: string): readonly Matter[] {
  const contents = state.containers.get(containerId)?.contents ?? [];
  if (contents.length === 0) return [];
  const acid = acidIn(state, containerId);
  const streams = new Map(
    contents.flatMap(({ streamId }) => {
      const stream = streamId === null ? undefined : state.streams.get(streamId)?.body;
      return stream ? [[stream.streamId, stream] as const] : [];
    }),
  );
  const mothers = [...streams.values()].flatMap((stream) => {
    const mother = motherOf(state, stream);
    return mother ? [{ thing: stream.stream, also: wettedBy(mother) }] : [];
  });
  const wet = new Set([...streams.values()].flatMap((stream) => motherOf(state, stream) ?? []));
  const free = new Set([...streams.values()].map(({ stream }) => stream));
  // A liquor that is only held by a wet solid is not there as a liquor.
  const kinds = wasteKinds(state, containerId).kinds.filter((kind) => free.has(kind) || !wet.has(kind));
  return [...kinds.map((thing): Matter => ({ thing, ...(acid ? { acid } : {}) })), ...mothers];
}

/** What a container is made of; nothing where its words name no material that is known. */
export function vesselSide({
  material,
  otherMaterial = '',
}: Pick<ContainerOpened, 'material' | 'otherMaterial'>): readonly Matter[] {
  const thing = materialNamed(material === 'other' ? otherMaterial : material);
  return thing === undefined ? [] : [{ thing }];
}
