/**
 * Contents as chemistry: every liquor with its evidence, what residues hold, and what each movement and each dose makes of
 * them. Names of liquors are stream ids, and treatment ids for what has been through a treatment; the screens know what to
 * call them.
 */
import { densityOf } from '../chemistry/density';
import { weighed } from '../chemistry/evidence';
import { type Liquor, liquorFrom, volumeRead, type WrittenLiquor } from '../chemistry/liquor';
import { type Load, loadAfter, loadOf, type Movement, together } from '../chemistry/load';
import { type HeldLiquor, heldLiquor, moistureFrom } from '../chemistry/residue';
import { measuredLoad, treatedLoad } from '../chemistry/treated-load';
import { minus, over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { StreamKind } from '../safety/stream-kind';
import { isVolume } from './amounts';
import type { Amount, StreamPlaced, WaterLost } from './entries/containers';
import type { LiquidPart, SolidPart, StreamLogged } from './entries/streams';
import type { PotRead } from './entries/treatments';
import type { State, StreamState } from './state';

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

export const nothing: Contents = { residues: [], unaccounted: false };

/** Names figures of something that has not happened. */
export const planned = 'planned';

const originOf = (streamId: string): string => `stream/${streamId}`;

/** A logged liquid as chemistry reads it. */
export const writtenLiquor = (
  streamId: string,
  liquid: LiquidPart,
  batchId: string | null = null,
): WrittenLiquor => ({
  origin: originOf(streamId),
  batch: batchId === null ? undefined : `batch/${batchId}`,
  volume: liquid.volume,
  volumeSpread: liquid.volumeSpread,
  // Nothing has a density of nothing: as where a weighed amount is placed, it counts as not measured.
  density: Number(liquid.density?.value) > 0 ? liquid.density : undefined,
  findings: liquid.findings,
  freeAcid: liquid.freeAcid,
});

/** Worked out once for what was written: it is asked for again at each place and for each state that it stands in. */
const liquors = new WeakMap<LiquidPart, Map<string, Liquor>>();

function liquorIn(streamId: string, liquid: LiquidPart, batchId: string | null): Liquor {
  const known = liquors.get(liquid) ?? new Map<string, Liquor>();
  liquors.set(liquid, known);
  const name = `${streamId} ${batchId}`;
  const liquor = known.get(name) ?? liquorFrom(writtenLiquor(streamId, liquid, batchId));
  known.set(name, liquor);
  return liquor;
}

/** The liquor of a stream as it was logged; undefined when the stream is not one. */
export function liquorOf(state: State, streamId: string): Liquor | undefined {
  const body = state.streams.get(streamId)?.body;
  return body?.liquid && liquorIn(streamId, body.liquid, body.batchId);
}

/** A wet solid as it was logged, with the liquor it holds. */
export function residueFrom(state: State, streamId: string, kind: StreamKind, solid: SolidPart): Residue {
  const origin = originOf(streamId);
  const wetMass = weighed(solid.wetMass, `${origin}/wet-mass`, 'Residue, wet', solid.massSpread);
  const motherId = solid.holds.liquor;
  const mother = motherId === 'not-determined' ? undefined : liquorOf(state, motherId);
  if (!mother) return { streamId, wetMass };
  const moisture = moistureFrom(solid.moisture, `${origin}/moisture`, kind);
  if (!moisture) return { streamId, wetMass };
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

export function placed(
  state: State,
  contents: Contents,
  entryId: string,
  { streamId, amount }: Pick<StreamPlaced, 'streamId' | 'amount'>,
): Contents {
  const stream = state.streams.get(streamId)?.body;
  return stream ? wastePutIn(state, contents, entryId, stream, amount) : { ...contents, unaccounted: true };
}

function wastePutIn(
  state: State,
  contents: Contents,
  entryId: string,
  stream: Omit<StreamLogged, 'kind' | 'v'>,
  amount: Amount,
): Contents {
  const { streamId } = stream;
  let after = contents;
  if (stream.liquid && (isVolume(amount) || !stream.solid)) {
    const liquor = liquorIn(streamId, stream.liquid, stream.batchId);
    const whole = isSame(amount, stream.liquid.volume);
    const part = whole
      ? {}
      : { part: asVolume(amount, loadOf(liquor, streamId), entryId, 'Volume poured in') };
    after = pouredIn(after, { kind: 'in', name: streamId, liquor, ...part });
  }
  if (stream.solid && !isVolume(amount)) {
    const residue = residueFrom(state, streamId, stream.stream, stream.solid);
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

export type Parted = { readonly stays: Contents; readonly taken: Contents };

/** Residues by mass: each gives the same share. */
function partedByMass(contents: Contents, amount: Amount, entryId: string): Parted {
  const { residues, ...rest } = contents;
  const all = workedOut({
    sentence: 'Residue in all',
    unit: 'g',
    formula: plus(...residues.map(({ wetMass }) => wetMass)),
  });
  const taken = over(grams(amount, entryId, 'Residue taken out'), all);
  const share = workedOut({ sentence: 'Share that goes', unit: '1', formula: taken });
  const left = workedOut({ sentence: 'Share that stays', unit: '1', formula: minus(1, taken) });
  return {
    stays: { ...rest, residues: left.value.lte(0) ? [] : residues.map((r) => shareOf(r, left)) },
    taken: { residues: residues.map((r) => shareOf(r, share)), unaccounted: contents.unaccounted },
  };
}

/**
 * What goes out: liquid when it was measured as a volume, residue in proportion when it was weighed. Neither has been
 * followed where liquid was weighed, since the ledger counts litres and grams apart.
 */
export function parted(contents: Contents, amount: Amount, entryId: string): Parted {
  const { liquid, residues, unaccounted } = contents;
  if (!isVolume(amount) && residues.length > 0) return partedByMass(contents, amount, entryId);
  if (!isVolume(amount) || !liquid)
    return { stays: { ...contents, unaccounted: true }, taken: { residues: [], unaccounted: true } };
  const part = volumeRead(amount, `entry/${entryId}/volume`, 'Volume taken out');
  const over = loadAfter([{ kind: 'in-mixed', load: liquid, part }]);
  return {
    stays: pouredIn(contents, { kind: 'out', part }),
    taken: { ...(over ? { liquid: over } : {}), residues: [], unaccounted },
  };
}

export const joined = (contents: Contents, coming: Contents): Contents => {
  const both = {
    ...contents,
    residues: [...contents.residues, ...coming.residues],
    unaccounted: contents.unaccounted || coming.unaccounted,
  };
  return coming.liquid ? pouredIn(both, { kind: 'in-mixed', load: coming.liquid }) : both;
};

/**
 * Less liquid with the same in it. Water goes off from what stands free; what a residue holds is taken to stay. Where no
 * liquid is left, what was dissolved lies dry in it, and nobody knows what that is by now.
 */
export function dried(contents: Contents, entryId: string, { amount, spread }: WaterLost): Contents {
  const { liquid, ...rest } = contents;
  if (!liquid) return contents;
  const lost = volumeRead(amount, `entry/${entryId}/volume`, 'Water that went off', spread);
  if (lost.value.gte(liquid.volume.value)) return { ...rest, unaccounted: true };
  return pouredIn(contents, { kind: 'dry', lost });
}

/** The whole of a waste as it was logged. */
export function contentsOfStream(state: State, { body }: StreamState): Contents {
  const { streamId, liquid, solid } = body;
  const wholes = [liquid?.volume, solid?.wetMass].filter((whole) => whole !== undefined);
  return wholes.reduce<Contents>((so, amount) => placed(state, so, planned, { streamId, amount }), nothing);
}

/** So much of a waste, alone in a vessel; it need not be in the record yet. */
export const contentsOfWaste = (
  state: State,
  waste: Pick<StreamLogged, 'stream' | 'liquid' | 'solid'>,
  amount: Amount,
): Contents =>
  wastePutIn(state, nothing, planned, { streamId: planned, batchId: null, stepId: null, ...waste }, amount);

/** Two contents in one vessel. */
export const contentsTogether = (a: Contents, b: Contents): Contents => joined(a, b);

/** Whatever was known to be dissolved is open from here on, in the free liquid and in what residues hold. */
export const treated = (contents: Contents, treatmentId: string): Contents => ({
  ...contents,
  ...(contents.liquid ? { liquid: treatedLoad(contents.liquid, treatmentId) } : {}),
  residues: contents.residues.map((residue) =>
    residue.held
      ? { ...residue, held: { ...residue.held, load: treatedLoad(residue.held.load, treatmentId) } }
      : residue,
  ),
});

export const measured = (contents: Contents, entryId: string, { findings = [] }: PotRead): Contents =>
  contents.liquid && findings.length > 0
    ? { ...contents, liquid: measuredLoad(contents.liquid, findings, `entry/${entryId}`) }
    : contents;

/** Free liquid and held liquor together: what neutralising has to deal with; undefined when there is neither. */
export function wholeLoad({ liquid, residues }: Contents): Load | undefined {
  return [liquid, ...residues.map((r) => r.held?.load)]
    .filter((load) => load !== undefined)
    .reduce<Load | undefined>((sum, load) => (sum ? together(sum, load) : load), undefined);
}

/** Neither liquid nor residue is known of, or none of either: no share and no strength can be worked out. */
export const tellsNothing = ({ liquid, residues }: Contents): boolean =>
  !liquid?.volume.value.gt(0) && !residues.some(({ wetMass }) => wetMass.value.gt(0));

/** Residues of which nobody said what liquor they hold: their part of the load is not in `wholeLoad`. */
export const silentResidues = ({ residues }: Contents): readonly string[] =>
  residues.filter(({ held }) => !held).map(({ streamId }) => streamId);
