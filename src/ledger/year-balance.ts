/**
 * The account of one substance over a time: what stood here and what came, against what went and what stands here. Parts of
 * both sides that rest on one reading cancel by their slopes. What somebody did not tell is on neither side, and is named.
 */
import Decimal from 'decimal.js';
import { type Verdict, verdictOf } from '../chemistry/closure';
import { capital } from '../chemistry/evidence';
import type { Amount } from '../chemistry/load';
import { expression, minus, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { quantity } from '../quantities/quantity';
import { type Metal, metals } from '../reference/tables';
import { type Contents, silentResidues, wholeLoad } from './container-load';
import type { State } from './state';
import type { Flows } from './year-flows';
import type { Flow, InLine, OutLine, Portion, Thing } from './year-shelf';

export type Accounted = Metal | 'acid';
export type BalanceUnit = 'g' | 'mol';

export type BalancePart = {
  readonly of: Thing;
  readonly figure: Figure<BalanceUnit>;
  /** The last entry behind it. */
  readonly entryId?: string;
};

/** `measured-after`: more was measured in a pot within the time than had gone through its treatment by then. */
export type BalanceLineName = InLine | OutLine | 'start' | 'end' | 'measured-after';

export type BalanceLine = {
  readonly line: BalanceLineName;
  readonly sum: Figure<BalanceUnit>;
  readonly parts: readonly BalancePart[];
};

/**
 * What keeps a balance from being whole. `not-told`: nobody determined the substance in this waste; `held`: nobody said what
 * liquor this solid holds; `unknown`: nobody knows what is in this container, or was in it as it left.
 */
export type Gap = { readonly why: 'not-told' | 'held' | 'unknown'; readonly of: Thing };

export type Balance = {
  readonly of: Accounted;
  readonly ins: readonly BalanceLine[];
  readonly outs: readonly BalanceLine[];
  readonly sumIn?: Figure<BalanceUnit>;
  readonly sumOut?: Figure<BalanceUnit>;
  /** In less out; absent where nothing is known on either side. */
  readonly off?: Figure<BalanceUnit>;
  /** Of what is told. `cannot-be-told` where nothing is. */
  readonly verdict: Verdict;
  /** With any, the balance is of what was told only: each side is at least. */
  readonly gaps: readonly Gap[];
};

const unitOf = (of: Accounted): BalanceUnit => (of === 'acid' ? 'mol' : 'g');
const nameOf = (of: Accounted): string => (of === 'acid' ? 'Free nitric acid' : capital(metals[of].name));

const lineWords: Readonly<Record<BalanceLineName, string>> = {
  start: 'standing here at the start',
  arose: 'in waste that arose',
  'in-work': 'in liquor that stood here before cementation',
  'left-of-treating': 'measured in what treating left',
  'measured-after': 'measured in pots treated before',
  determined: 'in waste that was logged for a container',
  'came-back': 'in loads that came back',
  'from-elsewhere': 'poured over from elsewhere',
  treated: 'taken out of solution by treating',
  'handed-over': 'handed over',
  'into-work': 'gone on to cementation',
  sample: 'taken as samples',
  spill: 'spilt',
  'taken-out': 'taken out of containers',
  gone: 'gone some other way',
  replaced: 'replaced by what somebody said is there',
  'to-elsewhere': 'poured over to elsewhere',
  'lost-sight': 'dried to nothing',
  end: 'standing here at the end',
};

const inLines: readonly BalanceLineName[] = [
  'start',
  'arose',
  'in-work',
  'left-of-treating',
  'measured-after',
  'determined',
  'came-back',
  'from-elsewhere',
];
const outLines: readonly BalanceLineName[] = [
  'treated',
  'handed-over',
  'into-work',
  'sample',
  'spill',
  'taken-out',
  'gone',
  'replaced',
  'to-elsewhere',
  'lost-sight',
  'end',
];

const amounts = new WeakMap<Contents, ReturnType<typeof wholeLoad>>();

function loadIn(contents: Contents): ReturnType<typeof wholeLoad> {
  if (!amounts.has(contents)) amounts.set(contents, wholeLoad(contents));
  return amounts.get(contents);
}

function amountIn(contents: Contents, of: Accounted): Amount<BalanceUnit> | undefined {
  const load = loadIn(contents);
  return of === 'acid' ? load?.freeAcid : load?.metals.get(of);
}

const figuresIn = (all: readonly Contents[], of: Accounted): readonly Figure<BalanceUnit>[] =>
  all.flatMap((contents) => amountIn(contents, of)?.figure ?? []);

/** What is known of a portion; undefined where nothing is. */
function figureOf(
  { plus: more, less: fewer }: Pick<Portion, 'plus' | 'less'>,
  of: Accounted,
  sentence: string,
): Figure<BalanceUnit> | undefined {
  const [ins, outs] = [figuresIn(more, of), figuresIn(fewer, of)];
  const [first] = ins;
  if (first && ins.length === 1 && outs.length === 0) return first;
  if (ins.length === 0 && outs.length === 0) return undefined;
  const less = plus(...outs);
  const formula =
    ins.length === 0 ? times(-1, less) : outs.length === 0 ? plus(...ins) : minus(plus(...ins), less);
  return workedOut({ sentence, unit: unitOf(of), formula, signed: true });
}

const thingKey = ({ of, id }: Thing): string => `${of} ${id}`;

/** What goes through one treatment is one part, however often something was added and measured. */
function gathered(flows: readonly Flow[]): readonly Flow[] {
  const byKey = new Map<string, Flow>();
  flows.forEach((flow, i) => {
    const key = flow.line === 'treated' ? `treated ${thingKey(flow.of)}` : String(i);
    const before = byKey.get(key);
    byKey.set(
      key,
      before ? { ...flow, plus: [...before.plus, ...flow.plus], less: [...before.less, ...flow.less] } : flow,
    );
  });
  return [...byKey.values()];
}

type Named = { readonly line: BalanceLineName; readonly part: BalancePart };

function named(portion: Portion, line: BalanceLineName, of: Accounted, entryId?: string): readonly Named[] {
  const figure = figureOf(portion, of, `${nameOf(of)} ${lineWords[line]}`);
  if (!figure) return [];
  return [{ line, part: { of: portion.of, figure, ...(entryId === undefined ? {} : { entryId }) } }];
}

/** A treatment in whose pot more was measured than went through it within the time has given something back. */
function turned({ line, part }: Named, of: Accounted): Named {
  if (line !== 'treated' || !part.figure.value.isNegative()) return { line, part };
  const formula = times(-1, part.figure);
  const sentence = `${nameOf(of)} ${lineWords['measured-after']}`;
  const figure = workedOut({ sentence, unit: unitOf(of), formula, signed: true });
  return { line: 'measured-after', part: { ...part, figure } };
}

function linesOf(
  all: readonly Named[],
  names: readonly BalanceLineName[],
  of: Accounted,
): readonly BalanceLine[] {
  return names.flatMap((line): BalanceLine[] => {
    const parts = all.filter((one) => one.line === line).map(({ part }) => part);
    const [first] = parts;
    if (!first) return [];
    const sentence = `${nameOf(of)} ${lineWords[line]}`;
    const formula = plus(...parts.map(({ figure }) => figure));
    const sum =
      parts.length === 1 && first.figure.sentence === sentence
        ? first.figure
        : workedOut({ sentence, unit: unitOf(of), formula });
    return [{ line, sum, parts }];
  });
}

const sumOf = (lines: readonly BalanceLine[], of: Accounted, side: string) =>
  lines.length === 0
    ? undefined
    : workedOut({
        sentence: `${nameOf(of)}, ${side}`,
        unit: unitOf(of),
        formula: plus(...lines.map(({ sum }) => sum)),
      });

/** Share of a side below which a difference, or its range, comes of reckoning with plain numbers. */
const rounding = new Decimal('1e-9');

/** What is left of a difference that reckoning alone has made is nothing. */
function withoutRounding(off: Figure<BalanceUnit>, side: Decimal): Figure<BalanceUnit> {
  const least = side.abs().times(rounding);
  const cleared = (value: Decimal) => quantity(value.abs().lte(least) ? 0 : value, off.unit);
  return { ...off, value: cleared(off.value), low: cleared(off.low), high: cleared(off.high) };
}

function difference(
  of: Accounted,
  sumIn: Figure<BalanceUnit> | undefined,
  sumOut: Figure<BalanceUnit> | undefined,
): Figure<BalanceUnit> | undefined {
  if (!sumIn && !sumOut) return undefined;
  const formula = sumIn && sumOut ? minus(sumIn, sumOut) : sumIn ? expression(sumIn) : times(-1, sumOut ?? 0);
  const sentence = `${nameOf(of)}, in less out`;
  const off = workedOut({ sentence, unit: unitOf(of), formula, signed: true });
  return withoutRounding(off, Decimal.max(sumIn?.value ?? 0, sumOut?.value ?? 0));
}

function gapsIn(state: State, { of: thing, plus: more }: Portion, of: Accounted): readonly Gap[] {
  return more.flatMap((contents): Gap[] => {
    const open = amountIn(contents, of)?.openIn ?? [];
    return [
      // What has been through a treatment is open by its name, and stands under what was treated.
      ...open.flatMap((id): Gap[] =>
        state.streams.has(id) ? [{ why: 'not-told', of: { of: 'stream', id } }] : [],
      ),
      ...silentResidues(contents).map((id): Gap => ({ why: 'held', of: { of: 'stream', id } })),
      ...(contents.unaccounted ? [{ why: 'unknown' as const, of: thing }] : []),
    ];
  });
}

const eachOnce = (gaps: readonly Gap[]): readonly Gap[] => [
  ...new Map(gaps.map((gap) => [`${gap.why} ${thingKey(gap.of)}`, gap])).values(),
];

const isIn = (line: BalanceLineName): boolean => inLines.includes(line);

export function balanceOf(state: State, { start, flows, end, doubtful }: Flows, of: Accounted): Balance {
  const all = [
    ...start.flatMap((portion) => named(portion, 'start', of)),
    ...gathered(flows).flatMap((flow) =>
      named(flow, flow.line, of, flow.entryId).map((one) => turned(one, of)),
    ),
    ...end.flatMap((portion) => named(portion, 'end', of)),
  ];
  const ins = linesOf(all, inLines, of);
  const outs = linesOf(
    all.filter(({ line }) => !isIn(line)),
    outLines,
    of,
  );
  const [sumIn, sumOut] = [sumOf(ins, of, 'in'), sumOf(outs, of, 'out')];
  const off = difference(of, sumIn, sumOut);
  const gaps = eachOnce([
    ...[...start, ...flows, ...end].flatMap((portion) => gapsIn(state, portion, of)),
    ...doubtful.map((id): Gap => ({ why: 'unknown', of: { of: 'container', id } })),
  ]);
  return {
    of,
    ins,
    outs,
    ...(sumIn ? { sumIn } : {}),
    ...(sumOut ? { sumOut } : {}),
    ...(off ? { off } : {}),
    verdict: off ? verdictOf(off) : 'cannot-be-told',
    gaps,
  };
}
