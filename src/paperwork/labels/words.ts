/** Every word that stands on a label besides the data. */
import { marking } from '../../reference/marking-tables';
import { codeText } from '../candidate-words';
import { capital, joined } from '../words';
import type { CodeList, LabelCode, LabelData, LabelLaw, LabelStanding } from './label-data';
import type { PictogramId } from './pictograms';

/** As the rules call the symbols, for a reader that cannot see them. */
export const pictogramWords: Readonly<Record<PictogramId, string>> = {
  GHS01: 'exploding bomb',
  GHS02: 'flame',
  GHS03: 'flame over circle',
  GHS04: 'gas cylinder',
  GHS05: 'corrosion',
  GHS06: 'skull and crossbones',
  GHS07: 'exclamation mark',
  GHS08: 'health hazard',
  GHS09: 'environment',
};

/** The fixed words. 40 CFR 262.16(b)(6)(i)(A) asks for "Hazardous Waste" so written; elsewhere the words are usual. */
const headings: Readonly<Record<LabelLaw, string>> = { us: 'Hazardous Waste', eu: 'Hazardous waste' };

const lists: Readonly<Record<CodeList, string>> = {
  'waste-list': 'Waste list',
  rcra: 'Waste code',
  state: 'State code',
  transport: '',
};

/** Words of the law, to the letter. */
const asked = marking.shipment;

type Day = (on: string) => string;

const standingText = (standing: LabelStanding, n: number, day: Day): string => {
  if (standing.is === 'candidate') return n === 1 ? 'candidate' : 'candidates';
  return `confirmed by ${standing.by}, ${day(standing.on)}`;
};

/** Codes of one list with one standing, each group told once; a transport entry is a sentence of its own. */
function grouped(codes: readonly LabelCode[]): readonly (readonly [LabelCode, ...LabelCode[]])[] {
  const groups = new Map<string, [LabelCode, ...LabelCode[]]>();
  for (const one of codes) {
    const key = JSON.stringify([one.list, one.standing, one.list === 'transport' && one.code]);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()];
}

const codesText = (codes: readonly LabelCode[], day: Day): string =>
  grouped(codes)
    .map((group) => {
      const [{ list, standing }] = group;
      const all = group.map(({ code }) => codeText(code)).join(', ');
      return `${lists[list]} ${all} (${standingText(standing, group.length, day)}).`.trim();
    })
    .join(' ');

export const labelWords = {
  title: (codes: readonly string[]) => `Label${codes.length === 1 ? '' : 's'}: ${joined(codes)}`,
  heading: (law: LabelData['law']) => (law === 'not determined' ? 'Waste, held as hazardous' : headings[law]),
  doubtful: 'Contents not determined',
  doubtfulWhat: (since: string) =>
    `Nobody knows for sure what is in it, since ${since}. Do not open. Do not add. Do not move.`,
  byRecord: (what: string) => `By the record: ${what}`,
  nothingIn: 'Empty by the record',
  nothingInWhat: 'Write a new label once something is in it.',
  hazardsNot: 'Hazards not determined',
  hazardsNotWhat: 'Nobody has looked at its hazards yet. It does not mean that there are none.',
  noSignal: 'no signal word',
  noStatement: 'Hazard statements: none.',
  precautionsOnSheet: 'Precautions: see sheet.',
  standing: (standing: LabelStanding, day: (on: string) => string) =>
    standing.is === 'candidate'
      ? 'Candidate, not confirmed'
      : `Confirmed ${day(standing.on)} by ${standing.by}`,
  indication: (words: readonly string[]) => `Hazard: ${joined(words)}.`,
  codes: codesText,
  codesNot: (not: readonly CodeList[]) =>
    `${capital(joined(not.map((list) => lists[list].toLowerCase())))}: not determined.`,
  never: 'Never: ',
  /** "Never add bleach", "Never add solvent", "Never in a can": "add bleach, solvent; in a can". */
  nevers: (rules: readonly string[]) => {
    const said = rules.map((rule) => rule.replace(/^Never /, ''));
    const added = said.filter((rule) => rule.startsWith('add ')).map((rule) => rule.slice('add '.length));
    const others = said.filter((rule) => !rule.startsWith('add '));
    return [...(added.length > 0 ? [`add ${added.join(', ')}`] : []), ...others].join('; ');
  },
  gas: {
    none: null,
    vented: ['Vented cap: ', 'never seal tight.'],
    'fit-vent': ['It gives off gas: ', 'fit a vented cap, never seal tight.'],
  },
  start: {
    accumulation: 'accumulation start',
    storage: 'storage start',
    'first-waste': 'first waste in',
  },
  mustLeaveBy: 'must leave by',
  owner: ({ name, address, telephone }: { name: string; address: string; telephone: string }) =>
    `${name}. Telephone: ${telephone}. ${address}.`,
  telephone: (telephone: string) => `Telephone: ${telephone}.`,
  generator: (number: string) => `Generator number: ${number}.`,
  shipment: {
    warning: asked.warning.text,
    generator: asked.generator.text,
    number: asked.generatorNumber.text,
    wasteNumbers: asked.wasteNumbers.text,
    manifest: (number: string) => `${asked.manifest.text} (${number}):`,
    confirmed: (whoAndWhen: string) => `Waste numbers confirmed by ${whoAndWhen}.`,
  },
  made: (day: string, by: string) => `Label made ${day}; by: ${by}.`,
  noRed: 'Frames of the pictograms are red by rule; this printer has no red.',
  more: (n: number) => `+ ${n} more: see sheet.`,
  cut: '… see sheet.',
  qr: (code: string) => `Pattern that opens ${code} in Leesbook`,
  leftOut: {
    statements: (n: number) => `${n === 1 ? 'a hazard statement' : `${n} hazard statements`}`,
    sentences: (n: number) => `the words of ${n === 1 ? 'a hazard statement' : `${n} hazard statements`}`,
    precautions: (n: number) => `${n === 1 ? 'a precaution' : `${n} precautions`}`,
    nevers: (n: number) => `${n === 1 ? 'a never-rule' : `${n} never-rules`}`,
    code: 'the end of its code',
    contents: 'the end of its contents',
    second: 'batches, state, pH',
    indication: 'the end of the hazard in words',
    standing: 'the end of who confirmed it',
    confirmed: 'the end of who confirmed the waste numbers',
    codes: 'the end of the waste codes',
    owner: 'the end of the address',
  },
  demo: 'invented demo',
  attachment: 'Everything these labels say, as data; its hash is over the canonical JSON (RFC 8785).',
} as const;
