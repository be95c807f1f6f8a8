/**
 * What a waste holds of each element, as rules of toxicity take it: four different measurements, never one for another. A
 * litre of filtered liquid is not a kilogram of waste, and neither is a litre of extract.
 */
import type { Figure } from '../quantities/figure';

export const levelElements = [
  ...['Ag', 'As', 'Ba', 'Be', 'Cd', 'Co', 'Cr', 'Cu', 'Fe', 'Hg', 'Mo'],
  ...['Ni', 'Pb', 'Pd', 'Sb', 'Se', 'Sn', 'Ti', 'Tl', 'V', 'Zn'],
] as const;
export type Element = (typeof levelElements)[number];

export type Levels<U extends 'mg/L' | 'mg/kg'> = ReadonlyMap<Element, Figure<U>>;

export type ElementLevels = {
  readonly state: 'liquid' | 'solid' | 'sludge';
  /** At least a fifth of it is free water. */
  readonly aqueous: boolean;
  /** Of a solid: of its mixture with as much water. Absent where it is not determined. */
  readonly pH?: Figure<'1'>;
  /** Share by mass that a filter keeps back. Absent: under half a percent of a liquid, all of a solid, not known of a sludge. */
  readonly solids?: Figure<'%'>;
  /** In the liquid that passes a filter. */
  readonly filtered: Levels<'mg/L'>;
  /** In all of the waste as it is, wet. */
  readonly total: Levels<'mg/kg'>;
  /** In the extract of the federal leaching test (TCLP, Method 1311). */
  readonly tclp: Levels<'mg/L'>;
  /** In the extract of California's leaching test (WET). */
  readonly wet: Levels<'mg/L'>;
  /**
   * Elements that may be in it and nobody determined, or only of a part of it: then there is at least what the levels say.
   * A rule that rests on one of them stays open.
   */
  readonly open: readonly Element[];
  /** Of these a laboratory found none down to their high end: no number of them says that there is any. */
  readonly noneFound?: ReadonlySet<Figure>;
  /** null: not determined. */
  readonly nitrateBearing: boolean | null;
  /** It holds silver in ammonia, or dried out of it. */
  readonly ammoniacalSilver: boolean;
  /** It holds sulfide or cyanide, as of a precipitant. */
  readonly sulfideOrCyanide?: boolean;
};

/** Whether one of the four measurements tells of it; for another of them that is no answer, and no silence either. */
export const isTold = (element: Element, { filtered, total, tclp, wet }: ElementLevels): boolean =>
  [filtered, total, tclp, wet].some((levels) => levels.has(element));
