/** The two days of a label: when the time of what is in it began, and the careful last day, as the clocks have them. */
import { accumulationStart, standsNearWork } from '../../ledger/accumulation';
import { duesOf } from '../../ledger/due';
import type { ContainerState } from '../../ledger/state';
import { dayOf } from '../dates';
import type { Asked } from '../disposal/asked';
import { notDetermined } from '../words';
import type { LabelData, LabelLaw } from './label-data';

type Days = Pick<LabelData, 'start' | 'startIs' | 'mustLeaveBy'>;

const noTimeYet = 'no time runs yet';

export function daysOf(
  { state, now, zone }: Pick<Asked, 'state' | 'now' | 'zone'>,
  container: ContainerState,
  law: LabelLaw | 'not determined',
): Days {
  const { firstWasteIn } = container;
  const start = accumulationStart(state, container);
  const due = duesOf(state, container, now, zone).find(({ kind }) => kind === 'leave');
  if (start === null)
    return {
      start: firstWasteIn === null ? notDetermined : dayOf(firstWasteIn, zone),
      startIs: 'first-waste',
      mustLeaveBy: firstWasteIn !== null && standsNearWork(state, container) ? noTimeYet : notDetermined,
    };
  const later = start === firstWasteIn ? 'first-waste' : 'storage';
  return {
    start: dayOf(start, zone),
    startIs: law === 'us' ? 'accumulation' : later,
    mustLeaveBy: due?.day ?? notDetermined,
  };
}
