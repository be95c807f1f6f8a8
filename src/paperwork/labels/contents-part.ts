/** The head of a label: the words of the law, the code, the pattern, and what is in it. */
import { type Box, beside, drawingBox, fittedBox, stack } from './boxes';
import { qrDrawing, quietZone } from './qr-drawing';
import { dayWords, linesUpTo, markBox, type Setting, typeOf, words } from './setting';
import { labelWords as w } from './words';

/** The pattern; its white reaches into the margin above and at the right, and stays free below and at the left. */
export function qrBox({ label }: Setting, side: number): Box {
  const drawing = qrDrawing(label.link, w.qr(label.code));
  const white = (side * quietZone) / drawing.width;
  const box = drawingBox(drawing, side);
  return { width: side - white, height: side - white, at: (x, y) => box.at(x, y - white) };
}

export const headingBox = (setting: Setting, width: number, size: number): Box =>
  words(setting, w.heading(setting.label.law), 'bold', size / setting.fit.scale, width);

/** As large as it fits; a long code breaks into lines. */
export function codeBox({ label, measure, leastType, leftOut }: Setting, width: number, height: number): Box {
  // The leading of one line is a fifth more than its type.
  const type = { face: 'bold', most: height / 1.2, least: leastType } as const;
  const { box, cut } = fittedBox(label.code, type, { width, height }, w.cut, measure);
  if (cut) leftOut.add(w.leftOut.code);
  return box;
}

function known(setting: Setting, name: string, second: string, width: number, large: number): Box {
  const { fit, bodyType } = setting;
  return stack(
    [
      linesUpTo(setting, name, typeOf(setting, 'serif', large), width, fit.nameLines, w.leftOut.contents),
      linesUpTo(setting, second, typeOf(setting, 'sans', bodyType), width, fit.secondLines, w.leftOut.second),
    ],
    2,
  );
}

/** What is in it is not known: the label says so in the place of its name. */
function doubtful(setting: Setting, since: string, byRecord: string, width: number, large: number): Box {
  const { fit, bodyType } = setting;
  const side = large * fit.scale * 2.2;
  const room = width - side - 8;
  const told = stack(
    [
      words(setting, w.doubtful, 'serif', large, room),
      words(setting, w.doubtfulWhat(dayWords(since)), 'bold', bodyType, room),
    ],
    2,
  );
  const style = typeOf(setting, 'sans', bodyType);
  const record = linesUpTo(setting, w.byRecord(byRecord), style, width, fit.secondLines, w.leftOut.second);
  return stack([beside([markBox('unknown', side), told], 8, 'middle'), record], 4);
}

const none = (setting: Setting, width: number, large: number): Box =>
  stack(
    [
      words(setting, w.nothingIn, 'serif', large, width),
      words(setting, w.nothingInWhat, 'sans', setting.bodyType, width),
    ],
    2,
  );

/** @param large type of the name, pt */
export function contentsBox(setting: Setting, width: number, large: number): Box {
  const { contents } = setting.label;
  if (contents.are === 'known') return known(setting, contents.name, contents.second, width, large);
  if (contents.are === 'doubtful') return doubtful(setting, contents.since, contents.byRecord, width, large);
  return none(setting, width, large);
}
