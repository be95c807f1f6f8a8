/** What a candidate says in plain words: whose rule, what its code means, how it stands, what would decide it. */
import type { LackKind } from '../ledger/candidate-words';
import type { Scheme } from '../ledger/entries/candidates';
import { euHp } from '../reference/eu-hp-tables';
import { rcra, type ToxicityCode } from '../reference/rcra-tables';
import { statements } from '../reference/statements-tables';
import { substances } from '../reference/substances-tables';
import { transport } from '../reference/transport-tables';
import { wasteList } from '../reference/waste-list-tables';
import type { Candidate } from '../rules/candidate';
import { finerOf } from '../rules/none-found';
import { nameOfElement } from './element-names';
import { capital, joined } from './words';

type Named = Pick<Candidate, 'scheme' | 'code'>;

/** A transport entry has its own name: one number may stand for several. */
const entryOf = (candidate: Named): { readonly name?: string } | undefined =>
  'entry' in candidate ? (candidate as { readonly entry: { readonly name?: string } }).entry : undefined;

export const schemeWords: Readonly<Record<Scheme, string>> = {
  clp: 'Hazard classes (GHS, CLP)',
  rcra: 'Waste codes of the United States',
  'rcra-ldr': 'Before it goes to land (United States)',
  california: 'California',
  'eu-hp': 'Hazardous properties (EU)',
  'waste-list': 'List of waste (EU)',
  transport: 'Transport',
};

export const standingWords: Readonly<Record<Candidate['standing'], string>> = {
  fires: 'reaches its limit',
  close: 'came close',
  judgement: 'needs a judgement or a test',
  open: 'not determined',
};

/** How strong it is, which some names tell after a comma, is not asked. */
const formulas = new Map(
  Object.entries(substances).flatMap(([id, { formula, name }]) => {
    const [substance = name] = name.split(', ');
    return [[formula, substance] as const, [id, substance] as const];
  }),
);

/** Of a symbol or a formula; what is neither stays as it is. @example nameOfLack('Pb') // 'lead' */
export const nameOfLack = (lack: string): string => {
  const asked = finerOf(lack);
  if (asked) return `${nameOfLack(asked.measurement)}, by a method that sees less than ${asked.below}`;
  const [, before = '', symbol = lack, after = ''] =
    /^(TCLP of |WET of |total of |)([A-Z][a-z]?)(, filtered|)$/.exec(lack) ?? ['', '', lack, ''];
  const element = nameOfElement(symbol);
  if (element === undefined) return formulas.get(lack) ?? lack;
  if (before.startsWith('total')) return `${element} in all of it`;
  if (before !== '') return `${element} in the ${before.startsWith('TCLP') ? 'TCLP' : 'WET'} extract`;
  return `${element}${after}`;
};

/** At the beginning of a sentence. */
export const namesOfLacks = (lacks: readonly string[]): string => capital(joined(lacks.map(nameOfLack)));

/** What to do about something that is not determined. */
export const lackWords: Readonly<Record<LackKind, string>> = {
  pH: 'Read the pH: by meter, or by paper.',
  metals:
    'Have a laboratory determine all of these at once, as dissolved metal in mg/L. A strip or a photometer tells some of them.',
  others:
    'Nothing here measures them. A laboratory does; or write down why they cannot be in it, and let the authority say whether that is enough.',
  leaching: 'A laboratory does the leaching test, and the total, on the wet waste as it is.',
  finer:
    'A laboratory found none, and could not have seen as little as the limit. Have it done again by a finer method.',
  substance: 'Free acid: titrate it. Of anything else: ask who made it, or have it determined.',
  asked: 'Ask the collector or the authority which test they take.',
  properties: 'It follows once the others above are determined.',
};

const rcraWords: Readonly<Record<string, string>> = {
  D001: 'ignitable, as what feeds a fire',
  D002: 'corrosive',
  D003: 'reactive',
  F006: 'sludge of treating waste water from electroplating',
};

const toxic: Readonly<Record<string, { readonly name: string }>> = rcra.toxicity satisfies Record<
  ToxicityCode,
  unknown
>;

function ofRcra(code: string): string {
  const element = toxic[code];
  return element ? `toxic: ${element.name}` : (rcraWords[code] ?? '');
}

const indications: Readonly<Record<string, string>> = {
  D001: 'ignitable',
  D002: 'corrosive',
  D003: 'reactive',
};

/** The hazard in words, as 40 CFR 262.16(b)(6)(i)(B) gives examples of; of a code that no table here knows none. */
export const indicationOf = (code: string): readonly string[] => {
  const told = indications[code] ?? (toxic[code] ? 'toxic' : undefined);
  return told === undefined ? [] : [told];
};

/** "H317" out of "Skin Sens. 1 H317". */
const statementOf = (code: string): string => /(?:EU)?H\d{3}[A-Za-z]*$/.exec(code)?.[0] ?? '';

const texts: Readonly<Record<string, { readonly text: string }>> = statements;
const properties: Readonly<Record<string, { readonly name: string }>> = {
  ...euHp.byCalculation,
  ...euHp.byTest,
};
const entries: Readonly<Record<string, { readonly says: string }>> = wasteList.entries;

const elementIn = (code: string): string => nameOfLack(code.split(' ').at(-1) ?? '');

function ofLand(code: string): string {
  if (code.startsWith('UTS ')) return `${elementIn(code)}, universal standard`;
  return toxic[code] ? `${toxic[code].name}, standard of this code` : ofRcra(code);
}

function ofCalifornia(code: string): string {
  if (code.startsWith('STLC ')) return `${elementIn(code)} in the extract`;
  return code.startsWith('TTLC ') ? `${elementIn(code)} in all of it` : '';
}

/** Where one number stands for several entries, the words that they share. */
function carriedAs(code: string): string {
  const names = Object.values(transport.entries).flatMap(({ un, name }) => (un === code ? [name] : []));
  const [first = ''] = names;
  return names.length < 2 ? first : (/^[A-Z ]+(?= )/.exec(first)?.[0] ?? first);
}

const meanings: Readonly<Record<Scheme, (code: string) => string>> = {
  clp: (code) => texts[statementOf(code)]?.text.replace(' (name of sensitising substance)', '') ?? '',
  rcra: ofRcra,
  'rcra-ldr': ofLand,
  california: ofCalifornia,
  'eu-hp': (code) => properties[code]?.name ?? '',
  'waste-list': (code) => entries[code.replace('*', '')]?.says ?? '',
  transport: carriedAs,
};

/** What a code means; empty for one that somebody gave and no table here knows. */
export const meaningOf = (candidate: Named): string =>
  entryOf(candidate)?.name ?? meanings[candidate.scheme](candidate.code);

/** A code keeps its numbers beside it, and a short one never breaks. */
export const codeText = (code: string): string =>
  code.length <= 8 ? code.replaceAll(' ', '\u00a0') : code.replace(/ (?=\d|H\d)/g, '\u00a0');
