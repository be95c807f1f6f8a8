/** What left by the codes of the laws and by who took it where: what yearly reports and chronological records ask for. */
import type { Candidate } from '../rules/candidate';
import { bySchemes, candidatesOf } from './container-candidates';
import type { Scheme } from './entries/candidates';
import type { ContainerState, State } from './state';
import { type Weighed, type Went, type WentPart, weighedOf } from './year-masses';

/** Schemes that have waste codes. */
const coded: ReadonlySet<Scheme> = new Set<Scheme>(['rcra', 'california', 'waste-list']);

export type CodedRow = {
  readonly scheme: Scheme;
  /** Null where neither a person nor a rule has one for it. */
  readonly code: string | null;
  /** `accepted`: somebody's word; `open`: a candidate that rests on something that is not determined, or on a judgement. */
  readonly standing: 'accepted' | 'candidate' | 'open';
  readonly collector: string;
  /** Null where nobody said. */
  readonly destination: string | null;
  readonly containerIds: readonly string[];
  readonly mass: Weighed;
};

type Code = Pick<CodedRow, 'scheme' | 'code' | 'standing'>;

const answered = ({ answers }: ContainerState, as: 'accepted' | 'refused'): readonly Code[] =>
  answers.flatMap(({ body, staleSince }) =>
    body.answer === as && staleSince === null && coded.has(body.scheme)
      ? [{ scheme: body.scheme, code: body.code, standing: 'accepted' as const }]
      : [],
  );

const same = (a: Code, b: Code): boolean => a.scheme === b.scheme && a.code === b.code;

function proposed(state: State, container: ContainerState): readonly Code[] {
  const all = candidatesOf(state, container);
  if (typeof all === 'string') return [];
  return bySchemes(all).flatMap(([scheme, candidates]) =>
    coded.has(scheme)
      ? candidates
          .filter((one) => isProposed(one))
          .map(
            ({ code, standing }): Code => ({
              scheme,
              code,
              standing: standing === 'fires' ? 'candidate' : 'open',
            }),
          )
      : [],
  );
}

/** An entry of the list of waste names the waste whether or not it is decided; other codes are told once they fire. */
const isProposed = ({ scheme, standing }: Candidate): boolean =>
  standing === 'fires' || (scheme === 'waste-list' && standing !== 'close');

/** Codes of a container as it left: what somebody accepted; of a scheme of which nobody accepted any, what the rules propose. */
function codesOf(state: State, { containerId, changedSince }: WentPart): readonly Code[] {
  const container = state.containers.get(containerId);
  if (!container || changedSince) return [];
  const accepted = answered(container, 'accepted');
  const refused = answered(container, 'refused');
  const open = proposed(state, container).filter(
    (one) => !accepted.some(({ scheme }) => scheme === one.scheme) && !refused.some((no) => same(no, one)),
  );
  return [...accepted, ...open];
}

/** Each container of each load under every code that it has; what came back is left out. */
export function codedRows(state: State, { loads }: Went): readonly CodedRow[] {
  const rows = new Map<string, { row: Omit<CodedRow, 'mass' | 'containerIds'>; parts: WentPart[] }>();
  for (const { handOver, parts } of loads)
    for (const part of parts.filter(({ counts }) => counts)) {
      const codes = codesOf(state, part);
      const none: Code = { scheme: 'waste-list', code: null, standing: 'open' };
      for (const code of codes.length > 0 ? codes : [none]) {
        const { collector, destination = null } = handOver.body;
        const key = JSON.stringify([code, collector.name, destination]);
        const known = rows.get(key) ?? {
          row: { ...code, collector: collector.name, destination },
          parts: [],
        };
        known.parts.push(part);
        rows.set(key, known);
      }
    }
  return [...rows.values()].map(({ row, parts }) => ({
    ...row,
    containerIds: [...new Set(parts.map(({ containerId }) => containerId))],
    mass: weighedOf(
      'Handed over under this code',
      parts.map(({ containerId, kg }) => ({ id: containerId, kg })),
    ),
  }));
}
