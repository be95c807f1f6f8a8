/** Reading a published table between its rows, as a figure that knows how well the table is known. */
import Decimal from 'decimal.js';
import { type Expression, times } from '../quantities/expression';
import { type Figure, given, type Source, within } from '../quantities/figure';
import { coverage } from '../quantities/slopes';
import { meaningOf, type Unit } from '../quantities/unit';
import type { SourceId } from '../reference/tables';
import { sourceOf } from './constants';

export type TableRow<Column extends string> = Readonly<Record<Column, Decimal>> & {
  readonly status: Source['status'];
};

/** A value between two rows, its slope there, and how the rows it rests on are known. */
export type Between = {
  readonly value: Decimal;
  readonly slope: Decimal;
  readonly status: Source['status'];
};

/** The two rows around `x` and how those that it rests on are known; undefined outside the table. */
export function rowsAround<Column extends string>(
  rows: readonly TableRow<Column>[],
  x: Decimal,
  from: Column,
): readonly [TableRow<Column>, TableRow<Column>, Source['status']] | undefined {
  const upper = rows.findIndex((row) => row[from].gte(x));
  const [a, b] = [rows[Math.max(upper - 1, 0)], rows[Math.max(upper, 1)]];
  if (upper < 0 || !a || !b || x.lt(a[from])) return undefined;
  const used = [a, b].filter((row) => !(row === a ? b : a)[from].eq(x));
  return [a, b, used.find((row) => row.status !== 'verified')?.status ?? 'verified'];
}

/** Straight line between the two rows around `x`, seen in print only if both were; undefined outside the table. */
export function between<Column extends string>(
  rows: readonly TableRow<Column>[],
  x: Decimal,
  from: Column,
  to: Column,
): Between | undefined {
  const around = rowsAround(rows, x, from);
  if (!around) return undefined;
  const [a, b, status] = around;
  const slope = b[to].minus(a[to]).div(b[from].minus(a[from]));
  return { value: a[to].plus(slope.times(x.minus(a[from]))), slope, status };
}

type Reading = {
  /** What the table is called in a formula. */
  readonly table: string;
  readonly at: Figure;
  readonly read: Between;
  readonly unit: Unit;
  /** Names what is uncertain in the table: readings with the same origin are off together. */
  readonly origin: string;
  readonly sentence: string;
  /** How far what is read there is off when the table is off by all its spread, in `unit`; below nothing where it falls. */
  readonly half: Decimal;
  readonly source: SourceId;
};

/**
 * The factor of 1 that carries the spread of the table. Its origin counts in spreads of the table, so that readings at two
 * places, of which the table is off by different shares, still are off together.
 */
function tableItself(r: Reading): Figure<'1'> {
  const share = r.read.value.isZero() ? new Decimal(0) : r.half.div(r.read.value);
  const itself = given({
    origin: r.origin,
    sentence: r.sentence,
    value: 1,
    unit: '1',
    how: 'constant',
    spread: within(share.abs()),
    decimals: 0,
    sources: [sourceOf({ source: r.source, status: r.read.status })],
  });
  const whole = { minus: 1 / coverage, plus: 1 / coverage, slope: share.toNumber() };
  return {
    ...itself,
    slopes: new Map([...itself.slopes].map(([origin, s]) => [origin, { ...s, ...whole }])),
  };
}

/** A reading as a formula: what the table says at a figure, times a factor of 1 with the spread of the table itself. */
export function tableReading(r: Reading): Expression {
  const { value, slope } = r.read;
  return times(
    {
      op: 'reading',
      table: r.table,
      at: [{ of: { op: 'figure', figure: r.at }, slope: slope.div(meaningOf(r.at.unit).factor) }],
      value,
      unit: r.unit,
    },
    tableItself(r),
  );
}
