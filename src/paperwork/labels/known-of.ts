/**
 * What a label says of hazards and codes: all that fires and nobody refused, and all that somebody accepted for what is in it
 * now. One word confirms one class and takes no other off the label; only of entries that exclude each other it chooses.
 */
import { acceptedNow, oneOfAll, wordOn } from '../../ledger/candidate-words';
import { bySchemes, type ContainerCandidates, candidatesOf } from '../../ledger/container-candidates';
import type { Scheme } from '../../ledger/entries/candidates';
import type { AnswerState, ContainerState, State } from '../../ledger/state';
import { statements } from '../../reference/statements-tables';
import { type Hazard, hazardOf } from '../../rules/clp/hazard';
import { labelElements } from '../../rules/clp/label';
import type { Supplement } from '../../rules/clp/supplements';
import { codeText, indicationOf, meaningOf } from '../candidate-words';
import { joined } from '../words';
import { hazardsFromElements } from './from-elements';
import type { LabelKnown } from './gather';
import type { LabelCode, LabelHazards, LabelStanding, LabelStatement } from './label-data';

/** Several people's words are told together, by the newest day. */
function standingOf(answers: readonly AnswerState[]): LabelStanding {
  if (answers.length === 0) return { is: 'candidate' };
  const by = joined([...new Set(answers.map(({ body }) => body.saidBy))]);
  const on =
    answers
      .map(({ body }) => body.saidOn)
      .sort()
      .at(-1) ?? '';
  return { is: 'confirmed', by, on };
}

/** Of a scheme: what was accepted, and what fires and nobody refused. */
export function heldCodes(
  container: ContainerState,
  all: ContainerCandidates,
  scheme: Scheme,
): readonly string[] {
  const accepted = acceptedNow(container, scheme).map(({ body }) => body.code);
  if (oneOfAll.has(scheme) && accepted.length > 0) return accepted;
  const candidates = bySchemes(all).find(([name]) => name === scheme)?.[1] ?? [];
  const firing = candidates
    .filter((one) => one.standing === 'fires' && wordOn(container, one).is !== 'refused')
    .map(({ code }) => code);
  return [...new Set([...firing, ...accepted])];
}

/** Confirmed once each of the codes has somebody's word. */
function standingOfAll(container: ContainerState, scheme: Scheme, codes: readonly string[]): LabelStanding {
  const accepted = acceptedNow(container, scheme);
  const said = new Set(accepted.map(({ body }) => body.code));
  return codes.every((code) => said.has(code)) ? standingOf(accepted) : { is: 'candidate' };
}

const supplementCodes = ['EUH071', 'EUH208'] as const;

function supplementsOf({ clp }: ContainerCandidates, codes: readonly string[]): readonly Supplement[] {
  return supplementCodes
    .filter((code) => codes.includes(code))
    .map((code) => clp.supplements.find((one) => one.code === code) ?? { code, names: clp.sensitisers });
}

/** What somebody gave in a way that no table reads is printed as it was given. */
function asGiven(code: string): LabelStatement {
  const text = Object.hasOwn(statements, code) ? statements[code as keyof typeof statements].text : undefined;
  return { code, ...(text === undefined ? {} : { text }) };
}

/** "HP 7 (carcinogenic)"; one that no table knows has no words. */
function propertyWords(code: string): string {
  const means = meaningOf({ scheme: 'eu-hp', code });
  return means === '' ? codeText(code) : `${codeText(code)} (${means})`;
}

/** The words that the law asks for. */
function indicationsOf(container: ContainerState, all: ContainerCandidates): string[] {
  const codes = (scheme: Scheme): readonly string[] => heldCodes(container, all, scheme);
  return [...new Set([...codes('rcra').flatMap(indicationOf), ...codes('eu-hp').map(propertyWords)])];
}

/** Hazards of the classes; null where no class fires and some are open, so that nothing can be said. */
export function labelHazardsOf(container: ContainerState, all: ContainerCandidates): LabelHazards | null {
  const codes = heldCodes(container, all, 'clp');
  if (codes.length === 0 && all.clp.candidates.some(({ standing }) => standing === 'open')) return null;
  const hazards = codes.map(hazardOf).filter((hazard): hazard is Hazard => hazard !== null);
  const supplements = supplementsOf(all, codes);
  const elements = labelElements(hazards, { supplements, mustVent: all.label.mustVent });
  const read = new Set<string>(supplements.map(({ code }) => code));
  const unread = codes.filter((code) => hazardOf(code) === null && !read.has(code)).map(asGiven);
  const made = hazardsFromElements(
    elements,
    standingOfAll(container, 'clp', codes),
    indicationsOf(container, all),
  );
  return { ...made, statements: [...made.statements, ...unread] };
}

const listed: readonly (readonly [LabelCode['list'], Scheme])[] = [
  ['waste-list', 'waste-list'],
  ['rcra', 'rcra'],
  ['state', 'california'],
  ['transport', 'transport'],
];

/** Levels of the State are no codes, and a transport entry is printed once it is confirmed: of both only what was accepted. */
function codesOf(container: ContainerState, all: ContainerCandidates): readonly LabelCode[] {
  return listed.flatMap(([list, scheme]) => {
    const accepted = new Map(acceptedNow(container, scheme).map((one) => [one.body.code, one]));
    const codes =
      list === 'waste-list' || list === 'rcra' ? heldCodes(container, all, scheme) : [...accepted.keys()];
    return codes.map((code) => {
      const word = accepted.get(code);
      return { list, code, standing: standingOf(word ? [word] : []) };
    });
  });
}

/** Nothing where nobody knows what is in it. */
export function labelKnownOf(state: State, container: ContainerState): LabelKnown {
  const all = candidatesOf(state, container);
  if (typeof all === 'string') return {};
  const hazards = labelHazardsOf(container, all);
  return { ...(hazards ? { hazards } : {}), codes: codesOf(container, all) };
}
