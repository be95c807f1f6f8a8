/** What an entry says, in words: one line for each kind, and a word for each of its parts. */
import { format } from 'date-fns';
import type { Body, BodyOf, PlainBody } from '../../ledger/entries/body';
import type { HistoryLine, State } from '../../ledger/state';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { bases, metals } from '../../reference/tables';
import { unbroken } from '../../ui/figure-value';
import { eraWords, stepWords } from '../batches/words';
import { howKnown, streamName } from '../words';
import { at, type Leaf, type Path } from './leaves';
import { ruleWords, yesNo } from './rule-words';

export const entryWords = {
  historyTitle: 'History',
  historySecond: 'Newest first. Nothing is ever taken out.',
  none: 'Nothing is written down yet.',
  older: (count: number) => `Show ${count} older`,
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
  chain: 'Hashes',
  entry: 'Entry',
  device: 'Device and number',
  hash: 'Its hash, SHA-256',
  previous: 'Hash of the entry before',
  first: 'none: the first on this device',
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

/** A place in time where the person is: "12 May 2026, 10:40". */
export const momentText = (iso: string): string => format(new Date(iso), 'd MMM yyyy, HH:mm');

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const stepText = (step: string): string => stepWords[step] ?? capital(step.replaceAll('-', ' '));

const batchCode = (state: State, id: string | null): string =>
  id === null ? '' : unbroken(state.batches.get(id)?.body.code ?? '');
const containerCode = (state: State, id: string): string =>
  unbroken(state.containers.get(id)?.body.code ?? '?');
const personName = (state: State, id: string): string => state.people.get(id)?.body.name ?? '?';
const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');

const markText: Readonly<Record<BodyOf<'container-marked'>['mark'], string>> = {
  closed: 'closed',
  reopened: 'opened again',
  'contents-doubtful': 'contents in doubt',
  'contents-known': 'contents known again',
};

const purposeText: Readonly<Record<BodyOf<'contents-moved'>['purpose'], string>> = {
  transfer: 'moved',
  sample: 'taken as a sample',
  spill: 'spilt',
  treatment: 'taken for treatment',
};

function streamText(state: State, streamId: string): string {
  const stream = state.streams.get(streamId)?.body;
  return stream ? joined(streamName[stream.stream], batchCode(state, stream.batchId)) : '?';
}

function stepOf(state: State, stepId: string): string {
  const step = state.steps.get(stepId)?.body;
  return step ? joined(stepText(step.step), batchCode(state, step.batchId)) : '?';
}

const amount = (
  { value, unit }: { readonly value: string; readonly unit: string },
  sign: DecimalSign,
): string => `${formatWritten({ value, unit }, sign)}\u2009${unit}`;

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
      return `Local rule: ${lower(ruleWords[body.stated.rule].name)}`;
    case 'base-described':
      return `${body.base in bases ? bases[body.base as keyof typeof bases].name : stepText(body.base)}, ${amount(body.purity, sign)} pure`;
    case 'batch-opened':
      return `Batch ${unbroken(body.code)} opened, ${amount(body.feed.mass, sign)}`;
    case 'checklist-finished':
      return joined(
        `${body.outcome === 'cleared' ? 'Cleared' : 'Stopped'}: ${lower(body.checklist.title)}`,
        batchCode(state, body.batchId),
      );
    case 'step-started':
      return `${joined(stepText(body.step), batchCode(state, body.batchId))}: begun`;
    case 'step-ended':
      return `${stepOf(state, body.stepId)}: ended`;
    case 'stream-logged':
      return joined(
        streamName[body.stream],
        batchCode(state, body.batchId),
        body.liquid ? amount(body.liquid.volume, sign) : '',
        body.solid ? amount(body.solid.wetMass, sign) : '',
      );
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

/** Words of the parts; a part that is missing here is shown by its own name, spaced out. */
const parts: Readonly<Record<string, string>> = {
  name: 'name',
  mapReference: 'map reference',
  noSignal: 'where to phone with no signal',
  hazardousWasteCounter: 'hazardous-waste counter',
  generatorNumber: 'generator number',
  emergencyNumber: 'emergency number',
  personId: 'person',
  stated: 'rule',
  saidBy: 'who said so',
  saidOn: 'when it was said',
  feed: 'feed',
  batchId: 'batch',
  stepId: 'step',
  streamId: 'waste',
  containerId: 'container',
  containerIds: 'container',
  fromContainerId: 'from',
  toContainerId: 'into',
  runId: 'run',
  paperId: 'paper',
  openedOn: 'in use since',
  wetMass: 'wet mass',
  massSpread: 'spread of the mass',
  volumeSpread: 'spread of the volume',
  plusMinus: 'plus or minus',
  as: 'taken as',
  by: 'how known',
  freeAcid: 'free acid',
  titrantStrength: 'strength of the titrant',
  ph: 'pH',
  holds: 'holds',
  liquor: 'liquor',
  otherMaterial: 'other material',
  validUntil: 'holds until',
  startedAt: 'begun',
  finishedAt: 'finished',
  contentHash: 'hash of the paper',
  fileName: 'file',
};

/** Levels that a person need not hear. */
const silent = new Set(['liquid', 'solid', 'findings', 'body', 'contact']);

/** Last words that say no more than what stands before them. */
const said = new Set(['value', 'name', 'concentration', 'result', 'by']);

const spaced = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A finding by its metal and how it is known: "copper (photometer)"; how alone stands as the statement itself. */
function findingText(value: unknown, asStatement: boolean): string {
  const { metal, by } = (value ?? {}) as { readonly metal?: string; readonly by?: string };
  const name = metal === undefined ? '' : (metals[metal as keyof typeof metals]?.name ?? metal);
  const how = by === undefined || asStatement ? '' : `(${howKnown[by] ?? by})`;
  return [name, how].filter((text) => text !== '').join(' ');
}

/** @example partText(body, ['liquid', 'findings', 0, 'concentration']) // 'Copper (photometer)' */
export function partText(body: unknown, path: Path): string {
  const last = path.at(-1);
  const heard = path.flatMap((key, depth): string[] => {
    if (typeof key === 'number') {
      const inside = findingText(at(body, path.slice(0, depth + 1)), last === 'by');
      return inside === '' ? [] : [inside];
    }
    if (silent.has(key) && depth < path.length - 1) return [];
    return [parts[key] ?? spaced(key)];
  });
  const shown = heard.length > 1 && said.has(String(last)) ? heard.slice(0, -1) : heard;
  return capital(shown.join(': ').replace(': (', ' ('));
}

const isInstant = (text: string): boolean => /^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/.test(text);

const namesOf: readonly ((state: State, id: string) => string | undefined)[] = [
  (state, id) => state.people.get(id)?.body.name,
  (state, id) => state.batches.get(id) && batchCode(state, id),
  (state, id) => state.containers.get(id) && containerCode(state, id),
  (state, id) => state.streams.get(id) && streamText(state, id),
  (state, id) => state.steps.get(id) && stepOf(state, id),
  (state, id) => state.checklists.get(id)?.body.checklist.title,
];

/** Parts that were chosen from a list, whose answers are written with hyphens. */
const chosen = new Set(
  'capacitors era vessel cap purpose mark base instrument step outcome format'.split(' '),
);

/** A statement as a person reads it: things by their names, moments by the hour on the wall. */
export function leafText(state: State, leaf: Leaf | undefined, sign: DecimalSign): string {
  if (leaf === undefined) return entryWords.nothing;
  if (leaf.is === 'quantity') return leaf.unit === '1' ? formatWritten(leaf, sign) : amount(leaf, sign);
  const { value, path } = leaf;
  if (isInstant(value)) return momentText(value);
  for (const name of namesOf) {
    const found = name(state, value);
    if (found) return found;
  }
  const key = path.at(-1);
  if (key === 'era') return eraWords[value as keyof typeof eraWords] ?? value;
  if (key === 'step') return stepText(value);
  if (key === 'by') return howKnown[value] ?? value;
  if (key === 'metal') return metals[value as keyof typeof metals]?.name ?? value;
  if (key === 'stream') return streamName[value as keyof typeof streamName] ?? value;
  if (key === 'rule') return ruleWords[value as keyof typeof ruleWords]?.name ?? value;
  if (path[0] === 'stated' && key === 'value') return yesNo[value as keyof typeof yesNo] ?? value;
  if (value === 'true' || value === 'false') return value === 'true' ? entryWords.yes : entryWords.no;
  return chosen.has(String(key)) ? value.replaceAll('-', ' ') : value;
}

/** Identifiers that name the thing itself: a person has no use for them. */
const own: ReadonlySet<string> = new Set([
  'personId',
  'batchId',
  'streamId',
  'containerId',
  'stepId',
  'runId',
  'paperId',
]);
const ownOf: Partial<Record<PlainBody['kind'], string>> = {
  'person-added': 'personId',
  'batch-opened': 'batchId',
  'stream-logged': 'streamId',
  'container-opened': 'containerId',
  'step-started': 'stepId',
  'checklist-finished': 'runId',
  'paper-made': 'paperId',
};

/** What is looked for first stands first; an entry itself keeps its parts in the order of the alphabet. */
const order = [
  ...['name', 'address', 'emergencyNumber', 'phone', 'code', 'base', 'purity', 'stated', 'saidBy', 'saidOn'],
  ...['step', 'stream', 'batchId', 'stepId', 'feed', 'streamId', 'fromContainerId', 'toContainerId'],
  ...['containerId', 'amount', 'spread', 'liquid.volume', 'liquid.findings', 'liquid.freeAcid', 'liquid'],
  ...['solid.wetMass', 'solid', 'vessel', 'capacity', 'material', 'cap', 'place', 'tray', 'mark', 'purpose'],
];

function rankOf(path: Path): number {
  const key = path.join('.');
  const fitting = order.filter((one) => key === one || key.startsWith(`${one}.`));
  const closest = fitting.toSorted((a, b) => b.length - a.length)[0];
  return closest === undefined ? order.length : order.indexOf(closest);
}

export const inOrder = <L extends { readonly path: Path }>(leaves: readonly L[]): readonly L[] =>
  leaves.toSorted((a, b) => rankOf(a.path) - rankOf(b.path));

/** Whether a statement is worth a line. */
export function worthSaying(body: Body, { path }: Leaf): boolean {
  const [key] = path;
  if (path.length === 1 && own.has(String(key)) && ownOf[body.kind as PlainBody['kind']] === key)
    return false;
  const last = path.at(-1);
  if (last === 'metal') return false;
  if (last === 'by') {
    const beside = Object.keys(at(body, path.slice(0, -1)) as object);
    return beside.every((one) => one === 'by' || one === 'metal');
  }
  if (body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn')
    return path.length === 1 && key === 'reason';
  if (body.kind === 'checklist-finished')
    return key !== 'answers' && !(key === 'checklist' && path[1] !== 'title');
  return true;
}

/** "12 May 2026, 10:40, Maren" */
export const whenAndWho = (state: State, { entry, at: when }: HistoryLine): string =>
  joined(momentText(when), entry.who === null ? entryWords.nobody : personName(state, entry.who));
