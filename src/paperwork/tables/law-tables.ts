/** Tables of what the laws make of the containers. A candidate is no classification: somebody has to confirm it. */
import type { ContainerData, DisposalData } from '../disposal/disposal-data';
import { notDetermined } from '../words';
import { each, type In, listed, textColumn, whichContainer } from './disposal-rows';
import { figureColumns } from './figure-columns';
import { filled, type Table, type TableOf } from './table';

type Laws = NonNullable<ContainerData['laws']>;
type Candidate = Laws['candidates'][number];
type Numbers = { readonly candidate: Candidate; readonly ground: Candidate['numbers'][number] };

const candidates: TableOf<In<Candidate>> = {
  name: 'candidates',
  says: 'One row a code that a rule proposes for a container. A candidate is no classification: whose word there is stands in the last column.',
  columns: [
    ...whichContainer,
    textColumn('scheme', 'The law or list that the code is of.', ({ it }) => it.scheme),
    textColumn('code', 'The code.', ({ it }) => it.code),
    textColumn('meaning', 'What the code means; "none" where the code says it.', ({ it }) => it.means),
    textColumn(
      'standing',
      'Whether it reaches its limit, came close, needs a judgement, or is not determined.',
      ({ it }) => it.standing,
    ),
    textColumn('lacks', 'What is not determined and would decide it.', ({ it }) => listed(it.lacks)),
    textColumn('rule', 'The rule in words.', ({ it }) => it.rule),
    textColumn('cite', 'Where the rule stands.', ({ it }) => it.cite),
    textColumn('status', 'How well the source is known.', ({ it }) => it.status),
    textColumn('said', 'Whose word there is on it, or that nobody has confirmed it.', ({ it }) => it.said),
  ],
};

const numbers: TableOf<In<Numbers>> = {
  name: 'numbers-behind-candidates',
  says: 'One row a number that a rule held against its limit.',
  columns: [
    ...whichContainer,
    textColumn('scheme', 'The law or list that the code is of.', ({ it }) => it.candidate.scheme),
    textColumn('code', 'The code.', ({ it }) => it.candidate.code),
    textColumn('standing', 'How the candidate stands.', ({ it }) => it.candidate.standing),
    textColumn('number', 'What the number is.', ({ it }) => it.ground.sentence),
    ...figureColumns<In<Numbers>>('', 'the number', ({ it }) => it.ground.figure),
    ...figureColumns<In<Numbers>>('limit', 'its limit', ({ it }) => it.ground.limit),
  ],
};

const given: TableOf<In<Laws['given'][number]>> = {
  name: 'codes-given',
  says: 'One row a code that somebody gave and no rule proposed.',
  columns: [
    ...whichContainer,
    textColumn('scheme', 'The law or list that the code is of.', ({ it }) => it.scheme),
    textColumn('code', 'The code.', ({ it }) => it.code),
    textColumn('said', 'Whose word it is.', ({ it }) => it.said),
  ],
};

/** Where no rule can be put to what is in it, that is what is not determined. */
const lackingIn = ({ laws }: ContainerData): Laws['lacking'] =>
  laws ? laws.lacking : [{ what: [notDetermined], decides: [notDetermined] }];

const lacking: TableOf<In<Laws['lacking'][number]>> = {
  name: 'not-determined',
  says: 'What is not determined of a container, with the codes that wait for it. A row of "not determined" alone: nobody knows what is in it.',
  columns: [
    ...whichContainer,
    textColumn('what', 'What is not determined.', ({ it }) => listed(it.what, ', ')),
    textColumn('decides', 'The codes that wait for it.', ({ it }) => listed(it.decides, ', ')),
  ],
};

const dilution: TableOf<In<Laws['dilution'][number]>> = {
  name: 'dilution',
  says: 'What each law says on diluting, for the containers that it was put to.',
  columns: [
    ...whichContainer,
    textColumn('rule', 'The rule in words.', ({ it }) => it.rule),
    textColumn('cite', 'Where the rule stands.', ({ it }) => it.cite),
    textColumn('status', 'How well the source is known.', ({ it }) => it.status),
  ],
};

export const lawTables = (data: DisposalData): readonly Table[] => [
  filled(
    candidates,
    each(data, (c) => c.laws?.candidates ?? []),
  ),
  filled(
    numbers,
    each(data, (c) =>
      (c.laws?.candidates ?? []).flatMap((candidate) =>
        candidate.numbers.map((ground) => ({ candidate, ground })),
      ),
    ),
  ),
  filled(
    given,
    each(data, (c) => c.laws?.given ?? []),
  ),
  filled(lacking, each(data, lackingIn)),
  filled(
    dilution,
    each(data, (c) => c.laws?.dilution ?? []),
  ),
];
