/** What the app knows before a list begins: the limits and answers that come from plan, rule and record, with where from. */
import { fillLimitPercent } from '../../ledger/fill';
import {
  bandOf,
  basesOf,
  containersOnPaper,
  fillForBase,
  lastPlanned,
  neutraliserFor,
  oldestIn,
  type Planned,
} from '../../ledger/list-bounds';
import { treatmentsOfBatch } from '../../ledger/treatment';
import type { Bound, ReadingItem } from '../../safety/checklist-item';
import type { Checklist } from '../../safety/checklist-schema';
import type { Context } from '../../safety/run-schema';
import { unbroken } from '../../ui/figure-value';
import { momentText } from '../amounts';
import type { Shell } from '../shell';
import { BeginDraft, beginDraftName, stagesPlanned, stagesRead } from '../treatment/run-stages';
import { knownWords as w } from './known-words';
import type { ListFor } from './list-for';

type Bounds = NonNullable<Context['bounds']>;

/** What is chosen for a container, not begun yet; undefined where nobody chose, or a pH is missing. */
function chosenFor(shell: Shell, containerId: string): Planned | undefined {
  const stages =
    shell.draft.read(beginDraftName(containerId), BeginDraft)?.stages ?? stagesPlanned(shell, containerId);
  return (stages && stagesRead(stages)) ?? undefined;
}

function plannedFor(shell: Shell, { batchId, containerId }: ListFor): Planned | undefined {
  if (containerId !== undefined) return chosenFor(shell, containerId);
  return batchId === null ? undefined : lastPlanned(treatmentsOfBatch(shell.state.value, batchId));
}

/** One limit, worked out only when a list asks for it. */
function limit(
  shell: Shell,
  list: Checklist,
  item: ReadingItem & { readonly bounds: Bound },
  what: ListFor,
  planned: Planned | undefined,
): Bounds[Bound] {
  const state = shell.state.value;
  switch (item.bounds) {
    case 'plan-ph': {
      const band = planned && bandOf(planned);
      return band && { min: band.min, max: band.max, from: w.band(band.aim, shell.sign.value) };
    }
    case 'fill-for-base': {
      if (!planned || what.containerId === undefined) return undefined;
      const { max, foaming, byRecord } = fillForBase(state, what.containerId, planned);
      return { max, from: w.fill(foaming, byRecord) };
    }
    case 'neutraliser-for-acid': {
      const kit = neutraliserFor(state);
      return kit
        ? { min: kit.min, from: w.neutraliser(kit.moles, unbroken(kit.where), shell.sign.value) }
        : undefined;
    }
    case 'containers-on-paper': {
      const paper = containersOnPaper(state);
      return paper ? { min: paper.count, max: paper.count, from: w.paper(paper.fileName) } : undefined;
    }
    case 'fill-limit': {
      const { percent, stated } = fillLimitPercent(state);
      return { max: percent, from: w.limit(stated) };
    }
    case 'minutes-run': {
      const least = Number(item.min ?? 0);
      const run = oldestIn(state, what.batchId, list.step, shell.moment(), least);
      return run ? { max: run.max, from: w.runs(momentText(run.since, shell.now.value)) } : undefined;
    }
    // The check of the ventilation gives it, as the answer before.
    case 'ventilation-portion':
      return undefined;
  }
}

/** The limits that a list asks for and the app knows. */
export function knownOf(shell: Shell, list: Checklist, what: ListFor, planned: Planned | undefined): Bounds {
  const bounds: Bounds = {};
  for (const item of list.items) {
    if (item.kind !== 'reading' || item.bounds === undefined) continue;
    const known = limit(shell, list, { ...item, bounds: item.bounds }, what, planned);
    if (known) bounds[item.bounds] = known;
  }
  return bounds;
}

/** The part of a run's context that nobody is asked for. */
export function knownHere(
  shell: Shell,
  list: Checklist,
  what: ListFor,
): Pick<Context, 'bounds' | 'planBases'> {
  const planned = plannedFor(shell, what);
  const bounds = knownOf(shell, list, what, planned);
  const bases = planned ? basesOf(planned) : [];
  return {
    ...(Object.keys(bounds).length === 0 ? {} : { bounds }),
    ...(bases.length === 0 ? {} : { planBases: { bases: [...bases], from: w.plan } }),
  };
}
