/** The hazards on a label: pictograms, signal word, whose word it is, statements; or that nobody has determined them. */
import { clp } from '../../reference/clp-tables';
import { type Box, beside, drawingBox, nothing, stack } from './boxes';
import type { LabelHazards, LabelStatement } from './label-data';
import { pictogram } from './pictograms';
import { dayWords, linesUpTo, markBox, type Setting, typeOf, words } from './setting';
import { pictogramWords, labelWords as w } from './words';

/** Precautionary statements at most: more are not read (CLP Article 28). */
export const mostPrecautions = Number(clp.label.mostPrecautions.value);

/** Most white between a pictogram and its neighbour, pt. */
const mostBetween = 2;
function standingBox(setting: Setting, { standing }: LabelHazards, width: number): Box {
  const style = typeOf(setting, 'sans', setting.bodyType);
  const side = style.leading * 1.2;
  const text = w.standing(standing, dayWords);
  const lines = setting.fit.standingLines;
  const said = linesUpTo(setting, text, style, width - side - 4, lines, w.leftOut.standing);
  return beside([markBox(standing.is, side), said], 4, 'middle');
}

const indicationBox = (setting: Setting, { indication }: LabelHazards, width: number): Box =>
  indication.length === 0
    ? nothing
    : linesUpTo(
        setting,
        w.indication(indication),
        typeOf(setting, 'bold', setting.bodyType),
        width,
        setting.fit.indicationLines,
        w.leftOut.indication,
      );

/** The signal word, as wide as it is. */
function signalBox(setting: Setting, { signal }: LabelHazards): Box {
  const text = signal ?? w.noSignal;
  const size = setting.bodyType * (signal ? 2.2 : 1.2);
  const width = setting.measure(text, 'bold', typeOf(setting, 'bold', size).size) + 1;
  return words(setting, text, 'bold', size, width);
}

function pictureRow({ frame, fit }: Setting, { pictograms }: LabelHazards, width: number): Box {
  const count = pictograms.length;
  const between = Math.max(
    0,
    Math.min(mostBetween, (width - count * fit.pictogram) / Math.max(1, count - 1)),
  );
  const size = Math.min(fit.pictogram, width / Math.max(1, count));
  const pictures = pictograms.map((id) => drawingBox(pictogram(id, pictogramWords[id], frame), size));
  return beside(pictures, between);
}

/** Pictograms, the signal word, the hazard in words, and whose word all of it is: beside or below, whichever is lower. */
function signsBox(setting: Setting, hazards: LabelHazards, width: number): Box {
  const row = pictureRow(setting, hazards, width);
  const signal = signalBox(setting, hazards);
  const room = row.width === 0 ? width : width - row.width - 8;
  const tried = (own: number, around: (rest: Box) => Box) => {
    const leftOut = new Set<string>();
    const its = { ...setting, leftOut };
    const rest = stack([indicationBox(its, hazards, own), standingBox(its, hazards, own)], 1);
    return { box: around(rest), leftOut };
  };
  const ways = [
    tried(width - signal.width - 8, (rest) => stack([row, beside([signal, rest], 8, 'middle')], 2)),
    ...(room >= signal.width
      ? [
          tried(width, (rest) => stack([beside([row, signal], 8, 'middle'), rest], 2)),
          tried(room, (rest) => beside([row, stack([signal, rest], 1)], 8, 'middle')),
        ]
      : []),
  ];
  const { box, leftOut } = ways.reduce((least, way) => (way.box.height <= least.box.height ? way : least));
  // Of ways that were not taken nothing is left out.
  for (const what of leftOut) setting.leftOut.add(what);
  return box;
}

function notDeterminedBox(setting: Setting, width: number): Box {
  const { bodyType, fit } = setting;
  const side = bodyType * 2.8 * fit.scale;
  const room = width - side - 8;
  const told = stack(
    [
      words(setting, w.hazardsNot, 'bold', bodyType * 1.35, room),
      words(setting, w.hazardsNotWhat, 'sans', bodyType, room),
    ],
    1,
  );
  return beside([markBox('unknown', side), told], 8, 'middle');
}

export function hazardsBox(setting: Setting, width: number): Box {
  const { hazards, contents } = setting.label;
  if (contents.are === 'none') return nothing;
  return hazards === 'not determined' ? notDeterminedBox(setting, width) : signsBox(setting, hazards, width);
}

const worded = ({ code, text }: LabelStatement): string => {
  const said = text === undefined ? code : `${code} ${text}`;
  return /[.!?]$/.test(said) ? said : `${said}.`;
};

/** "H314 Causes … H341, H372. + 3 more: see sheet." */
function statementsText({ leftOut, fit }: Setting, { statements }: LabelHazards): string {
  if (statements.length === 0) return w.noStatement;
  const shown = statements.slice(0, fit.statements);
  const codes = shown.slice(fit.sentences);
  const wordless = codes.filter(({ text }) => text !== undefined).length;
  const missing = statements.length - shown.length;
  if (wordless > 0) leftOut.add(w.leftOut.sentences(wordless));
  if (missing > 0) leftOut.add(w.leftOut.statements(missing));
  return [
    ...shown.slice(0, fit.sentences).map(worded),
    ...(codes.length > 0 ? [`${codes.map(({ code }) => code).join(', ')}.`] : []),
    ...(missing > 0 ? [w.more(missing)] : []),
  ].join(' ');
}

function precautionsText({ leftOut, fit }: Setting, { precautions }: LabelHazards): string {
  const shown = precautions.slice(0, Math.min(fit.precautions, mostPrecautions));
  const missing = precautions.length - shown.length;
  if (missing > 0) leftOut.add(w.leftOut.precautions(missing));
  if (precautions.length === 0) return '';
  if (shown.length === 0) return w.precautionsOnSheet;
  return [...shown.map(worded), ...(missing > 0 ? [w.more(missing)] : [])].join(' ');
}

export function statementsBox(setting: Setting, width: number): Box {
  const { label, bodyType } = setting;
  const { hazards } = label;
  if (hazards === 'not determined' || label.contents.are === 'none') return nothing;
  const all = [statementsText(setting, hazards), precautionsText(setting, hazards)];
  return words(setting, all.filter(Boolean).join(' '), 'sans', bodyType, width);
}
