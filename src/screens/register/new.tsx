/** Making the register of a period: which days, which sheet. */
import * as z from 'zod/mini';
import { dayOf } from '../../paperwork/dates';
import { type Days, spanDays, spans } from '../../paperwork/register/period';
import { registerWords } from '../../paperwork/register/register-words';
import { Button } from '../../ui/button';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { Made } from '../papers/made';
import { usualSheet } from '../papers/sheet';
import { SheetChoice } from '../papers/sheet-choice';
import { PaperUnderWay } from '../papers/under-way';
import { useMaking } from '../papers/use-making';
import { useShell } from '../shell';
import { words } from '../words';
import { readDays } from './read-days';
import { registerPageWords as w } from './words';

const Draft = z.object({
  span: z.enum([...spans, 'days']),
  first: z.string(),
  last: z.string(),
  sheet: z.enum(['A4', 'Letter']),
});

const daysText = ({ firstDay, lastDay }: Days): string => registerWords.days(firstDay, lastDay);

export function NewRegister() {
  const { state, now, zone } = useShell();
  const { value, change, done } = useForm('register', Draft, () => ({
    span: 'last-quarter' as const,
    first: '',
    last: '',
    sheet: usualSheet(navigator.language, state.value),
  }));
  const { make, made, fault, underWay } = useMaking(done);
  const today = dayOf(now.value, zone);
  const read = value.span === 'days' ? readDays(value.first, value.last) : spanDays(value.span, today);
  const days = typeof read === 'string' ? null : read;
  const empty = state.value.log.length === 0;
  if (made) return <Made paper={made} says={w.says} />;
  if (underWay) return <PaperUnderWay title={w.making} underWay={underWay} />;
  return (
    <Frame
      title={w.title}
      second={w.formSecond}
      ways={[{ label: words.back, href: '#/papers' }]}
      actions={
        <>
          <Fault words={fault} />
          <Button
            look="primary"
            voice="serif"
            disabled={empty || days === null}
            second={empty ? w.nothing : days === null ? w[read as 'dayOpen' | 'wrongWay'] : daysText(days)}
            onTap={() =>
              days &&
              void make({ kind: 'register', wanted: { ...days, containerIds: [], sheet: value.sheet } })
            }
          >
            {w.make}
          </Button>
        </>
      }
    >
      <Part rule>
        <Choices
          legend={w.which}
          value={value.span}
          choices={[
            ...spans.map((span) => ({
              value: span,
              label: w.spans[span],
              second: daysText(spanDays(span, today)),
            })),
            { value: 'days' as const, label: w.days },
          ]}
          onChoose={(span) => change({ span })}
        />
        {value.span === 'days' && (
          <>
            <TextField
              label={w.first}
              kind="date"
              value={value.first}
              onInput={(first) => change({ first })}
            />
            <TextField
              label={w.last}
              kind="date"
              value={value.last}
              error={read === 'wrongWay' ? w.wrongWay : undefined}
              onInput={(last) => change({ last })}
            />
          </>
        )}
      </Part>
      <Part rule>
        <SheetChoice value={value.sheet} onChoose={(sheet) => change({ sheet })} />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
