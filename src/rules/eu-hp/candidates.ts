/**
 * Hazardous properties of a waste in the EU (Directive 2008/98/EC, Annex III): candidates, in the order of the law. An
 * engine of its own: mixture rules of CLP take limits and factors of the substance, these do not.
 */
import { calculatedHps } from '../../reference/eu-hp-tables';
import type { Candidate } from '../candidate';
import type { Mixture } from '../mixture';
import { byCalculation } from './by-calculation';
import { byTest, corrosiveByPh } from './by-test';

const number = ({ code }: Candidate): number => Number(code.slice('HP '.length));

/** Each property once. HP 4 gives way to HP 8 (Annex III, HP 4). */
export function euHpCandidates(mixture: Mixture): readonly Candidate[] {
  const calculated = calculatedHps.flatMap((hp) => byCalculation(hp, mixture) ?? []);
  const corrosive = calculated.find(({ code }) => code === 'HP 8');
  const fires = corrosive?.standing === 'fires';
  const byPh = fires ? null : corrosiveByPh(mixture);
  const others = calculated.filter(({ code }) => !(code === 'HP 4' && fires) && !(code === 'HP 8' && byPh));
  const merged = byPh && {
    ...byPh,
    grounds: [...byPh.grounds, ...(corrosive?.grounds ?? [])],
    lacks: [...byPh.lacks, ...(corrosive?.lacks ?? [])],
  };
  return [...others, ...(merged ? [merged] : []), ...byTest(mixture)].sort((a, b) => number(a) - number(b));
}
