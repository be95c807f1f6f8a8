/** A container taken into use, empty. */
import { nextCode } from '../../ledger/decisions/codes';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import { emptyVessel, VesselDraft, VesselForm, vesselIntention } from './vessel-form';
import { containerWords as w } from './words';

export function NewContainer() {
  const { state, go, moment } = useShell();
  const form = useForm('container-new', VesselDraft, emptyVessel);
  const { write, fault, busy } = useWriting();
  const { tried, tryNow } = useTried();
  const codes = [...state.value.containers.values()].map(({ body }) => body.code);
  async function keep(): Promise<void> {
    tryNow();
    const intention = vesselIntention(form.value, moment());
    if (!intention) return;
    const written = await write(intention);
    const body = written?.[0]?.body;
    if (body?.kind !== 'container-opened') return;
    form.done();
    go(`containers/${body.containerId}`, 'replace');
  }
  return (
    <Frame
      title={w.newTitle}
      ways={[{ label: words.back, href: '#/containers' }]}
      actions={
        <>
          <Fault words={fault} />
          <Button look="primary" onTap={() => void keep()} disabled={busy}>
            {w.keepContainer}
          </Button>
        </>
      }
    >
      <Part>
        <VesselForm draft={form.value} onChange={form.change} tried={tried} nextCode={nextCode('C', codes)} />
      </Part>
    </Frame>
  );
}
