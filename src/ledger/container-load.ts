/**
 * What a container holds, as chemistry: every liquor with its evidence, what residues hold, taken through each movement
 * in order. Names of liquors are stream ids; the screens know what to call them.
 */
import { densityOf } from '../chemistry/density';
import { weighed } from '../chemistry/evidence';
import { type Liquor, liquorFrom, volumeRead, type WrittenLiquor } from '../chemistry/liquor';
import { type Load, loadAfter, loadOf, type Movement, together } from '../chemistry/load';
import { type HeldLiquor, heldLiquor, moistureFrom } from '../chemistry/residue';
import { minus, over, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { isVolume } from './amounts';
import type { Amount } from './entries/containers';
import type { LiquidPart, SolidPart } from './entries/streams';
import type { ContainerMovement, State } from './state';

/** A wet solid with the liquor it still holds; `held` is absent when nobody said which liquor that is. */
export type Residue = {
  readonly streamId: string;
  readonly wetMass: Figure<'g'>;
  readonly held?: HeldLiquor;
};

export type Contents = {
  /** Liquid that stands free. */
  readonly liquid?: Load;
  readonly residues: readonly Residue[];
  /** Something came in that no logged stream accounts for, so nothing below is the whole. */
  readonly unaccounted: boolean;
};

const nothing: Contents = { residues: [], unaccounted: false };

const originOf = (streamId: string): string => `stream/${streamId}`;

/** A logged liquid as chemistry reads it. */
export const writtenLiquor = (streamId: string, liquid: LiquidPart): WrittenLiquor => ({
  origin: originOf(streamId),
  volume: liquid.volume,
  volumeSpread: liquid.volumeSpread,
  density: liquid.density,
  findings: liquid.findings,
  freeAcid: liquid.freeAcid,
});

/** The liquor of a stream as it was logged; undefined when the stream is not one. */
export function liquorOf(state: State, streamId: string): Liquor | undefined {
  const liquid = state.streams.get(streamId)?.body.liquid;
  return liquid && liquorFrom(writtenLiquor(streamId, liquid));
}

/** A wet solid as it was logged, with the liquor it holds. */
export function residueFrom(state: State, streamId: string, solid: SolidPart): Residue {
  const origin = originOf(streamId);
  const wetMass = weighed(solid.wetMass, `${origin}/wet-mass`, 'Residue, wet', solid.massSpread);
  const motherId = solid.holds.liquor;
  const mother = motherId === 'not-determined' ? undefined : liquorOf(state, motherId);
  if (!mother) return { streamId, wetMass };
  const moisture = moistureFrom(solid.moisture, `${origin}/moisture`);
  return { streamId, wetMass, held: heldLiquor({ wetMass, moisture }, loadOf(mother, motherId)) };
}

const isSame = (a: Amount, b: { readonly value: string; readonly unit: string }): boolean =>
  a.value === b.value && a.unit === b.unit;

const grams = (amount: Amount, entryId: string, sentence: string): Figure<'g'> =>
  weighed(amount as Extract<Amount, { unit: 'g' | 'kg' | 'mg' | 'lb' }>, `entry/${entryId}/mass`, sentence);

/** An amount of a liquid as a volume: as read, or from its mass and density. */
function asVolume(amount: Amount, of: Load, entryId: string, sentence: string): Figure<'L'> {
  if (isVolume(amount)) return volumeRead(amount, `entry/${entryId}/volume`, sentence);
  return workedOut({ sentence, unit: 'L', formula: over(grams(amount, entryId, sentence), densityOf(of)) });
}

/** The same residue with `share` of everything. */
const shareOf = (residue: Residue, share: Figure<'1'>): Residue => ({
  streamId: residue.streamId,
  wetMass: workedOut({
    sentence: 'Residue, wet, the part of it',
    unit: 'g',
    formula: times(residue.wetMass, share),
  }),
  ...(residue.held ? { held: heldShare(residue.held, share) } : {}),
});

function heldShare(held: HeldLiquor, share: Figure<'1'>): HeldLiquor {
  const volume = workedOut({
    sentence: 'Liquor held in the part',
    unit: 'L',
    formula: times(held.volume, share),
  });
  const load = loadAfter([{ kind: 'in-mixed', load: held.load, part: volume }]);
  return { volume, load: load ?? held.load };
}

const pouredIn = (contents: Contents, movement: Movement): Contents => {
  const before: Movement[] = contents.liquid ? [{ kind: 'in-mixed', load: contents.liquid }] : [];
  const liquid = loadAfter([...before, movement]);
  const { liquid: _, ...rest } = contents;
  return liquid ? { ...rest, liquid } : rest;
};

function placed(state: State, contents: Contents, movement: ContainerMovement): Contents {
  const { streamId, amount, entryId } = movement;
  const stream = streamId === null ? undefined : state.streams.get(streamId)?.body;
  if (!stream || streamId === null) return { ...contents, unaccounted: true };
  let after = contents;
  if (stream.liquid && (isVolume(amount) || !stream.solid)) {
    const liquor = liquorFrom(writtenLiquor(streamId, stream.liquid));
    const whole = isSame(amount, stream.liquid.volume);
    const part = whole
      ? {}
      : { part: asVolume(amount, loadOf(liquor, streamId), entryId, 'Volume poured in') };
    after = pouredIn(after, { kind: 'in', name: streamId, liquor, ...part });
  }
  if (stream.solid && !isVolume(amount)) {
    const residue = residueFrom(state, streamId, stream.solid);
    const share = workedOut({
      sentence: 'Share of the residue',
      unit: '1',
      formula: over(grams(amount, entryId, 'Residue put in'), residue.wetMass),
    });
    after = {
      ...after,
      residues: [...after.residues, isSame(amount, stream.solid.wetMass) ? residue : shareOf(residue, share)],
    };
  }
  return after;
}

/** What goes out takes liquid when it was measured as a volume, else residue in proportion. */
function takenOut(contents: Contents, { amount, entryId }: ContainerMovement): Contents {
  if (contents.residues.length > 0 && !isVolume(amount)) {
    const [first, ...more] = contents.residues.map((r) => r.wetMass);
    if (!first) return contents;
    const all = workedOut({
      sentence: 'Residue in all',
      unit: 'g',
      formula: { op: 'sum', terms: [first, ...more].map((figure) => ({ op: 'figure', figure })) },
    });
    const stays = workedOut({
      sentence: 'Share that stays',
      unit: '1',
      formula: over(minus(all, grams(amount, entryId, 'Residue taken out')), all),
    });
    return {
      ...contents,
      residues: stays.value.lte(0) ? [] : contents.residues.map((r) => shareOf(r, stays)),
    };
  }
  const { liquid } = contents;
  if (!liquid) return contents;
  return pouredIn(contents, { kind: 'out', part: asVolume(amount, liquid, entryId, 'Volume taken out') });
}

/** What came over from another container, as that one stood just before. */
function carriedOver(state: State, contents: Contents, movement: ContainerMovement): Contents {
  const { otherId, amount, entryId } = movement;
  const source = otherId === null ? nothing : contentsOf(state, otherId, entryId);
  if (!source.liquid || source.residues.length > 0 || source.unaccounted)
    return { ...contents, unaccounted: true };
  const part = asVolume(amount, source.liquid, entryId, 'Volume poured over');
  return pouredIn(contents, { kind: 'in-mixed', load: source.liquid, part });
}

/**
 * What a container holds by all its movements.
 * @param before an entry id: what it held just before that movement
 */
export function contentsOf(state: State, containerId: string, before?: string): Contents {
  const movements = state.containers.get(containerId)?.movements ?? [];
  const end = movements.findIndex(({ entryId }) => entryId === before);
  return movements.slice(0, end < 0 ? movements.length : end).reduce<Contents>((contents, movement) => {
    if (movement.way === 'out') return takenOut(contents, movement);
    return movement.purpose === 'placed'
      ? placed(state, contents, movement)
      : carriedOver(state, contents, movement);
  }, nothing);
}

/** Free liquid and held liquor together: what neutralising has to deal with; undefined when there is neither. */
export function wholeLoad({ liquid, residues }: Contents): Load | undefined {
  return [liquid, ...residues.map((r) => r.held?.load)]
    .filter((load) => load !== undefined)
    .reduce<Load | undefined>((sum, load) => (sum ? together(sum, load) : load), undefined);
}

/** Residues of which nobody said what liquor they hold: their part of the load is not in `wholeLoad`. */
export const silentResidues = ({ residues }: Contents): readonly string[] =>
  residues.filter(({ held }) => !held).map(({ streamId }) => streamId);
