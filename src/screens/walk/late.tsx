/** A walk that was made already is written down later, with the hour it was made. */
import { useState } from 'preact/hooks';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { momentStated, When } from '../when';
import type { WalkOnScreen } from './use-walk';
import { walkWords as w } from './words';

export function LateWalk({ on, onBack }: { readonly on: WalkOnScreen; readonly onBack: () => void }) {
  const { moment } = useShell();
  const [when, setWhen] = useState('');
  const [tried, setTried] = useState(false);
  function go(): void {
    const madeAt = momentStated(when, moment());
    setTried(true);
    if (typeof madeAt !== 'string') return;
    on.keep({ madeAt });
    onBack();
  }
  return (
    <Frame
      title={on.list.already}
      second={w.late.second}
      focusKey="late"
      ways={[
        { label: w.back, onTap: onBack },
        { label: w.late.go, strong: true, onTap: go },
      ]}
    >
      <Part>
        <When value={when} onInput={setWhen} />
        {tried && when === '' && <p role="alert">{w.late.missing}</p>}
      </Part>
    </Frame>
  );
}
