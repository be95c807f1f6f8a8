/** The two days of a label: when the time of what is in it began, and the careful last day, as the clocks have them. */
import { accumulationStart } from '../../ledger/accumulation';
import type { ContainerState } from '../../ledger/state';
import { dayOf } from '../dates';
import type { Asked } from '../disposal/asked';
import { mustLeave } from '../must-leave';
import { notDetermined } from '../words';
import type { LabelData, LabelLaw, LabelStart } from './label-data';

type Days = Pick<LabelData, 'start' | 'startIs' | 'mustLeaveBy'>;

export function daysOf(
  asked: Pick<Asked, 'state' | 'now' | 'zone'>,
  container: ContainerState,
  law: LabelLaw | 'not determined',
): Days {
  const { firstWasteIn } = container;
  const began = accumulationStart(asked.state, container);
  const start = began ?? firstWasteIn;
  const leave = mustLeave(asked, container);
  const startIs = (): LabelStart => {
    if (began !== null && law === 'us') return 'accumulation';
    return start === firstWasteIn ? 'first-waste' : 'storage';
  };
  return {
    start: start === null ? notDetermined : dayOf(start, asked.zone),
    startIs: startIs(),
    mustLeaveBy: typeof leave === 'string' ? leave : leave.day,
  };
}
