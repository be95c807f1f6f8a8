/** The sheet that papers are printed on. */
import { lawsOf, lawsStated } from '../../ledger/laws';
import type { State } from '../../ledger/state';

export type Sheet = 'A4' | 'Letter';

/**
 * Letter where the laws of the United States are the only ones that apply, A4 where they are not among them; where both are, or
 * nobody has said, as the language has it.
 * @param language of the browser, e.g. "en-US"
 */
export function usualSheet(language: string, state: State): Sheet {
  const laws = lawsStated(state) ? lawsOf(state) : [];
  const [eu, usa] = [laws.includes('eu'), laws.some((law) => law !== 'eu')];
  if (eu !== usa) return usa ? 'Letter' : 'A4';
  return /-(US|CA|MX)\b/i.test(language) ? 'Letter' : 'A4';
}
