/** Every word of the papers. Another language is another such file; nothing is worded where a paper is built. */

import type { Feed } from '../ledger/entries/batches';
import type { PlainBody } from '../ledger/entries/body';
import type { ContainerOpened } from '../ledger/entries/containers';
import type { Law, RuleName } from '../ledger/entries/local-rules';
import type { Agent } from '../ledger/entries/treatments';
import type { Flag } from '../ledger/flags';
import { bases } from '../reference/tables';
import { saidBy } from '../safety/must-not-meet/words';
import type { StreamKind } from '../safety/stream-kind';

export const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

export const streamWords: Readonly<Record<StreamKind, string>> = {
  'leach-liquor': 'leach liquor',
  'barren-liquor': 'barren liquor',
  'wash-water': 'wash water',
  'chloride-test-waste': 'chloride-test waste',
  'ammonia-test-waste': 'ammonia-test waste',
  'ceramic-residue': 'ceramic residue',
  'spent-filters': 'spent filters',
  'soiled-ppe': 'soiled PPE and wipes',
  'spill-absorbent': 'spill absorbent',
  'treated-slurry': 'treated slurry',
  filtrate: 'filtrate',
  'hydroxide-sludge': 'hydroxide sludge',
};

/** What each waste is, for somebody who was not there. */
export const streamMeaning: Readonly<Record<StreamKind, string>> = {
  'leach-liquor': 'nitric acid that has dissolved metals out of ceramic capacitors',
  'barren-liquor': 'nitrates after cementation on copper',
  'wash-water': 'water that rinsed metal, residue or vessels',
  'chloride-test-waste': 'liquor to which chloride was added to test for silver',
  'ammonia-test-waste': 'liquor to which ammonia was added as a test',
  'ceramic-residue': 'undissolved ceramic with the liquor it holds',
  'spent-filters': 'filter papers wet with liquor',
  'soiled-ppe': 'gloves and wipes that met the liquor',
  'spill-absorbent': 'absorbent that took up a spill',
  'treated-slurry': 'liquor with the solids that a base brought down',
  filtrate: 'liquid that ran off treated slurry',
  'hydroxide-sludge': 'metal hydroxides and salts brought down by a base',
};

export const capacitorWords: Readonly<Record<Feed['capacitors'], string>> = {
  'precious-metal-electrode': 'precious-metal-electrode ceramic capacitors',
  'base-metal-electrode': 'base-metal-electrode ceramic capacitors',
  mixed: 'mixed ceramic capacitors',
  unknown: 'ceramic capacitors of a kind not determined',
};

export const eraWords: Readonly<Record<Feed['era'], string>> = {
  'may-hold-lead': 'may hold lead',
  'lead-free': 'stated lead-free',
  unknown: 'lead not determined',
};

export const vesselWords: Readonly<Record<ContainerOpened['vessel'], string>> = {
  jerrican: 'jerrican',
  bottle: 'bottle',
  tub: 'tub',
  drum: 'drum',
};

export const capWords: Readonly<Record<ContainerOpened['cap'], string>> = {
  vented: 'vented cap',
  tight: 'tight cap',
  lid: 'loose lid',
  open: 'open, no cap',
};

export const statusWords: Readonly<Record<string, string>> = {
  verified: 'read in the source or a public copy',
  memory: 'from memory, not checked',
  computed: 'worked out here',
  'common practice': 'common practice, no source',
  reasoned: 'reasoned from the source',
};

export const ruleWords: Readonly<Record<RuleName, string>> = {
  'storage-days': 'Storage time',
  'fill-limit': 'Fill limit',
  'inspection-days': 'Days between inspections',
  'treatment-allowed': 'Treatment allowed here',
  laws: 'Laws that apply',
  'generator-category': 'Category of the workshop',
  'month-limit': 'Most waste in a month',
  'on-site-limit': 'Most waste on site',
  'near-work-limit': 'Most of a waste beside the work',
  'near-work-days': 'Days to move what is more',
  'proof-days': 'Days until the proof of disposal',
  'retention-years': 'Years that records are kept',
  'discharge-limits': 'Most of each metal where discharge is authorised',
  'discharge-ph': 'pH where discharge is authorised',
};

export const lawWords: Readonly<Record<Law, string>> = {
  'us-federal': 'United States, federal',
  'us-california': 'California',
  eu: 'European Union',
};

export const instrumentWords = { paper: 'by paper', meter: 'by meter' } as const;

