/** The parts of a register: entries of one sort stand together, so that all inspections are found in one place. */
import type { Body, BodyOf } from '../../ledger/entries/body';

/** In the order in which they stand. */
export const groups = [
  'waste',
  'containers',
  'transfers',
  'treatments',
  'inspections',
  'checklists',
  'hand-overs',
  'work',
  'changes',
  'workshop',
] as const;

export type Group = (typeof groups)[number];

/** A kind that is missing here does not compile. */
const groupOfKind: Readonly<Record<Body['kind'], Group>> = {
  'stream-logged': 'waste',
  'stream-tested': 'waste',
  'counting-said': 'waste',
  'container-opened': 'containers',
  'container-changed': 'containers',
  'container-marked': 'containers',
  'level-read': 'containers',
  'contents-determined': 'containers',
  'candidate-answered': 'containers',
  'lab-reported': 'containers',
  'stream-placed': 'transfers',
  'contents-moved': 'transfers',
  'water-lost': 'transfers',
  'treatment-begun': 'treatments',
  'dose-added': 'treatments',
  'pot-read': 'treatments',
  'bench-tested': 'treatments',
  'treatment-ended': 'treatments',
  'container-inspected': 'inspections',
  'walk-finished': 'inspections',
  'finding-closed': 'inspections',
  'checklist-finished': 'checklists',
  'checklist-answered-later': 'checklists',
  'ventilation-checked': 'checklists',
  'silver-checked': 'checklists',
  'list-changed': 'checklists',
  'handed-over': 'hand-overs',
  'load-rejected': 'hand-overs',
  'proof-filed': 'hand-overs',
  'paper-made': 'hand-overs',
  'batch-opened': 'work',
  'batch-charged': 'work',
  'batch-recovered': 'work',
  'step-started': 'work',
  'step-ended': 'work',
  'clock-started': 'work',
  'clock-stopped': 'work',
  'entry-corrected': 'changes',
  'entry-withdrawn': 'changes',
  'workshop-described': 'workshop',
  'person-added': 'workshop',
  'person-left': 'workshop',
  'local-rule-stated': 'workshop',
  'base-described': 'workshop',
  'station-described': 'workshop',
  'station-given-up': 'workshop',
  'price-stated': 'workshop',
};

/** Marks that say that a container left, came back, or what became of it. */
const ofLeaving: ReadonlySet<BodyOf<'container-marked'>['mark']> = new Set<
  BodyOf<'container-marked'>['mark']
>(['leaving', 'staying', 'gone', 'came-back', 'proof-filed']);

export const groupOf = (body: Body): Group =>
  body.kind === 'container-marked' && ofLeaving.has(body.mark) ? 'hand-overs' : groupOfKind[body.kind];
