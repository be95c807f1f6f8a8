/**
 * What happens when two sides meet: by rule, by the chart, by what a container is made of. The same whichever side is named
 * first; nothing that is added to a side takes a meeting away. No meeting found is no statement.
 */
import { type HazardCode, type Rule, reactivity, type Severity } from '../../reference/reactivity-tables';
import type { Cited } from '../cited';
import { type ChartCell, cellsBetween, chartCell, isRefused, weightOf } from './chart';
import { groupsOf, hasAny, type Matter, materialOf, type ThingId, traitsOf } from './matter';
import { type Held, standsAgainst } from './vessel';

/** `treatment`: one side is added to the other by portions, as a treatment was planned. */
export type How = 'mixing' | 'treatment';

export type Meeting = {
  readonly severity: Severity;
  /** One of the first side and one of the second. */
  readonly a: ThingId;
  readonly b: ThingId;
  /** Id of the rule, name of the cell, or the material. */
  readonly by: string;
  readonly codes: readonly HazardCode[];
  readonly ruling:
    | { readonly kind: 'rule'; readonly rule: Rule }
    | { readonly kind: 'chart'; readonly cell: ChartCell }
    | { readonly kind: 'material'; readonly material: ThingId; readonly held: Held };
  readonly cited: Cited;
  /** The emergency card for when it has happened. */
  readonly card: string;
};

const { rules } = reactivity;

const holds = (rule: Rule, a: Matter, b: Matter): boolean => {
  const [one, other] = [traitsOf(a), traitsOf(b)];
  return (
    (hasAny(one, rule.a.traits) && hasAny(other, rule.b.traits)) ||
    (hasAny(one, rule.b.traits) && hasAny(other, rule.a.traits))
  );
};

/** A kind meets itself in every container that it fills: that alone is no meeting. */
function meets(rule: Rule, a: Matter, b: Matter): boolean {
  if (!holds(rule, a, b)) return false;
  return a.thing !== b.thing || !holds(rule, { thing: a.thing }, { thing: b.thing });
}

const citedOf = ({ source, status, seen }: Rule): Cited => ({
  source,
  status,
  ...(seen === undefined ? {} : { seen }),
});

const byRule = (rule: Rule, a: Matter, b: Matter, how: How): Meeting => ({
  severity: rule[how],
  a: a.thing,
  b: b.thing,
  by: rule.id,
  codes: rule.codes,
  ruling: { kind: 'rule', rule },
  cited: citedOf(rule),
  card: rule.card,
});

/** A card that fits the worst of the codes. */
function cardFor(codes: readonly HazardCode[]): string {
  if (codes.includes('E')) return 'bulging-container';
  if (codes.includes('F')) return 'fire';
  return codes.includes('GT') || codes.includes('GF') ? 'runaway-fume' : 'bulging-container';
}

const byChart = (cell: ChartCell, a: Matter, b: Matter): Meeting => ({
  severity: isRefused(cell.codes) ? 'refuse' : 'mind',
  a: a.thing,
  b: b.thing,
  by: cell.cell,
  codes: cell.codes,
  ruling: { kind: 'chart', cell },
  cited: cell.cited,
  card: cardFor(cell.codes),
});

/** Groups that must meet nothing meet also what is in no group. */
function cellsOf(a: Matter, b: Matter): readonly string[] {
  const [one, other] = [groupsOf(a), groupsOf(b)];
  const never = [...one, ...other].filter((group) => String(group) in reactivity.withAnything);
  return [...cellsBetween(one, other), ...never.map((group) => `${group}-*`)];
}

function chartMeetings(a: Matter, b: Matter, ruled: readonly Rule[]): readonly Meeting[] {
  if (a.thing === b.thing) return [];
  const spokenFor = new Set(ruled.flatMap(({ cells }) => cells ?? []));
  const found = cellsOf(a, b).filter((cell) => !spokenFor.has(cell));
  return found.flatMap((name) => {
    const cell = chartCell(name);
    return cell ? [byChart(cell, a, b)] : [];
  });
}

/** @param vessel the side that is a container's material */
function vesselMeetings(vessel: ThingId, a: Matter, b: Matter, inside: Matter): readonly Meeting[] {
  const material = materialOf(vessel);
  if (!material || materialOf(inside.thing)) return [];
  return standsAgainst(material, inside).map((held) => ({
    severity: held.severity,
    a: a.thing,
    b: b.thing,
    by: vessel,
    codes: [],
    ruling: { kind: 'material', material: vessel, held },
    cited: held.cited,
    card: 'spill',
  }));
}

function between(a: Matter, b: Matter, how: How): readonly Meeting[] {
  const ruled = rules.filter((rule) => meets(rule, a, b));
  return [
    ...ruled.map((rule) => byRule(rule, a, b, how)),
    ...chartMeetings(a, b, ruled),
    ...vesselMeetings(a.thing, a, b, b),
    ...vesselMeetings(b.thing, a, b, a),
  ];
}

/** What is written out before what is printed, and that before what is only suspected. */
const plainness = ({ ruling }: Meeting): number =>
  ruling.kind === 'chart' ? (ruling.cell.suspected ? 2 : 1) : 0;

const rank = (meeting: Meeting): readonly number[] => [
  meeting.severity === 'refuse' ? 0 : 1,
  plainness(meeting),
  -weightOf(meeting.codes),
];

function worseFirst(one: Meeting, other: Meeting): number {
  const [a, b] = [rank(one), rank(other)];
  const at = a.findIndex((n, i) => n !== b[i]);
  return at < 0 ? one.by.localeCompare(other.by) : (a[at] ?? 0) - (b[at] ?? 0);
}

/** Each once, worst first. */
function ordered(all: readonly Meeting[]): readonly Meeting[] {
  const once = new Map<string, Meeting>();
  for (const meeting of [...all].sort(worseFirst)) {
    const key = `${meeting.by} ${meeting.a} ${meeting.b}`;
    if (!once.has(key)) once.set(key, meeting);
  }
  return [...once.values()];
}

/** Whatever of one side meets something of the other, worst first. */
export const meetings = (
  one: readonly Matter[],
  other: readonly Matter[],
  how: How = 'mixing',
): readonly Meeting[] => ordered(one.flatMap((a) => other.flatMap((b) => between(a, b, how))));

/** What meets within one vessel, worst first. */
export const meetingsWithin = (all: readonly Matter[]): readonly Meeting[] =>
  ordered(all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => between(a, b, 'mixing'))));

/** The worst that is to be refused; null when none is known, which does not make it harmless. */
export const refusedMeeting = (found: readonly Meeting[]): Meeting | null =>
  found.find(({ severity }) => severity === 'refuse') ?? null;
