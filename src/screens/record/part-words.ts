/** Words for the single statements of an entry: what each is called, how it reads, and in which order they stand. */

import { howKnownWords } from '../../chemistry/evidence-words';
import type { Body, PlainBody } from '../../ledger/entries/body';
import type { LabResult } from '../../ledger/entries/lab-reports';
import type { RuleName } from '../../ledger/entries/local-rules';
import type { Priced } from '../../ledger/entries/prices';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { nameOfElement } from '../../paperwork/element-names';
import { foundIn } from '../../paperwork/lab-words';
import { ruleNames } from '../../paperwork/rule-words';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { metals } from '../../reference/tables';
import { checklists } from '../../safety/checklists';
import { chargeWords, recoveryWords } from '../batches/account-words';
import { eraWords } from '../batches/words';
import { labWords } from '../lab-report/words';
import { streamName } from '../words';
import { clockName, clockText } from './clock-words';
import {
  amount,
  batchCode,
  capital,
  containerCode,
  entryWords,
  handOverText,
  momentText,
  notHere,
  stepOf,
  stepText,
  streamText,
} from './entry-words';
import { at, type Leaf, type Path } from './leaves';
import { yesNo } from './rule-words';
import { agentText, allowedText, outcomeText, pricedText, treatmentText } from './treatment-words';
import { dischargeFormWords } from './words';

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
  charge: 'charged',
  recovery: 'got back',
  what: 'what it was',
  holds: 'holds',
  liquor: 'liquor',
  otherMaterial: 'other material',
  validUntil: 'holds until',
  startedAt: 'begun',
  finishedAt: 'finished',
  contentHash: 'hash of the paper',
  fileName: 'file',
  treatmentId: 'treatment',
  stages: 'stage',
  targetPh: 'target pH',
  endPh: 'pH at the end',
  sampleVolume: 'sample',
  agent: 'what goes in',
  allowed: 'local rule then',
  clockId: 'clock',
  of: 'what for',
  stationId: 'working place',
  station: 'working place',
  checkId: 'check',
  late: 'begun already',
  measuredOn: 'measured on',
  changedOn: 'changed on',
  datedOn: 'dated',
  is: 'kind',
  streamIds: 'waste of the test',
  looks: 'look',
  findingId: 'finding',
  walkId: 'walk',
  takenFrom: 'taken over from',
  notSeen: 'not looked at',
  ask: 'asked',
  answer: 'answered',
  stops: 'to be dealt with at once',
  done: 'what was done',
  quick: 'answered quickly',
  scheme: 'law',
  bytes: 'bytes',
  handOverId: 'hand-over',
  collector: 'collector',
  signatures: 'signature',
  generator: 'of the workshop',
  signedAt: 'signed',
  typed: 'in letters, not drawn',
  agreed: 'as the collector has it',
  document: 'number of the paper',
  treatedHow: 'what was done with it',
  sampledOn: 'day of the sample',
  paper: 'which paper',
  period: 'days',
};

/** Levels that a person need not hear. */
const silent = new Set(['liquid', 'solid', 'findings', 'body', 'contact']);

/** Last words that say no more than what stands before them. */
const said = new Set(['value', 'name', 'concentration', 'result', 'by']);

const spaced = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A stage by what is added in it: "hydrated lime". */
const stageText = (value: unknown): string => {
  const { agent } = (value ?? {}) as { readonly agent?: string };
  return agent === undefined ? '' : agentText(agent).toLowerCase();
};

/** A finding by its metal and how it is known: "copper (photometer)"; how alone stands as the statement itself. */
function findingText(value: unknown, asStatement: boolean): string {
  const { metal, by } = (value ?? {}) as { readonly metal?: string; readonly by?: string };
  const name = metal === undefined ? '' : (metals[metal as keyof typeof metals]?.name ?? metal);
  const how = by === undefined || asStatement ? '' : `(${howKnownWords[by] ?? by})`;
  return [name, how].filter((text) => text !== '').join(' ');
}

