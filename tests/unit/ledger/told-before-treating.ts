/** What is told of containers before they are treated. */
import {
  baseForPh,
  benchFor,
  comesOf,
  minded,
  treatable as treatableLoad,
} from '../../../src/ledger/before-treatment';
import { fillForBase } from '../../../src/ledger/list-bounds';
import type { ContainerState, State } from '../../../src/ledger/state';
import { runningTreatment } from '../../../src/ledger/treatment';
import { readinessOf } from '../../../src/ledger/treatment-begin';
import { planFor } from '../../../src/ledger/treatment-plan';
import { type Asking, askers, idOf, named, standing, type Told, type When } from './asking';

function treatingTold(state: State, container: ContainerState, { now }: When): Told {
  const id = idOf(container);
  const load = treatableLoad(state, id);
  return {
    load,
    minded: load && minded(load, 'hydrated-lime'),
    fill: fillForBase(state, id, { stages: [{ agent: 'limestone' }] }),
    running: runningTreatment(state, id)?.body.treatmentId,
    begin: askers(state).map((who) => readinessOf(state, id, { who, at: now })),
  };
}

/** It asks the model, which takes a while: of the first that has a load. */
function plannedTold(state: State, id: string): Told {
  return {
    needed: baseForPh(state, id, 'hydrated-lime', 9),
    comes: comesOf(state, id, 'hydrated-lime', 9),
    bench: benchFor(state, id, 'hydrated-lime'),
    plan: planFor(state, id, { stages: [{ base: 'hydrated-lime', pH: 9 }] }),
  };
}

/** What is told before any of them is treated: it asks the model. */
export const toldBeforeTreating: Asking = function* (state, when) {
  for (const container of standing(state))
    yield* named(`container ${container.body.code}`, treatingTold(state, container, when));
  const first = standing(state)
    .map(idOf)
    .find((id) => treatableLoad(state, id));
  if (first !== undefined) yield* named(`container ${first}`, plannedTold(state, first));
};
