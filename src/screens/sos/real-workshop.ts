/** Where help must come to. An invented workshop has no address that help could find: it is as if none were described. */
import type { WorkshopDescribed } from '../../ledger/entries/workshop';
import { useShell } from '../shell';

export function useRealWorkshop(): WorkshopDescribed | undefined {
  const { record, state } = useShell();
  return record === 'demo' ? undefined : state.value.workshop?.body;
}
