/** The test for silver, one thing a page: its lists, its looks, the ammonia, what it comes to, its waste. */
import { gateOf } from '../../ledger/silver-test';
import { useStayAwake } from '../../ui/stay-awake';
import { Nowhere } from '../checklist/nowhere';
import { PersonFirst } from '../checklist/person-first';
import { useShell } from '../shell';
import { AmmoniaPage } from './ammonia-page';
import { GatePage } from './gate';
import { LookPage } from './look-page';
import { Overdue } from './overdue';
import { TestEnd } from './test-end';
import { useTest } from './use-test';
import { WastePage } from './waste-page';
import { silverWords as w } from './words';

const ages = ['in-time', 'overdue', 'old'] as const;

function Test({ batchId }: { readonly batchId: string }) {
  const { state, station, person, now } = useShell();
  const on = useTest(batchId);
  useStayAwake();
  const asking = { batchId, stationId: station.value, who: person.value, at: now.value };
  const { next, test } = on;
  if (on.stands && ages.indexOf(on.age) > ages.indexOf(test.urged))
    return <Overdue on={on} batchId={batchId} />;
  if (next.do === 'end')
    return test.atWaste ? <WastePage on={on} batchId={batchId} /> : <TestEnd on={on} batchId={batchId} />;
  const chloride = gateOf(state.value, 'chloride-test', asking);
  if (chloride && !chloride.open && test.ammoniaAt === null) {
    const end = test.looks.length > 0 ? { end: { label: w.breakOff, onTap: on.breakOff } } : {};
    return <GatePage key="chloride" gate={chloride} batchId={batchId} {...end} />;
  }
  if (next.do === 'look') return <LookPage on={on} look={next.look} batchId={batchId} />;
  const ammonia = gateOf(state.value, 'ammonia-test', asking);
  if (ammonia && !ammonia.open)
    return (
      <GatePage
        key="ammonia"
        gate={ammonia}
        batchId={batchId}
        end={{ label: w.gate.endHere, onTap: on.breakOff }}
      />
    );
  return <AmmoniaPage on={on} batchId={batchId} />;
}

export function SilverCheckScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const batchId = at.batch ?? '';
  if (!state.value.batches.has(batchId)) return <Nowhere>{w.noBatch}</Nowhere>;
  return (
    <PersonFirst>
      <Test batchId={batchId} key={batchId} />
    </PersonFirst>
  );
}
