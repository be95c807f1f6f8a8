/**
 * Where a laboratory found other amounts dissolved in a container than the evidence of its wastes comes to. Loads stay what the
 * wastes tell; which of the two is wrong, a person has to find out.
 */
import { between } from '../chemistry/disagreement';
import { plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Element } from '../rules/element-levels';
import { tellsNothing } from './container-load';
import { mixtureFrom } from './container-mixture';
import { contentsOf } from './contents-followed';
import { resultsNow } from './lab-levels';
import type { ContainerState, State } from './state';
import { wasteKinds } from './waste-kinds';

export type ReportDisagrees = {
  readonly element: Element;
  readonly entryId: string;
  /** By what was logged of its wastes, in the unit of the report. */
  readonly byWastes: Figure;
};

/** What the wastes in it come to, without any report. Where one of them does not tell, there is at least so much. */
function byWastesIn(state: State, container: ContainerState) {
  const { containerId } = container.body;
  const contents = contentsOf(state, containerId);
  if (container.contents.length === 0 || contents.unaccounted || tellsNothing(contents)) return null;
  return mixtureFrom(contents, wasteKinds(state, containerId).kinds, undefined).levels;
}

/** Those that lie further apart than both are uncertain. Of what was sampled before something else came in there is none. */
export function reportDisagreements(state: State, container: ContainerState): readonly ReportDisagrees[] {
  const filtered = resultsNow(container.reports).filter(({ result }) => result.in === 'filtered');
  const levels = filtered.length === 0 ? null : byWastesIn(state, container);
  if (levels === null) return [];
  return filtered.flatMap(({ told, result: { element, level }, figure }): ReportDisagrees[] => {
    const [reported, byWastes] = [figure as Figure<'mg/L'>, levels.filtered.get(element)];
    if (!byWastes) return [];
    const apart = between<'mg/L'>(
      { by: 'assay', index: 0, all: reported },
      {
        by: 'worked-out',
        index: 1,
        all: byWastes,
        ...(levels.open.includes(element) ? { atLeast: true } : {}),
      },
    );
    if (!apart) return [];
    const { sentence } = byWastes;
    return [
      {
        element,
        entryId: told.entryId,
        byWastes: workedOut({ sentence, unit: level.unit, formula: plus(byWastes) }),
      },
    ];
  });
}
