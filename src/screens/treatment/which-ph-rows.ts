/** The metals at the best pH against their limits, as the page shows them. */
import Decimal from 'decimal.js';
import { capital } from '../../chemistry/evidence';
import type { Residual } from '../../chemistry/treatment/residuals';
import type { HeldAgainst, NeverUnder, PhWarning, WhichPh } from '../../chemistry/treatment/which-ph';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { bases, metals } from '../../reference/tables';
import { words } from '../words';
import { perLitreText } from './decades';
import { phText } from './pot-plot';
import { treatmentWords as w } from './words';

const thin = '\u202f';

type Shown = { readonly value: string; readonly unit?: string };

/** "0.1 to 1", "mg/L"; both ends with their units where those differ. */
function bandShown({ band }: Extract<Residual, { predicted: true }>, sign: DecimalSign): Shown {
  const [low, high] = [band.low, band.high].map((end) => perLitreText(end, sign).split(thin)) as [
    [string, string],
    [string, string],
  ];
  if (low[1] !== high[1]) return { value: `${low.join(thin)} ${words.to} ${high[0]}`, unit: high[1] };
  return { value: low[0] === high[0] ? high[0] : `${low[0]} ${words.to} ${high[0]}`, unit: high[1] };
}

/** One digit: it is as rough as the band. Outwards. */
function timesText(ratio: number, rounding: Decimal.Rounding, sign: DecimalSign): string {
  const rounded = new Decimal(ratio).toSignificantDigits(1, rounding);
  return formatNumber(rounded, rounded.decimalPlaces(), sign);
}

/** The residual over its limit. */
function againstText({ verdict, ratio, limit }: HeldAgainst, sign: DecimalSign): string {
  const limitText = limit && `${formatNumber(limit.value, limit.decimals ?? 2, sign)}${thin}${limit.unit}`;
  if (limitText === undefined) return verdict === 'not-predicted' ? w.measure : w.noLimitHere;
  if (!ratio) return w.limitIs(limitText);
  const low = timesText(ratio.low, Decimal.ROUND_FLOOR, sign);
  const high = timesText(ratio.high, Decimal.ROUND_CEIL, sign);
  if (verdict === 'under') return w.under(high, limitText);
  return verdict === 'over' ? w.over(low, high, limitText) : w.perhaps(low, high, limitText);
}

export type WhichRow = {
  readonly key: string;
  readonly title: string;
  readonly second: string;
  readonly figure: Shown;
  readonly over: boolean;
  /** Ends of the band with their working; absent where nothing is predicted. */
  readonly least?: Figure | undefined;
  readonly most?: Figure | undefined;
};

export const whichRows = ({ atBest }: WhichPh, sign: DecimalSign): readonly WhichRow[] =>
  atBest.map((held) => {
    const { residual, verdict } = held;
    return {
      key: residual.metal,
      title: capital(metals[residual.metal].name),
      second: againstText(held, sign),
      figure: residual.predicted ? bandShown(residual, sign) : { value: w.notPredicted },
      over: verdict === 'over',
      ...(residual.predicted ? { least: residual.low, most: residual.high } : {}),
    };
  });

/** The ends of the bands by the name that stands in the address of their working. */
export const whichFigures = (which: WhichPh): ReadonlyMap<string, Figure> =>
  new Map(
    which.atBest.flatMap(({ residual }) =>
      residual.predicted
        ? [
            [`${residual.metal}-least`, residual.low] as const,
            [`${residual.metal}-most`, residual.high] as const,
          ]
        : [],
    ),
  );

export const neverText = ({ metal, least, instead }: NeverUnder, base: WhichPh['base'], sign: DecimalSign) =>
  `${w.never(capital(metals[metal].name), bases[base].name.toLowerCase(), perLitreText(new Decimal(least), sign))} ${w.instead[instead]}`;

/** What else is to be known; null for what stands on the page in another place. */
export function warningText(warning: PhWarning, sign: DecimalSign): string | null {
  switch (warning.code) {
    case 'comes-back':
      return w.comesBack(capital(metals[warning.metal].name), phText(warning.from, sign));
    case 'silver-chloride-first':
      return w.minded.silver;
    case 'lead-carbonate':
      return w.minded.lead;
    case 'barium-stays':
      return w.minded.barium;
    case 'ammonia':
      return w.ammonia;
    case 'not-predicted':
      return w.notPredictedOf(capital(metals[warning.metal].name), w.whyNotPredicted[warning.why]);
    case 'no-limit':
      return w.noLimit(warning.metals.map((m) => metals[m].name).join(', '));
    case 'base-ends':
      return w.baseEnds(phText(warning.pH, sign));
    case 'iron-needs-air':
      return w.ironNeedsAir;
    case 'reference-only':
    case 'outside-discharge-ph':
    case 'open':
      return null;
  }
}
