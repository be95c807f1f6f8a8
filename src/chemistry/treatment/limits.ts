/**
 * What a residual is held against: what local rules say, or named reference values, which are nobody's limit here. Values:
 * reference/residuals.json.
 */
import { exact, type Figure, given } from '../../quantities/figure';
import { type ReferenceId, residuals } from '../../reference/residual-tables';
import type { Metal } from '../../reference/tables';
import { sourceOf } from '../constants';

export type Limits = {
  /** `local`: as the authority or the collector said. `reference`: named values, reference only, not your limit. */
  readonly of: 'local' | 'reference';
  /** Who said it, or the name of the reference values. */
  readonly title: string;
  readonly values: ReadonlyMap<Metal, Figure<'mg/L'>>;
  /** Local rules' pH of what may be let out where it is authorised; shown beside, never fit for a drain. */
  readonly pH?: { readonly low: Figure<'1'>; readonly high: Figure<'1'> };
};

export const usualReference: ReferenceId = 'metal-finishing-month';

/** Named values, for comparison only. */
export function referenceLimits(id: ReferenceId = usualReference): Limits {
  const levels = residuals.reference[id];
  const value = ([metal, level]: [string, string]): readonly [Metal, Figure<'mg/L'>] => [
    metal as Metal,
    given({
      origin: `reference-limit/${id}/${metal}`,
      sentence: `${levels.title}: ${metal}`,
      value: level,
      unit: 'mg/L',
      how: 'constant',
      spread: exact,
      decimals: level.split('.')[1]?.length ?? 0,
      sources: [sourceOf(levels)],
      note: 'Reference only, not your limit.',
    }),
  ];
  return { of: 'reference', title: levels.title, values: new Map(Object.entries(levels.values).map(value)) };
}
