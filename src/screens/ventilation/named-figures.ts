/** The figures of a check by the name that stands in the address of their working. */
import type { Figure } from '../../quantities/figure';
import type { VentilationResult } from '../../safety/ventilation/check';

const stationFigures = ({ station }: VentilationResult): readonly [string, Figure | undefined][] =>
  station.is === 'ducted-hood'
    ? [
        ['face', station.face?.speed],
        ['air', station.face?.airflow],
      ]
    : [];

const roomFigures = ({ inRoom }: VentilationResult): readonly [string, Figure | undefined][] => [
  ['shut', inRoom?.shut],
  ['dangerous-after', inRoom?.dangerousAfter],
  ['changes', inRoom?.changes],
  ['room-mean', inRoom?.mean],
  ['room-peak', inRoom?.peak],
  ['airing', inRoom?.airing],
];

const madeFigures = ({ made }: VentilationResult): readonly [string, Figure | undefined][] => [
  ['gas', made?.release.gas],
  ['rate-mean', made?.release.mean],
  ['rate-peak', made?.release.peak],
  ['air-mean', made?.airNeeded.mean],
  ['air-peak', made?.airNeeded.peak],
];

export function namedFigures(result: VentilationResult): ReadonlyMap<string, Figure> {
  const named: readonly (readonly [string, Figure | undefined])[] = [
    ['duct-mean', result.duct?.mean],
    ['duct-peak', result.duct?.peak],
    ['duct-most', result.duct?.most],
    ['portion', result.portion ?? result.liquorPortion],
    ['each', result.split?.each],
    ...stationFigures(result),
    ...madeFigures(result),
    ...roomFigures(result),
  ];
  return new Map(named.filter((pair): pair is readonly [string, Figure] => pair[1] !== undefined));
}
