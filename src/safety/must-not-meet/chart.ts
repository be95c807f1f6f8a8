/** The published chart of groups. A cell that is blank makes no statement: it is never taken for leave to mix. */
import { type HazardCode, reactivity } from '../../reference/reactivity-tables';
import type { Cited } from '../cited';

export type ChartCell = {
  /** "2-10": the lower group first. A group that must meet nothing is "107-*". */
  readonly cell: string;
  readonly codes: readonly HazardCode[];
  /** The copy that was read has nothing here; taken for dangerous all the same. */
  readonly suspected: boolean;
  readonly cited: Cited;
};

const { chart, suspected, withAnything, codes, groups } = reactivity;
const { cells, ...ofChart } = chart;

const nameOf = (a: number, b: number): string => `${Math.min(a, b)}-${Math.max(a, b)}`;

/** One cell by its name; undefined where it is blank. */
export function chartCell(cell: string): ChartCell | undefined {
  const [a = '', b = ''] = cell.split('-');
  const never = withAnything[a] ?? withAnything[b];
  if (never) {
    const { codes: all, says: _, ...cited } = never;
    return { cell, codes: all, suspected: false, cited };
  }
  const printed = cells[cell];
  if (printed) return { cell, codes: printed, suspected: false, cited: ofChart };
  const gap = suspected[cell];
  if (!gap) return undefined;
  const { codes: all, ...cited } = gap;
  return { cell, codes: all, suspected: true, cited };
}

/** Names of all cells between two lists of groups; a group does not meet itself. */
export const cellsBetween = (a: readonly number[], b: readonly number[]): readonly string[] => [
  ...new Set(a.flatMap((one) => b.flatMap((other) => (one === other ? [] : [nameOf(one, other)])))),
];

/** Names of the groups of a cell. */
export const groupsOfCell = (cell: string): readonly string[] =>
  cell.split('-').map((group) => groups[group] ?? group);

export const codeName = (code: HazardCode): string => codes[code].name;

/** The heaviest of the codes, for an order from the worst. */
export const weightOf = (all: readonly HazardCode[]): number =>
  Math.max(0, ...all.map((code) => codes[code].weight));

/** Fire, gas that poisons or burns, explosion, or nobody knows. */
export const isRefused = (all: readonly HazardCode[]): boolean => all.some((code) => codes[code].refused);
