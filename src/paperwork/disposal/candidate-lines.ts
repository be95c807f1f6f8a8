/** What the laws make of a container, as a paper tells it: each candidate with its rule, numbers, standing, and whose word there is. */
import { acceptedNow, lackingIn, type Word, wordIn, wordOn } from '../../ledger/candidate-words';
import {
  acceptedBesides,
  bySchemes,
  type ContainerCandidates,
  candidatesOf,
} from '../../ledger/container-candidates';
import type { Scheme } from '../../ledger/entries/candidates';
import { lawsOf } from '../../ledger/laws';
import type { ContainerState } from '../../ledger/state';
import type { Figure } from '../../quantities/figure';
import type { DecimalSign } from '../../quantities/format';
import { dilution } from '../../reference/dilution-tables';
import { sources } from '../../reference/tables';
import type { Candidate } from '../../rules/candidate';
import { codeText, meaningOf, nameOfLack, schemeWords, standingWords } from '../candidate-words';
import { calendarDayText } from '../dates';
import { limitShown } from '../ground-words';
import { heldCodes, labelHazardsOf } from '../labels/known-of';
import { joined, notDetermined, statusWords } from '../words';
import type { Asked } from './asked';
import { dataWords as w } from './data-words';
import type { ContainerData, PaperFigure } from './disposal-data';
import type { WorkedLines } from './worked-lines';

type Laws = NonNullable<ContainerData['laws']>;
type Line = Laws['candidates'][number];

/** Whose word it is, or that nobody said one. */
export function saidText(word: Word): string {
  if (word.is === 'waiting') return w.nobodySaid;
  const { saidBy, saidOn, document } = word.answer.body;
  return w.wordOn[word.is](saidBy, calendarDayText(saidOn), document);
}

/** A limit has as many digits as its text of law. */
function limitOf(limit: Figure, containerId: string, lines: WorkedLines, sign: DecimalSign): PaperFigure {
  const { value } = limitShown(limit, sign);
  return { ...lines.of(limit, containerId), likely: value, low: value, high: value };
}

function lineOf(
  { citation, grounds, standing, lacks, ...named }: Candidate,
  word: Word,
  containerId: string,
  lines: WorkedLines,
  sign: DecimalSign,
): Line {
  const means = meaningOf(named);
  return {
    scheme: schemeWords[named.scheme],
    code: codeText(named.code),
    ...(means === '' ? {} : { means }),
    standing: standingWords[standing],
    numbers: grounds.map(({ figure, limit }) => ({
      sentence: figure.sentence,
      figure: lines.of(figure, containerId),
      limit: limitOf(limit, containerId, lines, sign),
    })),
    lacks: lacks.map(nameOfLack),
    rule: citation.rule,
    cite: citation.cite,
    status: statusWords[citation.status] ?? citation.status,
    said: saidText(word),
  };
}

/** In the order of the laws; undefined where no rule can be put to what is in it. */
export function lawsTold(
  { state, sign }: Asked,
  lines: WorkedLines,
  container: ContainerState,
): ContainerData['laws'] {
  const all = candidatesOf(state, container);
  if (typeof all === 'string') return undefined;
  const { containerId } = container.body;
  return {
    candidates: bySchemes(all).flatMap(([, list]) =>
      list.map((one) => lineOf(one, wordOn(container, one), containerId, lines, sign)),
    ),
    given: acceptedBesides(container, all).map((answer) => ({
      scheme: schemeWords[answer.body.scheme],
      code: codeText(answer.body.code),
      said: saidText(wordIn(answer)),
    })),
    lacking: lackingIn(all).map(({ what, decides }) => ({
      what: what.map(({ name }) => nameOfLack(name)),
      decides: decides.map(({ code }) => codeText(code)),
    })),
    dilution: lawsOf(state).map((law) => {
      const { rule, source, status } = dilution[law];
      return { rule, cite: sources[source].title, status: statusWords[status] ?? status };
    }),
  };
}

type Held = readonly [scheme: Scheme, codes: readonly string[]];

/** Whose word a code is; of a hazard class its statement stands for it ("Skin Sens. 1 H317"). */
const saidBy = (container: ContainerState, scheme: Scheme, code: string): string =>
  joined([
    ...new Set(
      acceptedNow(container, scheme)
        .filter(({ body }) => body.code === code || body.code.endsWith(` ${code}`))
        .map(({ body }) => body.saidBy),
    ),
  ]);

/** Codes in one line, each with those of one person, or as candidates; null where there are none. */
function codesSaid(container: ContainerState, lists: readonly Held[]): string | null {
  const byWhom = new Map<string, string[]>();
  for (const [scheme, codes] of lists)
    for (const code of codes) {
      const who = saidBy(container, scheme, code);
      byWhom.set(who, [...(byWhom.get(who) ?? []), codeText(code)]);
    }
  const said = [...byWhom].flatMap(([who, codes]) => {
    if (codes.length === 0) return [];
    const list = codes.join(', ');
    return who === '' ? w.codesCandidates(list) : w.codesConfirmed(list, who);
  });
  return said.length === 0 ? null : said.join('; ');
}

const hazardCodes = (container: ContainerState, all: ContainerCandidates): readonly string[] =>
  labelHazardsOf(container, all)?.statements.map(({ code }) => code) ?? [];

/** Symbols of the hazards that its label bears. */
export function pictogramsOf({ state }: Asked, container: ContainerState): ContainerData['pictograms'] {
  const all = candidatesOf(state, container);
  if (typeof all === 'string') return [];
  return [...(labelHazardsOf(container, all)?.pictograms ?? [])];
}

/** Class, code and transport entry for the first page, with who confirms each. */
export function candidatesOn(asked: Asked, container: ContainerState): ContainerData['candidates'] {
  const { state } = asked;
  const all = candidatesOf(state, container);
  const { authority, collector } = state.workshop?.body ?? {};
  const says = (lists: (known: ContainerCandidates) => readonly Held[]): string =>
    (typeof all === 'string' ? null : codesSaid(container, lists(all))) ?? notDetermined;
  const held = (...schemes: readonly Scheme[]): string =>
    says((known) => schemes.map((scheme) => [scheme, heldCodes(container, known, scheme)]));
  const classes = says((known) => [['clp', hazardCodes(container, known)]]);
  // A State's criteria are no codes of the federal list: they stand behind them under its name.
  const ofState = held('california');
  const codes = [
    held('waste-list', 'rcra'),
    ...(ofState === notDetermined ? [] : [w.ofScheme(schemeWords.california, ofState)]),
  ].join('; ');
  const byAuthority = w.confirmedBy(w.authority, authority?.name);
  const byCollector = w.confirmedBy(w.collector, collector?.name);
  return [
    { what: w.hazardClasses, says: classes, confirms: byCollector },
    { what: w.wasteCodes, says: codes, confirms: byAuthority },
    { what: w.transport, says: held('transport'), confirms: byCollector },
  ];
}
