/** Words in the data of a disposal paper; `paper-words.ts` has those around them. */
import type { Feed } from '../../ledger/entries/batches';
import type { ContainerOpened } from '../../ledger/entries/containers';
import type { Agent } from '../../ledger/entries/treatments';
import { bases } from '../../reference/tables';
import { joined, withUnit } from '../words';

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

export const instrumentWords = { paper: 'by paper', meter: 'by meter' } as const;

/** What is added in a treatment, within a sentence. */
export const agentWords = (agent: Agent): string =>
  agent === 'iron' ? 'iron' : bases[agent].name.toLowerCase();

export const noneLogged = 'none logged';

const times = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);

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
  batchAway: (stream: string, code: string, day: string) => `${stream} of batch ${code}, logged ${day}`,
  logged: (stream: string, amount: string, day: string) => `${stream} logged ${day}, ${amount}`,
  movements: (ins: number, outs: number, when: string, emptiedBefore: boolean) =>
    [
      `${emptiedBefore ? 'Since it was last empty, put' : 'Put'} or poured in ${times(ins)}`,
      ...(outs === 0 ? [] : [`taken out ${times(outs)}`]),
      when,
    ].join(', '),
  over: (codes: readonly string[], all: boolean) =>
    `${all ? 'All' : 'Some'} of it was poured over from ${joined(codes)}`,
  liquid: 'liquid',
  wetSolid: (mass: string) => `${mass} of wet solid`,
  solidsNone: 'no solids logged',
  liquidNone: 'no free liquid logged',
  ofStream: (said: string, stream: string) => `${said} (${stream})`,
  asLogged: (said: string, day: string) => `${said}, logged ${day}`,
  phOf: (value: string, instrument: string, day: string) => `${value} ${instrument}, ${day}`,
  doubtedShort: 'Contents not known for sure',
  empty: 'Empty by the record',
  doubted: (byRecord: string) => `Nobody knows for sure what is in it. By the record: ${byRecord}`,
  doubtedUntold: 'Nobody knows for sure what is in it, and the record tells of nothing.',
  sinceWaterWentOff: (said: string) => `not determined since water went off; before that ${said}`,
  phMixed: (said: string) => `not determined as mixed; logged apart: ${said}`,
  notClosed: 'Not written down as closed.',
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
  ofScheme: (scheme: string, codes: string) => `${scheme}: ${codes}`,
  codesCandidates: (codes: string) => `${codes} (candidates)`,
  contact: (name: string, contact: string) => `${name}, ${contact}`,
  cautions: [
    'Confirm with your authority or collector before anything moves.',
    '“Not determined” means not measured or not said, not zero. Ranges hold about 19 times in 20: plan by the high end.',
    'Nothing here is fit for a drain.',
  ],
  corrects: (kind: string) => `correction of: ${kind}`,
  withdraws: (kind: string) => `withdrawal of: ${kind}`,
  outOfShelf: 'off the shelf',
  says: (who: string) => `says ${who}`,
  ventilation: { enough: 'the place is enough', split: 'split the charge', none: 'no place for it' },
  seen: (codes: readonly string[]) => (codes.length === 0 ? 'none seen' : `seen: ${codes.join(', ')}`),
  notSeen: (code: string, why: string) => `not looked at: ${code}, ${why}`,
} as const;
