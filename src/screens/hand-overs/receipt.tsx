/** The receipt of a hand-over, for both sides: which sheet, then the file. */
import * as z from 'zod/mini';
import type { HandOverState } from '../../ledger/state';
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
import { paperWords } from '../papers/words';
import { useShell } from '../shell';
import { words } from '../words';
import { codesOf } from './load';
import { NotKept } from './not-kept';
import { handOverWords as w } from './words';

const Draft = z.object({ sheet: z.enum(['A4', 'Letter']) });

const says = {
  title: w.receiptMade,
  confirm: w.receiptConfirm,
  keep: paperWords.madeKeep,
  open: paperWords.open,
};

function ReceiptForm({ handOver }: { readonly handOver: HandOverState }) {
  const { state } = useShell();
  const { handOverId, collector } = handOver.body;
  const containerIds = handOver.parts.map(({ containerId }) => containerId);
  const { value, change, done } = useForm('receipt', Draft, () => ({
    sheet: usualSheet(navigator.language, state.value),
  }));
  const { make, made, fault, underWay } = useMaking(done);
  const { sheet } = value;
  if (made) return <Made paper={made} says={says} />;
  if (underWay) return <PaperUnderWay title={w.receiptMaking} underWay={underWay} />;
  return (
    <Frame
      title={w.receiptTitle}
      second={`${collector.name}: ${codesOf(state.value, containerIds)}`}
      ways={[{ label: words.back, href: `#/hand-overs/${handOverId}` }]}
      actions={
        <>
          <Fault words={fault} />
          <Button
            look="primary"
            voice="serif"
            onTap={() => void make({ kind: 'receipt', wanted: { handOverId, containerIds, sheet } })}
          >
            {w.receipt}
          </Button>
        </>
      }
    >
      <Part rule>
        <p>{w.receiptSays}</p>
        <SheetChoice value={sheet} onChoose={(sheet) => change({ sheet })} />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function ReceiptScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const handOver = state.value.handOvers.get(at.id ?? '');
  return handOver ? <ReceiptForm key={at.id} handOver={handOver} /> : <NotKept />;
}
