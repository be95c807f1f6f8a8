/** Making the paper of a year: which sheet. */
import * as z from 'zod/mini';
import { yearDays, yearsTold } from '../../ledger/year-account';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
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
import { yearWords as w } from './words';

const Draft = z.object({ sheet: z.enum(['A4', 'Letter']) });

export function MakeYear({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, zone } = useShell();
  const { value, change, done } = useForm('year-paper', Draft, () => ({
    sheet: usualSheet(navigator.language, state.value),
  }));
  const { make, made, fault, underWay } = useMaking(done);
  const ways = [{ label: words.back, href: `#/papers/year/${at.year ?? ''}` }];
  const years = yearsTold(state.value, now.value, zone);
  const { year = '' } = at;
  if (!years.includes(year)) return <Frame title={w.lost} ways={ways} />;
  if (made) return <Made paper={made} says={w.says} />;
  if (underWay) return <PaperUnderWay title={w.making} underWay={underWay} />;
  const empty = state.value.log.length === 0;
  const wanted = { ...yearDays(year), containerIds: [], sheet: value.sheet };
  return (
    <Frame
      title={w.makeTitle(year)}
      second={year === years[0] ? w.soFar : undefined}
      ways={ways}
      actions={
        <>
          <Fault words={fault} />
          <Button
            look="primary"
            voice="serif"
            disabled={empty}
            second={empty ? w.empty : w.makeSecond}
            onTap={() => void make({ kind: 'year', wanted })}
          >
            {w.make}
          </Button>
        </>
      }
    >
      <Part rule>
        <SheetChoice value={value.sheet} onChoose={(sheet) => change({ sheet })} />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