/** What is added in a treatment, within a sentence. */
export const agentWords = (agent: Agent): string =>
  agent === 'iron' ? 'iron' : bases[agent].name.toLowerCase();

export const kindWords: Readonly<Record<PlainBody['kind'] | 'entry-corrected' | 'entry-withdrawn', string>> =
  {
    'workshop-described': 'workshop described',
    'person-added': 'person added',
    'person-left': 'person left',
    'local-rule-stated': 'local rule stated',
    'base-described': 'base described',
    'batch-opened': 'batch opened',
    'checklist-finished': 'checklist finished',
    'checklist-answered-later': 'answered while it ran or after',
    'list-changed': 'list changed',
    'clock-started': 'clock started',
    'clock-stopped': 'clock stopped',
    'silver-checked': 'silver check',
    'station-described': 'working place described',
    'station-given-up': 'working place given up',
    'ventilation-checked': 'ventilation check',
    'step-started': 'step started',
    'step-ended': 'step ended',
    'batch-charged': 'charged',
    'batch-recovered': 'got back',
    'stream-logged': 'waste logged',
    'stream-tested': 'found later',
    'counting-said': 'counting of the month',
    'container-opened': 'container opened',
    'container-changed': 'container changed',
    'stream-placed': 'waste put in',
    'contents-moved': 'contents moved',
    'water-lost': 'water went off',
    'level-read': 'level read',
    'contents-determined': 'contents determined',
    'container-marked': 'container marked',
    'candidate-answered': 'word on a candidate',
    'container-inspected': 'container looked at',
    'walk-finished': 'walk finished',
    'finding-closed': 'finding closed',
    'paper-made': 'paper made',
    'treatment-begun': 'treatment begun',
    'dose-added': 'dose added',
    'pot-read': 'pot read',
    'bench-tested': 'bench test',
    'treatment-ended': 'treatment ended',
    'price-stated': 'price stated',
    'entry-corrected': 'correction',
    'entry-withdrawn': 'withdrawal',
  };

const withUnit = (text: string, unit: string) => `${text}\u2009${unit}`;

/** What is not known. Never an empty place, never zero. */
export const notDetermined = 'not determined';
/** In the place of the day by which a container must leave: it is gone, or its waste has stood beside the work alone. */
export const noTimeRuns = 'no time runs';

const noneLogged = 'none logged';

