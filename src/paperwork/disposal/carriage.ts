/** What a transport document or a manifest asks for of a container, as data: each said, or not determined. */
import { wordOn } from '../../ledger/candidate-words';
import { candidatesOf } from '../../ledger/container-candidates';
import type { Scheme } from '../../ledger/entries/candidates';
import { lawsOf } from '../../ledger/laws';
import type { ContainerState } from '../../ledger/state';
import type { TransportCandidate } from '../../rules/transport/candidates';
import type { Reportable } from '../../rules/transport/reportable';
import { codeText, schemeWords, standingWords } from '../candidate-words';
import { heldCodes } from '../labels/known-of';
import { notDetermined, statusWords } from '../words';
import { type Asked, amountText } from './asked';
import { saidText } from './candidate-lines';
import { capWords, vesselWords } from './data-words';
import type { Carriage } from './set-data';
import { setWords as w } from './set-words';
import type { WorkedLines } from './worked-lines';

const codeSchemes: readonly Scheme[] = ['waste-list', 'rcra', 'california'];

function entryOf(container: ContainerState, one: TransportCandidate): Carriage['entries'][number] {
  const { entry, packingGroup, technicalNames, described, standing } = one;
  const adr = described.adrByKnowledge ?? described.adr;
  return {
    number: entry.un,
    name: entry.name,
    class: w.class(entry.class, entry.subsidiary),
    packingGroup,
    technicalNames: technicalNames.length === 0 ? notDetermined : [...technicalNames],
    ...(adr === undefined ? {} : { adr }),
    usa: described.usa,
    standing: standingWords[standing],
    said: saidText(wordOn(container, one)),
  };
}

const packageOf = ({ sign }: Asked, { body }: ContainerState): string =>
  w.package(
    amountText(body.capacity, sign),
    vesselWords[body.vessel],
    body.material === 'other' ? (body.otherMaterial ?? notDetermined) : body.material,
    capWords[body.cap],
  );

const reportableOf = (
  due: readonly Reportable[],
  lines: WorkedLines,
  containerId: string,
): Carriage['reportable'] =>
  due.map(({ of, limit, held, reached }) => ({
    of,
    limit: lines.of(limit, containerId),
    held: held ? lines.of(held, containerId) : notDetermined,
    reached: w.reached[reached],
  }));

export function carriageOf(asked: Asked, lines: WorkedLines, container: ContainerState): Carriage {
  const { state } = asked;
  const packages = packageOf(asked, container);
  const all = candidatesOf(state, container);
  if (typeof all === 'string')
    return { entries: [], noEntry: notDetermined, packages, wasteCodes: [], reportable: [], heed: [] };
  const { transport } = all;
  const usa = lawsOf(state).includes('us-federal');
  const entries = transport.candidates
    .filter(({ standing }) => standing !== 'open')
    .map((one) => entryOf(container, one));
  return {
    entries,
    noEntry: entries.length > 0 ? w.bestFirst : (transport.none?.rule ?? notDetermined),
    packages,
    wasteCodes: codeSchemes.flatMap((scheme) =>
      heldCodes(container, all, scheme).map((code) => ({
        scheme: schemeWords[scheme],
        code: codeText(code),
        said: saidText(wordOn(container, { scheme, code })),
      })),
    ),
    reportable: usa ? reportableOf(transport.reportable, lines, container.body.containerId) : [],
    heed: transport.heed.map(({ rule, cite, status }) => ({
      rule,
      cite,
      status: statusWords[status] ?? status,
    })),
  };
}
