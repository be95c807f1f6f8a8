/**
 * Whether mixing as planned would make a code or a hazardous property of one of the two disappear. That is dilution: no
 * treatment, and forbidden by the laws that know the code. A code rests on what is known: where that part alone falls below
 * the limit, what nobody determined of the other waste is no proof that the code stays. What a laboratory found in a container
 * is known of it, and thinned with it.
 */
import { phRead } from '../chemistry/ph-from-acid';
import { over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { californiaCandidates } from '../rules/california/candidates';
import type { Candidate } from '../rules/candidate';
import { euHpCandidates } from '../rules/eu-hp/candidates';
import { rcraCandidates } from '../rules/rcra/candidates';
import type { StreamKind } from '../safety/stream-kind';
import { type Contents, contentsOfWaste, contentsTogether, tellsNothing, wholeLoad } from './container-load';
import { type ContainerMixture, massOfContents, mixtureFrom, mixtureOf } from './container-mixture';
import { phOf, phOfAcid } from './container-ph';
import { contentsOf, contentsTaken } from './contents-followed';
import type { Amount } from './entries/containers';
import type { Law } from './entries/local-rules';
import { type FoundLevel, resultsNow, withFound } from './lab-levels';
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
  /** By a laboratory, of all of it. */
  readonly found: readonly FoundLevel[];
};

function mixtureOfPart({ contents, kinds, pH, found }: Part): ContainerMixture {
  const mixture = mixtureFrom(contents, kinds, pH);
  return { ...mixture, levels: withFound(mixture.levels, found) };
}

/** What is missing is the pH: of a mixture nobody can tell it beforehand, so no code that rests on it is called gone. */
const restsOnPh = ({ standing, lacks }: Candidate): boolean =>
  standing === 'open' && lacks.some((lack) => lack === 'pH' || lack === 'acid reserve');

/** Codes by law, of those that fire; and those that stay, or of which only a pH or a person can say that they do not. */
function codesOf(part: Part, law: Law) {
  const found = candidatesBy[law](mixtureOfPart(part));
  const codes = (which: (one: Candidate) => boolean) => new Set(found.filter(which).map(({ code }) => code));
  return {
    fires: codes(({ standing }) => standing === 'fires'),
    stays: codes((one) => one.standing === 'fires' || one.standing === 'judgement' || restsOnPh(one)),
  };
}

/** How much of the mixture each is: of what is dissolved by volume, of all else by mass. */
function sharesIn(where: FoundLevel['result']['in'], parts: readonly Part[]): readonly Figure[] {
  const amounts =
    where === 'filtered'
      ? parts.flatMap(({ contents }) => contents.liquid?.volume ?? [])
      : parts.map(({ contents, kinds }) => massOfContents(contents, kinds));
  return amounts.map((amount) =>
    workedOut({ sentence: 'Share of what is mixed', unit: '1', formula: over(amount, plus(...amounts)) }),
  );
}

/** What is known to be left of what a laboratory found in either: nothing comes from where none was found or nobody looked. */
function thinned(parts: readonly Part[]): readonly FoundLevel[] {
  const asked = new Map(
    parts.flatMap(({ found }) => found).map(({ result }) => [`${result.element} ${result.in}`, result]),
  );
  const levels = new Map(parts.map((part) => [part, mixtureOfPart(part).levels]));
  return [...asked.values()].flatMap(({ element, in: where }): FoundLevel[] => {
    const within = where === 'filtered' ? parts.filter(({ contents }) => contents.liquid) : parts;
    const shares = sharesIn(where, within);
    const terms = within.flatMap((part, i) => {
      const [own, share] = [levels.get(part), shares[i]];
      const level = own?.[where].get(element);
      return level && share && !own?.noneFound?.has(level) ? [times(share, level)] : [];
    });
    if (terms.length === 0) return [];
    const unit = where === 'total' ? 'mg/kg' : 'mg/L';
    const figure = workedOut({ sentence: `${element} in what is mixed`, unit, formula: plus(...terms) });
    return [{ result: { element, in: where }, figure }];
  });
}

function mixedPart(a: Part, b: Part): Part {
  const contents = contentsTogether(a.contents, b.contents);
  const kinds = [...new Set([...a.kinds, ...b.kinds])];
  return { contents, kinds, pH: phOfAcid(wholeLoad(contents), kinds), found: thinned([a, b]) };
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
  const pH = phOf(state, container, wholeLoad(contents));
  return { contents, kinds, pH, found: resultsNow(container.reports) };
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
  return { contents: all, kinds, pH, found: [] };
}

/** What is to be poured over out of a container; undefined where nobody knows what that is. */
export function comingOutOf(state: State, containerId: string, amounts: readonly Amount[]): Part | undefined {
  const from = partThere(state, containerId);
  const [taken, ...more] = amounts.map((amount) => contentsTaken(state, containerId, amount));
  const contents = taken && more.reduce(contentsTogether, taken);
  if (!from || !contents || tellsNothing(contents)) return undefined;
  // What was found in all of a sludge says nothing of the liquid that is poured off it.
  const alike = contents.residues.length > 0 || from.contents.residues.length === 0;
  return { ...from, contents, found: from.found.filter(({ result }) => alike || result.in === 'filtered') };
}

/** The same as an entry tells it. */
export const dilutedPart = (diluted: Diluted | null | undefined) =>
  diluted ? { diluted: { codes: [...diluted.codes], laws: [...diluted.laws] } } : {};

/** What putting it in would make disappear; null where it would not, as far as anything is known. */
export function dilutedBy(state: State, containerId: string, coming: Part | undefined): Diluted | null {
  const there = partThere(state, containerId);
  return there && coming ? dilutedTogether(state, there, coming) : null;
}