export const dataWords = {
  holdsNothing: 'nothing: the container is empty by the record.',
  notAccounted: 'something that no log accounts for',
  whatItIs: (name: string, meaning: string) => `${name}: ${meaning}`,
  ofBatches: (codes: readonly string[]) =>
    codes.length > 1 ? `batches ${joined(codes)}` : `batch ${codes[0]}`,
  batch: (code: string, mass: string, capacitors: string, era: string) =>
    `Batch ${code}: ${mass} of ${capacitors}, ${era}`,
  step: (name: string, when: string) => `${name} ${when}`,
  noSteps: 'no steps logged before it',
  noBatch: (stream: string, day: string) => `${stream}, of no one batch, logged ${day}`,
  logged: (stream: string, amount: string, day: string) => `${stream} logged ${day}, ${amount}`,
  movements: (ins: number, outs: number, when: string) =>
    `${outs === 0 ? `Put or poured in ${times(ins)}` : `Put or poured in ${times(ins)}, taken out ${times(outs)}`}, ${when}`,
  over: (codes: readonly string[], all: boolean) =>
    `${all ? 'All' : 'Some'} of it was poured over from ${joined(codes)}`,
  liquid: 'liquid',
  wetSolid: (mass: string) => `${mass} of wet solid`,
  solidsNone: 'no solids logged',
  liquidNone: 'no free liquid logged',
  ofStream: (said: string, stream: string) => `${said} (${stream})`,
  asLogged: (said: string, day: string) => `${said}, logged ${day}`,
  phOf: (value: string, instrument: string, day: string) => `${value} ${instrument}, ${day}`,
  phMixed: (said: string) => `not determined as mixed; logged apart: ${said}`,
  limit: (percent: string, stated: boolean) => `${percent} % ${stated ? 'by the local rules' : '(usual)'}`,
  noneLogged,
  loggedUndetermined: 'logged, amount not determined',
  freeAcid: 'Free nitric acid',
  nitrate: 'Nitrate',
  workedFromAbove: 'from acid and metals',
  evidenceOn: (how: string, day: string) => `${how}, ${day}`,
  usualPurity: 'usual for the grade',
  byBasicity: (factor: string) => `basicity factor ${factor} (ASTM C400)`,
  onTheBag: 'as stated',
  noBase: {
    ammonia: 'Not worked out: ammonia-test waste is in it. Never lime or caustic here; ask the collector.',
    doubtful: 'Not worked out: nobody knows for sure what is in it.',
    unaccounted: 'Not worked out: something in it is in no log.',
    treated: 'Not worked out: it has been treated since.',
    'acid-open': 'Not worked out: the free acid is not determined.',
  },
  noBaseNothing: 'Not worked out: no liquor is logged in it.',
  baseNote: 'Rise: all at once. Nitrate stays.',
  treatmentNot: 'The local rules do not allow treatment here.',
  treatmentOpen: 'Whether treatment is allowed here: not determined.',
  treatmentAllowed: (who: string, day: string) => `Treatment here is allowed: ${who} said so, ${day}.`,
  slurry:
    'slurry: liquid with the solids that were brought down; volume as logged, what was added not counted',
  treatedIn: (code: string, when: string) => `treated in ${code}, ${when}`,
  dosed: (agent: string, mass: string, doses: number) =>
    `${agent} ${mass} ${doses === 1 ? 'in one portion' : `in ${doses} portions`}`,
  nothingAdded: 'nothing logged as added',
  lastPh: (said: string) => `last pH ${said}`,
  noPh: 'no pH read',
  targetPh: (ph: string) => `planned to pH ${ph}`,
  targetNone: 'no pH planned',
  stillRunning: (to: string) => `${to}, still running`,
  endedOn: (to: string, outcome: string, when: string) => `${to}, ${outcome} ${when}`,
  fellShort: 'not neutralised by what was read',
  outcome: { reached: 'end reached', stopped: 'stopped before the end' },
  dissolvedNow: 'What is dissolved now: not determined, unless measured since. Nitrate stays.',
  untreatedToo: 'Untreated waste has been put to it.',
  yes: 'yes',
  no: 'no',
  phBetween: (low: string, high: string) => `pH ${low} to ${high}`,
  daysText: (n: string) => withUnit(n, n === '1' ? 'day' : 'days'),
  hazardClasses: 'Hazard class',
  wasteCodes: 'Waste code',
  transport: 'Transport entry',
  authority: 'the authority',
  collector: 'the collector',
  confirmedBy: (role: string, name: string | undefined) => (name === undefined ? role : `${role}, ${name}`),
  nobodySaid: 'nobody has confirmed it',
  /** Somebody's word on a candidate. */
  wordOn: {
    accepted: (who: string, day: string, document?: string) =>
      `confirmed by ${[who, day, ...(document === undefined ? [] : [document])].join(', ')}`,
    refused: (who: string, day: string, document?: string) =>
      `not so, says ${[who, day, ...(document === undefined ? [] : [document])].join(', ')}`,
    stale: (who: string, day: string) =>
      `nobody has confirmed it: ${who}’s word of ${day} was for other contents`,
  },
  codesConfirmed: (codes: string, who: string) => `${codes} (confirmed by ${who})`,
  codesCandidates: (codes: string) => `${codes} (candidates)`,
  contact: (name: string, contact: string, licence?: string) =>
    `${name}, ${contact}${licence === undefined ? '' : `, licence ${licence}`}`,
  cautions: [
    'Confirm with your authority or collector before anything moves.',
    '“Not determined” means not measured or not said, not zero. Ranges hold about 19 times in 20: plan by the high end.',
    'Nothing here is fit for a drain.',
  ],
  corrects: (kind: string) => `correction of: ${kind}`,
  withdraws: (kind: string) => `withdrawal of: ${kind}`,
  outOfShelf: 'off the shelf',
} as const;

const times = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);

export const between = (from: string, to: string): string => `${from} to ${to}`;

