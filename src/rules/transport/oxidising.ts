/** Class 5.1: a test decides it. Nitrates ask for one; strong acid and dry nitrate are taken for it until then. */
import { transport } from '../../reference/transport-tables';
import { type Consignment, partsOf, usualIn } from './consignment';
import { citedRule, type Finding, fires, limitOf, sumOf } from './finding';

const test = ['oxidising, by test'];

/** Nitrates of a waste added up; null where there are none. */
export const nitratesIn = ({ mixture }: Consignment) =>
  sumOf(
    'Nitrate salts in the waste',
    partsOf(mixture).flatMap(({ share, as }) => (as.nitrate ? [share] : [])),
  );

/** A solid that is nitrate for the most part, by its shares or by its kind. */
export function mostlyNitrate(consignment: Consignment): boolean {
  if (consignment.mixture.state === 'liquid') return false;
  if (usualIn(consignment.kind)?.nitrates && consignment.mixture.shares.size === 0) return true;
  return nitratesIn(consignment)?.high.gte(transport.limits.mostly.value) ?? false;
}

export function oxidising(consignment: Consignment): Finding | null {
  const { mixture, tested } = consignment;
  if (tested?.oxidising === 'none') return null;
  if (tested?.oxidising !== undefined)
    return tested.oxidising === 'of no known group'
      ? { ...fires('oxidising-test', 'II', [], ['packing group, by test']), byKnowledge: true }
      : fires('oxidising-test', tested.oxidising, []);
  const parts = partsOf(mixture);
  const acid = parts.find(({ id }) => id === 'HNO3' || id === 'HNO3-conc');
  // From 65 % on, above 70 % in group I, as the rows of UN 2031 state it.
  if (acid && mixture.state === 'liquid' && acid.share.high.gte(65))
    return fires('oxidising-by-strength', acid.share.high.gt(70) ? 'I' : 'II', []);
  if (mostlyNitrate(consignment)) {
    const figure = nitratesIn(consignment);
    const limit = limitOf('mostly', 'Share from which a solid is mostly nitrate', '%');
    return {
      standing: 'judgement',
      taken: true,
      group: 'II',
      byKnowledge: true,
      citation: citedRule('oxidising-by-salts'),
      grounds: figure ? [{ figure, limit }] : [],
      lacks: test,
    };
  }
  if (!acid && !parts.some(({ as }) => as.nitrate) && !consignment.rcraCodes.includes('D001')) return null;
  return {
    standing: 'judgement',
    taken: false,
    group: 'II',
    citation: citedRule('oxidising-test'),
    grounds: [],
    lacks: test,
  };
}
