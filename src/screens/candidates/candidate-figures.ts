/** The figures behind a candidate by the name that their address has. */
import type { ContainerCandidates } from '../../ledger/container-candidates';
import type { Figure } from '../../quantities/figure';
import type { Candidate } from '../../rules/candidate';

/** "figure-0", "limit-0": of the first ground; "held-0", "reportable-0": of what one package holds, for a transport entry. */
export function candidateFigures(
  all: ContainerCandidates,
  { scheme, grounds }: Candidate,
): ReadonlyMap<string, Figure> {
  const ofGrounds = grounds.flatMap(({ figure, limit }, at): [string, Figure][] => [
    [`figure-${at}`, figure],
    [`limit-${at}`, limit],
  ]);
  const ofPackage = all.transport.reportable.flatMap(({ limit, held }, at): [string, Figure][] => [
    [`reportable-${at}`, limit],
    ...(held ? [[`held-${at}`, held] as [string, Figure]] : []),
  ]);
  return new Map([...ofGrounds, ...(scheme === 'transport' ? ofPackage : [])]);
}
