/** The metals at the best pH against their limits, as the page shows them. */
import Decimal from 'decimal.js';
import { capital } from '../../chemistry/evidence';
import type {
  ComesBack,
  HeldAgainst,
  NeverUnder,
  PhWarning,
  WhichPh,
} from '../../chemistry/treatment/which-ph';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { bases, type Metal, metals } from '../../reference/tables';
import { perLitreText, spanAt, spanText } from './decades';
import { grouped } from './grouped';
import { aimText, phText } from './pot-plot';
import { treatmentWords as w } from './words';

const thin = '\u202f';

type Shown = { readonly value: string; readonly unit?: string };

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
      figure: residual.predicted
        ? spanText(residual.band.low, residual.band.high, sign)
        : { value: w.notPredicted },
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

export function neverText({ metal, instead }: NeverUnder, which: WhichPh, sign: DecimalSign): string {
  const best = (which.window ?? which.ofAll)?.best;
  const span = best === undefined ? undefined : spanAt(which, metal, best, sign);
  const [name, base] = [capital(metals[metal].name), bases[which.base].name.toLowerCase()];
  const never =
    best === undefined || !span
      ? w.neverUnder(name, base)
      : w.never(name, base, aimText(best, sign), `${span.value}${thin}${span.unit}`);
  return `${never} ${w.instead[instead]}`;
}

const named = (symbols: readonly Metal[]): string => symbols.map((m) => metals[m].name).join(', ');

/** What nobody can predict, together where the reason is one. */
function notPredictedTexts(warnings: readonly PhWarning[]): readonly string[] {
  const open = warnings.filter((warning) => warning.code === 'not-predicted');
  return [...grouped(open, ({ why }) => why)].map(([why, of]) =>
    w.notPredictedOf(capital(named(of.map(({ metal }) => metal))), w.whyNotPredicted[why]),
  );
}

const mostAt = ({ atBest }: WhichPh, metal: Metal): Decimal | undefined => {
  const residual = atBest.find((held) => held.residual.metal === metal)?.residual;
  return residual?.predicted ? residual.band.high : undefined;
};

/** Where a metal comes back: beyond the best, or at it already, which is so only of one that is not counted alone. */
function comesBackText({ metal, from }: ComesBack, which: WhichPh, sign: DecimalSign): string {
  const best = (which.window ?? which.ofAll)?.best;
  const most = mostAt(which, metal);
  const [name, fromText] = [capital(metals[metal].name), phText(from, sign)];
  return best === undefined || best < from || !most
    ? w.comesBack(name, fromText)
    : w.hasComeBack(name, fromText, aimText(best, sign), perLitreText(most, sign));
}

/** Metals that moved the window not, since they have no limit, and how much of them may stay at its best. */
export function notCountedTexts(which: WhichPh, sign: DecimalSign): readonly string[] {
  const { window, atBest } = which;
  if (!window) return [];
  return atBest
    .filter(({ verdict }) => verdict === 'no-limit')
    .flatMap(({ residual: { metal } }) => {
      const most = mostAt(which, metal);
      return most
        ? [w.notCounted(capital(metals[metal].name), aimText(window.best, sign), perLitreText(most, sign))]
        : [];
    });
}

/** What else is to be known; null for what stands on the page in another place. */
function warningText(warning: PhWarning, which: WhichPh, sign: DecimalSign): string | null {
  switch (warning.code) {
    case 'comes-back':
      return comesBackText(warning, which, sign);
    case 'ammonia':
      return w.ammonia;
    case 'no-limit':
      // Beside a window each stands with how much of it may stay.
      return which.window ? null : w.noLimit(named(warning.metals));
    case 'base-ends':
      return w.baseEnds(phText(warning.pH, sign));
    case 'iron-needs-air':
      return w.ironNeedsAir;
    case 'silver-chloride-first':
    case 'lead-carbonate':
    case 'barium-stays':
    case 'not-predicted':
    case 'reference-only':
    case 'outside-discharge-ph':
    case 'open':
      return null;
  }
}

export const warningTexts = (which: WhichPh, sign: DecimalSign): readonly string[] => [
  ...which.warnings.flatMap((warning) => warningText(warning, which, sign) ?? []),
  ...notPredictedTexts(which.warnings),
];
