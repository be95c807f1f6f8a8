/** What is looked at on each container, and where each question comes from. */
import { useState } from 'preact/hooks';
import type { Item } from '../../safety/checklist-item';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Why } from '../checklist/why';
import { Frame } from '../frame';
import { LateWalk } from './late';
import type { WalkOnScreen } from './use-walk';
import { walkWords as w } from './words';

export function LooksPage({
  on,
  looks,
  onBack,
}: {
  readonly on: WalkOnScreen;
  readonly looks: readonly Item[];
  readonly onBack: () => void;
}) {
  const [late, setLate] = useState(false);
  const [why, setWhy] = useState<Item | null>(null);
  if (late) return <LateWalk on={on} onBack={onBack} />;
  if (why) return <Why item={why} onBack={() => setWhy(null)} />;
  return (
    <Frame title={w.looks} focusKey="looks" ways={[{ label: w.back, onTap: onBack }]}>
      <Part width="edge">
        <Rows label={w.looks}>
          {looks.map((item) => (
            <Row key={item.id} title={item.ask} second={item.look} onTap={() => setWhy(item)} />
          ))}
          {on.passed === 0 && <Row title={on.list.already} onTap={() => setLate(true)} />}
        </Rows>
      </Part>
    </Frame>
  );
}
