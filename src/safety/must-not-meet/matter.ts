/** Whatever can meet something: a kind of waste, a thing from the shelf, what a container is made of. */
import { type Material, reactivity, type Trait } from '../../reference/reactivity-tables';
import { bases } from '../../reference/tables';
import { StreamKind } from '../stream-kind';
import type { AcidPercent } from './acid-percent';

/** A kind of waste, or the name of a thing or a material in reference/reactivity.json. */
export type ThingId = string;

export type Matter = {
  readonly thing: ThingId;
  /** What else is known to be in it. */
  readonly also?: readonly Trait[];
  /** Free nitric acid; absent where it is not determined. */
  readonly acid?: AcidPercent;
};

type Sided = {
  readonly groups: readonly number[];
  readonly traits: readonly Trait[];
};

const { wastes, things, materials } = reactivity;

const sided: ReadonlyMap<ThingId, Sided> = new Map<ThingId, Sided>([
  ...Object.entries(wastes),
  ...Object.entries(things),
  ...Object.entries(materials),
]);

/** Every name, wastes first, then the shelf, then materials. */
export const thingIds: readonly ThingId[] = [...sided.keys()];

export const isWaste = (thing: ThingId): thing is StreamKind => StreamKind.safeParse(thing).success;

/** What sort of thing it is, for lists to pick from. */
export const sortOf = (thing: ThingId) =>
  thing in wastes ? 'waste' : (things[thing]?.sort ?? ('material' as const));

/** What a container is made of; undefined for anything else. */
export const materialOf = (thing: ThingId): Material | undefined => materials[thing];

/** Where a waste belongs; undefined for what is no waste. */
export const goesWith = (thing: ThingId) => wastes[thing]?.goes;

/** The name of a thing that is no waste: kinds of waste have their names in the screens. */
export const nameOfThing = (thing: ThingId): string | undefined =>
  things[thing]?.name ??
  materials[thing]?.name ??
  (bases as Readonly<Record<string, { name: string }>>)[thing]?.name;

export const groupsOf = ({ thing }: Matter): readonly number[] => sided.get(thing)?.groups ?? [];

export const traitsOf = ({ thing, also = [] }: Matter): readonly Trait[] => [
  ...(sided.get(thing)?.traits ?? []),
  ...also,
];

export const hasAny = (traits: readonly Trait[], wanted: readonly Trait[]): boolean =>
  wanted.some((trait) => traits.includes(trait));

/** Traits of a liquor that it has only while it stands free, not as what wets a solid. */
const ofFreeLiquor: readonly Trait[] = ['nitrate', 'strong-acid', 'to-be-limed', 'water'];

/** What a wet solid takes over from the liquor that it holds. */
export const wettedBy = (liquor: StreamKind): readonly Trait[] =>
  traitsOf({ thing: liquor }).filter((trait) => !ofFreeLiquor.includes(trait));

/** Words apart by one space, whatever stood between them: ' stainless steel pot '. */
const spaced = (text: string): string =>
  ` ${text
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()} `;

/**
 * The material that a person's words mean.
 * @returns undefined where they name none that is known: then nothing is determined of it
 * @example materialNamed('stainless steel drum') // 'stainless-steel'
 */
export function materialNamed(text: string): ThingId | undefined {
  const said = spaced(text);
  return Object.entries(materials).find(([, { words }]) =>
    words.some((word) => said.includes(spaced(word))),
  )?.[0];
}
