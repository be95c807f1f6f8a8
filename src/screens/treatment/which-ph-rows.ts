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

/** "0.1 to 1 mg/L", both ends in one unit where they are of one size. */
function bandText({ band }: Extract<Residual, { predicted: true }>, sign: DecimalSign): string {
  const [low, high] = [perLitreText(band.low, sign), perLitreText(band.high, sign)];
  const unit = high.slice(high.indexOf(thin));
  return low === high ? w.about(high) : `${low.replace(unit, '')} ${words.to} ${high}`;
}

/** Two digits: it is as rough as the band. */
function timesText(ratio: number, sign: DecimalSign): string {
  const rounded = new Decimal(ratio).toSignificantDigits(2);
  return formatNumber(rounded, rounded.decimalPlaces(), sign);
}

function verdictText({ verdict, ratio }: HeldAgainst, sign: DecimalSign): string {
  if (!ratio) return w.verdicts[verdict];
  const [low, high] = [timesText(ratio.low, sign), timesText(ratio.high, sign)];
  return `${w.verdicts[verdict]}, ${w.timesLimit(low, high)}`;
}

export type WhichRow = {
  readonly key: string;
  readonly title: string;
  readonly second: string;
  readonly figure: string;
  readonly verdict: HeldAgainst['verdict'];
  /** Ends of the band with their working; absent where nothing is predicted. */
  readonly least?: Figure | undefined;
  readonly most?: Figure | undefined;
};

export const whichRows = ({ atBest }: WhichPh, sign: DecimalSign): readonly WhichRow[] =>
  atBest.map((held) => {
    const { residual, limit, verdict } = held;
    const limitText = limit
      ? w.limitOf(`${formatNumber(limit.value, limit.decimals ?? 2, sign)}${thin}mg/L`)
      : '';
    const said = verdictText(held, sign);
    return {
      key: residual.metal,
      title: capital(metals[residual.metal].name),
      second: limitText === '' ? said : `${limitText}: ${said}`,
      figure: residual.predicted ? bandText(residual, sign) : w.whyNotPredicted[residual.why],
      verdict,
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
      return `${capital(metals[warning.metal].name)}: ${w.whyNotPredicted[warning.why]}.`;
    case 'no-limit':
      return w.noLimit(warning.metals.map((m) => metals[m].name).join(', '));
    case 'base-ends':
      return w.baseEnds(phText(warning.pH, sign));
    case 'iron-needs-air':
      return w.ironNeedsAir;
    case 'reference-only':
    case 'open':
      return null;
  }
}
