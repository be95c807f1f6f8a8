/** What the generator states of a load, from what the paper tells of it; in our own words, no form's. */

import { howKnownWords } from '../../chemistry/evidence-words';
import type { Signature } from '../../ledger/entries/signatures';
import { lawsOf } from '../../ledger/laws';
import { entriesIn } from '../../ledger/opening';
import { codeOfContainer } from '../../ledger/put-away';
import type { Movement, State } from '../../ledger/state';
import { putInBehind } from '../../ledger/what-holds-of-a-container';
import { dayOf } from '../dates';
import { lawNames } from '../rule-words';
import { signatureData } from '../signature-data';
import { notDetermined, unbroken } from '../words';
import type { Asked } from './asked';
import type { ContainerData, WorkingLine } from './disposal-data';
import { streamText } from './origins';
import type { Statement } from './set-data';
import { setWords as w } from './set-words';

const notMeasured = new Set(
  ['stated', 'assumed', 'typical', 'not-determined'].map((how) => howKnownWords[how] ?? how),
);

function evidenceSays(working: readonly WorkingLine[]): string[] {
  const evidence = working.filter(({ kind }) => kind === 'evidence');
  const how = [...new Set(evidence.map(({ howKnown }) => howKnown))];
  const [unmeasured, measured] = [
    how.filter((one) => notMeasured.has(one)),
    how.filter((one) => !notMeasured.has(one)),
  ];
  return [
    measured.length === 0 ? w.nothingMeasured : w.measured(measured),
    ...(unmeasured.length === 0 ? [] : [w.notMeasured(unmeasured)]),
    ...(measured.length + unmeasured.length === 0 ? [] : [w.workedOut]),
  ];
}

/** Mixing of what is in the containers, there or in what it came from: what was in them before has left. */
function dilutedBehind({ state, zone }: Asked, containerIds: readonly string[]): Statement['diluted'] {
  const behind = new Set(containerIds.flatMap((id) => [...putInBehind(state, id)]));
  const code = (id: string): string => unbroken(codeOfContainer(state, id) ?? notDetermined);
  return state.movements.flatMap(({ entryId, at, body }: Movement) => {
    const into = body.kind === 'stream-placed' ? body.containerId : body.toContainerId;
    if (!body.diluted || into === null || !behind.has(entryId)) return [];
    const what =
      body.kind === 'stream-placed' ? streamText(state, body.streamId) : code(body.fromContainerId);
    return {
      on: dayOf(at, zone),
      what: w.put(what, code(into)),
      codes: [...body.diluted.codes],
      laws: body.diluted.laws.map((law) => lawNames[law]),
    };
  });
}

const lawsLookedAt = (state: State): string => w.dilutionLaws(lawsOf(state).map((law) => lawNames[law]));

export function statementOf(
  asked: Asked,
  containers: readonly ContainerData[],
  working: readonly WorkingLine[],
  signature: Signature | null,
): Statement {
  const { state } = asked;
  const diluted = dilutedBehind(
    asked,
    containers.map(({ containerId }) => containerId),
  );
  const open = containers.filter((one) => one.notDetermined.length > 0).map(({ code }) => code);
  return {
    says: [
      w.states(state.workshop?.body.name ?? notDetermined, entriesIn(state)),
      w.aboutEach(containers.length),
      ...evidenceSays(working),
      open.length === 0 ? w.nothingOpen : w.openOf(open, open.length === containers.length),
      w.candidates,
      `${diluted.length === 0 ? w.notDiluted : w.diluted} ${lawsLookedAt(state)}`,
      w.noCertificate,
    ],
    diluted,
    signature: signature === null ? 'not signed' : signatureData(signature),
  };
}
