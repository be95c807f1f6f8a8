/** Figures as lines of a working: every figure once, its inputs before it, down to what was read, measured, published. */

import { howKnownWords } from '../../chemistry/evidence-words';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, formatNumber, inFormula, printed, workingDecimals } from '../../quantities/format';
import { formulaText } from '../../quantities/formula-text';
import type { PaperFigure, WorkingLine } from './disposal-data';

/** A figure as printed, with its ends; an exact one has its value at both. */
export function paperFigure(figure: Figure, sign: DecimalSign, line?: string): PaperFigure {
  const p = printed(figure, sign);
  return {
    likely: p.value,
    low: p.low ?? p.value,
    high: p.high ?? p.value,
    unit: figure.unit,
    value: figure.value.toFixed(),
    lowValue: figure.low.toFixed(),
    highValue: figure.high.toFixed(),
    ...(line === undefined ? {} : { line }),
  };
}

/**
 * What makes two figures one line: a reading is itself by where it was read, a published value by what it says, and what
 * was worked out by the lines it was worked out from.
 */
const sameness = (figure: Figure, from: readonly string[]): string =>
  JSON.stringify([
    figure.sentence,
    figure.how,
    [figure.value, figure.low, figure.high].map((end) => end.toFixed()),
    figure.unit,
    figure.formula ? [formulaText(figure.formula), from] : figure.sources.map(({ title }) => title),
    kindOf(figure) === 'evidence' ? [...figure.slopes.keys()] : [],
  ]);

const kindOf = (figure: Figure): WorkingLine['kind'] => {
  if (figure.formula) return 'worked-out';
  return figure.how === 'constant' ? 'published' : 'evidence';
};

const letter: Readonly<Record<WorkingLine['kind'], string>> = {
  evidence: 'E',
  published: 'P',
  'worked-out': 'W',
};

export type WorkedLines = {
  readonly lines: readonly WorkingLine[];
  /** The figure as printed, with its line. Its working is taken up if it was not yet. */
  readonly of: (figure: Figure, containerId: string) => PaperFigure;
};

/** A working that grows with each figure asked for. Lines are named E1 (evidence), P1 (published), W1 (worked out). */
export function workedLines(sign: DecimalSign): WorkedLines {
  const lines: WorkingLine[] = [];
  const known = new Map<string, string>();
  const met = new Map<Figure, string>();
  const counts = { evidence: 0, published: 0, 'worked-out': 0 };

  function idOf(figure: Figure, containerId: string): string {
    const seen = met.get(figure);
    if (seen !== undefined) return seen;
    const from = figure.inputs.map((input) => idOf(input, containerId));
    const key = sameness(figure, from);
    const found = known.get(key);
    if (found !== undefined) {
      met.set(figure, found);
      return found;
    }
    const kind = kindOf(figure);
    counts[kind] += 1;
    const id = `${letter[kind]}${counts[kind]}`;
    known.set(key, id);
    met.set(figure, id);
    lines.push({
      id,
      containerId,
      kind,
      sentence: figure.sentence,
      ...(figure.formula ? { formula: formulaText(figure.formula, sign) } : {}),
      from: [...new Set(from)],
      result: { ...paperFigure(figure, sign), likely: shownInWorking(figure, sign) },
      howKnown: howKnownWords[figure.how] ?? figure.how,
      sources: figure.sources.map(({ title, status }) => ({ title, status })),
      ...(figure.note === undefined ? {} : { note: figure.note }),
    });
    return id;
  }

  return { lines, of: (figure, containerId) => paperFigure(figure, sign, idOf(figure, containerId)) };
}

/** With the digits it has inside a formula, so that a hand calculation meets. */
const shownInWorking = (figure: Figure, sign: DecimalSign): string =>
  figure.unit === '1'
    ? inFormula(figure, sign)
    : formatNumber(
        figure.value.toDecimalPlaces(Math.max(0, workingDecimals(figure))),
        workingDecimals(figure),
        sign,
      );
