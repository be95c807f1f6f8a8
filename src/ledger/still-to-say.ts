/** Codes that a container would leave under, law by law: those that somebody confirmed, and those that wait for a word. */
import { acceptedNow, oneOfAll, wordOn } from './candidate-words';
import { bySchemes, type ContainerCandidates } from './container-candidates';
import type { Scheme } from './entries/candidates';
import type { AnswerState, ContainerState } from './state';

export type SchemeWords = {
  readonly scheme: Scheme;
  /** Nobody has said anything of them, or it was said of other contents. */
  readonly waiting: readonly string[];
  readonly said: readonly AnswerState[];
};

/** What goes with the load, in this order: not what is only asked of it before it goes to land. */
export const schemesAsked: readonly Scheme[] = [
  'transport',
  'waste-list',
  'rcra',
  'california',
  'eu-hp',
  'clp',
];

/** Laws that ask nothing of it are left out. */
export function stillToSay(container: ContainerState, all: ContainerCandidates): readonly SchemeWords[] {
  const proposed = new Map(bySchemes(all));
  return schemesAsked.flatMap((scheme) => {
    const said = acceptedNow(container, scheme);
    const open = (proposed.get(scheme) ?? []).filter(
      (one) =>
        (one.standing === 'fires' || (scheme === 'transport' && one.standing === 'judgement')) &&
        ['waiting', 'stale'].includes(wordOn(container, one).is),
    );
    const firing = open.filter(({ standing }) => standing === 'fires');
    const waiting =
      oneOfAll.has(scheme) && said.length > 0 ? [] : firing.length > 0 ? firing : open.slice(0, 1);
    return waiting.length + said.length === 0
      ? []
      : [{ scheme, waiting: waiting.map(({ code }) => code), said }];
  });
}
