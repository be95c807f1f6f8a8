/** Tests for silver on the page of their batch: the one that goes on, and those written down. */
import { silverChecksOf } from '../../ledger/silver-checks-of';
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { silverOutcome } from '../record/clock-words';
import { capital } from '../record/entry-words';
import { useShell } from '../shell';
import { KeptTest, testDraft } from './kept-test';
import { silverWords as w } from './words';

/** "Check for silver", or the way back into the one that waits. */
function useSilverCheck(batchId: string): {
  readonly href: string;
  readonly title: string;
  readonly second: string;
} {
  const { draft } = useShell();
  const kept = draft.read(testDraft(batchId), KeptTest);
  const href = `#/batches/${batchId}/silver-check`;
  if (!kept) return { href, title: w.begin, second: w.beginSecond };
  return { href, title: w.goOn, second: kept.ammoniaAt === null ? w.goOnSecond : w.ammoniaIn };
}

/** On a step that it belongs to. */
export function SilverButton({ batchId }: { readonly batchId: string }) {
  const { href, title } = useSilverCheck(batchId);
  return <Button href={href}>{title}</Button>;
}

/** On the clock of its ammonia: the way back into the test, where one waits on this phone. */
export function SilverWayBack({ batchId }: { readonly batchId: string }) {
  const { draft } = useShell();
  return draft.read(testDraft(batchId), KeptTest) === null ? null : <SilverButton batchId={batchId} />;
}

export function BatchChecks({ batchId }: { readonly batchId: string }) {
  const { state, now } = useShell();
  const { href, title, second } = useSilverCheck(batchId);
  return (
    <Part rule title={w.part} width="edge">
      <Rows>
        <Row start="text" title={title} second={second} href={href} />
        {silverChecksOf(state.value, batchId).map(({ body, at, entryId }) => (
          <Row
            key={entryId}
            title={capital(silverOutcome[body.outcome])}
            second={momentText(at, now.value)}
            {...(body.outcome === 'not-conclusive'
              ? { mark: <Mark kind="unknown" /> }
              : { start: 'text' as const })}
            href={`#/batches/${batchId}/silver-check/${body.checkId}`}
          />
        ))}
      </Rows>
    </Part>
  );
}
