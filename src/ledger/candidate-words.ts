/** What a person has said of candidates, and what is missing to decide those that are open. */
import { type SubstanceId, substances } from '../reference/substances-tables';
import { metalSymbols } from '../reference/tables';
import type { Candidate } from '../rules/candidate';
import { calledInRecord } from '../rules/counted-share';
import { levelElements } from '../rules/element-levels';
import { finerOf } from '../rules/none-found';
import { answerTo, bySchemes, type ContainerCandidates } from './container-candidates';
import type { Scheme } from './entries/candidates';
import type { AnswerState, ContainerState } from './state';

/** `stale`: said of other contents than what is in it now; it waits for a word again. */
export type Word =
  | { readonly is: 'waiting' }
  | { readonly is: 'accepted' | 'refused' | 'stale'; readonly answer: AnswerState };

export const wordIn = (answer: AnswerState | undefined): Word => {
  if (!answer) return { is: 'waiting' };
  return { is: answer.staleSince === null ? answer.body.answer : 'stale', answer };
};

export const wordOn = (container: ContainerState, candidate: Pick<Candidate, 'scheme' | 'code'>): Word =>
  wordIn(answerTo(container, candidate));

/** What somebody accepted for what is in it now, the rules' own and others alike. */
export const acceptedNow = (
  { answers }: Pick<ContainerState, 'answers'>,
  scheme: Scheme,
): readonly AnswerState[] =>
  answers.filter((one) => one.body.scheme === scheme && wordIn(one).is === 'accepted');

/** A waste has one entry of the list, and goes under one entry of transport: the accepted one stands for all. */
export const oneOfAll: ReadonlySet<Scheme> = new Set<Scheme>(['waste-list', 'transport']);

/** A candidate by its address; undefined where the rules do not propose it. */
export const candidateBy = (all: ContainerCandidates, scheme: string, code: string): Candidate | undefined =>
  bySchemes(all)
    .flatMap(([, candidates]) => candidates)
    .find((one) => one.scheme === scheme && one.code === code);

/** Those that fire, and how many of them wait for a word. */
export function waiting(container: ContainerState, all: ContainerCandidates) {
  const firing = bySchemes(all)
    .flatMap(([, candidates]) => candidates)
    .filter(({ standing }) => standing === 'fires');
  const without = firing.filter((one) => ['waiting', 'stale'].includes(wordOn(container, one).is));
  return { firing: firing.length, waiting: without.length };
}

/**
 * What it takes to determine something. `metals`: evidence of this trade tells them. `others`: elements that only a
 * laboratory does. `leaching`: a leaching test, or all that is in it. `finer`: none was found by a method that could not have
 * seen the limit. `substance`: whether it holds one at all. `properties`: what follows from the others. `asked`: a test of the
 * waste itself, or somebody who knows.
 */
const lackKinds = [
  'pH',
  'metals',
  'others',
  'leaching',
  'finer',
  'substance',
  'asked',
  'properties',
] as const;
export type LackKind = (typeof lackKinds)[number];

const metals: ReadonlySet<string> = new Set(metalSymbols);
const elements: ReadonlySet<string> = new Set(levelElements);

const follows: ReadonlySet<string> = new Set(['hazardous properties', 'names of the constituents']);

const isSubstance = (lack: string): lack is SubstanceId => Object.hasOwn(substances, lack);

/** A law that asks for a salt asks for its metal. */
const inRecord = (lack: string): string => (isSubstance(lack) ? calledInRecord(lack) : lack);

function kindOf(lack: string): LackKind {
  if (lack === 'pH') return 'pH';
  if (metals.has(lack)) return 'metals';
  if (elements.has(lack)) return 'others';
  if (finerOf(lack)) return 'finer';
  if (/^(TCLP|WET|total) of |, filtered$/.test(lack)) return 'leaching';
  if (/^HP \d+$/.test(lack) || follows.has(lack)) return 'properties';
  return lack === 'nitrate' || /^[A-Z][A-Za-z0-9()]*$/.test(lack) ? 'substance' : 'asked';
}

export type Lacking = {
  readonly kind: LackKind;
  /** As the record calls them, each with the candidates that wait for it. */
  readonly what: readonly { readonly name: string; readonly decides: readonly Candidate[] }[];
  /** All of them, each once. */
  readonly decides: readonly Candidate[];
};

const each = <T>(items: readonly T[]): T[] => [...new Set(items)];

/** Open candidates, gathered by what is missing; those that name nothing are left out here. */
export function lackingIn(all: ContainerCandidates): readonly Lacking[] {
  const open = bySchemes(all)
    .flatMap(([, candidates]) => candidates)
    .filter(({ standing }) => standing === 'open');
  const names = each(open.flatMap(({ lacks }) => lacks.map(inRecord)));
  return lackKinds.flatMap((kind) => {
    const what = names
      .filter((name) => kindOf(name) === kind)
      .map((name) => ({ name, decides: open.filter(({ lacks }) => lacks.map(inRecord).includes(name)) }));
    return what.length === 0 ? [] : [{ kind, what, decides: each(what.flatMap((one) => one.decides)) }];
  });
}