/** The limit of one metal, or an end of the pH, in a rule for an authorised discharge. */
function dischargePart(body: unknown, [of, value, key]: Path): string | undefined {
  if (of !== 'stated' || value !== 'value' || key === undefined) return undefined;
  if (at(body, ['stated', 'rule']) === 'discharge-ph')
    return key === 'low' ? dischargeFormWords.lowest : dischargeFormWords.highest;
  const metal = metals[key as keyof typeof metals];
  return metal && dischargeFormWords.mostOf(capital(metal.name));
}

/** A look of the walk in the words of the list that came with the app; a workshop's own is in the list itself. */
const askOf = (look: unknown): string =>
  [...checklists.values()].flatMap(({ items }) => items).find(({ id }) => id === look)?.ask ?? 'own look';

/** What a laboratory found, by its element and what it was found in. */
function labPart(body: unknown, [of, place]: Path): string | undefined {
  if (of !== 'results' || place === undefined || at(body, ['kind']) !== 'lab-reported') return undefined;
  const { element, in: where, below } = at(body, [of, place]) as LabResult;
  const name = capital(nameOfElement(element) ?? element);
  return `${name} ${below ? labWords.noneDownTo(foundIn[where]) : labWords.in(foundIn[where])}`;
}

/** Of several containers of a load: which of them. */
function loadPart([of, n, key]: Path): string | undefined {
  if (of !== 'containers' || typeof n !== 'number' || typeof key !== 'string') return undefined;
  const which = `Container ${n + 1}`;
  return key === 'containerId' ? which : `${which}: ${parts[key] ?? spaced(key)}`;
}

/** @example partText(body, ['liquid', 'findings', 0, 'concentration']) // 'Copper (photometer)' */
export function partText(body: unknown, path: Path): string {
  const own = dischargePart(body, path) ?? labPart(body, path) ?? loadPart(path);
  if (own) return own;
  if (path[0] === 'looks' && path[2] === 'seen')
    return capital(String(at(body, ['looks', path[1] ?? 0, 'look'])).replaceAll('-', ' '));
  if (path[0] === 'readings') {
    const ask = askOf(at(body, ['readings', path[1] ?? 0, 'look']));
    return path.at(-1) === 'unit' ? `${ask}: unit` : ask;
  }
  const last = path.at(-1);
  const heard = path.flatMap((key, depth): string[] => {
    if (typeof key === 'number') {
      const one = at(body, path.slice(0, depth + 1));
      const inside = findingText(one, last === 'by') || (last === 'agent' ? '' : stageText(one));
      return inside === '' ? [] : [inside];
    }
    if (silent.has(key) && depth < path.length - 1) return [];
    return [parts[key] ?? spaced(key)];
  });
  const shown = heard.length > 1 && said.has(String(last)) ? heard.slice(0, -1) : heard;
  return capital(shown.join(': ').replace(': (', ' ('));
}

const isId = (text: string): boolean => /^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/.test(text);

const isInstant = (text: string): boolean => /^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/.test(text);

const namesOf: readonly ((state: State, id: string) => string | undefined)[] = [
  (state, id) => state.people.get(id)?.body.name,
  (state, id) => codeOfBatch(state, id) && batchCode(state, id),
  (state, id) => codeOfContainer(state, id) && containerCode(state, id),
  (state, id) => state.streams.get(id) && streamText(state, id),
  (state, id) => state.steps.get(id) && stepOf(state, id),
  (state, id) => state.checklists.get(id)?.body.checklist.title,
  (state, id) => state.treatments.get(id) && treatmentText(state, id),
  (state, id) => state.stations.get(id)?.body.name,
  (state, id) => clockText(state, id),
  (state, id) => state.papers.get(id)?.body.fileName,
  (state, id) => handOverText(state, id),
  (state, id) => state.findings.get(id)?.found.ask,
];

/** Parts that were chosen from a list, whose answers are written with hyphens. */
const chosen = new Set(
  'capacitors era vessel cap purpose mark base instrument step outcome format is how look seen limit'.split(
    ' ',
  ),
);

