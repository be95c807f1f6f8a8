/** The first page of a set: whose waste it is, how much, the worst first, what is inside, who confirms, and the hash to check it by. */
import { momentText } from '../dates';
import type { Block, Contents } from '../document';
import { capital, notDetermined } from '../words';
import type { ContainerData, DisposalData } from './disposal-data';
import { paperWords } from './paper-words';
import { loadFacts } from './quantity-text';
import { setPaperWords as w } from './set-paper-words';
import { setWords } from './set-words';

const facts = (told: readonly (readonly [string, string])[]): Block => ({
  kind: 'facts',
  facts: told.map(([term, says]) => ({ term, says })),
});

const heading = (text: string): Block => ({ kind: 'heading', level: 2, text });

function partiesOf({ workshop, madeAt, madeBy, zone }: DisposalData): Block {
  return {
    kind: 'columns',
    left: [
      heading(w.generator),
      facts([
        [paperWords.name, workshop.name],
        [paperWords.address, workshop.address],
        [paperWords.generatorNumber, workshop.generatorNumber],
        [paperWords.emergency, workshop.emergencyNumber],
        [w.telephone, workshop.telephone],
      ]),
    ],
    right: [
      heading(w.collectorTitle),
      facts([
        [paperWords.collector, workshop.collector],
        [w.licence, workshop.collectorLicence],
        [paperWords.authority, workshop.authority],
        [w.made, w.madeBy(momentText(madeAt, zone), madeBy)],
      ]),
    ],
  };
}

type Open = (c: ContainerData) => boolean;

const listed =
  (what: string): Open =>
  (c) =>
    c.notDetermined.includes(what);

const mainSymbols = new Set(['Cu', 'Ni', 'HNO3']);

const dissolvedOpen: Open = ({ empty, substances }) =>
  !empty && substances.some(({ symbol, inAll }) => mainSymbols.has(symbol) && inAll === notDetermined);

const candidateOpen =
  (at: number): Open =>
  ({ empty, candidates }) =>
    !empty && candidates[at]?.says === notDetermined;

/** What of several containers a collector asks first. */
const asked: readonly (readonly [string, Open])[] = [
  [setWords.contents, listed(setWords.contents)],
  [w.dissolved, dissolvedOpen],
  [setWords.ph, listed(setWords.ph)],
  [setWords.mass, listed(setWords.mass)],
  [paperWords.classOf, candidateOpen(0)],
  [paperWords.codeOf, candidateOpen(1)],
  [paperWords.transportOf, candidateOpen(2)],
];

function openOf({ containers }: DisposalData): Block[] {
  const found = asked.flatMap(([what, open]) => {
    const codes = containers.filter(open).map(({ code }) => code);
    return codes.length === 0
      ? []
      : [
          w.openAt(
            what,
            w.ofContainers(
              codes,
              containers.map(({ code }) => code),
            ),
          ),
        ];
  });
  const said = [...found, w.more].map((text, at) => (at === found.length ? text : `${capital(text)}.`));
  return [
    {
      kind: 'mark',
      mark: 'unknown',
      text: [{ text: `${w.notDetermined}. `, strong: true }, { text: said.join(' ') }],
    },
  ];
}

/** The worst first: what must not meet, what is flagged, what nobody determined. */
function firstOf(data: DisposalData): Block[] {
  const apart = data.apart.map(
    ({ one, oneIs, other, otherIs, happens }): Block => ({
      kind: 'mark',
      mark: 'stop',
      text: [{ text: `${w.keepApart(one, oneIs, other, otherIs)} `, strong: true }, { text: happens }],
    }),
  );
  const flagged = data.containers.flatMap(({ code, flags }): Block[] =>
    flags.length === 0
      ? []
      : [
          {
            kind: 'mark',
            mark: 'wrong',
            text: [{ text: `${code}. `, strong: true }, { text: flags.join(' ') }],
          },
        ],
  );
  const unknown = data.containers.filter(listed(setWords.contents)).map(({ code }) => code);
  const fromAll: Block[] =
    unknown.length === 0
      ? []
      : [{ kind: 'mark', mark: 'stop', text: [{ text: w.keepFromAll(unknown), strong: true }] }];
  const several: Block[] = data.containers.length > 1 ? [{ kind: 'paragraph', text: w.noneApart }] : [];
  return [
    { kind: 'heading', level: 1, text: w.first },
    ...fromAll,
    ...(apart.length === 0 ? several : apart),
    ...flagged,
    ...openOf(data),
  ];
}

/** Who must confirm what: the same for every container of a workshop. */
function confirmers({ containers }: DisposalData) {
  const byWho = new Map<string, Set<string>>();
  for (const { what, confirms } of containers.flatMap(({ candidates: all }) => all))
    byWho.set(confirms, (byWho.get(confirms) ?? new Set()).add(what.toLowerCase()));
  return [...byWho].map(([who, whats]) => ({ term: capital(who), says: w.confirms([...whats]) }));
}

/** Eight digits at a time, as they are read out. */
const readable = (hash: string): string => (hash.match(/.{1,8}/g) ?? [hash]).join(' ');

export function coverBlocks(data: DisposalData, contents: Contents['items']): Block[] {
  const half = Math.ceil(contents.length / 2);
  return [
    partiesOf(data),
    {
      kind: 'columns',
      shares: [30, 70],
      left: [{ kind: 'paragraph', size: 'display', text: w.containers(data.containers.length) }],
      right: [{ kind: 'facts', facts: loadFacts(data.load) }],
    },
    ...firstOf(data),
    { kind: 'heading', level: 1, text: w.inside },
    {
      kind: 'columns',
      left: [{ kind: 'contents', items: contents.slice(0, half) }],
      right: [{ kind: 'contents', items: contents.slice(half) }],
    },
    {
      kind: 'together',
      parts: [
        {
          kind: 'caution',
          text: data.cautions.map((text, at) => ({ text: at === 0 ? text : ` ${text}`, strong: at === 0 })),
        },
        {
          kind: 'columns',
          left: [heading(w.confirm), { kind: 'facts', facts: confirmers(data) }],
          right: [
            heading(w.hash),
            { kind: 'paragraph', text: readable(data.contentHash) },
            { kind: 'paragraph', size: 'small', text: w.checkHash },
          ],
        },
      ],
    },
  ];
}
