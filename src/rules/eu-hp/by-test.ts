/** Hazardous properties that have no limit, where a substance in the waste calls for a test or for judgement. */
import { constant } from '../../chemistry/constants';
import { euHp, type TestedHp, testedHps } from '../../reference/eu-hp-tables';
import { type SubstanceId, substances } from '../../reference/substances-tables';
import type { Candidate, Ground } from '../candidate';
import { cited } from '../cited';
import { calledInRecord } from '../counted-share';
import type { Mixture } from '../mixture';
import { withoutLetters } from './counted';

/** All statements that it may bring, also those that a test or a strength decides. */
function statementsOf(id: SubstanceId): readonly string[] {
  const { classes, byTest = [], notified = [], limits = [], supplemental = [] } = substances[id];
  return [
    ...[...classes, ...byTest, ...notified, ...limits].map((c) => withoutLetters(c.code)),
    ...supplemental,
  ];
}

const held = ({ shares }: Mixture): readonly SubstanceId[] =>
  [...shares].filter(([, share]) => share.high.gt(0)).map(([id]) => id);

type Why = { readonly ids: readonly SubstanceId[]; readonly open: readonly SubstanceId[] };

/** null: nothing calls for it. */
function called(code: TestedHp, why: Why, rule: Parameters<typeof cited>[0]): Candidate | null {
  const { ids, open } = why;
  if (ids.length === 0 && open.length === 0) return null;
  const names = ids.map((id) => substances[id].name).join(', ');
  return {
    scheme: 'eu-hp',
    code,
    standing: ids.length > 0 ? 'judgement' : 'open',
    citation: cited(names ? { ...rule, rule: `${rule.rule} Here: ${names}.` } : rule),
    grounds: [],
    lacks: open.map(calledInRecord),
  };
}

function byStatement(hp: TestedHp, mixture: Mixture): Candidate | null {
  const { codes, ...rule } = euHp.byTest[hp];
  const calls = (id: SubstanceId) => statementsOf(id).some((code) => codes.includes(code));
  return called(hp, { ids: held(mixture).filter(calls), open: mixture.open.filter(calls) }, rule);
}

/** Silver with ammonia, unless the pH is determined and acid: in acid there is no free ammonia to hold silver. */
function ofSilverInAmmonia(hp: 'HP 1' | 'HP 15', mixture: Mixture): Candidate | null {
  if (mixture.pH?.high.lt(7)) return null;
  const isSilver = (id: SubstanceId) => substances[id].metal?.symbol === 'Ag';
  const isAmmonia = (id: SubstanceId) => id === 'NH3aq';
  const [ids, open] = [held(mixture), mixture.open].map((all) =>
    all.filter((id) => isSilver(id) || isAmmonia(id)),
  );
  const either = [...(ids ?? []), ...(open ?? [])];
  if (!ids || !open || !either.some(isSilver) || !either.some(isAmmonia)) return null;
  const both = ids.some(isSilver) && ids.some(isAmmonia);
  return called(hp, both ? { ids, open: [] } : { ids: [], open }, euHp.silverInAmmonia);
}

/** A pH that points to HP 8 though the calculation does not reach it; null where it does not. */
export function corrosiveByPh({ pH }: Mixture): Candidate | null {
  const { acid, alkaline } = euHp.corrosiveByPh;
  if (!pH) return null;
  const limit = (end: 'acid' | 'alkaline') =>
    constant(`eu-hp/pH/${end}`, `pH that points to HP 8, ${end}`, end === 'acid' ? acid : alkaline, '1');
  const grounds: Ground[] = [];
  if (pH.low.lte(acid.value)) grounds.push({ figure: pH, limit: limit('acid'), end: 'low' });
  if (pH.high.gte(alkaline.value)) grounds.push({ figure: pH, limit: limit('alkaline') });
  if (grounds.length === 0) return null;
  return {
    scheme: 'eu-hp',
    code: 'HP 8',
    standing: 'judgement',
    citation: cited(euHp.corrosiveByPh),
    grounds,
    lacks: [grounds[0]?.end === 'low' ? 'acid reserve' : 'alkali reserve'],
  };
}

export const byTest = (mixture: Mixture): readonly Candidate[] =>
  testedHps.flatMap((hp) => {
    const found =
      byStatement(hp, mixture) ?? (hp === 'HP 1' || hp === 'HP 15' ? ofSilverInAmmonia(hp, mixture) : null);
    return found ? [found] : [];
  });
