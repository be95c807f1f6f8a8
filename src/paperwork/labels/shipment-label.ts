/**
 * The label that a container carries besides its own before it is shipped, where the United States ask for it: the warning of
 * the law, whose waste it is, its numbers, and a line to write on. As large as all of it fits, nothing else beside it.
 */
import { dayText } from '../dates';
import { joined } from '../words';
import { type Box, beside, type Measure, ruleBox, stack, styleOf, textBox } from './boxes';
import { codeBox, qrBox } from './contents-part';
import type { LabelData, LabelShipment, LabelsData } from './label-data';
import { type LabelSize, type LabelSizeId, labelSizes } from './label-sizes';
import type { LabelLayout } from './layout';
import { dayWords, type Fit, linesUpTo, oneLine, type Setting, typeOf, words } from './setting';
import { labelWords as w } from './words';

const mm = 72 / 25.4;

/** More lines than any label has. */
const unbounded = 99;

function* fitsOf(): Generator<Fit> {
  const all = { pictogram: 0, sentences: 0, statements: 0, precautions: 0, nevers: 0, secondLines: 0 };
  let fit: Fit = {
    ...all,
    scale: 1,
    nameLines: 2,
    indicationLines: 0,
    standingLines: unbounded,
    codeLines: unbounded,
    ownerLines: unbounded,
  };
  for (const scale of [1.8, 1.6, 1.4, 1.25, 1.1, 1, 0.9, 0.8, 0.7]) {
    fit = { ...fit, scale };
    yield fit;
  }
  fit = { ...fit, nameLines: 1 };
  yield fit;
  for (const key of ['standingLines', 'ownerLines', 'codeLines'] as const)
    for (let n = 8; n >= 1; n -= 1) {
      fit = { ...fit, [key]: n };
      yield fit;
    }
}

/** What the law calls it, and under it what it is. */
const field = (
  setting: Setting,
  name: string,
  value: string,
  width: number,
  lines: number,
  cut: string,
): Box =>
  stack(
    [
      words(setting, name, 'sans', 0, width),
      linesUpTo(setting, value, typeOf(setting, 'bold', setting.bodyType), width, lines, cut),
    ],
    0,
  );

/** Twelve characters by hand. The number of a manifest is nine digits and three letters. */
const roomToWrite = 40 * mm;

/** A name, and a line to write on: beside it where there is room, else below. */
function lineToWriteOn({ leastType, measure }: Setting, name: string, width: number): Box {
  const style = styleOf('sans', leastType);
  const said = textBox(name, style, Math.min(width, measure(name, style.face, style.size) + 1), measure);
  const inOne = width - said.width - 4 >= roomToWrite;
  const writing = 5.5 * mm;
  const height = inOne ? writing : said.height + writing;
  const from = inOne ? said.width + 4 : 0;
  const line = ruleBox(width - from, 0.8);
  return {
    width,
    height,
    at: (x, y) => [
      ...said.at(x, inOne ? y + height - said.height : y),
      ...line.at(x + from, y + height - 1.6),
    ],
  };
}

const codesOf = ({ wasteNumbers }: LabelShipment): string =>
  wasteNumbers === 'not determined' ? wasteNumbers : wasteNumbers.map(({ code }) => code).join(', ');

/** Each person that confirmed a number, with the day, once. */
function confirmedBy({ wasteNumbers }: LabelShipment): string {
  if (wasteNumbers === 'not determined') return '';
  const said = wasteNumbers.flatMap(({ standing }) =>
    standing.is === 'confirmed' ? [`${standing.by}, ${dayWords(standing.on)}`] : [],
  );
  return `${w.shipment.confirmed(joined([...new Set(said)]))} `;
}

function tailBox(setting: Setting, shipment: LabelShipment, width: number): Box {
  const { workshop, madeAt, zone, madeBy } = setting.data;
  const made = `${w.telephone(workshop.telephone)} ${w.made(dayText(madeAt, zone), madeBy)}`;
  const text = `${confirmedBy(shipment)}${made}`;
  const style = styleOf('sans', setting.leastType);
  return linesUpTo(setting, text, style, width, setting.fit.standingLines, w.leftOut.confirmed);
}

function headBox(setting: Setting, { width: all, margin, wide }: LabelSize): Box {
  const { contents } = setting.label;
  const qr = qrBox(setting, (wide ? 24.5 : 29) * mm);
  const room = all - 2 * margin - qr.width - 6;
  const name = contents.are === 'known' ? contents.name : '';
  const style = typeOf(setting, 'serif', setting.bodyType * 1.15);
  const said = linesUpTo(setting, name, style, room, setting.fit.nameLines, w.leftOut.contents);
  const code = codeBox(setting, room, Math.min(40, qr.height - said.height - 2));
  return beside([{ ...stack([code, said], 2), width: room }, qr], 6);
}

/** All of it below each other, the gaps between as wide as there is room for. */
function boxesOf(setting: Setting, shipment: LabelShipment, size: LabelSize): readonly Box[] {
  const { data, fit, bodyType } = setting;
  const { name, address, generatorNumber } = data.workshop;
  const width = size.width - 2 * size.margin;
  const { generator, number, wasteNumbers, manifest, warning } = w.shipment;
  const column = size.wide ? (width - 10) / 2 : width;
  const numbers = [
    { ...field(setting, number, generatorNumber, column, fit.ownerLines, w.leftOut.owner), width: column },
    field(setting, wasteNumbers, codesOf(shipment), column, fit.codeLines, w.leftOut.codes),
  ];
  return [
    headBox(setting, size),
    words(setting, warning, 'bold', bodyType * 1.1, width),
    field(setting, generator, `${name}, ${oneLine(address)}`, width, fit.ownerLines, w.leftOut.owner),
    ...(size.wide ? [beside(numbers, 10)] : numbers),
    lineToWriteOn(setting, manifest(shipment.manifestNumber), width),
    tailBox(setting, shipment, width),
  ];
}

/** @param measure widths in the fonts that it will be drawn in */
export function shipmentLayout(
  data: LabelsData,
  label: LabelData,
  shipment: LabelShipment,
  sizeId: LabelSizeId,
  measure: Measure,
): LabelLayout {
  const size = labelSizes[sizeId];
  const { width, height, margin, leastType } = size;
  const room = height - 2 * margin;
  const [least, most] = [2, 12];
  const laidOut = (fit: Fit): LabelLayout => {
    const leftOut = new Set<string>();
    const bodyType = size.wide ? 8 : 9.5;
    const setting: Setting = { data, label, frame: 'red', measure, fit, bodyType, leastType, leftOut };
    const boxes = boxesOf(setting, shipment, size);
    const { height: tight } = stack(boxes, 0);
    const gap = Math.min(most, (room - tight) / (boxes.length - 1));
    const fits = gap >= least;
    return {
      width,
      height,
      parts: stack(boxes, Math.max(0, gap)).at(margin, margin),
      leftOut: [...leftOut],
      fits,
    };
  };
  const all = [...fitsOf()].map(laidOut);
  const found = all.find(({ fits, leftOut }) => fits && leftOut.length === 0) ?? all.find(({ fits }) => fits);
  const [last] = all.slice(-1);
  if (!last) throw new Error('a label has no way to be laid out');
  return found ?? last;
}
