/** A laboratory's report as it stands in the form, line by line, and what it comes to. */
import * as z from 'zod/mini';
import { Files } from '../../ledger/entries/files';
import type { LabResult } from '../../ledger/entries/lab-reports';
import { Photos } from '../../ledger/entries/photos';
import { lawsOf, lawsStated } from '../../ledger/laws';
import type { ContainerState, State } from '../../ledger/state';
import { type Element, levelElements } from '../../rules/element-levels';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { WhenDraft } from '../when';
import { words } from '../words';
import { labWords as w } from './words';

const Where = z.enum(['total', 'filtered', 'tclp', 'wet']);
export type Where = z.infer<typeof Where>;

const LineDraft = z.object({ element: z.enum(levelElements), in: Where, level: Typed, below: z.boolean() });
export type LineDraft = z.infer<typeof LineDraft>;

/** `open`: place of the line that is open; null when none is. `where`: what the next ones were found in. */
export const LabDraft = z.object({
  laboratory: z.string(),
  document: z.string(),
  sampledOn: z.string(),
  ph: Typed,
  lines: z.array(LineDraft),
  open: z.nullable(z.number()),
  where: Where,
  photos: Photos,
  files: Files,
  note: z.string(),
  when: WhenDraft,
});
export type LabDraft = z.infer<typeof LabDraft>;

/** A liquid is mostly filtered; of all else the law asks for the leaching test. */
export const emptyReport = ({ holds }: ContainerState): LabDraft => ({
  laboratory: '',
  document: '',
  sampledOn: '',
  ph: typed('1'),
  lines: [],
  open: null,
  where: holds.mass.isZero() ? 'filtered' : 'tclp',
  photos: [],
  files: [],
  note: '',
  when: '',
});

/** California's test only where its law was chosen, or nobody has said which laws apply. */
export const wheresFor = (state: State): readonly Where[] =>
  Where.options.filter(
    (where) => where !== 'wet' || !lawsStated(state) || lawsOf(state).includes('us-california'),
  );

export const unitsIn = (where: Where): readonly [string, ...string[]] =>
  where === 'total' ? ['mg/kg'] : ['mg/L', 'g/L'];

export const emptyLine = (element: Element, where: Where): LineDraft => ({
  element,
  in: where,
  level: typed(unitsIn(where)[0]),
  below: false,
});

/** Digits mean what they meant only in their own unit: under another the line is empty. */
export const movedTo = (line: LineDraft, where: Where): LineDraft => ({
  ...line,
  in: where,
  level: unitsIn(where).includes(line.level.unit) ? line.level : typed(unitsIn(where)[0]),
});

/** Those of them that are not told in it yet, put at the end; the first of them is open. */
export function withLines(draft: LabDraft, elements: readonly Element[]): Pick<LabDraft, 'lines' | 'open'> {
  const { lines, where } = draft;
  const told = new Set(lines.filter((line) => line.in === where).map(({ element }) => element));
  const more = elements.filter((element) => !told.has(element));
  if (more.length === 0)
    return { lines, open: lines.findIndex((l) => l.in === where && l.element === elements[0]) };
  return { lines: [...lines, ...more.map((element) => emptyLine(element, where))], open: lines.length };
}

/** All of a kilogram is a million mg. A litre holds less than a kilogram and a half of any salt here. */
const most: Readonly<Record<string, number>> = { 'mg/kg': 1_000_000, 'mg/L': 1_500_000, 'g/L': 1500 };

/** `level` for its field; `twice` where the same stands above it. */
export type LineRead = {
  readonly level: FieldRead<string>;
  readonly twice: boolean;
  readonly state: 'known' | 'empty' | 'wrong';
};

export function readLine(lines: readonly LineDraft[], at: number): LineRead {
  const line = lines[at];
  if (!line) return { level: { state: 'empty' }, twice: false, state: 'empty' };
  const limit = most[line.level.unit];
  const read = readTyped(line.level, limit === undefined ? {} : { most: limit });
  const nothing = read.state === 'written' && Number(read.written.value) === 0;
  const level: FieldRead<string> = nothing
    ? { state: 'wrong', fault: line.below ? words.number.zero : w.zero }
    : read;
  const empty = level.state === 'empty' && !line.below;
  const twice =
    !empty && lines.slice(0, at).some((one) => one.element === line.element && one.in === line.in);
  if (empty) return { level, twice, state: 'empty' };
  return { level, twice, state: level.state === 'written' && !twice ? 'known' : 'wrong' };
}

export const wrongLines = (lines: readonly LineDraft[]): readonly number[] =>
  lines.flatMap((_, at) => (readLine(lines, at).state === 'wrong' ? [at] : []));

/** The next line without a level, after the open one first; null when all have one. */
export function nextOpen(lines: readonly LineDraft[], from: number): number | null {
  const waiting = lines.flatMap((_, at) => (readLine(lines, at).state === 'known' ? [] : [at]));
  return waiting.find((at) => at > from) ?? waiting.find((at) => at < from) ?? null;
}

/** Those with a level, as an entry tells them. */
export const resultsIn = (lines: readonly LineDraft[]): LabResult[] =>
  lines.flatMap(({ element, in: where, below }, at) => {
    const { level, state } = readLine(lines, at);
    if (state !== 'known' || level.state !== 'written') return [];
    return [{ element, in: where, level: level.written, ...(below ? { below: true } : {}) } as LabResult];
  });

/** A pH has no unit, and none beyond 14 comes out of a laboratory. */
export function readPh(ph: Typed): FieldRead<'1'> {
  const read = readTyped<'1'>(ph);
  if (read.state === 'written' && Number(read.written.value) > 14)
    return { state: 'wrong', fault: w.phRange };
  return read;
}

/** Laboratories that were written down before. */
export const knownLaboratories = ({ containers }: State): readonly string[] => [
  ...new Set([...containers.values()].flatMap(({ reports }) => reports.map(({ body }) => body.laboratory))),
];
