/** The foot of a label: what must never be done, the two days, codes, and whose waste it is. */
import { dayText } from '../dates';
import type { Span } from '../document';
import { type Box, beside, fittedBox, nothing, ruleBox, stack, styleOf } from './boxes';
import { dayWords, isDay, linesUpTo, markBox, oneLine, type Setting, words } from './setting';
import { labelWords as w } from './words';

function neverSpans({ label, leftOut, fit }: Setting): readonly Span[] {
  const shown = label.nevers.slice(0, fit.nevers);
  const missing = label.nevers.length - shown.length;
  if (missing > 0) leftOut.add(w.leftOut.nevers(missing));
  const gas = w.gas[label.gas];
  return [
    ...(shown.length > 0
      ? [
          { text: w.never, strong: true },
          { text: `${w.nevers(shown)}. ${missing > 0 ? `${w.more(missing)} ` : ''}` },
        ]
      : []),
    ...(gas ? [{ text: gas[0], strong: true }, { text: gas[1] }] : []),
  ];
}

/** The octagon and what must never be done, between two lines of ink. */
export function neverBox(setting: Setting, width: number): Box {
  const spans = neverSpans(setting);
  const line = ruleBox(width, 1.4);
  if (spans.length === 0) return line;
  const side = setting.bodyType * 2.1 * setting.fit.scale;
  const said = words(setting, spans, 'sans', setting.bodyType * 1.05, width - side - 8);
  return stack([line, beside([markBox('stop', side), said], 8, 'middle'), line], 3);
}

function dateBox(setting: Setting, name: string, date: string, width: number, size: number): Box {
  const { measure, leastType } = setting;
  const most = isDay(date) ? size : Math.min(1.3 * setting.bodyType, size);
  const type = { face: 'bold', most, least: leastType } as const;
  const said = fittedBox(dayWords(date), type, { width, height: size * 1.2 }, w.cut, measure).box;
  return stack([words(setting, name, 'sans', 0, width), said], 0);
}

/** When its time began, and when it must have left. @param size type of the days, pt */
export const dateBoxes = (setting: Setting, width: number, size: number): readonly [Box, Box] => {
  const { start, startIs, mustLeaveBy } = setting.label;
  return [
    dateBox(setting, w.start[startIs], start, width, size),
    dateBox(setting, w.mustLeaveBy, mustLeaveBy, width, size),
  ];
};

function codesText({ label: { contents, codes, codesNot } }: Setting): string {
  if (contents.are === 'none') return '';
  return [w.codes(codes, dayWords), codesNot.length > 0 ? w.codesNot(codesNot) : '']
    .filter(Boolean)
    .join(' ');
}

/** Codes, whose waste it is, and when the label was made, in the smallest type. */
export function footBox(setting: Setting, width: number): Box {
  const { data, label, frame, fit, leastType } = setting;
  const { workshop, madeAt, zone, madeBy } = data;
  const pictures = label.hazards !== 'not determined' && label.hazards.pictograms.length > 0;
  const codes = codesText(setting);
  const owner = w.owner({ ...workshop, address: oneLine(workshop.address) });
  const tail = [
    w.generator(workshop.generatorNumber),
    w.made(dayText(madeAt, zone), madeBy),
    ...(frame === 'black' && pictures ? [w.noRed] : []),
  ].join(' ');
  return stack(
    [
      codes === ''
        ? nothing
        : linesUpTo(setting, codes, styleOf('bold', leastType), width, fit.codeLines, w.leftOut.codes),
      linesUpTo(setting, owner, styleOf('sans', leastType), width, fit.ownerLines, w.leftOut.owner),
      words(setting, tail, 'sans', 0, width),
    ],
    0,
  );
}
