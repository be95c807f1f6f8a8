/** What an entry says, in words: one line for each kind, and a word for each of its parts. */
import { format } from 'date-fns';
import type { Body, BodyOf } from '../../ledger/entries/body';
import type { LocalRule } from '../../ledger/entries/local-rules';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { HistoryLine, State } from '../../ledger/state';
import { ruleNames } from '../../paperwork/rule-words';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { bases } from '../../reference/tables';
import { unbroken } from '../../ui/figure-value';
import { baseStated, countText } from '../amounts';
import { chargeWords, recoveryWords } from '../batches/account-words';
import { stepWords } from '../batches/words';
import { streamName } from '../words';
import { clockEnd, clockName, silverOutcome, verdictText } from './clock-words';
import { listChangeText } from './list-words';
import { treatmentTitle } from './treatment-words';

export const entryWords = {
  historyTitle: 'History',
  historySecond: 'Newest first. Leesbook never takes anything out.',
  none: 'Nothing is written down yet.',
  older: 'Show older ones',
  reading: 'Reading the record',
  unreadable: (count: number) =>
    count === 1 ? '1 could not be read' : `${countText(count)} could not be read`,
  fromDay: 'From which day back',
  fromDayHint: 'Left empty: from the newest.',
  thingSecond: 'Newest first, with all that was corrected or withdrawn',
  nothingOfIt: 'Nothing of it is in the record.',
  longOver:
    'It is long over: what was written of it lies further back in the record. “Read all of it” finds it.',
  lookThrough: 'Read all of it',
  lookThroughSecond: (older: number) =>
    older === 1
      ? 'Looks through 1 older entry as well'
      : `Looks through ${countText(older)} older entries as well`,
  looking: 'Reading all of it …',
  stopLooking: 'Stop reading',
  allOfIt: 'The whole record was read: this is all of it.',
  writtenWhen: {
    later: (at: string) => `Written down later: ${at}`,
    before: (at: string) => `Written down ${at}, before it is said to have happened`,
  },
  ownHour: 'Hour where it was written',
  ownHourLine: (hour: string) => `Where it was written: ${hour}`,
  onDevice: (device: string) => `On ${device}`,
  thisDevice: 'this phone',
  someDevice: 'a device that is not told',
  anotherDevice: (end: string) => `another device, …${end}`,
  photos: (count: number) => (count === 0 ? '' : count === 1 ? '1 photo' : `${count} photos`),
  files: (names: readonly string[]) => (names.length === 0 ? '' : `Filed: ${names.join(', ')}`),
  changed: (word: string, whenAndWho: string, reason: string) => `${word} ${whenAndWho}: ${reason}`,
  nobody: 'nobody said who',
  corrected: 'Corrected',
  withdrawn: 'Withdrawn',
  withdrawnSecond: 'Withdrawn. It counts in no figure; to undo that, withdraw the withdrawal.',
  wasNow: (part: string, was: string, is: string) => `${part}: ${was}, now ${is}`,
  nothing: 'nothing',
  reason: 'Reason',
  happened: 'Happened',
  written: 'Written down',
  who: 'By',
  says: 'What it says',
  saysNow: 'What counts now',
  became: 'What became of it',
  silverCheck: 'Open its working',
  handOver: 'Open the hand-over',
  ventilationCheck: 'Work it out again as it was',
  on: 'On',
  chain: 'How to check that it is as it was written',
  chainSays:
    'Its hash is worked out of every letter of this entry, and of the hash of the entry before it. If anything in either is changed, it fits no more.',
  chainDoor: 'Check the book',
  chainDoorSecond: 'Every entry, or against a paper; and what that proves',
  hash: 'Its hash',
  hashWhole: 'In full, SHA-256',
  previous: 'Of the entry before it on its device',
  first: 'none: it is the first on its device',
  entry: 'Name of the entry',
  device: 'Name of the device, and number on it',
  correct: 'Correct it',
  correctSecond: 'It happened, but was written wrongly',
  withdraw: 'Withdraw it',
  withdrawSecond: 'It did not happen',
  gone: 'This entry is not in the record.',
  correctTitle: 'Correct',
  correctHint: 'The entry stays as it was written; the correction stands beside it.',
  notCorrectable: 'This kind of entry is not corrected: withdraw it, then write it down again.',
  correctionWithdraw: 'Undo it: what it changed counts again as before.',
  why: 'Why it was wrong',
  whyHint: 'For example: misread the scale.',
  when: 'When it happened',
  whenWrong: 'Choose a day and hour that have passed.',
  unchanged: 'Nothing is changed yet.',
  broken: 'With these values it is no entry any more. Check them.',
  keepCorrection: 'Keep the correction',
  withdrawTitle: 'Withdraw',
  withdrawHint: 'It stays in the history, struck through, and counts in no figure any more.',
  withdrawWhy: 'Why it did not happen',
  keepWithdrawal: 'Withdraw it',
  yes: 'yes',
  no: 'no',
} as const;

