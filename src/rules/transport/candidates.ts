/**
 * Dangerous goods that a consignment may be: entries of the UN list, ranked, each with the rules that led to it. The
 * consignor decides; where nothing was found, that too is said, with its reason.
 */
import { type Entry, type PackingGroup, transport } from '../../reference/transport-tables';
import type { Candidate, Citation } from '../candidate';
import type { Consignment } from './consignment';
import { type Described, describedByKnowledge, describedInAdr, describedInUSA } from './description';
import { type Draft, draft, ranks } from './draft';
import { citedRule, type Finding } from './finding';
import { type Findings, findingsOf } from './findings';
import { heedsOf } from './heeds';
import { liquidDrafts } from './liquids';
import { type Reportable, reportable } from './reportable';
import { solidDrafts } from './solids';
import { technicalNames } from './technical-names';

export type TransportCandidate = Candidate & {
  readonly scheme: 'transport';
  readonly entry: Entry;
  readonly packingGroup: PackingGroup;
  /** At most two. */
  readonly technicalNames: readonly string[];
  /** The rule of the class first, then why this entry, then what shaped the description. */
  readonly why: readonly Citation[];
  readonly environmentallyHazardous: 'yes' | 'no' | 'not determined';
  readonly described: {
    readonly adr?: string;
    /** In place of `adr`, where the class rests on what is known of the waste. */
    readonly adrByKnowledge?: string;
    readonly usa: string;
  };
};

export type Transport = {
  /** Ranked; those that came close stand last. */
  readonly candidates: readonly TransportCandidate[];
  /** No entry is taken: why that is no leave to send it as harmless. */
  readonly none?: Citation;
  /** Before it is carried at all. */
  readonly heed: readonly Citation[];
  /** USA, one package. */
  readonly reportable: readonly Reportable[];
};

/** USA: what needs a manifest and is in no other class. Marine pollutants apart, class 9 of the UN list does not reach it. */
function usaDrafts({ mixture, rcraCodes }: Consignment, others: readonly Draft[]): readonly Draft[] {
  if (rcraCodes.length === 0 || others.some(({ rank }) => rank === 'decides')) return [];
  const finding: Finding = {
    standing: 'fires',
    taken: true,
    group: 'III',
    citation: citedRule('usa-waste'),
    grounds: [],
    lacks: [],
  };
  const entry = mixture.state === 'liquid' ? 'hazardous-waste-liquid' : 'hazardous-waste-solid';
  return [draft(entry, finding, [], 'usa')];
}

const markOf = ({ aquatic }: Findings): TransportCandidate['environmentallyHazardous'] => {
  if (aquatic?.standing === 'open') return 'not determined';
  return aquatic?.standing === 'fires' ? 'yes' : 'no';
};

function shaping(d: Draft, entry: Entry, mark: string, rq: boolean): readonly Citation[] {
  const words = entry.usaOnly ? [citedRule('usa-word')] : [citedRule('waste-word'), citedRule('usa-word')];
  return [
    ...(d.finding.byKnowledge ? [citedRule('known-of-waste'), citedRule('waste-by-knowledge')] : []),
    ...(entry.technicalNames ? [citedRule('two-names'), citedRule('usa-names')] : []),
    ...words,
    ...(rq ? [citedRule('usa-rq')] : []),
    ...(mark === 'yes' && !entry.usaOnly ? [citedRule('aquatic'), citedRule('aquatic-mark')] : []),
  ];
}

function candidate(
  d: Draft,
  consignment: Consignment,
  found: Findings,
  due: readonly Reportable[],
): TransportCandidate {
  const entry = transport.entries[d.entry];
  const names = technicalNames(entry, consignment);
  const mark = markOf(found);
  const { citation, standing, grounds, lacks, byKnowledge } = d.finding;
  const described: Described = {
    entry,
    group: d.group,
    technicalNames: names,
    environmentallyHazardous: mark === 'yes',
    rcraCodes: consignment.rcraCodes,
    reportable: due.some(({ reached }) => reached === 'yes'),
  };
  return {
    scheme: 'transport',
    code: entry.un,
    standing,
    citation,
    grounds,
    lacks: distinct([
      ...lacks,
      ...(mark === 'not determined' ? (found.aquatic?.lacks ?? []) : []),
      ...(entry.technicalNames && names.length === 0 ? ['names of the constituents'] : []),
    ]),
    entry,
    packingGroup: d.group,
    technicalNames: names,
    why: unique([citation, ...d.because, ...shaping(d, entry, mark, described.reportable)]),
    environmentallyHazardous: mark,
    described: {
      ...(entry.usaOnly ? {} : { adr: describedInAdr(described) }),
      ...(byKnowledge && !entry.usaOnly ? { adrByKnowledge: describedByKnowledge(described) } : {}),
      usa: describedInUSA(described),
    },
  };
}

const distinct = (all: readonly string[]): readonly string[] => [...new Set(all)];

const unique = (all: readonly Citation[]): readonly Citation[] =>
  all.filter(({ rule }, i) => all.findIndex((other) => other.rule === rule) === i);

/** The first draft of each number stays: it ranks highest. */
const firstOfEach = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.filter(
    (d, i) => drafts.findIndex((o) => transport.entries[o.entry].un === transport.entries[d.entry].un) === i,
  );

/** Never a verdict: what the rules speak for, what a test would have to show, and what came close. */
export function transportCandidates(consignment: Consignment): Transport {
  const found = findingsOf(consignment);
  const drafted =
    consignment.mixture.state === 'liquid'
      ? liquidDrafts(consignment, found)
      : solidDrafts(consignment, found);
  const ranked = [...drafted, ...usaDrafts(consignment, drafted)].sort(
    (a, b) => ranks.indexOf(a.rank) - ranks.indexOf(b.rank),
  );
  const due = reportable(consignment);
  const candidates = firstOfEach(ranked).map((d) => candidate(d, consignment, found, due));
  const taken = ranked.some(({ finding }) => finding.taken);
  return {
    candidates,
    ...(taken ? {} : { none: citedRule('no-class') }),
    heed: heedsOf(consignment),
    reportable: due,
  };
}
