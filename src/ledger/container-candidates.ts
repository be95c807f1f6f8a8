/**
 * What the laws that the workshop goes by make of what a container holds: candidates from the high end of each range, each with
 * what a named person has said of it. Nothing here decides.
 */
import { wasteList as listed, type WasteKind } from '../reference/waste-list-tables';
import { californiaCandidates } from '../rules/california/candidates';
import type { Candidate } from '../rules/candidate';
import { type Classified, classify } from '../rules/clp/classify';
import { type LabelElements, labelElements } from '../rules/clp/label';
import { isTold, levelElements } from '../rules/element-levels';
import { euHpCandidates } from '../rules/eu-hp/candidates';
import { rcraCandidates } from '../rules/rcra/candidates';
import { landDisposal } from '../rules/rcra/land-disposal';
import { type Transport, transportCandidates } from '../rules/transport/candidates';
import { type WasteList, wasteListEntries } from '../rules/waste-list/entries';
import type { StreamKind } from '../safety/stream-kind';
import { type ContainerMixture, mixtureOf, type NoMixture } from './container-mixture';
import type { Scheme } from './entries/candidates';
import { lawsOf } from './laws';
import { originCodes } from './origin-codes';
import type { AnswerState, ContainerState, ContentsPart, State } from './state';
import { givesGas, namedKind } from './waste-kinds';

export type ContainerCandidates = {
  readonly clp: Classified;
  /** As the candidates would have it, accepted or not. */
  readonly label: LabelElements;
  readonly transport: Transport;
  /** By the laws that were chosen; absent where a law was not. */
  readonly euHp?: readonly Candidate[];
  readonly wasteList?: WasteList;
  readonly rcra?: readonly Candidate[];
  readonly landDisposal?: readonly Candidate[];
  readonly california?: readonly Candidate[];
};

const amountIn = ({ volume, mass }: ContentsPart): number => volume.toNumber() * 1000 + mass.toNumber();

/** What most of it is. */
function mainKind(state: State, { contents }: ContainerState): StreamKind | undefined {
  const [most] = contents.toSorted((a, b) => amountIn(b) - amountIn(a));
  const kind = most && state.streams.get(most.streamId ?? '')?.body.stream;
  return kind && most ? namedKind(kind, most) : undefined;
}

const asWasteKind = (kind: StreamKind | undefined): WasteKind | null =>
  kind !== undefined && Object.hasOwn(listed.kinds, kind) ? (kind as WasteKind) : null;

const firing = (candidates: readonly Candidate[]): readonly string[] =>
  candidates.filter(({ standing }) => standing === 'fires').map(({ code }) => code);

/** Codes that fire or that somebody confirmed, less those that somebody refused. */
function codesHeld(candidates: readonly Candidate[], answers: readonly AnswerState[]): readonly string[] {
  const said = (as: 'accepted' | 'refused') =>
    answers
      .filter(({ body, staleSince }) => body.scheme === 'rcra' && body.answer === as && staleSince === null)
      .map(({ body }) => body.code);
  const refused = new Set(said('refused'));
  return [...new Set([...firing(candidates), ...said('accepted')])].filter((code) => !refused.has(code));
}

/** Of a liquid the standards for waste water are taken: nobody measures its organic carbon here, and it has hardly any. */
function landDisposalOf({ levels }: ContainerMixture, originCodes: readonly string[]): readonly Candidate[] {
  const { state, filtered, tclp, open, noneFound } = levels;
  const measured = state === 'liquid' ? filtered : tclp;
  // Told by some other measurement is not told by this one.
  const otherwise = levelElements.filter((element) => isTold(element, levels) && !measured.has(element));
  return landDisposal({
    originCodes,
    form: state === 'liquid' ? 'waste water' : 'other',
    measured,
    open: [...open, ...otherwise],
    ...(noneFound ? { noneFound } : {}),
  });
}

function found(state: State, container: ContainerState, mixed: ContainerMixture): ContainerCandidates {
  const { mixture, levels, kinds, mass } = mixed;
  const laws = lawsOf(state);
  const kind = mainKind(state, container);
  const clp = classify(mixture);
  const rcra = rcraCandidates(levels);
  const rcraCodes = codesHeld(rcra, container.answers);
  const euHp = euHpCandidates(mixture);
  const mustVent = kinds.some(givesGas);
  return {
    clp,
    label: labelElements([...clp.calculated, ...clp.phRule], { supplements: clp.supplements, mustVent }),
    transport: transportCandidates({
      mixture,
      ...(mixture.state === 'liquid' ? {} : { wetness: 'wet' as const }),
      ...(kind === undefined ? {} : { kind }),
      rcraCodes: laws.includes('us-federal') ? rcraCodes : [],
      packageMass: mass,
    }),
    ...(laws.includes('eu')
      ? { euHp, wasteList: wasteListEntries({ kind: asWasteKind(kind), properties: euHp }) }
      : {}),
    ...(laws.includes('us-federal')
      ? {
          rcra,
          landDisposal: landDisposalOf(mixed, [...new Set([...rcraCodes, ...originCodes(state, container)])]),
        }
      : {}),
    ...(laws.includes('us-california') ? { california: californiaCandidates(levels) } : {}),
  };
}

const made = new WeakMap<State, Map<string, ContainerCandidates | NoMixture>>();

/** Worked out once for a state. */
export function candidatesOf(state: State, container: ContainerState): ContainerCandidates | NoMixture {
  const known = made.get(state) ?? new Map<string, ContainerCandidates | NoMixture>();
  made.set(state, known);
  const { containerId } = container.body;
  const before = known.get(containerId);
  if (before) return before;
  const mixed = mixtureOf(state, container);
  const all = typeof mixed === 'string' ? mixed : found(state, container, mixed);
  known.set(containerId, all);
  return all;
}

/** Schemes in the order in which they are shown, with their candidates; those of laws that were not chosen are left out. */
export function bySchemes(all: ContainerCandidates): readonly (readonly [Scheme, readonly Candidate[]])[] {
  const schemes: readonly (readonly [Scheme, readonly Candidate[] | undefined])[] = [
    ['clp', all.clp.candidates],
    ['rcra', all.rcra],
    ['rcra-ldr', all.landDisposal],
    ['california', all.california],
    ['eu-hp', all.euHp],
    ['waste-list', all.wasteList?.candidates],
    ['transport', all.transport.candidates],
  ];
  return schemes.flatMap(([scheme, candidates]) => (candidates ? [[scheme, candidates] as const] : []));
}

/** The last word on a candidate; undefined while nobody has said one. */
export const answerTo = (
  { answers }: ContainerState,
  { scheme, code }: Pick<Candidate, 'scheme' | 'code'>,
): AnswerState | undefined => answers.find(({ body }) => body.scheme === scheme && body.code === code);

/** Codes that somebody accepted and that the rules did not propose: they count all the same. */
export function acceptedBesides(container: ContainerState, all: ContainerCandidates): readonly AnswerState[] {
  const proposed = new Set(
    bySchemes(all).flatMap(([scheme, candidates]) => candidates.map(({ code }) => `${scheme} ${code}`)),
  );
  return container.answers.filter(({ body }) => !proposed.has(`${body.scheme} ${body.code}`));
}
