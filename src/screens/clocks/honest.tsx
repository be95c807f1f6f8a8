/** What a clock on a phone can and cannot do, wherever one is counted on. */
import { Notice } from '../../ui/notice';
import { useLowBattery } from './battery';
import { clocksWords as w } from './words';

export function Honest() {
  const battery = useLowBattery();
  return (
    <>
      {battery !== null && (
        <Notice mark="wrong" role="status">
          {w.battery(battery)}
        </Notice>
      )}
      <p>{w.background}</p>
    </>
  );
}
