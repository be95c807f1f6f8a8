/** All clocks that run, whether the phone tells when one is due, and what it cannot promise. */
import { runningClocks } from '../../ledger/clocks-running';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Honest } from './honest';
import { ClockRow } from './rows';
import { TellRow } from './tell-row';
import { clocksWords as w } from './words';

export function ClocksScreen() {
  const { state, now } = useShell();
  const all = runningClocks(state.value, now.value);
  return (
    <Frame place="today" title={w.title} second={w.second(all.length)}>
      {all.length === 0 ? (
        <Part rule>
          <p>{w.none}</p>
        </Part>
      ) : (
        <Part rule width="edge">
          <Rows label={w.running}>
            {all.map((running) => (
              <ClockRow key={running.clock.body.clockId} running={running} />
            ))}
          </Rows>
        </Part>
      )}
      <Part rule width="edge">
        <Rows>
          <TellRow />
        </Rows>
      </Part>
      <Part rule>
        <Honest />
      </Part>
    </Frame>
  );
}
