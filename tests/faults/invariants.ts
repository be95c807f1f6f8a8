/** What holds of every record, whatever was written into it. Each answers with what is wrong, or with nothing. */
import Decimal from 'decimal.js';
import type { Entry } from '../../src/ledger/entries/entry';
import type { State } from '../../src/ledger/state';
import { wrongInItself } from '../../src/ledger/verify';
import { add, facts, keepBooks, type Sum } from './bookkeeper';
import type { Stepped } from './workshop';

/** Sums of thousands of decimals of which some were divided; what an entry can say has nine decimals. */
const rounding = '1e-9';
/** A rest of a waste that no vessel or scale can show counts as none: half of 1 mL, half of 0.1 g. */
const readable = { L: '0.0005', g: '0.05' } as const;

const sides = ['L', 'g'] as const;

const asSum = ({ volume, mass }: { readonly volume: Decimal; readonly mass: Decimal }): Sum => ({
  L: volume,
  g: mass,
});

const differs = (a: Sum, b: Sum, by: { readonly L: Decimal.Value; readonly g: Decimal.Value }): boolean =>
  sides.some((side) => {
    // Of amounts so large that they fill all digits there are, the last digit is no difference.
    const digits = Decimal.max(a[side].abs(), b[side].abs()).times('1e-15');
    return a[side].minus(b[side]).abs().gt(Decimal.max(by[side], digits));
  });

const exact = { L: rounding, g: rounding };
const zero: Sum = { L: new Decimal(0), g: new Decimal(0) };
const text = ({ L, g }: Sum): string => `${L.toFixed()} L and ${g.toFixed()} g`;

function negative({ containers, streams }: State): string[] {
  const held = [
    ...[...containers].flatMap(([id, { holds, contents }]) =>
      [holds, ...contents].map((one) => [id, one] as const),
    ),
    ...[...streams].map(([id, { unplaced }]) => [id, unplaced] as const),
  ];
  return held.flatMap(([id, { volume, mass }]) =>
    volume.isNegative() || mass.isNegative() ? [`less than nothing in ${id}`] : [],
  );
}

/** Of what was poured out nothing stays in it; where only water went, what was dissolved does. */
function emptied({ containers }: State): string[] {
  return [...containers].flatMap(([id, { holds, contents, movements }]) => {
    const dried = movements.some(({ purpose }) => purpose === 'evaporated');
    const isEmpty = holds.volume.isZero() && holds.mass.isZero();
    return isEmpty && !dried && contents.length > 0 ? [`${id} is empty, and yet something is in it`] : [];
  });
}

function balance(state: State, entries: readonly Entry[]): string[] {
  const books = keepBooks(entries);
  const wrong: string[] = [];
  const sum = { came: books.fromNowhere, is: books.left };
  let tolerance = zero;
  for (const [id, container] of state.containers) {
    const [is, should] = [asSum(container.holds), books.containers.get(id) ?? zero];
    if (differs(is, should, exact)) wrong.push(`${id} holds ${text(is)}, the books have ${text(should)}`);
    const parts = container.contents.map(asSum).reduce(add, zero);
    if (differs(is, parts, exact)) wrong.push(`the parts of ${id} come to ${text(parts)}, not ${text(is)}`);
    sum.is = add(sum.is, is);
  }
  if (state.containers.size !== books.containers.size) wrong.push('another number of containers');
  for (const [id, stream] of state.streams) {
    const { logged, placed } = books.streams.get(id) ?? { logged: zero, placed: zero };
    if (differs(asSum(stream.placed), placed, exact))
      wrong.push(`of ${id} ${text(asSum(stream.placed))} are placed, the books have ${text(placed)}`);
    // More placed than logged is no fault of the record; it is what came beyond what was logged.
    const over = {
      L: Decimal.max(placed.L.minus(logged.L), 0),
      g: Decimal.max(placed.g.minus(logged.g), 0),
    };
    sum.came = add(sum.came, add(logged, over));
    sum.is = add(sum.is, asSum(stream.unplaced));
    tolerance = add(tolerance, { L: new Decimal(readable.L), g: new Decimal(readable.g) });
  }
  if (differs(sum.came, sum.is, add(tolerance, { L: new Decimal(rounding), g: new Decimal(rounding) })))
    wrong.push(`${text(sum.came)} came, ${text(sum.is)} stand somewhere or have left`);
  return wrong;
}

