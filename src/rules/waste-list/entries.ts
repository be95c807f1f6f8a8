/**
 * Entries of the European list of waste for a kind of waste: chosen by where it arises, then by what it is. Between two
 * entries that mirror each other hazardous properties decide, and one that nobody determined counts as one that may hold.
 */
import {
  type WasteCode,
  type WasteKind,
  type WasteListEntry,
  type WasteListRuleId,
  type WorkView,
  wasteList,
} from '../../reference/waste-list-tables';
import type { Candidate, Citation } from '../candidate';
import { cited } from '../cited';

export type WasteAsked = {
  /** null: no kind of waste of this trade. */
  readonly kind: WasteKind | null;
  /** Where somebody who decides sees the work as other than hydrometallurgy. */
  readonly view?: WorkView;
  /** Hazardous properties that were looked at (HP 1 to HP 15); null where nobody looked. */
  readonly properties: readonly Pick<Candidate, 'code' | 'standing'>[] | null;
};

export type WasteListCandidate = Candidate & {
  readonly scheme: 'waste-list';
  readonly entry: WasteListEntry;
  /** Of a mirror entry, as it is written. */
  readonly counterpart?: string;
  /** Why this entry, in words; the choosing order and what decides between mirrors stand in `rules`. */
  readonly why: string;
  readonly rules: readonly Citation[];
};

/** A code that is not proposed: under a condition, or because it would be wrong. */
export type NotProposed = { readonly code: string; readonly why: Citation };

export type WasteList = {
  /** Ranked; the first is the likeliest. */
  readonly candidates: readonly WasteListCandidate[];
  readonly otherwise: readonly NotProposed[];
  readonly wrong: readonly NotProposed[];
  readonly none?: Citation;
};

const citedRule = (id: WasteListRuleId): Citation => ({
  ...cited(wasteList.rules[id]),
  cite: wasteList.rules[id].cite,
});

/** A code as it is written: hazardous ones with an asterisk. */
const written = (code: WasteCode): string => (wasteList.entries[code].hazardous ? `${code}*` : code);

type Hazard = 'fires' | 'open' | 'none';

/** What the hazardous properties come to. */
export function hazardOf(properties: WasteAsked['properties']): Hazard {
  if (properties === null) return 'open';
  if (properties.some(({ standing }) => standing === 'fires')) return 'fires';
  return properties.some(({ standing }) => standing !== 'close') ? 'open' : 'none';
}

const mirrorRule = { fires: 'mirror-fires', open: 'mirror-open', none: 'mirror-none' } as const;

function ruleOf({ type, hazardous }: WasteListEntry, hazard: Hazard): WasteListRuleId {
  if (type === 'mirror') return mirrorRule[hazard];
  return hazardous ? type : 'absolute-harmless';
}

/** Step of the choosing order at which a code is reached. */
const stepOf = (code: WasteCode): number =>
  wasteList.order.findIndex(({ chapters }) => chapters.includes(code.slice(0, 2)));

type Wanted = { readonly code: WasteCode; readonly why: string };

function candidate({ code: wanted, why }: Wanted, asked: WasteAsked, first: boolean): WasteListCandidate {
  const hazard = hazardOf(asked.properties);
  const { type, counterpart: other } = wasteList.entries[wanted];
  const code = type === 'mirror' && hazard === 'none' && other ? other : wanted;
  const entry = wasteList.entries[code];
  const rule = citedRule(ruleOf(entry, hazard));
  const open = type === 'mirror' && hazard === 'open';
  const undetermined = asked.properties?.filter((p) => p.standing === 'open' || p.standing === 'judgement');
  return {
    scheme: 'waste-list',
    code: written(code),
    standing: open ? 'open' : first ? 'fires' : 'judgement',
    citation: rule,
    grounds: [],
    lacks: open ? (undetermined?.map((p) => p.code) ?? ['hazardous properties']) : [],
    entry,
    ...(entry.counterpart ? { counterpart: written(entry.counterpart) } : {}),
    why,
    rules: [
      citedRule('order'),
      rule,
      ...(entry.says.includes('heavy metals') ? [citedRule('heavy-metal')] : []),
    ],
  };
}

/** Entries of the view that was asked for come first. */
function wantedOf(kind: WasteKind, view: WorkView | undefined): readonly Wanted[] {
  const { entries, views, wrong } = wasteList.kinds[kind];
  const seen = view
    ? views.flatMap((v) => (v.view === view ? [{ code: v.code, why: wasteList.views[view].says }] : []))
    : [];
  const facility: readonly Wanted[] =
    view === 'waste-facility' && wrong.includes('facility-19')
      ? [{ code: '19 02 05', why: wasteList.views[view].says }]
      : [];
  const own = entries.filter(({ only }) => !only).sort((a, b) => stepOf(a.code) - stepOf(b.code));
  return [...facility, ...seen, ...own];
}

function otherwiseOf(kind: WasteKind, view: WorkView | undefined): readonly NotProposed[] {
  const { entries, views } = wasteList.kinds[kind];
  const under = (code: WasteCode, rule: string): NotProposed => ({
    code: written(code),
    why: { ...citedRule('order'), rule },
  });
  return [
    ...entries.flatMap(({ code, why, only }) => (only ? [under(code, why)] : [])),
    ...views.flatMap((v) => (v.view === view ? [] : [under(v.code, wasteList.views[v.view].says)])),
  ];
}

function wrongOf(kind: WasteKind, asked: WasteAsked, proposed: readonly Wanted[]): readonly NotProposed[] {
  const atFacility = asked.view === 'waste-facility';
  const ids = wasteList.kinds[kind].wrong.filter((id) => !(atFacility && id === 'facility-19'));
  const reasons = [...ids, 'household' as const].flatMap((id) => {
    const { codes, says, ...told } = wasteList.wrong[id];
    const why = cited({ rule: says, ...told });
    return codes.map((code) => {
      const known = code in wasteList.entries ? written(code as WasteCode) : code;
      return { code: known, why };
    });
  });
  const escapes = proposed.flatMap(({ code }) => {
    const { type, counterpart } = wasteList.entries[code];
    return type === 'mirror' && counterpart
      ? [{ code: written(counterpart), why: citedRule('no-escape') }]
      : [];
  });
  return [...reasons, ...(hazardOf(asked.properties) === 'none' ? [] : escapes)];
}

/** Candidates that a person confirms, and what is not to be taken instead. */
export function wasteListEntries(asked: WasteAsked): WasteList {
  const { kind, view } = asked;
  if (kind === null) return { candidates: [], otherwise: [], wrong: [], none: citedRule('no-kind') };
  const wanted = wantedOf(kind, view);
  return {
    candidates: wanted.map((one, i) => candidate(one, asked, i === 0)),
    otherwise: otherwiseOf(kind, view),
    wrong: wrongOf(kind, asked, wanted),
  };
}
