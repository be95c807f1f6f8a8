/**
 * What a rule of law makes of a waste: a candidate that a named person has yet to confirm, never a verdict. Rules are put
 * to the high end of each range; what is not known leaves a rule open and never counts as nothing.
 */
import type { Figure } from '../quantities/figure';

export type Scheme = 'clp' | 'eu-hp' | 'rcra' | 'rcra-ldr' | 'california' | 'waste-list' | 'transport';

/** A figure whose high end was held against a limit; `end` low: the low end, as of a pH that must not fall so far. */
export type Ground = { readonly figure: Figure; readonly limit: Figure; readonly end?: 'low' };

/** The text that a rule stands in, and whether somebody of us read it there. */
export type Citation = {
  /** In our own words. */
  readonly rule: string;
  readonly cite: string;
  readonly status: 'verified' | 'memory' | 'computed' | 'common practice';
  /** Where it was read. */
  readonly readIn?: string;
};

export type Candidate = {
  readonly scheme: Scheme;
  /** As the law writes it: "Skin Corr. 1B H314", "HP 8", "D002", "11 02 07*", "UN 3264". */
  readonly code: string;
  /**
   * `fires`: the high end reaches the limit. `close`: it does not, and comes near. `judgement`: the rule has no number, or
   * a test decides. `open`: what it rests on is not determined.
   */
  readonly standing: 'fires' | 'close' | 'judgement' | 'open';
  readonly citation: Citation;
  /** Numbers that it rests on; none where a rule has no number. */
  readonly grounds: readonly Ground[];
  /** What would have to be determined, by name as the record calls it: "pH", "Pb", "TCLP of Ag". */
  readonly lacks: readonly string[];
};

/** From this share of the limit on, a rule that does not fire came close. Our own choice, no rule of law. */
const near = 0.5;

/** Ranges are worked out in plain numbers of some fifteen digits: so many of them are told apart from a limit. */
const digits = 12;

/** What a figure's high end makes of a limit; null when it stays far below it. */
export function standingOf({ figure, limit }: Ground): 'fires' | 'close' | null {
  const high = figure.high.toSignificantDigits(digits);
  if (high.gte(limit.value)) return 'fires';
  return high.gte(limit.value.times(near)) ? 'close' : null;
}
