/** What the step gave: the choice before logging it. */
import { codeOfBatch } from '../../ledger/put-away';
import type { StreamKind } from '../../safety/stream-kind';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { streamName, words } from '../words';
import { logWords as w } from './words';

export const liquids: readonly StreamKind[] = [
  'leach-liquor',
  'barren-liquor',
  'wash-water',
  'chloride-test-waste',
  'ammonia-test-waste',
  'treated-slurry',
  'filtrate',
];

const solids: readonly StreamKind[] = [
  'ceramic-residue',
  'spent-filters',
  'soiled-ppe',
  'spill-absorbent',
  'hydroxide-sludge',
];

export function ChooseStream({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.batch ?? '';
  const rows = (kinds: readonly StreamKind[]) => (
    <Rows>
      {kinds.map((kind) => (
        <Row key={kind} title={streamName[kind]} href={`#/batches/${id}/log/${kind}`} />
      ))}
    </Rows>
  );
  return (
    <Frame
      title={w.chooseTitle(unbroken(codeOfBatch(state.value, id) ?? ''))}
      ways={[{ label: words.back, href: `#/batches/${id}` }]}
    >
      <Part title={w.liquids} width="edge">
        {rows(liquids)}
      </Part>
      <Part rule title={w.solids} width="edge">
        {rows(solids)}
      </Part>
    </Frame>
  );
}
