/** How much a container holds, and all of them together, as figures with their ranges. */
import { weighed } from '../../chemistry/evidence';
import { volumeRead } from '../../chemistry/liquor';
import { isVolume, writtenWhole } from '../../ledger/amounts';
import { mixtureOf } from '../../ledger/container-mixture';
import { contentsOf } from '../../ledger/contents-followed';
import type { ContainerState, State } from '../../ledger/state';
import { plus } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { notDetermined, unbroken } from '../words';
import type { Load, Quantity } from './set-data';
import { setWords as w } from './set-words';
import type { WorkedLines } from './worked-lines';

/** Absent: none by the record; null: nobody can tell. */
export type Amounts = {
  readonly liquid?: Figure<'L'> | null;
  readonly solid?: Figure<'kg'> | null;
  readonly mass: Figure<'kg'> | null;
};

const inKilograms = (sentence: string, ...masses: readonly Figure[]): Figure<'kg'> =>
  workedOut({ sentence, unit: 'kg', formula: plus(...masses) });

type Parts = Pick<Amounts, 'liquid' | 'solid'>;

/** What was read on it last, of one that is in doubt. */
function byLevel({ levels }: ContainerState): Parts | undefined {
  const read = levels.at(-1);
  if (!read) return undefined;
  const { level, spread } = read.body;
  const origin = `entry/${read.entryId}/level`;
  return isVolume(level)
    ? { liquid: volumeRead(level, origin, w.liquidByLevel, spread) }
    : { solid: inKilograms(w.solidsIn, weighed(level, origin, w.solidByLevel, spread)) };
}

/** By what was followed through every movement; else by what the record counts. */
function byRecord(state: State, { body, holds }: ContainerState): Parts {
  const { containerId } = body;
  const { liquid, residues } = contentsOf(state, containerId);
  const origin = `container/${containerId}`;
  const written = writtenWhole(holds).map(
    (amount): Parts =>
      isVolume(amount)
        ? { liquid: volumeRead(amount, `${origin}/volume`, w.liquidByRecord) }
        : { solid: inKilograms(w.solidsIn, weighed(amount, `${origin}/mass`, w.solidByRecord)) },
  );
  return {
    ...Object.assign({}, ...written),
    ...(liquid && !holds.volume.isZero() ? { liquid: liquid.volume } : {}),
    ...(residues.length > 0 && !holds.mass.isZero()
      ? { solid: inKilograms(w.solidsIn, ...residues.map(({ wetMass }) => wetMass)) }
      : {}),
  };
}

export function amountsIn(state: State, container: ContainerState): Amounts {
  const doubtful = container.doubtfulSince !== null;
  const mixed = mixtureOf(state, container);
  const mass = typeof mixed === 'string' ? null : mixed.mass;
  const parts = (doubtful ? byLevel(container) : undefined) ?? byRecord(state, container);
  if (doubtful && !parts.liquid && !parts.solid) return { liquid: null, solid: null, mass: null };
  return { ...parts, mass };
}

type Printed = (figure: Figure | null | undefined) => Quantity['liquid'];

const printedBy =
  (lines: WorkedLines, containerId: string): Printed =>
  (figure) =>
    figure === undefined ? 'none' : figure === null ? notDetermined : lines.of(figure, containerId);

export function quantityOf(
  { liquid, solid, mass }: Amounts,
  lines: WorkedLines,
  containerId: string,
): Quantity {
  const print = printedBy(lines, containerId);
  return {
    liquid: print(liquid),
    solid: print(solid),
    mass: mass === null ? notDetermined : lines.of(mass, containerId),
  };
}

/** A sum of what is told; null where some hold it and nobody told of any. */
function sumOf<U extends 'L' | 'kg'>(
  sentence: string,
  unit: U,
  all: readonly (Figure<U> | null | undefined)[],
): Figure<U> | null | undefined {
  const told = all.filter((one) => one !== null && one !== undefined);
  if (told.length === 0) return all.some((one) => one === null) ? null : undefined;
  return workedOut({ sentence, unit, formula: plus(...told) });
}

type Held = { readonly container: ContainerState; readonly amounts: Amounts };

const codesWhere = (held: readonly Held[], lacks: (amounts: Amounts) => boolean): string[] =>
  held.flatMap(({ container, amounts }) => (lacks(amounts) ? [unbroken(container.body.code)] : []));

/** All of them. Its lines of the working stand with the last container. */
export function loadOf(held: readonly Held[], lines: WorkedLines): Load {
  const print = printedBy(lines, held.at(-1)?.container.body.containerId ?? '');
  const each = held.map(({ amounts }) => amounts);
  const mass = sumOf(
    w.massInAll,
    'kg',
    each.map((one) => one.mass),
  );
  const massPrinted = print(mass ?? null);
  return {
    containers: held.length,
    liquid: print(
      sumOf(
        w.liquidInAll,
        'L',
        each.map(({ liquid }) => liquid),
      ),
    ),
    solid: print(
      sumOf(
        w.solidInAll,
        'kg',
        each.map(({ solid }) => solid),
      ),
    ),
    mass: massPrinted === 'none' ? notDetermined : massPrinted,
    withoutLiquid: codesWhere(held, ({ liquid }) => liquid === null),
    withoutMass: codesWhere(held, (one) => one.mass === null),
  };
}
