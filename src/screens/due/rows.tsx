/** What is due, and how much there is, as rows. */

import { awaited, type Due } from '../../ledger/due';
import type { AmountNear } from '../../ledger/pressing';
import { codeOfContainer } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { type Endless, withoutLimit } from '../../ledger/without-limit';
import type { Figure } from '../../quantities/figure';
import { calendarDay, monthOf } from '../../rules/clocks/calendar-day';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark, type MarkKind } from '../../ui/marks';
import { Row } from '../../ui/row';
import { codesText, shown } from '../amounts';
import { type Shell, useShell } from '../shell';
import { amountTitle, dueTitle, dueWhen, dueWords as w } from './words';

export const codeIn = ({ state }: Pick<Shell, 'state'>, containerId: string | null): string =>
  unbroken(codeOfContainer(state.value, containerId) ?? '');

/** What a last day is about: a container, or all of a load. */
export const codesOfDue = (state: State, { containerId, handOverId }: Due): string => {
  const load = state.handOvers.get(handOverId ?? '');
  const ids = load ? awaited(state, load) : [containerId];
  return codesText(ids.map((id: string | null) => codeOfContainer(state, id) ?? ''));
};

/** A limit or a total as text: "100 kg". */
export function useAmountText(): (figure: Figure) => string {
  const { sign } = useShell();
  return (figure) => {
    const { value, unit } = shown(figure, sign.value);
    return `${value}\u202f${unit}`;
  };
}

/** Where what is due is done. */
const placeOf = ({ kind, containerId, handOverId }: Due): string => {
  if (handOverId !== undefined) return `#/hand-overs/${handOverId}`;
  if (kind === 'walk') return '#/walk';
  if (kind === 'look') return `#/walk/${containerId}`;
  if (kind === 'move-excess') return '#/due/near-work';
  return kind === 'proof' ? `#/containers/${containerId}/mark/proof-filed` : `#/containers/${containerId}`;
};

export const markOfDue = ({ daysLeft, unsure }: Due): MarkKind =>
  daysLeft < 0 ? 'overdue' : unsure ? 'unknown' : 'due';

type DueRowProps = {
  readonly due: Due;
  /** Where it is done, or how the day was counted. */
  readonly opens?: 'place' | 'count';
  /** Says the later day as well, where there are two. */
  readonly both?: boolean;
};

export function DueRow({ due, opens = 'place', both = false }: DueRowProps) {
  const { now, zone, state } = useShell();
  const { id, daysLeft, shareLeft, near } = due;
  return (
    <Row
      {...(near ? { mark: <Mark kind={markOfDue(due)} share={shareLeft} /> } : { start: 'text' as const })}
      title={dueTitle(due, codesOfDue(state.value, due))}
      second={dueWhen(due, { today: calendarDay(now.value, zone), now: now.value, both })}
      href={opens === 'place' ? placeOf(due) : `#/due/days/${id}`}
      figure={daysLeft > 0 ? <FigureValue value={String(daysLeft)} unit={w.days(daysLeft)} /> : undefined}
      equals={opens === 'count'}
    />
  );
}

/** No mark for what is only near: nothing of it is a time. */
const amountMark: Readonly<Record<AmountNear['standing'], MarkKind | null>> = {
  over: 'wrong',
  'may be over': 'unknown',
  near: null,
  'not determined': 'unknown',
};

/** An amount that is not well under the workshop's own limit. */
export function AmountRow({ amount }: { readonly amount: AmountNear }) {
  const { now, zone, sign } = useShell();
  const text = useAmountText();
  const { of, against, standing } = amount;
  const kind = amountMark[standing];
  return (
    <Row
      {...(kind === null ? { start: 'text' as const } : { mark: <Mark kind={kind} /> })}
      marked={kind === 'wrong'}
      title={amountTitle(amount)}
      second={[against.own ? w.against(text(against.own.limit)) : w.noReference, w.amountDo[of][standing]]
        .filter(Boolean)
        .join('. ')}
      href={of === 'month' ? `#/due/months/${monthOf(now.value, zone)}` : '#/due/on-site'}
      figure={<FigureValue {...shown(against.total, sign.value)} />}
    />
  );
}

/** The longest of what has no limit, for each kind: it is counted up, with what laws say beside it. */
export function WithoutLimitRows() {
  const { state, now, zone } = useShell();
  const all = withoutLimit(state.value, now.value, zone);
  return (
    <>
      {(['leave', 'proof'] as const).map((kind) => {
        const [first, ...more] = all.filter((one) => one.kind === kind);
        return first && <EndlessRow key={kind} longest={first} more={more.length} />;
      })}
    </>
  );
}

const ruleOf = { leave: 'storage-days', proof: 'proof-days' } as const;

function EndlessRow({ longest, more }: { readonly longest: Endless; readonly more: number }) {
  const { state } = useShell();
  const { kind, containerId, days, reference } = longest;
  const stands = w.stands[kind](codeIn({ state }, containerId), days, more);
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={w.notEntered[kind]}
      second={`${stands}${reference ? w.comparison(reference) : ''}`}
      href={`#/record/rules/${ruleOf[kind]}`}
      figure={<FigureValue value={String(days)} unit={w.days(days)} />}
    />
  );
}