export const asSealedWords = {
  title: 'This entry is not as it was sealed',
  second:
    'Its hash does not fit what it says: something in it changed after it was written, so all that it says is in doubt. A backup may hold it as it was: bring that back first. If there is none, and you know what happened, correct it or withdraw it.',
  change: 'A correction of this entry is not as it was sealed',
  changeSecond:
    'What counts now is in doubt. Look at the entries that changed it. A backup may hold them as they were.',
  restore: 'Restore a backup',
  line: 'Not as it was sealed: what it says is in doubt.',
  unreadable: 'This entry cannot be read',
  unreadableSecond:
    'It is damaged. It is kept as it lies there, and no figure counts it. A backup may bring it back.',
} as const;

/** A place in time where the person is: "12 May 2026, 10:40". */
export const momentText = (iso: string): string => format(new Date(iso), 'd MMM yyyy, HH:mm');

/** A device by the end of its name: "another device, …3F2A". */
export const deviceText = (device: string): string =>
  entryWords.anotherDevice(device.slice(-4).toUpperCase());

/** As it stands behind "of": this phone, another device, or one that an entry does not tell. */
export function deviceName(device: string | null, own: string): string {
  if (device === null) return entryWords.someDevice;
  return device === own ? entryWords.thisDevice : deviceText(device);
}

/** The beginning of a hash as papers print it, in fours: "1a2b 3c4d 5e6f 7a8b". */
export const hashText = (hash: string): string => (hash.slice(0, 16).match(/.{4}/g) ?? []).join('\u00a0');

/** A load by who took it and when. */
export function handOverText(state: State, id: string): string | undefined {
  const load = state.handOvers.get(id);
  return load && `${load.body.collector.name}, ${format(new Date(load.at), 'd MMM yyyy')}`;
}

export const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const stepText = (step: string): string => stepWords[step] ?? capital(step.replaceAll('-', ' '));

export const batchCode = (state: State, id: string | null): string =>
  id === null ? '' : unbroken(codeOfBatch(state, id) ?? '');
export const containerCode = (state: State, id: string): string =>
  unbroken(codeOfContainer(state, id) ?? '?');
const personName = (state: State, id: string): string => state.people.get(id)?.body.name ?? '?';
/** What an entry names and nobody can say of: of a long record it may only be read with the whole of it. */
export const notHere = ({ earlier }: State): string => (earlier ? 'that is not at hand' : 'that is not here');
export const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');

const markText: Readonly<Record<BodyOf<'container-marked'>['mark'], string>> = {
  closed: 'closed',
  reopened: 'opened again',
  'contents-doubtful': 'contents in doubt',
  'contents-known': 'contents known again',
  held: 'held as it is',
  'let-go': 'held no more',
  leaving: 'set aside to leave',
  staying: 'stays after all',
  gone: 'gone',
  'came-back': 'came back',
  emptied: 'emptied',
  damaged: 'damaged',
  mended: 'sound again',
  'proof-filed': 'proof of disposal filed',
};

