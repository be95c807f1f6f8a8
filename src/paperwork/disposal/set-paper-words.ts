/** Words printed around the data of the set: cover, list, statement, emergency, transport, labels. */
import { capital, joined } from '../words';

const containers = (n: number): string => (n === 1 ? '1 container' : `${n} containers`);

export const setPaperWords = {
  // Cover
  coverLine: (n: number) =>
    `For collector and authority: what ${containers(n)} of waste hold${n === 1 ? 's' : ''}, how that is known, what to do if it goes wrong.`,
  containers,
  generator: 'Generator',
  collectorTitle: 'Collector',
  licence: 'Licence',
  telephone: 'Telephone',
  made: 'Made',
  madeBy: (when: string, who: string) => `${when}; by: ${who}`,
  inAll: 'In all',
  liquid: 'Liquid',
  solid: 'Wet solids',
  mass: 'Mass, without vessels',
  none: 'none by the record',
  atLeast: (said: string, without: readonly string[]) =>
    without.length === 0 ? said : `at least ${said}; not determined of ${joined(without)}`,
  first: 'Know first',
  keepApart: (one: readonly string[], oneIs: string, other: readonly string[], otherIs: string) =>
    `Keep apart: ${joined(one)} (${oneIs}) from ${joined(other)} (${otherIs}).`,
  noneApart:
    'The rules looked at name no two of these containers that must be kept apart. That is no leave to load them together.',
  /** The shorter way to name them. */
  ofContainers: (codes: readonly string[], all: readonly string[]) => {
    const others = all.filter((code) => !codes.includes(code));
    if (others.length === 0) return 'all containers';
    return codes.length > 12 && others.length < codes.length
      ? `all containers but ${joined(others)}`
      : joined(codes);
  },
  flagged: (code: string, flags: string) => `${code}: ${flags}`,
  notDetermined: 'Not determined',
  dissolved: 'how much copper, nickel or free acid',
  openAt: (what: string, codes: string) => `${what}: ${codes}`,
  more: 'What else is not determined stands on each sheet.',
  inside: 'In this set',
  confirm: 'Who confirms what',
  confirms: (whats: readonly string[]) => capital(joined(whats)),
  hash: 'Content of this set, SHA-256',
  checkHash:
    'To check it: take the JSON file out of this PDF, leave out its member contentHash, write the rest in canonical form (RFC 8785), and take its SHA-256.',
  parts: {
    list: 'Container list',
    statement: 'Generator’s statement',
    sheet: (code: string) => `${code}, characterisation sheet`,
    sheets: (n: number) => `Characterisation sheets, ${containers(n)}`,
    emergency: 'Emergency information',
    transport: 'Transport and manifest data',
    receipt: 'Hand-over receipt',
    place: 'The workshop and its local rules',
    appendix: 'Candidates, working, published values, entries of the record',
    labels: 'Labels, in their real size',
  },
  // List
  vessel: 'Vessel',
  holds: 'Holds',
  massHead: 'Mass',
  total: 'In all',
  listLine: 'Likely amounts; their ranges stand on each sheet and on the first page.',
  // Sheet
  sheetTitle: 'Characterisation sheet',
  openHere: 'Not determined',
  nothingOpenHere:
    'Nothing that this book asks for. It asks for what is usual in this trade, not for everything.',
  label: (code: string) => `Pattern with the address of ${code}, as on its label`,
  colourSeen: (said: string) => `Colour as seen: ${said}.`,
  // Statement
  statementLine: 'By the workshop that generated the waste, in its own words, on no authority’s form.',
  diluted: 'Codes that disappeared by mixing',
  when: 'Day',
  what: 'What was mixed',
  codes: 'Codes',
  laws: 'Forbidden by',
  signedBy: (name: string, when: string, typed: boolean) =>
    typed ? `${name}, in letters in place of a signature, ${when}` : `${name}, ${when}`,
  signs: 'Generator: name, date, signature',
  signatureOf: (name: string) => `Signature of ${name}`,
  // Emergency
  emergencyLine:
    'For whoever stands before this load. Words of this workshop’s book, no law’s form; an emergency service says more.',
  callHead: 'Call',
  haveHead: 'Wear and have',
  mayBe: 'What it may be',
  gases: 'Gases that may come',
  notUsed: 'Do not',
  whichHead: 'Containers',
  measures: 'What to do',
  say: (words: readonly string[]) => `“${words.join(' ')}”`,
  whenCalling: ' When you call: ',
  cardTitle: (title: string) => `${title.toLocaleUpperCase('en')}:`,
  emergencySources: 'Emergency information: where it is from',
  from: (what: string, source: string, status: string) => `${what}: ${source}: ${status}`,
  noHazard: 'No kind of waste that this book knows is logged in these containers.',
  // Transport
  transportLine:
    'Data for forms of others: the transport document (ADR 5.4.1), the identification document of the European Union’s waste (Directive 2008/98/EC, Article 19), the hazardous waste manifest of the United States (40 CFR 262.20). This page is none of them.',
  generatorNumber: 'Generator’s number',
  site: 'Site',
  emergencyTelephone: 'Emergency telephone',
  transporter: 'Transporter',
  transporterNumber: 'Transporter’s number',
  facility: 'Receiving facility, its number',
  documentNumber: 'Number of the document',
  byCollector: 'not determined: the collector’s to write in',
  carriage: 'Candidates for carriage',
  entry: 'Number',
  properName: 'Proper shipping name (technical names)',
  class: 'Class',
  group: 'Group',
  standing: 'Standing; whose word',
  namesOf: (name: string, names: string) => `${name} (${names})`,
  noNames: 'technical names: not determined',
  numberStanding: (number: string, standing: string) => `${number} (${standing})`,
  described: (adr: string | undefined, usa: string, others: readonly string[]) =>
    [
      ...(adr === undefined ? [] : [`As ADR orders it: ${adr}.`]),
      `As 49 CFR orders it: ${usa}.`,
      ...(others.length === 0 ? [] : [`Also looked at: ${joined(others)}.`]),
    ].join(' '),
  nearest: (number: string, name: string, of: string, group: string, standing: string) =>
    `not determined; nearest by the rules: ${number} ${name}, ${of}, ${group} (${standing})`,
  keepFromAll: (codes: readonly string[]) =>
    `Keep ${joined(codes)} apart from everything: nobody knows for sure what is in ${codes.length === 1 ? 'it' : 'them'}.`,
  packages: 'Packages, amounts, codes',
  package: 'Package',
  wasteCodes: 'Waste codes',
  reportable: 'Reportable quantity (US)',
  reached: (names: readonly string[]) => `reached: ${joined(names)}`,
  reachedOpen: (names: readonly string[]) => `not determined: ${joined(names)}`,
  notReached: 'none reached by what is known',
  packagingMark: 'Mark of the type of packaging (UN), gross mass: not determined; read them off each vessel.',
  heed: (rule: string, cite: string, codes: readonly string[]) => `${joined(codes)}: ${rule} (${cite})`,
  codesSaid: (scheme: string, codes: readonly string[], said: string) =>
    `${scheme === '' ? '' : `${scheme}: `}${codes.join(', ')}, ${said}`,
} as const;
