/** The fourteen checklists, read once. A file that is not in order keeps the app from being built, and a test from passing. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import acidDilution from '../../checklists/acid-dilution.json';
import station from '../../checklists/at-a-place/station.json';
import cementation from '../../checklists/cementation.json';
import containerInspection from '../../checklists/container-inspection.json';
import filtration from '../../checklists/filtration.json';
import handOver from '../../checklists/hand-over.json';
import leachCheck from '../../checklists/leach-check.json';
import leachStart from '../../checklists/leach-start.json';
import neutraliseLime from '../../checklists/neutralise-lime.json';
import sludgeFilter from '../../checklists/sludge-filter.json';
import spillResponseReadiness from '../../checklists/spill-response-readiness.json';
import spotTestAmmonia from '../../checklists/spot-test-ammonia.json';
import spotTestChloride from '../../checklists/spot-test-chloride.json';
import washDryWeigh from '../../checklists/wash-dry-weigh.json';
import wasteTransfer from '../../checklists/waste-transfer.json';
import { checked } from '../reference/checked';
import { Checklist, ListShape, type Step } from './checklist-schema';

const files: readonly unknown[] = [
  spillResponseReadiness,
  acidDilution,
  leachStart,
  leachCheck,
  filtration,
  cementation,
  spotTestChloride,
  spotTestAmmonia,
  washDryWeigh,
  wasteTransfer,
  neutraliseLime,
  sludgeFilter,
  containerInspection,
  handOver,
];

/** A file of ours as it is asked: the questions of the station first, where it needs one. */
export function listOf(file: unknown): Checklist {
  const { $schema: _, ...list } = checked(() => ListShape, file);
  const items = [...(list.station ? station.items : []), ...list.items];
  return checked(() => Checklist, { ...list, items });
}

/** By id, in the order of the work. */
export const checklists: ReadonlyMap<string, Checklist> = new Map(
  files.map(listOf).map((list) => [list.id, list]),
);

/**
 * The list that clears a step: to start it, or to go on with it while it runs.
 * @example checklistForStep('leach')?.id // 'leach-start'
 */
export const checklistForStep = (step: Step, moment: Checklist['moment'] = 'start'): Checklist | undefined =>
  [...checklists.values()].find((list) => list.step === step && list.moment === moment);

/**
 * Names a list by what it says: SHA-256, in hexadecimal, of its canonical JSON (RFC 8785). A changed word is another hash.
 */
export function contentHash(list: Checklist): string {
  const text = canonicalize(list);
  if (text === undefined) throw new Error('a checklist has a JSON form');
  return bytesToHex(sha256(utf8ToBytes(text)));
}
