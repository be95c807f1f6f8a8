/** What laboratories found in a container, in the place of what its wastes tell: it was measured of all that is in it. */
import { sourceOf } from '../chemistry/constants';
import { spreadFor } from '../chemistry/evidence';
import { between, type Figure, given, read } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import { evidence } from '../reference/tables';
import type { Element, ElementLevels, Levels } from '../rules/element-levels';
import type { LabReported, LabResult } from './entries/lab-reports';
import type { ReportState, Told } from './state';

const inWords: Readonly<Record<LabResult['in'], string>> = {
  total: 'in a kilogram of the waste',
  filtered: 'in the filtered liquid',
  tclp: 'in the extract of the TCLP',
  wet: 'in the extract of the WET',
};

function figureOf<U extends 'mg/L' | 'mg/kg'>(
  { entryId }: Told<LabReported>,
  index: number,
  { element, level, below, in: where }: LabResult,
  unit: U,
): Figure<U> {
  const about = { origin: `entry/${entryId}/results/${index}`, unit, how: 'assay' as const };
  const sentence = `${element} ${inWords[where]}`;
  if (!below)
    return read({
      ...about,
      sentence,
      written: level,
      spread: spreadFor(undefined, 'assay', unit),
      sources: [sourceOf(evidence.assay)],
    });
  // Anything from nothing up to it; taken at its careful end.
  const most = inUnit<U>(level, unit);
  return given({
    ...about,
    sentence: `${sentence}, none found down to`,
    value: most,
    spread: between(0, most, most),
    decimals: most.decimalPlaces(),
  });
}

/** One result of a report that still holds. */
export type Reported = {
  readonly told: ReportState;
  readonly result: LabResult;
  /** A kilogram of the waste as it is; of all else a litre. */
  readonly figure: Figure<'mg/L' | 'mg/kg'>;
};

const reported = (told: ReportState, result: LabResult, index: number): Reported => ({
  told,
  result,
  figure: figureOf(told, index, result, result.in === 'total' ? 'mg/kg' : 'mg/L'),
});

/** By the day of the sample, the newest last; of one day as they were told. */
export const bySample = (reports: readonly ReportState[]): readonly ReportState[] =>
  reports.toSorted((a, b) => a.body.sampledOn.localeCompare(b.body.sampledOn));

const stillHolds = ({ staleSince }: ReportState): boolean => staleSince === null;

/** The newest that still holds and has a pH. */
export const phReport = (reports: readonly ReportState[]): ReportState | undefined =>
  bySample(reports).findLast((told) => stillHolds(told) && told.body.ph);

/** What holds of all reports: of each element and kind the one of the newest sample, none of what was in it before. */
export function resultsNow(reports: readonly ReportState[]): readonly Reported[] {
  const found = new Map<string, Reported>();
  for (const told of bySample(reports).filter(stillHolds))
    for (const [index, result] of told.body.results.entries())
      found.set(`${result.element} ${result.in}`, reported(told, result, index));
  return [...found.values()];
}

/** What a laboratory looked for in what is in it now, in whatever way. */
export const reportedElements = (reports: readonly ReportState[]): ReadonlySet<Element> =>
  new Set(resultsNow(reports).map(({ result }) => result.element));

/** One thing that was found in a waste, measured or worked out of what was measured. */
export type FoundLevel = {
  readonly result: Pick<LabResult, 'element' | 'in' | 'below'>;
  readonly figure: Figure<'mg/L' | 'mg/kg'>;
};

/** The levels with what was found of all of it, in the place of what its wastes tell; that is open no longer. */
export function withFound(levels: ElementLevels, found: readonly FoundLevel[]): ElementLevels {
  if (found.length === 0) return levels;
  const inside = <U extends 'mg/L' | 'mg/kg'>(where: LabResult['in'], before: Levels<U>): Levels<U> =>
    new Map([
      ...before,
      ...found
        .filter(({ result }) => result.in === where)
        .map(({ result, figure }) => [result.element, figure as Figure<U>] as const),
    ]);
  const measured = new Set(found.map(({ result }) => result.element));
  return {
    ...levels,
    filtered: inside('filtered', levels.filtered),
    tclp: inside('tclp', levels.tclp),
    wet: inside('wet', levels.wet),
    total: inside('total', levels.total),
    open: levels.open.filter((element) => !measured.has(element)),
    noneFound: new Set(found.filter(({ result }) => result.below).map(({ figure }) => figure)),
  };
}
