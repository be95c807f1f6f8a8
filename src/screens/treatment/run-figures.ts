/** The figures of a run by the name that stands in the address of their working, and what stands beside them. */
import Decimal from 'decimal.js';
import type { Expected } from '../../chemistry/treatment/expected-ph';
import type { NoOutlook, Outlook } from '../../ledger/run-outlook';
import type { TreatmentState } from '../../ledger/state';
import { warmedOf } from '../../ledger/treatment-run';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { containerWords } from '../containers/words';
import { runWords as w } from './run-words';

export function namedFigures(
  treatment: TreatmentState,
  outlook: Outlook | undefined,
  allowed: Figure<'K'>,
): ReadonlyMap<string, Figure> {
  const warmed = warmedOf(treatment, allowed);
  const named: [string, Figure | undefined][] = [
    ['left', outlook?.left],
    ['needed', outlook?.planned.needed],
    ['by-heat', outlook?.planned.byHeat],
    ['by-foam', outlook?.planned.byFoam],
    ['wait', outlook?.planned.wait],
    ['warmed', warmed.byPortion],
    ['warmed-all', warmed.inAll],
  ];
  return new Map(named.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}

export const phDigits = (value: number, sign: DecimalSign): string =>
  formatNumber(new Decimal(value), 1, sign);

/** "pH 4.9 to 5.1 is likely then." */
export function phRange({ low, likely, high }: Expected, sign: DecimalSign): string {
  const [from, to] = [phDigits(low, sign), phDigits(high, sign)];
  return from === to ? w.likelyOne(phDigits(likely, sign)) : w.likely(from, to);
}

/** Why nothing is worked out, and how the pot is led then. */
export function noOutlookWords(why: NoOutlook, sign: DecimalSign): string {
  const none = w.noOutlook;
  switch (why.code) {
    case 'no-base':
      return containerWords.noBase[why.why];
    case 'nothing-known':
      return none.unknown;
    case 'iron-in':
      return none.iron;
    case 'other-agent-in':
      return none.other;
    case 'no-target':
      return none.target;
    case 'contents-changed':
      return none.changed;
    case 'no-plan':
      return noPlanWords(why.why, sign);
  }
}

function noPlanWords(why: Extract<NoOutlook, { code: 'no-plan' }>['why'], sign: DecimalSign): string {
  const none = w.noOutlook;
  switch (why.code) {
    case 'acid-open':
      return containerWords.noBase['acid-open'];
    case 'stalls':
      return none.stalls(phDigits(why.pH, sign));
    case 'model-failed':
      return none.failed;
    case 'headspace-open':
      return none.headspace;
    case 'nothing-left':
      return none.nothingLeft;
    case 'too-many-portions':
      return none.tooMany(`${why.count}`);
  }
}
