/** An invented can that left with the invented collector some weeks ago: signed by both, and its proof has not come yet. */
import type { Signature } from '../ledger/entries/signatures';
import { signatureBox } from '../ledger/signature-strokes';
import type { Layers } from './demo-batch';

const litres = (value: string) => ({ value, unit: 'L' }) as const;

/** Nobody's hand: loops that lean, and a line under them. */
function scribble(loops: number, lean: number): number[][] {
  const points = Array.from({ length: loops * 12 + 1 }, (_, i) => {
    const turn = (i / 12) * 2 * Math.PI;
    const fading = 1 - i / (loops * 16);
    const x = 60 + (i / (loops * 12)) * 420 + (26 + lean * Math.cos(turn)) * Math.sin(turn);
    const y = 120 - 62 * fading * Math.cos(turn + lean / 40) + 12 * Math.sin(i / 5);
    return [Math.round(x), Math.round(y)];
  });
  return [points.flat(), [84, 196, 240, 188, 410, 192, 520, 180]];
}

const signed = (name: string, signedAt: string, loops: number, lean: number): Signature => {
  const { width, height } = signatureBox;
  return { name, signedAt, width, height, strokes: scribble(loops, lean) };
};

/** @param signer who signs for the workshop */
export async function layHandOver({ pen, when }: Layers, containerId: string, signer: string): Promise<void> {
  const photometer = (metal: 'Cu' | 'Ni', value: string) =>
    ({ by: 'photometer', metal, concentration: { value, unit: 'g/L' }, reference: 'undiluted' }) as const;
  await pen.writes(
    {
      do: 'log-stream',
      batchId: null,
      stepId: null,
      stream: 'wash-water',
      liquid: {
        volume: litres('4.2'),
        findings: [photometer('Cu', '0.04'), photometer('Ni', '0.02')],
        freeAcid: [],
        ph: { value: { value: '4', unit: '1' }, instrument: 'paper' },
      },
      note: 'Rinse of the beakers and trays that came with the shed.',
      placements: [{ containerId, amount: litres('4.2') }],
    },
    when.at(36, '15:10'),
  );
  await pen.writes({ do: 'mark-container', containerId, mark: 'closed' }, when.at(28, '17:05'));
  await pen.writes({ do: 'mark-container', containerId, mark: 'leaving' }, when.at(27, '09:20'));
  const [atTheGate, after] = [when.at(25, '11:32'), when.at(25, '11:40')];
  await pen.writes(
    {
      do: 'log-hand-over',
      collector: {
        name: 'Fenwater Collection',
        licence: 'FC-0000 (invented)',
        contact: '01632 960 077 (invented)',
      },
      driver: 'Rufus Oakley',
      vehicle: 'FEN 204 (invented)',
      document: 'FW-1187 (invented)',
      destination: 'Fenwater yard, Karrowby',
      containers: [{ containerId, agreed: litres('4.1'), note: 'Read on his dip stick.' }],
      signatures: {
        generator: signed(signer, atTheGate, 5, 18),
        collector: signed('Rufus Oakley', atTheGate, 4, 30),
      },
    },
    after,
  );
}