/** "B-16, B-17 and B-18" */
export function joined(parts: readonly string[]): string {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Keeps codes such as C-07 on one line. */
export const unbroken = (code: string): string => code.replaceAll('-', '\u2011');

/** A flag as a paper says it; amounts come printed. */
export function flagWords(
  flag: Flag,
  amount: (digits: string, unit: 'L' | 'g') => string,
  day: (iso: string) => string,
): string {
  switch (flag.code) {
    case 'over-capacity':
      return `Over its capacity by the record: ${amount(flag.holds, 'L')} logged, ${amount(flag.capacity, 'L')} when full.`;
    case 'over-fill-limit':
      return `Too full: ${amount(flag.holds, 'L')}, limit ${amount(flag.limit, 'L')} (${flag.limitPercent} %).`;
    case 'tight-cap-on-gassing-waste':
      return 'Tight cap on waste that may still give off gas. Vent before it is carried.';
    case 'contents-doubtful':
      return `Contents doubtful since ${day(flag.since)}. The figures are what the record says, not what is known to be in it.`;
    case 'met-what-it-must-not':
      return `Two things are in it that must not meet. ${saidBy(flag.by)} Confirm with the collector before anybody touches it.`;
    case 'container-does-not-hold':
      return `What the container is made of does not stand what is in it. ${saidBy(flag.by)}`;
    case 'material-not-determined':
      return 'Whether the container stands what is in it is not determined.';
    case 'more-taken-than-held':
      return `More was taken out (${amount(flag.taken, flag.unit)}) than it held by the record (${amount(flag.held, flag.unit)}).`;
    case 'added-while-closed':
      return 'Something was added while it was marked closed.';
    case 'added-while-held':
      return 'Something was added while it was being held as it was.';
    case 'added-while-gone':
      return 'Something was added though it was marked as gone.';
    case 'container-damaged':
      return `The container is damaged, since ${day(flag.since)}, and is not empty by the record.`;
    case 'said-empty-yet-holds':
      return `Said to be empty; by the record it holds ${volumeAndMass(flag, amount)}.`;
    case 'level-disagrees':
      return `Read to hold ${amount(flag.level, flag.unit)} on ${day(flag.at)}; by the record ${amount(flag.held, flag.unit)}. Not explained.`;
    case 'finding-open':
      return `Seen on a walk, not closed: ${flag.ask} ${flag.answer}.`;
    case 'was-diluted':
      return `Mixing made ${flag.codes.join(', ')} disappear by what was known then. That is dilution: the waste is to be treated as having had them.`;
    case 'answer-stale':
      return `Confirmed for what was in it before, not for what is in it now: ${flag.answered.join(', ')}.`;
    case 'placed-in-another-unit':
      return 'A waste was put in by another measure than it was logged by; its share is not determined.';
    case 'stream-not-placed':
      return `Of a waste in it, some is in no container by the record (${volumeAndMass(flag, amount)}).`;
    case 'placed-more-than-logged':
      return `More of a waste was put into containers than was logged (${volumeAndMass(flag, amount)} over).`;
    case 'evidence-disagrees':
      return 'Two ways of knowing what is dissolved in it disagree beyond their uncertainty.';
    case 'more-acid-taken-than-charged':
      return 'Its metals took more acid than was charged, by what was written down.';
    case 'step-without-clearance':
      return flag.lateListAt === null
        ? `Step done without a clearance: ${flag.step.replaceAll('-', ' ')}.`
        : `Step done without a clearance: ${flag.step.replaceAll('-', ' ')}. Its list was gone through afterwards, ${day(flag.lateListAt)}.`;
    case 'clearance-does-not-hold':
      return `The clearance of a step does not hold: ${flag.step.replaceAll('-', ' ')}.`;
    case 'treatment-running':
      return flag.lastReadingAt === null
        ? `A treatment has been running since ${day(flag.since)}; nothing was read yet.`
        : `A treatment has been running since ${day(flag.since)}; last read ${day(flag.lastReadingAt)}.`;
    case 'treatment-fell-short':
      return flag.read === null
        ? `Treatment told to have reached its end, aim pH ${flag.aim}; no pH was read.`
        : `Treatment ended at pH ${flag.read}, aim ${flag.aim}: not neutralised by what was read.`;
    case 'treatment-not-allowed':
      return flag.because === 'not-allowed'
        ? 'Treated though the local rules did not allow it.'
        : 'Treated though nobody had said that it is allowed.';
    case 'treatment-without-clearance':
      return 'Treated without a clearance.';
    case 'treatment-clearance-does-not-hold':
      return 'The clearance of its treatment does not hold.';
    case 'ammonia-in-treatment':
      return flag.baseAdded
        ? 'Ammonia-test waste has met a base in it: it may explode. Confirm with the collector before anybody touches it.'
        : 'A treatment was begun on ammonia-test waste. No base may be put on it.';
    case 'dose-outside-treatment':
      return 'Something was added as a treatment while none was running.';
    case 'treatment-while-another-runs':
      return 'Two treatments ran in it at once by the record.';
    case 'added-during-treatment':
      return 'Waste was put in while a treatment was running.';
    case 'code-used-twice':
      return `The code ${unbroken(flag.used)} is used twice in the record.`;
    case 'entry-does-not-add-up':
      return 'An entry behind it does not fit the others.';
    case 'workshop-not-described':
      return 'The workshop is not described.';
    case 'local-rules-missing':
      return `Local rules not entered: ${flag.rules.map((rule) => ruleWords[rule].toLowerCase()).join(', ')}.`;
    case 'treatment-for-planning-only':
      return 'Treatment is for planning only.';
    case 'nothing-fit-for-drain':
      return 'Nothing here is fit for a drain.';
  }
}

const volumeAndMass = (
  flag: { readonly volume: string; readonly mass: string },
  amount: (digits: string, unit: 'L' | 'g') => string,
): string =>
  [flag.volume === '0' ? '' : amount(flag.volume, 'L'), flag.mass === '0' ? '' : amount(flag.mass, 'g')]
    .filter((part) => part !== '')
    .join(', ');

/** Words that stand printed, and how they are joined. */
export const paperWords = {
  sheetTitle: 'Characterisation sheet',
  setTitle: 'Disposal papers',
  subject: (codes: string) => `Containers for disposal: ${codes}`,
  mastheadLine: (
    { name, address, generatorNumber }: { name: string; address: string; generatorNumber: string },
    made: string,
    by: string,
  ) => `${name}, ${address}. Generator number: ${generatorNumber}. Made ${made}; by: ${by}.`,
  runningHead: (title: string, codes: string, name: string, made: string) =>
    `${title} ${codes}. ${name}, ${made}`,
  count: (n: number) => `of ${n} containers`,
  lastEntry: (n: number, hash: string) => `Last entry of the record: ${n}, SHA-256 ${hash}`,
  contentHash: (hash: string) => `Content of this paper, SHA-256 ${hash}`,
  footCaution:
    'Not confirmed until the authority or collector has signed it. Safety data sheets and local rules go before it.',
  footHashes: (n: number, last: string, content: string) =>
    `Entry ${n} of the record, SHA-256 ${last}…; this paper ${content}…; whole at its end.`,
  pageWords: 'page {page} of {pages}',
  demo: 'invented demo',
  attachment: 'Everything this paper says, as data; its hash is over the canonical JSON (RFC 8785).',
  sheetOf: (code: string) => `${code}: characterisation sheet`,
  whatItIs: 'What it is',
  treatment: 'Treatment',
  howItArose: 'How it arose',
  state: 'State',
  stateText: (state: string, colour: string, layers: string, ph: string) =>
    `${state}. Colour: ${colour}. Layers: ${layers}. pH: ${ph}.`,
  container: 'Container',
  vessel: (capacity: string, material: string, vessel: string, cap: string) =>
    `${capacity} ${vessel} of ${material}, ${cap}.`,
  standsText: (place: string, tray: string) => `Stands: ${place}; tray: ${tray}.`,
  fillText: ({
    holds,
    capacity,
    percent,
    limit,
  }: {
    holds: string;
    capacity: string;
    percent: string;
    limit: string;
  }) => `Holds ${holds} of ${capacity}, ${percent}; limit ${limit}.`,
  firstIn: 'First waste in',
  since: (first: string, leave: string) => `${first}. Must leave by: ${leave}.`,
  mustLeaveBy: 'Must leave by',
  leaveDays: (careful: string, other: string) => `${careful}; by the longer count ${other}`,
  daysFrom: (days: string, from: string) => `${days} from ${from}`,
  mustLeave: (days: string, counted: string, by: string, on: string) => `${days} (${counted}: ${by}, ${on})`,
  mustLeaveOpen: 'not determined (no limit stated)',
  composition: 'What is in it',
  substance: 'Substance',
  low: 'low',
  likely: 'likely',
  high: 'high',
  known: 'How it is known',
  atLeast: (name: string, by: readonly string[]) =>
    `${name}: at least; not told in full by ${by.join('; ')}.`,
  noneLogged,
  ammonia: 'Ammonia',
  chloride: 'Chloride',
  otherMetals: 'Other metals',
  eachNot: (names: readonly string[]) => `${joined(names)}: not determined`,
  liquorNote: (volume: string, density: string, held: boolean, noTestWaste: boolean) =>
    `A litre, then in all. Liquor ${volume}${held ? ', held liquor included' : ''}; density ${density}.${noTestWaste ? ' Ammonia, chloride: none logged.' : ''}`,
  residue: (name: string, mass: string, held: string) =>
    `Wet residue (${name}): ${mass}; liquor held in it: ${held}.`,
  withUnit: (text: string, unit: string) => (unit === '1' ? text : withUnit(text, unit)),
  range: (likely: string, low: string, high: string, unit: string) =>
    unit === '1' ? `${likely} (${low} to ${high})` : `${likely} (${low} to ${high})\u00a0${unit}`,
  bases: 'Base needed, for planning only',
  base: 'As sold',
  firstPortions: 'first',
  buy: 'buy',
  purity: 'purity',
  heat: 'heat',
  rise: 'rise',
  sludge: 'wet sludge',
  gas: 'CO₂ gas',
  none: 'none',
  anyBase: 'Any base',
  leaves: (base: string, names: readonly string[]) => `${base} leaves ${joined(names)} dissolved.`,
  countedWithout: (names: readonly string[]) => `What is not known of ${names.join('; ')} is not counted.`,
  codes: 'Class, code, transport',
  /** Beside the heading that says the rest. */
  shortOf: (what: string) =>
    ({
      [dataWords.hazardClasses]: 'Class',
      [dataWords.wasteCodes]: 'Code',
      [dataWords.transport]: 'Transport',
    })[what] ?? what,
  whoConfirms: (who: string, whats: readonly string[]) => `${capital(joined(whats))}: ${who} confirms.`,
  candidatesOf: (code: string) => `Candidates: ${code}`,
  candidatesNote:
    'What the laws make of it, from the high end of each range. Nothing here decides: a named person confirms.',
  candidate: 'candidate',
  ruleNumber: 'rule',
  standing: 'standing',
  numbersAndLimit: 'number, against its limit',
  whoseWord: 'whose word',
  notDetermined,
  noNumber: 'the rule has no number',
  held: (sentence: string, figure: string, limit: string) => `${sentence} ${figure}, limit ${limit}`,
  lacks: (names: readonly string[]) => `missing: ${joined(names)}`,
  given: (scheme: string, code: string, said: string) =>
    `${scheme}: ${code}, not proposed by the rules; ${said}.`,
  decides: (what: string, codes: readonly string[]) => `${what}: not determined; decides ${joined(codes)}.`,
  rulesNamed: 'Rules named above',
  mustNotMeet: 'Must not meet',
  /** The rules all begin with the same word. */
  nevers: (rules: readonly string[]) =>
    `Never: ${rules.map((rule) => rule.replace(/^Never /, '')).join('; ')}. Reasons behind.`,
  seeFirstPage: 'Confirm with your authority or collector before anything moves. Who confirms what: page 1.',
  generatorSigns: 'Generator, name and date',
  collectorSigns: 'Collector or authority, name and date',
  drawn: 'A drawing, no evidence. The figures decide.',
  list: (n: number) => (n === 1 ? 'One container' : `${n} containers`),
  code: 'Code',
  holds: 'Holds',
  open: 'Flagged, not determined',
  notKnown: (names: readonly string[]) => `Not determined: ${joined(names)}.`,
  nothingFlagged: 'nothing flagged',
  workshop: 'The workshop',
  name: 'Name',
  address: 'Address',
  generatorNumber: 'Generator number',
  authority: 'Authority',
  collector: 'Collector',
  counter: 'Hazardous-waste counter',
  emergency: 'Emergency number',
  localRules: 'Local rules',
  rule: 'Rule',
  value: 'Stated',
  saidBy: 'Said by',
  saidOn: 'On',
  document: 'Stands in',
  ruleOpen: 'not determined: not entered',
  line: 'Line',
  what: 'What',
  formula: 'With the numbers put in',
  result: 'Result',
  from: 'From lines',
  withRange: 'Value, range',
  source: 'Source',
  exact: 'exact',
  evidence: 'Evidence: what was measured, read, stated or assumed',
  working: (code: string) => `Working, ${code}`,
  ofContainer: (code: string, sentence: string) => `${code}: ${sentence}`,
  workingInside:
    'The working of every figure, with published values and sources, is in the data inside this file.',
  fileCount: (n: number) => `${n}-containers`,
  workingNote:
    'Lines of the working are named E (evidence), P (published) and W (worked out). Every digit, range and source is in the data inside this file.',
  published: 'Published values used',
  sources: 'Sources',
  never: 'Never',
  happens: 'What happens',
  entries: 'Entries of the record behind it',
  entry: 'Entry',
  when: 'Happened',
  who: 'Who',
  hash: 'SHA-256 begins',
  entriesNote: 'Identifiers and whole hashes of the entries are in the data inside this file.',
} as const;
