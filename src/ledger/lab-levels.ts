/** What laboratories found in a container, in the place of what its wastes tell: it was measured of all that is in it. */
import { sourceOf } from '../chemistry/constants';
import { spreadFor } from '../chemistry/evidence';
import { between, type Figure, given, read } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import { evidence } from '../reference/tables';
import type { ElementLevels, Levels } from '../rules/element-levels';
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

type Found = { readonly told: Told<LabReported>; readonly index: number; readonly result: LabResult };

/** The newest of each element and kind, of reports that still hold. */
function newest(reports: readonly ReportState[]): readonly Found[] {
  const found = new Map<string, Found>();
  const inOrder = reports
    .filter(({ staleSince }) => staleSince === null)
    .toSorted((a, b) => (a.body.sampledOn < b.body.sampledOn ? -1 : 1));
  for (const told of inOrder)
    for (const [index, result] of told.body.results.entries())
      found.set(`${result.element} ${result.in}`, { told, index, result });
  return [...found.values()];
}

/** The levels with what was reported of this container; what was measured of all of it is open no longer. */
export function withReports(levels: ElementLevels, reports: readonly ReportState[]): ElementLevels {
  const found = newest(reports);
  if (found.length === 0) return levels;
  const noneFound = new Set<Figure>();
  const inside = <U extends 'mg/L' | 'mg/kg'>(
    where: LabResult['in'],
    unit: U,
    before: Levels<U>,
  ): Levels<U> => {
    const all = new Map(before);
    for (const { told, index, result } of found) {
      if (result.in !== where) continue;
      const figure = figureOf(told, index, result, unit);
      if (result.below) noneFound.add(figure);
      all.set(result.element, figure);
    }
    return all;
  };
  const measured = new Set(found.map(({ result }) => result.element));
  return {
    ...levels,
    filtered: inside('filtered', 'mg/L', levels.filtered),
    tclp: inside('tclp', 'mg/L', levels.tclp),
    wet: inside('wet', 'mg/L', levels.wet),
    total: inside('total', 'mg/kg', levels.total),
    open: levels.open.filter((element) => !measured.has(element)),
    noneFound,
  };
}