const accountText = (path: Path, what: string): string =>
  (path[0] === 'charge' ? chargeWords[what as keyof typeof chargeWords] : undefined) ??
  recoveryWords[what as keyof typeof recoveryWords] ??
  what;

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
  if (key === 'of') return clockName[value as keyof typeof clockName] ?? value;
  if (key === 'era') return eraWords[value as keyof typeof eraWords] ?? value;
  if (key === 'step') return stepText(value);
  if (key === 'what') return path.length === 1 ? pricedText(value as Priced) : accountText(path, value);
  if (key === 'agent') return agentText(value);
  if (key === 'allowed') return allowedText[value as keyof typeof allowedText] ?? value;
  if (key === 'outcome' && value in outcomeText) return outcomeText[value as keyof typeof outcomeText];
  if (key === 'by') return howKnownWords[value] ?? value;
  if (key === 'metal') return metals[value as keyof typeof metals]?.name ?? value;
  if (key === 'stream') return streamName[value as keyof typeof streamName] ?? value;
  if (key === 'rule') return ruleNames[value as RuleName];
  if (path[0] === 'stated' && key === 'value') return yesNo[value as keyof typeof yesNo] ?? value;
  if (value === 'true' || value === 'false') return value === 'true' ? entryWords.yes : entryWords.no;
  if (isId(value)) return `One ${notHere(state)}`;
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
  'treatmentId',
  'clockId',
  'stationId',
  'checkId',
  'walkId',
  'handOverId',
]);
const ownOf: Partial<Record<PlainBody['kind'], string>> = {
  'person-added': 'personId',
  'batch-opened': 'batchId',
  'stream-logged': 'streamId',
  'container-opened': 'containerId',
  'step-started': 'stepId',
  'checklist-finished': 'runId',
  'paper-made': 'paperId',
  'treatment-begun': 'treatmentId',
  'clock-started': 'clockId',
  'station-described': 'stationId',
  'silver-checked': 'checkId',
  'ventilation-checked': 'checkId',
  'container-inspected': 'walkId',
  'walk-finished': 'walkId',
  'handed-over': 'handOverId',
};

/** What is looked for first stands first; an entry itself keeps its parts in the order of the alphabet. */
const order = [
  ...['name', 'address', 'emergencyNumber', 'phone', 'code', 'base', 'purity', 'stated', 'saidBy', 'saidOn'],
  ...['step', 'stream', 'batchId', 'stepId', 'feed', 'streamId', 'fromContainerId', 'toContainerId'],
  ...[
    'charge.what',
    'charge',
    'recovery.what',
    'recovery',
    'containerId',
    'amount',
    'spread',
    'liquid.volume',
    'liquid.findings',
    'liquid.freeAcid',
    'liquid',
  ],
  ...['solid.wetMass', 'solid', 'vessel', 'capacity', 'material', 'cap', 'place', 'tray', 'mark', 'purpose'],
  ...[
    'treatmentId',
    'what',
    'agent',
    'mass',
    'sampleVolume',
    'endPh',
    'ph',
    'temperature',
    'stages',
    'targetPh',
  ],
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
  // Photos and files stand below, and can be opened there.
  if (path.includes('photos') || path.includes('files')) return false;
  if (path.length === 1 && own.has(String(key)) && ownOf[body.kind as PlainBody['kind']] === key)
    return false;
  const last = path.at(-1);
  if (last === 'metal') return false;
  if (last === 'by') {
    const beside = Object.keys(at(body, path.slice(0, -1)) as object);
    return beside.every((one) => one === 'by' || one === 'metal');
  }
  // What was found is told by its question and answer; the list of a walk by its title, a reading by its question.
  if (key === 'found') return last !== 'findingId' && last !== 'look';
  if (body.kind === 'walk-finished' && key === 'list') return last === 'title';
  if (key === 'readings') return last !== 'look';
  // Element, what it was in and whether none was found stand with the level.
  if (body.kind === 'lab-reported' && key === 'results') return last === 'level';
  // Of a look at a test: what was seen, under the name of the look.
  if (key === 'looks') return last === 'seen';
  if (body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn')
    return path.length === 1 && key === 'reason';
  if (body.kind === 'checklist-finished')
    return key !== 'answers' && !(key === 'checklist' && path[1] !== 'title');
  return true;
}
