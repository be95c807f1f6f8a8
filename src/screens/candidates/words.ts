/** Words of what the laws make of a container. Nothing here decides, and nothing here says so. */
import type { Scheme } from '../../ledger/entries/candidates';
import type { PictogramId } from '../../paperwork/labels/pictograms';

/** What a pictogram warns of, inside a sentence. */
export const warnsOf: Readonly<Record<PictogramId, string>> = {
  GHS01: 'explosive',
  GHS02: 'flammable',
  GHS03: 'feeds fire',
  GHS04: 'gas under pressure',
  GHS05: 'corrosive',
  GHS06: 'toxic',
  GHS07: 'irritant, sensitiser or harmful',
  GHS08: 'lasting harm to health',
  GHS09: 'toxic to water life',
};

/** An example of how a code is written. */
export const codeExample: Readonly<Record<Scheme, string>> = {
  clp: 'Skin Corr. 1 H314',
  rcra: 'D002',
  'rcra-ldr': 'UTS Ni',
  california: 'STLC Ni',
  'eu-hp': 'HP 8',
  'waste-list': '11 02 07*',
  transport: 'UN 3264',
};

export const candidateWords = {
  title: (code: string) => `${code}: candidates`,
  second: 'What the laws make of what is in it. A named person confirms.',
  workingOut: 'Working it out …',
  // Container page
  door: 'Candidates',
  doorSecond: 'Classes, codes and transport, by what is in it',
  doorLine: (said: string, n: number) =>
    n === 0 ? `${said}. Each has somebody’s word.` : `${said}. Not confirmed: ${n}.`,
  // Summary
  signal: (word: 'Danger' | 'Warning' | null) => word ?? 'No signal word',
  signalOpen: 'Signal word not determined',
  nobody: (n: number, all: number) =>
    n === all
      ? `Candidates: nobody has confirmed any of them.`
      : `Candidates: nobody has confirmed ${n} of ${all}.`,
  allSaid: 'Each of them has somebody’s word.',
  nothingFires: 'No rule reaches its limit by what is known. What is not determined may still bring one.',
  judged: (code: string) => `${code} (a judgement or a test)`,
  // Laws
  lawsOpen: 'Whose laws apply is not entered',
  lawsOpenSecond:
    'Until your local rules say so, two are looked at: the United States’ and the European Union’s.',
  lawsDoor: 'Say whose laws apply',
  lawsChosen: (laws: string) => `By the laws of: ${laws}.`,
  lawsChange: 'Whose laws apply',
  // Without a mixture
  notDetermined: 'Contents not determined',
  notDeterminedSecond:
    'Nobody knows for sure what is in it, so no rule can be put to it. It may be any of them: hold it as hazardous.',
  notDeterminedDoor: 'What to test, whom to ask',
  empty: 'Empty',
  emptySecond: 'By the record nothing is in it. What it held before may still cling to it.',
  // Rows
  byCalculation: 'By calculation from what is in it',
  byPhAlone: 'By the pH alone',
  byPhAloneSecond: 'No calculation says so: an extreme pH counts as corrosive until a test shows otherwise.',
  none: {
    clp: 'No rule reaches its limit by what is known.',
    rcra: 'No rule reaches its limit by what is known.',
    'rcra-ldr':
      'Nothing is above a standard by what is known. Standards follow from the waste codes it arose with.',
    california: 'No rule reaches its limit by what is known.',
    'eu-hp': 'No rule reaches its limit by what is known.',
    'waste-list': 'No entry follows by what is known.',
    transport: 'No entry follows by numbers alone.',
  } satisfies Readonly<Record<Scheme, string>>,
  judgement: 'Needs a judgement or a test',
  closeTitle: (n: number) => `Came close (${n})`,
  openHere: (codes: string) => `Not determined, gathered below: ${codes}.`,
  besides: 'Given by somebody',
  besidesSecond: 'The rules did not propose these.',
  andMore: (n: number) => `and ${n} more`,
  accepted: (who: string, when: string) => `Confirmed by ${who}, ${when}`,
  refused: (who: string, when: string) => `Not so, says ${who}, ${when}`,
  stale: (who: string, when: string) => `${who}’s word of ${when} was for other contents`,
  staleRefused: (who: string, when: string) => `“Not so”, ${who}, ${when}: said of other contents`,
  markWord: {
    waiting: 'candidate',
    accepted: 'confirmed',
    refused: 'refused',
    stale: 'candidate, was said of other contents',
  },
  // Not determined
  open: 'Not determined',
  openSecond: 'Nothing here counts as none.',
  lacking: (names: string) => `${names}: not determined`,
  decides: (codes: string) => `Decides ${codes}`,
  decide: (codes: string) => `They decide ${codes}`,
  whatToDo: 'What to do',
  each: 'One by one',
  findLater: (name: string) => `Add what was found: ${name}`,
  ask: (names: string) => `Ask ${names}.`,
  // A candidate
  candidateOf: (container: string, scheme: string) => `${container}, ${scheme}`,
  gone: 'The rules do not propose it for what is in it now.',
  goneContents: 'What is in it is not determined, so no rule can be put to it.',
  unknownAddress: 'There is no such candidate.',
  waitsFor: (who: string) => `Candidate. ${who} confirms.`,
  whoConfirms: { authority: 'The authority', collector: 'The collector' },
  stands: {
    fires: 'The rule fires.',
    close: 'The rule does not fire, and came close.',
    judgement: 'The rule has no number for it, or a test decides.',
    open: 'Nobody can say: what it rests on is not determined.',
  },
  rule: 'The rule',
  readIn: (where: string) => `Read in: ${where}.`,
  numbers: 'The numbers',
  numbersSecond: 'The end of the range that weighs more is held against the limit.',
  numbersLow: 'The low end of the range is held against the limit.',
  limit: (sentence: string) => `Limit: ${sentence}`,
  noNumbers: 'This rule has no number.',
  noNumbersOpen: 'No number stands behind it: what it rests on is not determined.',
  lacks: 'What is missing',
  said: 'What somebody said',
  document: (name: string) => `Document: ${name}`,
  sayDoor: 'Somebody has said so',
  sayAgain: 'Somebody has said otherwise',
  entryDoor: 'The entry',
  entryDoorSecond: 'With corrections, and what was said before',
  historyDoor: 'History of this container',
  anotherDoor: 'They gave another code',
  anotherSecond: 'One that the rules did not propose',
  dilution: 'Dilution is no treatment',
  // Transport
  described: 'On the transport paper',
  adr: 'ADR',
  adrKnown: 'ADR, by what is known of it (2.1.3.5.5)',
  usa: '49 CFR',
  group: 'Packing group',
  namesTitle: 'Names in brackets',
  marks: {
    yes: 'Yes: mark and words go with it',
    no: 'Not by what is known',
    'not determined': 'not determined',
  },
  environment: 'Environmentally hazardous',
  reportable: 'Reportable quantity, one package',
  reached: { yes: 'reached', no: 'not reached', 'not determined': 'not determined' },
  whyThis: 'Why this entry',
  heed: 'Before it is carried',
  // List of waste
  counterpart: 'Its mirror entry',
  isMirror: 'Hazardous properties decide between the two.',
  otherwise: 'Under another condition',
  wrongCodes: 'Not to be taken',
  // Saying
  sayTitle: (code: string) => `Who has said what of ${code}?`,
  saySecond: 'A later word takes the place of this one. Both stay in the record.',
  answer: 'What they said',
  answers: { accepted: 'It is so', refused: 'It is not so' },
  answersSecond: {
    accepted: 'It goes on the label and the papers as confirmed',
    refused: 'It is left off the label; the rule stays to be read here',
  },
  who: 'Who said it',
  when: 'When',
  document_: 'In which document',
  documentHint: 'letter, e-mail, acceptance, test report',
  note: 'More to it',
  keep: 'Write it down',
  anotherTitle: (code: string) => `${code}: a code somebody gave`,
  scheme: 'Whose code',
  code: 'The code',
  codeHint: (example: string) => `as the law writes it, such as ${example}`,
  subject: (container: string, code: string) => `${container}, ${code}`,
} as const;