const purposeText: Readonly<Record<BodyOf<'contents-moved'>['purpose'], string>> = {
  transfer: 'moved',
  sample: 'taken as a sample',
  spill: 'spilt',
  treatment: 'taken for treatment',
};

export function streamText(state: State, streamId: string): string {
  const stream = state.streams.get(streamId)?.body;
  return stream ? joined(streamName[stream.stream], batchCode(state, stream.batchId)) : '?';
}

export function stepOf(state: State, stepId: string): string {
  const step = state.steps.get(stepId)?.body;
  return step ? joined(stepText(step.step), batchCode(state, step.batchId)) : `A step ${notHere(state)}`;
}

export const amount = (
  { value, unit }: { readonly value: string; readonly unit: string },
  sign: DecimalSign,
): string => `${formatWritten({ value, unit }, sign)}\u2009${unit}`;

const chargeText = (charge: BodyOf<'batch-charged'>['charge'], sign: DecimalSign): string =>
  joined(
    `${chargeWords[charge.what]} ${amount(charge.what === 'copper' ? charge.mass : charge.volume, sign)}`,
    charge.what === 'acid' ? amount(charge.strength, sign) : '',
  );

const recoveryText = ({ what, mass }: BodyOf<'batch-recovered'>['recovery'], sign: DecimalSign): string =>
  `${recoveryWords[what]} ${amount(mass, sign)}`;

/** In the middle of a line. */
const ruleName = (stated: LocalRule): string => lower(ruleNames[stated.rule]);

