/** How a last day was counted: from which day, by which rule, and by both readings of it. */
import { type Due, dues } from '../../ledger/due';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { Button, Buttons } from '../../ui/button';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { Frame } from '../frame';
import { isRule } from '../record/rule-fields';
import { useShell } from '../shell';
import { words } from '../words';
import { codesOfDue } from './rows';
import { countsFrom, dueTitle, dueWords as w, weekday } from './words';

/** Who said the limit, and when. */
function LimitRow({ due }: { readonly due: Due }) {
  const { state, now } = useShell();
  const { rule, days, stated } = due.limit;
  const body = state.value.rules.get(rule)?.body;
  const said = body && w.both.said(body.saidBy, calendarDayText(body.saidOn, now.value));
  return (
    <Row
      title={w.both.limit}
      second={stated ? said : w.both.careful0}
      figure={<FigureValue value={String(days)} unit={w.days(days)} />}
      href={isRule(rule) ? `#/record/rules/${rule}` : undefined}
    />
  );
}

/** Of waste that stood beside the work first, or of which nobody knows since when, it is not the first waste. */
function useFrom({ kind, containerId, from }: Due): string {
  const { state, zone } = useShell();
  const container = state.value.containers.get(containerId ?? '');
  const isFrom = (moment: string | null | undefined): boolean =>
    typeof moment === 'string' && calendarDay(moment, zone) === from;
  if (kind !== 'leave' || isFrom(container?.firstWasteIn)) return countsFrom[kind];
  return isFrom(container?.doubtfulSince) ? w.doubted : w.brought;
}

function Counted({ due }: { readonly due: Due }) {
  const { now } = useShell();
  const { from, day, lastDay, daysLeft, limit } = due;
  const text = (one: string): string => calendarDayText(one, now.value);
  const two = day !== lastDay;
  return (
    <Rows>
      <Row title={w.both.from} second={useFrom(due)} figure={<span>{text(from)}</span>} />
      <LimitRow due={due} />
      <Row
        title={two ? w.both.careful : w.both.single}
        second={two ? w.both.carefulHow(text(from), limit.days) : w.both.oneHow(text(from), limit.days)}
        figure={<strong>{text(day)}</strong>}
      />
      {two && (
        <Row
          title={w.both.last}
          second={w.both.lastHow(text(from), limit.days)}
          figure={<span>{text(lastDay)}</span>}
        />
      )}
      <Row
        title={daysLeft < 0 ? w.both.over : w.both.left}
        figure={<FigureValue value={w.count(daysLeft)} unit={w.days(daysLeft)} />}
      />
    </Rows>
  );
}

const doors: Readonly<Record<Due['kind'], (due: Due) => { readonly href: string; readonly label: string }>> =
  {
    leave: ({ containerId }) => ({ href: `#/containers/${containerId}`, label: w.open }),
    proof: ({ containerId, handOverId }) => ({
      href:
        handOverId === undefined
          ? `#/containers/${containerId}/mark/proof-filed`
          : `#/hand-overs/${handOverId}/proof`,
      label: w.file,
    }),
    walk: () => ({ href: '#/walk', label: w.toWalk }),
    look: ({ containerId }) => ({ href: `#/walk/${containerId}`, label: w.toWalk }),
    'move-excess': () => ({ href: '#/due/near-work', label: w.nearThere }),
  };

export function DueDay({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, zone } = useShell();
  const id = [at.kind, at.of].filter(Boolean).join('/');
  const due = dues(state.value, now.value, zone).find((one) => one.id === id);
  const ways = [{ label: words.back, href: '#/due' }];
  if (!due)
    return (
      <Frame title={w.title} ways={ways}>
        <Part>
          <p>{w.lost}</p>
        </Part>
      </Frame>
    );
  const { href, label } = doors[due.kind](due);
  return (
    <Frame
      title={dueTitle(due, codesOfDue(state.value, due))}
      second={weekday(due.day, now.value)}
      ways={ways}
      actions={
        <Buttons>
          <Button look="primary" href={href}>
            {label}
          </Button>
        </Buttons>
      }
    >
      {due.unsure && (
        <Part>
          <Notice mark="unknown">{w.both.unsure}</Notice>
        </Part>
      )}
      <Part rule width="edge">
        <Counted due={due} />
      </Part>
      <Part rule>
        {due.day !== due.lastDay && <p>{w.both.why}</p>}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
