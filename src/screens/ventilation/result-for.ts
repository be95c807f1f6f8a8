/** The check of what stands in a form, for the place where the phone is. */
import type { State, StationState } from '../../ledger/state';
import { workshopLists } from '../../ledger/workshop-lists';
import { dayField } from '../../safety/stated-time';
import { ventilationCheck } from '../../safety/ventilation/check';
import { codeOf, type ListFor, listFor } from '../checklist/list-for';
import type { Shell } from '../shell';
import { draftName, type Step, VentilationDraft } from './draft';
import { readCharge } from './read-charge';

const steps: readonly string[] = VentilationDraft.shape.step.options;
const isStep = (step: string | undefined): step is Step => step !== undefined && steps.includes(step);

/** What a check is for: a list that asks it, or none, of a batch or of nothing. */
export type CheckFor = {
  readonly part: string;
  readonly list: string;
  readonly what: ListFor;
  /** Given by the list. */
  readonly step: Step | undefined;
  readonly code: string | undefined;
};

/** Null where the address names nothing in the record. `-` in the place of a list: none asks. */
export function checkFor(state: State, at: Readonly<Record<string, string>>): CheckFor | null {
  const [part, list] = [at.for ?? '', at.list ?? ''];
  const what = listFor(state, part);
  const asked = list === '-' ? undefined : workshopLists(state).get(list);
  if (!what || (list !== '-' && !asked)) return null;
  return {
    part,
    list,
    what,
    step: isStep(asked?.step) ? asked.step : undefined,
    code: codeOf(state, what),
  };
}

/** Where the phone is, while that is in use. */
export function placeOf(state: State, stationId: string | null): StationState | null {
  const station = state.stations.get(stationId ?? '');
  return station?.givenUpAt === null ? station : null;
}

/** What the form tells and what it comes to there; no result while a line is missing, or the place. */
export function resultFor(shell: Pick<Shell, 'now'>, draft: VentilationDraft, station: StationState | null) {
  const read = readCharge(draft);
  const { charge } = read;
  const result =
    charge && station
      ? ventilationCheck({ station: station.body.station, charge, on: dayField(shell.now.value) })
      : undefined;
  return { read, result };
}

/** The form as it was left. */
export const keptDraft = ({ draft }: Pick<Shell, 'draft'>, { part, list }: CheckFor) =>
  draft.read(draftName(part, list), VentilationDraft);
