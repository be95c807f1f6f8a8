/** Ignitable, corrosive, reactive (40 CFR 261.21 to 261.23). */
import { constant } from '../../chemistry/constants';
import { rcra } from '../../reference/rcra-tables';
import type { Candidate, Ground } from '../candidate';
import { cited } from '../cited';
import type { ElementLevels } from '../element-levels';

type Rule = 'ignitable' | 'corrosive' | 'corrodesSteel' | 'explosive' | 'givesOffGas';

const made = (
  code: string,
  standing: Candidate['standing'],
  rule: Rule,
  { grounds = [], lacks = [] }: Partial<Pick<Candidate, 'grounds' | 'lacks'>> = {},
): Candidate => ({ scheme: 'rcra', code, standing, citation: cited(rcra.rules[rule]), grounds, lacks });

/** The oxidiser limb has no number: nitrate in any strength is for a person to judge, and no strength rules it out. */
function ignitable({ nitrateBearing }: ElementLevels): Candidate | null {
  if (nitrateBearing === null) return made('D001', 'open', 'ignitable', { lacks: ['nitrate'] });
  return nitrateBearing ? made('D001', 'judgement', 'ignitable') : null;
}

/** So near to a limit of pH it came close. Our own choice, no rule of law. */
const near = 0.5;

function byPh({ pH }: ElementLevels): Candidate | null {
  if (!pH) return made('D002', 'open', 'corrosive', { lacks: ['pH'] });
  const acid = constant('rcra/acid', 'D002, acid: pH', rcra.corrosive.acid, '1');
  const alkaline = constant('rcra/alkaline', 'D002, alkaline: pH', rcra.corrosive.alkaline, '1');
  const within = (reach: number): readonly Ground[] => [
    ...(pH.low.lte(acid.value.plus(reach)) ? [{ figure: pH, limit: acid, end: 'low' as const }] : []),
    ...(pH.high.gte(alkaline.value.minus(reach)) ? [{ figure: pH, limit: alkaline }] : []),
  ];
  if (within(0).length > 0) return made('D002', 'fires', 'corrosive', { grounds: within(0) });
  return within(near).length > 0 ? made('D002', 'close', 'corrosive', { grounds: within(near) }) : null;
}

/** No solid; of a liquid that is not aqueous only what it does to steel counts. */
function corrosive(levels: ElementLevels): Candidate | null {
  if (levels.state === 'solid') return null;
  if (levels.aqueous) return byPh(levels);
  return levels.state === 'liquid'
    ? made('D002', 'open', 'corrodesSteel', { lacks: ['what it does to steel'] })
    : null;
}

function reactive({ ammoniacalSilver, sulfideOrCyanide }: ElementLevels): Candidate | null {
  if (ammoniacalSilver) return made('D003', 'judgement', 'explosive');
  return sulfideOrCyanide ? made('D003', 'judgement', 'givesOffGas') : null;
}

export const characteristics = (levels: ElementLevels): readonly Candidate[] =>
  [ignitable(levels), corrosive(levels), reactive(levels)].filter((found) => found !== null);