/** One line for each kind, so that a new kind does not compile until it has its words. */
export function entryTitle(state: State, body: Body, sign: DecimalSign): string {
  switch (body.kind) {
    case 'workshop-described':
      return `Workshop described: ${body.name}`;
    case 'person-added':
      return `Person: ${body.name}`;
    case 'person-left':
      return `${personName(state, body.personId)} left`;
    case 'local-rule-stated':
      return `Local rule: ${ruleName(body.stated)}`;
    case 'base-described':
      return `${body.base in bases ? bases[body.base as keyof typeof bases].name : stepText(body.base)}, ${baseText(body, sign)}`;
    case 'batch-opened':
      return `Batch ${unbroken(body.code)} opened, ${amount(body.feed.mass, sign)}`;
    case 'checklist-finished':
      return joined(
        `${body.outcome === 'cleared' ? 'Cleared' : 'Stopped'}: ${lower(body.checklist.title)}`,
        batchCode(state, body.batchId),
      );
    case 'checklist-answered-later':
      return joined(
        `${body.answer.ask} ${body.answer.answer}${body.answer.unit === undefined ? '' : `\u2009${body.answer.unit}`}`,
        body.answer.stopped ? 'stopped' : '',
      );
    case 'clock-started':
      return joined(clockName[body.of], body.name ?? '', `due ${momentText(body.due)}`);
    case 'clock-stopped': {
      const clock = state.clocks.get(body.clockId)?.body;
      return `${clock ? clockName[clock.of] : 'Clock'}: ${clockEnd[body.how]}`;
    }
    case 'list-changed':
      return listChangeText(state, body);
    case 'station-described':
      return `Working place: ${body.name}`;
    case 'station-given-up':
      return `Working place given up: ${state.stations.get(body.stationId)?.body.name ?? '?'}`;
    case 'ventilation-checked':
      return joined(`Ventilation check: ${verdictText[body.verdict]}`, batchCode(state, body.batchId));
    case 'silver-checked':
      return joined(`Silver check: ${silverOutcome[body.outcome]}`, batchCode(state, body.batchId));
    case 'step-started':
      return `${joined(stepText(body.step), batchCode(state, body.batchId))}: begun`;
    case 'step-ended':
      return `${stepOf(state, body.stepId)}: ended`;
    case 'batch-charged':
      return joined(chargeText(body.charge, sign), batchCode(state, body.batchId));
    case 'batch-recovered':
      return joined(recoveryText(body.recovery, sign), batchCode(state, body.batchId));
    case 'stream-logged':
      return joined(
        streamName[body.stream],
        batchCode(state, body.batchId),
        body.liquid ? amount(body.liquid.volume, sign) : '',
        body.solid ? amount(body.solid.wetMass, sign) : '',
      );
    case 'stream-tested':
      return `Found later: ${streamText(state, body.streamId)}`;
    case 'counting-said':
      return `${streamText(state, body.streamId)}: ${body.counted === 'counted' ? 'counted' : 'not counted'} in its month`;
    case 'container-changed':
      return `${containerCode(state, body.containerId)} changed`;
    case 'water-lost':
      return `${amount(body.amount, sign)} of water went off from ${containerCode(state, body.containerId)}`;
    case 'level-read':
      return `${containerCode(state, body.containerId)}: ${amount(body.level, sign)} read`;
    case 'contents-determined':
      return `${containerCode(state, body.containerId)}: ${lower(streamText(state, body.streamId))}, says ${body.saidBy}`;
    case 'candidate-answered':
      return `${containerCode(state, body.containerId)}: ${body.code} ${body.answer}`;
    case 'lab-reported':
      return `${containerCode(state, body.containerId)}: report of ${body.laboratory}`;
    case 'container-inspected':
      return `${containerCode(state, body.containerId)} looked at${body.found.length === 0 ? '' : `: ${body.found.length} found`}`;
    case 'walk-finished':
      return `Walk along the containers: ${body.containerIds.length} seen`;
    case 'finding-closed':
      return `Closed: ${lower(state.findings.get(body.findingId)?.found.ask ?? '?')}`;
    case 'container-opened':
      return `${unbroken(body.code)} opened, ${amount(body.capacity, sign)} ${body.vessel}`;
    case 'stream-placed':
      return `${amount(body.amount, sign)} into ${containerCode(state, body.containerId)}`;
    case 'contents-moved': {
      const from = containerCode(state, body.fromContainerId);
      const way =
        body.toContainerId === null
          ? `from ${from}`
          : `${from} to ${containerCode(state, body.toContainerId)}`;
      return `${amount(body.amount, sign)} ${purposeText[body.purpose]}: ${way}`;
    }
    case 'container-marked':
      return `${containerCode(state, body.containerId)}: ${markText[body.mark]}`;
    case 'paper-made':
      return `Paper made: ${body.fileName}`;
    case 'handed-over':
      return `${body.containers.map(({ containerId }) => containerCode(state, containerId)).join(', ')} handed over to ${body.collector.name}`;
    case 'load-rejected':
      return `Load rejected: ${body.containerIds.map((id) => containerCode(state, id)).join(', ')} here again`;
    case 'proof-filed':
      return `Proof of disposal: ${body.containerIds.map((id) => containerCode(state, id)).join(', ')}`;
    case 'treatment-begun':
    case 'dose-added':
    case 'pot-read':
    case 'bench-tested':
    case 'treatment-ended':
    case 'price-stated':
      return treatmentTitle(state, body, sign);
    case 'entry-corrected':
      return `Correction: ${lower(entryTitle(state, body.body, sign))}`;
    case 'entry-withdrawn': {
      const target = state.log.find(({ id }) => id === body.withdraws)?.body;
      return `Withdrawal: ${target ? lower(entryTitle(state, target, sign)) : '?'}`;
    }
    default:
      return body satisfies never;
  }
}

/** "12 May 2026, 10:40, Maren" */
export const whenAndWho = (state: State, { entry, at: when }: HistoryLine): string =>
  joined(momentText(when), entry.who === null ? entryWords.nobody : personName(state, entry.who));

function baseText(body: BodyOf<'base-described'>, sign: DecimalSign): string {
  const told = baseStated(body, sign);
  return `${told?.value}\u202f${told?.unit}${body.purity ? ' pure' : ''}`;
}
