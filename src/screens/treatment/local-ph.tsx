/** The pH of the local rules for what may be let out where that is authorised, beside the pH that is wanted. */
import { dischargePh } from '../../ledger/discharge-limits';
import { formatNumber } from '../../quantities/format';
import { Notice } from '../../ui/notice';
import { useShell } from '../shell';
import { treatmentWords as w } from './words';

/** Nothing where the rules say nothing of it. @param pH that is wanted */
export function LocalPh({ pH }: { readonly pH: number | undefined }) {
  const { state, sign } = useShell();
  const said = dischargePh(state.value);
  if (!said) return null;
  const { low, high } = said;
  const text = (end: typeof low): string => formatNumber(end.value, end.decimals ?? 1, sign.value);
  const outside = pH !== undefined && (low.value.gt(pH) || high.value.lt(pH));
  return (
    <Notice mark="confirmed" second={low.note}>
      {w.localPh(text(low), text(high))}
      {outside && ` ${w.localPhOutside}`}
    </Notice>
  );
}
