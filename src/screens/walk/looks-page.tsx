/** What is looked at on each container, and where each question comes from. */
import { useState } from 'preact/hooks';
import type { Item } from '../../safety/checklist-item';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Why } from '../checklist/why';
import { Frame } from '../frame';
import { walkWords as w } from './words';

export function LooksPage({
  looks,
  onBack,
}: {
  readonly looks: readonly Item[];
  readonly onBack: () => void;
}) {
  const [why, setWhy] = useState<Item | null>(null);
  if (why) return <Why item={why} onBack={() => setWhy(null)} />;
  return (
    <Frame title={w.looks} focusKey="looks" ways={[{ label: w.back, onTap: onBack }]}>
      <Part width="edge">
        <Rows label={w.looks}>
          {looks.map((item) => (
            <Row key={item.id} title={item.ask} second={item.look} onTap={() => setWhy(item)} />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
