/** Wastes and containers as sides of a meeting: what they are, what else is in them, how strong their acid is. */
import { liquorFrom } from '../chemistry/liquor';
import { acidPerLitre, loadOf } from '../chemistry/load';
import type { Figure } from '../quantities/figure';
import { type AcidPercent, acidPercent } from '../safety/must-not-meet/acid-percent';
import { type Matter, materialNamed, wettedBy } from '../safety/must-not-meet/matter';
import type { StreamKind } from '../safety/stream-kind';
import { containerFigures } from './container-figures';
import { writtenLiquor } from './container-load';
import type { ContainerOpened } from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type { ContentsPart, State } from './state';
import { kindsOfParts, namedKind } from './waste-kinds';

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

const matterOf = (
  thing: StreamKind,
  acid: AcidPercent | undefined,
  mother: StreamKind | undefined,
): Matter => ({
  thing,
  ...(acid ? { acid } : {}),
  ...(mother ? { also: wettedBy(mother) } : {}),
});

/** A waste as it is or would be logged. */
export function wasteSide(state: State, waste: Waste): readonly Matter[] {
  return [matterOf(waste.stream, acidOf(waste), motherOf(state, waste))];
}

export function streamSide(state: State, streamId: string): readonly Matter[] {
  const stream = state.streams.get(streamId)?.body;
  return stream ? wasteSide(state, stream) : [];
}

const percents = new WeakMap<Figure<'mol/L'>, AcidPercent>();

/** The strength of the free acid where every liquor tells of it; made once for a figure. */
function acidIn(state: State, containerId: string): AcidPercent | undefined {
  const figures = containerFigures(state, containerId);
  const figure = figures.acid.openIn.length === 0 ? figures.acidPerLitre : undefined;
  if (!figure) return undefined;
  const percent = percents.get(figure) ?? acidPercent(figure);
  percents.set(figure, percent);
  return percent;
}

/** A part of contents: what it is called now, and what it still counts as. */
function partSide(state: State, part: ContentsPart, acid: AcidPercent | undefined): readonly Matter[] {
  const stream = part.streamId === null ? undefined : state.streams.get(part.streamId)?.body;
  if (!stream) return [];
  const mother = motherOf(state, stream);
  const own = [stream.stream, namedKind(stream.stream, part)];
  return kindsOfParts(state, [part])
    .kinds.filter((kind) => own.includes(kind))
    .map((thing) => matterOf(thing, acid, mother));
}

/** What a container holds. What no logged waste accounts for is not in it: ask `wasteKinds` for that. */
export function contentsSide(state: State, containerId: string): readonly Matter[] {
  const contents = state.containers.get(containerId)?.contents ?? [];
  if (contents.length === 0) return [];
  const acid = acidIn(state, containerId);
  const all = contents.flatMap((part) => partSide(state, part, acid));
  return [...new Map(all.map((matter) => [JSON.stringify(matter), matter])).values()];
}

/** What a container is made of; nothing where its words name no material that is known. */
export function vesselSide({
  material,
  otherMaterial = '',
}: Pick<ContainerOpened, 'material' | 'otherMaterial'>): readonly Matter[] {
  const thing = materialNamed(material === 'other' ? otherMaterial : material);
  return thing === undefined ? [] : [{ thing }];
}