/** A container is here or gone; whoever hands one over that is gone has it flagged, and nobody else. */
function fates(state: State, entries: readonly Entry[]): string[] {
  const gone = new Map<string, string>();
  const twice = new Set<string>();
  for (const { body, at, entryId } of facts(entries)) {
    if (body.kind === 'container-marked' && body.mark === 'gone') {
      if (!gone.has(body.containerId)) gone.set(body.containerId, at);
    } else if (body.kind === 'container-marked' && body.mark === 'came-back') gone.delete(body.containerId);
    else if (body.kind === 'load-rejected') for (const id of body.containerIds) gone.delete(id);
    else if (body.kind === 'handed-over')
      for (const { containerId } of body.containers) {
        if (gone.has(containerId)) twice.add(`${entryId} ${containerId}`);
        else gone.set(containerId, at);
      }
  }
  const flagged = state.upsets.flatMap((upset) =>
    upset.code === 'handed-over-while-gone' ? [`${upset.entryId} ${upset.containerId}`] : [],
  );
  return [
    ...[...state.containers].flatMap(([id, { goneSince }]) =>
      goneSince === (gone.get(id) ?? null)
        ? []
        : [`${id} is gone since ${goneSince}, by its entries since ${gone.get(id)}`],
    ),
    ...[...twice].flatMap((one) => (flagged.includes(one) ? [] : [`a second fate is not flagged: ${one}`])),
    ...flagged.flatMap((one) => (twice.has(one) ? [] : [`flagged for a second fate, but was here: ${one}`])),
  ];
}

/** A plan that the ledger agreed to, carried out at once, contradicts nothing in it. */
function plans({ intention, written, inOrder, before }: Stepped, state: State): string[] {
  const isPlan = ['place-stream', 'move-contents', 'move-all', 'begin-treatment'].includes(intention.do);
  if (!isPlan || !inOrder) return [];
  // Of what no waste was logged for only a level tells: it may be poured over, and the flag says what is missing.
  const source = intention.do === 'move-all' && before.containers.get(intention.fromContainerId);
  if (source && source.contents.length === 0) return [];
  // An end that was told for a time before the beginning ends it for whoever asks, but the flag still sees it run.
  const askew = [...before.treatments.values()].some(({ at, ended }) => ended !== null && ended.at < at);
  const ids = new Set(askew ? [] : written.map(({ id }) => id));
  return state.upsets.flatMap(({ code, entryId }) =>
    // Who weighs a liquid of unknown density is not kept from putting it away: that is said, and asked for.
    ids.has(entryId) && code !== 'placed-in-another-unit'
      ? [`${intention.do} was agreed to and then flagged: ${code}`]
      : [],
  );
}

/** What has left is not here to be poured out of. */
function outOfWhatIsGone({ intention, decided, before }: Stepped): string[] {
  if (!decided.ok || (intention.do !== 'move-contents' && intention.do !== 'move-all')) return [];
  const gone = before.containers.get(intention.fromContainerId)?.goneSince ?? null;
  return gone === null ? [] : [`${intention.do} was agreed to out of what is gone since ${gone}`];
}

function entriesThemselves({ written }: Stepped): string[] {
  return written.flatMap((entry) => {
    const wrong = wrongInItself(entry);
    return wrong ? [`${entry.body.kind}: ${JSON.stringify(wrong)}`] : [];
  });
}

function refusals({ decided, before, written }: Stepped, state: State, logBefore: number): string[] {
  if (decided.ok) return written.length === 0 ? ['agreed to, and nothing written'] : [];
  return [
    ...(state === before && state.log.length === logBefore ? [] : ['refused, and yet something changed']),
    ...(typeof decided.refusal.code === 'string' ? [] : ['refused without a reason']),
  ];
}

/** @returns what is wrong after a step, in words for whoever mends it */
export const wrongAfter = (
  stepped: Stepped,
  state: State,
  entries: readonly Entry[],
  logBefore: number,
): readonly string[] => [
  ...entriesThemselves(stepped),
  ...refusals(stepped, state, logBefore),
  ...negative(state),
  ...emptied(state),
  ...balance(state, entries),
  ...fates(state, entries),
  ...plans(stepped, state),
  ...outOfWhatIsGone(stepped),
];
