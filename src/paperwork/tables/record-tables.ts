/** Tables of what stands behind a disposal paper: what it says of itself, flags, entries, local rules, the working. */
import type { DisposalData, WorkingLine } from '../disposal/disposal-data';
import { each, type In, textColumn, whichContainer } from './disposal-rows';
import { plainText } from './plain';
import { filled, none, type Table, type TableOf } from './table';
import { lineName, workingColumns } from './working-columns';

type Fact = readonly [what: string, says: string];

const paper: TableOf<Fact> = {
  name: 'paper',
  says: 'What holds for all tables: who made them of which record, the workshop, and the cautions.',
  columns: [
    textColumn('what', 'What is told.', ([what]) => what),
    textColumn('says', 'What it is.', ([, says]) => says),
  ],
};

const factsOf = ({ workshop, lastEntry, ...data }: DisposalData): readonly Fact[] => [
  ...data.cautions.map((caution): Fact => ['caution', caution]),
  ['treatment', data.treatment],
  ['invented for a demonstration', data.demo ? 'yes' : 'no'],
  ['made at (UTC)', data.madeAt],
  ['time zone of all days', data.zone],
  ['made by', data.madeBy],
  ['workshop', workshop.name],
  ['address', workshop.address],
  ['generator number', workshop.generatorNumber],
  ['emergency number', workshop.emergencyNumber],
  ['authority', workshop.authority],
  ['collector', workshop.collector],
  ['collector licence', workshop.collectorLicence],
  ['telephone', workshop.telephone],
  ['counter for hazardous waste', workshop.hazardousWasteCounter],
  ['content hash (SHA-256)', data.contentHash],
  ['last entry of the record', `${lastEntry.number}`],
  ['its id', lastEntry.id],
  ['its hash', lastEntry.hash],
  ['written at (UTC)', lastEntry.writtenAt],
];

const flags: TableOf<In<string>> = {
  name: 'flags',
  says: 'What is wrong or doubtful of a container by the record, one row each.',
  columns: [...whichContainer, textColumn('flag', 'What is wrong or doubtful.', ({ it }) => it)],
};

const localRules: TableOf<DisposalData['localRules'][number]> = {
  name: 'local-rules',
  says: 'The local rules as somebody stated them.',
  columns: [
    textColumn('rule', 'The rule.', ({ rule }) => rule),
    textColumn('value', 'What it says here.', ({ value }) => value),
    textColumn('said by', 'Who said so.', ({ saidBy }) => saidBy),
    { name: 'said on', says: 'When they said so.', kind: 'day', of: ({ saidOn }) => saidOn },
    textColumn('document', 'The document that it stands in.', ({ document }) => document),
  ],
};

type Entry = DisposalData['containers'][number]['entries'][number];

const entries: TableOf<In<Entry>> = {
  name: 'entries-behind',
  says: 'The entries of the record that stand behind a container, by which each can be found there.',
  columns: [
    ...whichContainer,
    {
      name: 'number',
      says: 'Place of the entry in the record, from 1.',
      kind: 'number',
      unit: { is: '1' },
      of: ({ it }) => `${it.number}`,
    },
    textColumn('entry id', 'Identifier of the entry.', ({ it }) => it.id),
    textColumn('hash', 'SHA-256 of the entry, as the record has it.', ({ it }) => it.hash),
    { name: 'happened at', says: 'When it happened.', kind: 'instant', of: ({ it }) => it.happenedAt },
    textColumn('kind', 'Kind of entry.', ({ it }) => it.kind),
    textColumn('about', 'What it is about, in a few words.', ({ it }) => it.says),
    textColumn('who', 'Who made it.', ({ it }) => it.who),
  ],
};

type Worked = { readonly line: WorkingLine; readonly code: string };

const working: TableOf<Worked> = {
  name: 'working',
  says: 'The working of every figure, one row a line: each stands on lines above it.',
  columns: [
    lineName,
    textColumn('container', 'Container for whose sake it was worked out first.', ({ code }) => code),
    textColumn('container id', 'Its identifier in the record.', ({ line }) => line.containerId),
    ...workingColumns,
  ],
};

function workedLines({ containers, working: lines }: DisposalData): readonly Worked[] {
  const codes = new Map(containers.map(({ containerId, code }) => [containerId, plainText(code)]));
  return lines.map((line) => ({ line, code: codes.get(line.containerId) ?? none }));
}

export const paperTable = (data: DisposalData): Table => filled(paper, factsOf(data));

export const recordTables = (data: DisposalData): readonly Table[] => [
  filled(
    flags,
    each(data, (c) => c.flags),
  ),
  filled(
    entries,
    each(data, (c) => c.entries),
  ),
  filled(localRules, data.localRules),
  filled(working, workedLines(data)),
];
