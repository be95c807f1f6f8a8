/**
 * Whether mixing as planned would make a code or a hazardous property of one of the two disappear. That is dilution: no
 * treatment, and forbidden by the laws that know the code. A code rests on what is known: where that part alone falls below
 * the limit, what nobody determined of the other waste is no proof that the code stays.
 */
import { phRead } from '../chemistry/ph-from-acid';
import type { Figure } from '../quantities/figure';
import { californiaCandidates } from '../rules/california/candidates';
import type { Candidate } from '../rules/candidate';
import { euHpCandidates } from '../rules/eu-hp/candidates';
import { rcraCandidates } from '../rules/rcra/candidates';
import type { StreamKind } from '../safety/stream-kind';
import {
  type Contents,
  contentsOf,
  contentsOfWaste,
  contentsTaken,
  contentsTogether,
  tellsNothing,
  wholeLoad,
} from './container-load';
import { type ContainerMixture, mixtureFrom, mixtureOf } from './container-mixture';
import { phOf, phOfAcid } from './container-ph';
import type { Amount } from './entries/containers';
import type { Law } from './entries/local-rules';
import { lawsOf } from './laws';
import type { Waste } from './meeting-sides';
import type { State } from './state';
import { wasteKinds } from './waste-kinds';

const candidatesBy: Readonly<Record<Law, (of: ContainerMixture) => readonly Candidate[]>> = {
  'us-federal': ({ levels }) => rcraCandidates(levels),
  'us-california': ({ levels }) => californiaCandidates(levels),
  eu: ({ mixture }) => euHpCandidates(mixture),
};

/** One waste that is to be mixed: what it is, and its pH as it is known now. */
export type Part = {
  readonly contents: Contents;
  readonly kinds: readonly StreamKind[];
  readonly pH: Figure<'1'> | undefined;
};

/** What is missing is the pH: of a mixture nobody can tell it beforehand, so no code that rests on it is called gone. */
const restsOnPh = ({ standing, lacks }: Candidate): boolean =>
  standing === 'open' && lacks.some((lack) => lack === 'pH' || lack === 'acid reserve');

/** Codes by law, of those that fire; and those that stay, or of which only a pH or a person can say that they do not. */
function codesOf(part: Part, law: Law) {
  const found = candidatesBy[law](mixtureFrom(part.contents, part.kinds, part.pH));
  const codes = (which: (one: Candidate) => boolean) => new Set(found.filter(which).map(({ code }) => code));
  return {
    fires: codes(({ standing }) => standing === 'fires'),
    stays: codes((one) => one.standing === 'fires' || one.standing === 'judgement' || restsOnPh(one)),
  };
}

function mixedPart(a: Part, b: Part): Part {
  const contents = contentsTogether(a.contents, b.contents);
  const kinds = [...new Set([...a.kinds, ...b.kinds])];
  return { contents, kinds, pH: phOfAcid(wholeLoad(contents), kinds) };
}

/** `laws` forbid it; each has its text in reference/dilution.json. */
export type Diluted = { readonly codes: readonly string[]; readonly laws: readonly Law[] };

function dilutedTogether(state: State, there: Part, coming: Part): Diluted | null {
  const mixed = mixedPart(there, coming);
  const lost = lawsOf(state).map((law) => {
    const after = codesOf(mixed, law).stays;
    const before = new Set([...codesOf(there, law).fires, ...codesOf(coming, law).fires]);
    return { law, codes: [...before].filter((code) => !after.has(code)) };
  });
  const gone = lost.filter(({ codes }) => codes.length > 0);
  if (gone.length === 0) return null;
  return { codes: gone.flatMap(({ codes }) => codes), laws: gone.map(({ law }) => law) };
}

/** What stands in a container; undefined where there is nothing, or where nobody knows what it is. */
function partThere(state: State, containerId: string): Part | undefined {
  const container = state.containers.get(containerId);
  if (!container || typeof mixtureOf(state, container) === 'string') return undefined;
  const contents = contentsOf(state, containerId);
  const { kinds } = wasteKinds(state, containerId);
  return { contents, kinds, pH: phOf(state, container, wholeLoad(contents)) };
}

/** A waste that is or would be logged, on its way into a container; undefined where the amount tells nothing of what that is. */
export function comingOfWaste(state: State, waste: Waste, ...amounts: readonly Amount[]): Part | undefined {
  const [contents, ...more] = amounts.map((amount) => contentsOfWaste(state, waste, amount));
  const all = contents && more.reduce(contentsTogether, contents);
  if (!all || tellsNothing(all)) return undefined;
  const kinds = [waste.stream];
  const ph = waste.liquid?.ph;
  const pH = ph
    ? phRead({ ph: ph.value, instrument: ph.instrument }, 'planned/ph')
    : phOfAcid(wholeLoad(all), kinds);
  return { contents: all, kinds, pH };
}

/** What is to be poured over out of a container; undefined where nobody knows what that is. */
export function comingOutOf(state: State, containerId: string, amounts: readonly Amount[]): Part | undefined {
  const from = partThere(state, containerId);
  const [taken, ...more] = amounts.map((amount) => contentsTaken(state, containerId, amount));
  const contents = taken && more.reduce(contentsTogether, taken);
  return from && contents && !tellsNothing(contents) ? { ...from, contents } : undefined;
}

/** The same as an entry tells it. */
export const dilutedPart = (diluted: Diluted | null | undefined) =>
  diluted ? { diluted: { codes: [...diluted.codes], laws: [...diluted.laws] } } : {};

/** What putting it in would make disappear; null where it would not, as far as anything is known. */
export function dilutedBy(state: State, containerId: string, coming: Part | undefined): Diluted | null {
  const there = partThere(state, containerId);
  return there && coming ? dilutedTogether(state, there, coming) : null;
}
