/** Whether the phone shows a notice when a clock is due: nobody is asked for it but by a tap here. */
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { clocksWords as w } from './words';

export function TellRow() {
  const { telling, changeTelling } = useShell();
  const may = telling.value === 'on' || telling.value === 'off';
  return (
    <Row
      title={w.tell}
      second={w.telling[telling.value]}
      onTap={may ? () => void changeTelling() : undefined}
    />
  );
}
