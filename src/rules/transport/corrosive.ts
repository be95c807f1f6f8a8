/** Class 8: by test, by the corrosive constituents, by pH, and by what is usual where nothing is known. */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import { inCarriage, type PackingGroup } from '../../reference/transport-tables';
import { standingOf } from '../candidate';
import { type Consignment, type Part, partsOf, usualIn } from './consignment';
import { citedRule, type Finding, fires, limitOf, sumOf } from './finding';

/** ADR 2.2.8.1.5: the categories of skin corrosion are the packing groups. */
const groupOfCategory = { '1A': 'I', '1B': 'II', '1C': 'III' } as const;

/** Packing group of a constituent in class 8 at its share; null where it is not corrosive. */
export function corrosiveGroup({ share, as }: Part): PackingGroup | null {
  const band = as.corrosive?.find(
    ({ from, over }) =>
      (from === undefined || share.high.gte(from)) && (over === undefined || share.high.gt(over)),
  );
  return band?.group ?? null;
}

export type Extreme = 'acid' | 'base' | null;

/** Which end of the scale its pH may reach; null where it reaches none or nobody has read it. */
export function extremePh({ pH }: { readonly pH?: Figure<'1'> }): Extreme {
  if (!pH) return null;
  // Ends of ranges are worked out in plain numbers: so many decimals of them are told apart from a limit.
  if (pH.low.toDecimalPlaces(9).lte(clp.extremePh.acid.value)) return 'acid';
  return pH.high.toDecimalPlaces(9).gte(clp.extremePh.alkali.value) ? 'base' : null;
}

/** Groups of corrosive constituents added up, the gravest first. */
function byCalculation(parts: readonly Part[], madeUpKnown: boolean): Finding | null {
  const relevant = limitOf('relevant', 'Share from which a corrosive constituent counts', '%');
  const limit = limitOf('corrosive', 'Limit of corrosive constituents in class 8', '%');
  const ofGravest = limitOf('corrosiveGroupI', 'Limit of constituents of group I', '%');
  const counted = parts.filter((part) => part.share.high.gte(relevant.value));
  const sum = (groups: readonly PackingGroup[]) =>
    sumOf(
      `Corrosive constituents of packing group ${groups.join(', ')}`,
      counted.flatMap((part) => {
        const group = corrosiveGroup(part);
        return group && groups.includes(group) ? [part.share] : [];
      }),
    );
  const steps = [
    { groups: ['I'], against: limit, group: 'I' },
    { groups: ['I'], against: ofGravest, group: 'II' },
    { groups: ['I', 'II'], against: limit, group: 'II' },
    { groups: ['I', 'II', 'III'], against: limit, group: 'III' },
  ] as const;
  for (const { groups, against, group } of steps) {
    const figure = sum(groups);
    if (!figure || standingOf({ figure, limit: against }) !== 'fires') continue;
    const doubtful = group === 'III' && !madeUpKnown;
    const found = fires('class-8-calculation', doubtful ? 'II' : group, [{ figure, limit: against }]);
    return doubtful ? { ...found, byKnowledge: true } : found;
  }
  const figure = sum(['I', 'II', 'III']);
  if (!figure || standingOf({ figure, limit }) !== 'close') return null;
  return {
    ...fires('class-8-calculation', 'III', [{ figure, limit }]),
    standing: 'close',
    taken: false,
  };
}

function byPh(pH: Figure<'1'>, extreme: 'acid' | 'base'): Finding {
  const limit =
    extreme === 'acid'
      ? constant('clp/extreme-acid', 'pH at or below which corrosion is taken', clp.extremePh.acid, '1')
      : constant('clp/extreme-alkali', 'pH at or above which corrosion is taken', clp.extremePh.alkali, '1');
  return {
    standing: 'judgement',
    taken: true,
    group: 'II',
    byKnowledge: true,
    citation: citedRule('class-8-ph'),
    grounds: [{ figure: pH, limit, ...(extreme === 'acid' ? { end: 'low' } : {}) }],
    lacks: ['skin corrosion, by test'],
  };
}

