/** What a clock on a phone can and cannot do, wherever one is counted on. */
import { Notice } from '../../ui/notice';
import { useLowBattery } from './battery';
import { clocksWords as w } from './words';

export function LowBattery() {
  const battery = useLowBattery();
  return battery === null ? null : (
    <Notice mark="wrong" role="status" second={w.batterySecond}>
      {w.battery(battery)}
    </Notice>
  );
}

export const Honest = () => (
  <>
    <LowBattery />
    <p>{w.background}</p>
  </>
);