const inDoubt = (lacks: readonly string[], standing: 'open' | 'judgement'): Finding => ({
  standing,
  taken: true,
  group: 'II',
  byKnowledge: true,
  citation: citedRule(standing === 'open' ? 'known-of-waste' : 'class-8-d002'),
  grounds: [],
  lacks,
});

/** What wets a solid is stronger than its share of the whole says: how strong, nobody knows without its pH. */
const wetWithAcid = ({ mixture, wetness }: Consignment): boolean =>
  mixture.state !== 'liquid' &&
  (partsOf(mixture).some(({ as }) => as.wets) || (mixture.state === 'solid' && wetness === 'wet'));

/** Whether it destroys skin, and by which group; null where nothing speaks for it. */
export function corrosiveToSkin(consignment: Consignment): Finding | null {
  const { mixture, tested, rcraCodes, kind } = consignment;
  const category = tested?.skinCorrosion;
  if (category === 'none') return null;
  if (category !== undefined) return fires('class-8-groups', groupOfCategory[category], []);
  const calculated = byCalculation(partsOf(mixture), mixture.open.length === 0);
  if (calculated?.taken) return calculated;
  const extreme = extremePh(mixture);
  if (extreme && mixture.pH) return byPh(mixture.pH, extreme);
  if (rcraCodes.includes('D002')) return inDoubt(['pH', 'skin corrosion, by test'], 'judgement');
  if (mixture.pH) return calculated;
  if (wetWithAcid(consignment)) return inDoubt(['pH'], 'open');
  const mayHold = mixture.open.some((id) => inCarriage(id)?.corrosive !== undefined);
  const usual = usualIn(kind);
  if (!calculated && (mayHold || (mixture.shares.size === 0 && (usual?.side ?? usual?.wet))))
    return inDoubt(['pH', ...mixture.open], 'open');
  if (!partsOf(mixture).some(({ as }) => as.side)) return calculated;
  // Acid or base too weak for the sums may still reach an extreme pH; lime in a sludge is the rule and decides nothing alone.
  return {
    ...inDoubt(['pH'], 'open'),
    taken: mixture.state === 'liquid',
    grounds: calculated?.grounds ?? [],
  };
}

/** Whether it eats metal though it leaves skin whole: only a test tells, and it is asked of acids. */
export function corrosiveToMetal({ mixture, tested }: Consignment): Finding | null {
  if (tested?.corrodesMetal === true) return fires('class-8-metal', 'III', []);
  if (tested?.corrodesMetal === false || mixture.state !== 'liquid' || !mixture.pH) return null;
  const limit = limitOf('metalBelow', 'pH below which an acid may eat metal', '1');
  if (mixture.pH.low.gte(limit.value)) return null;
  return {
    standing: 'judgement',
    taken: false,
    group: 'III',
    citation: citedRule('class-8-metal'),
    grounds: [],
    lacks: ['corrosion of steel and aluminium, by test'],
  };
}

/**
 * Whether it is to be named an acid or a base; neither where nothing speaks for one of them. Without a known acid or base in it
 * pH 5 and 9 speak for one: our own choice, no rule of law.
 */
export function sideOf({ mixture, kind }: Consignment): 'acid' | 'base' | 'neither' {
  const extreme = extremePh(mixture);
  if (extreme) return extreme;
  const shareOf = (side: 'acid' | 'base') =>
    partsOf(mixture)
      .find(({ as }) => as.side === side)
      ?.share.high.toNumber() ?? 0;
  const [acid, base] = [shareOf('acid'), shareOf('base')];
  if (mixture.pH) {
    if (mixture.pH.high.lte(5) || (acid > 0 && mixture.pH.high.lte(7))) return 'acid';
    if (mixture.pH.low.gte(9) || (base > 0 && mixture.pH.low.gte(7))) return 'base';
    return 'neither';
  }
  if (acid !== base) return acid > base ? 'acid' : 'base';
  return usualIn(kind)?.side ?? (usualIn(kind)?.wet ? 'acid' : 'neither');
}
