import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LabelPart } from '../../../../src/paperwork/labels/boxes';
import type { LabelsData } from '../../../../src/paperwork/labels/label-data';
import { type LabelsWanted, labelsPdf } from '../../../../src/paperwork/labels/label-pdf';
import {
  type LabelSheetId,
  type LabelSizeId,
  labelSizes,
} from '../../../../src/paperwork/labels/label-sizes';
import { type LabelLayout, labelLayout } from '../../../../src/paperwork/labels/layout';
import { labelLayouts } from '../../../../src/paperwork/labels/layouts';
import { measureIn } from '../../../../src/paperwork/pdf/file';
import { drawPage, onThermalPaper } from '../../../support/draw-pdf';
import { paperFonts } from '../../../support/paper-fonts';
import { readPdf } from '../../../support/read-pdf';
import { readQr } from '../../../support/read-qr';
import {
  doubtful,
  hazards,
  label,
  labels,
  leavingWith,
  overfull,
  precautions,
  statements,
} from './sample-labels';

const make = (data: LabelsData, sheet: LabelSheetId, more: Partial<LabelsWanted> = {}) =>
  labelsPdf(data, { sheet, frame: 'red', firstPlace: 0, ...more }, paperFonts);
const read = async (...asked: Parameters<typeof make>) => readPdf(await make(...asked));
/** Words of a page in one line, blanks of every kind alike. */
const said = async (...asked: Parameters<typeof make>) =>
  (await read(...asked)).pages.map(({ text }) => text.replace(/\s+/g, ' ')).join('\f');

const sizes: readonly LabelSizeId[] = ['A6', '105x74', '4x6in'];
const measure = measureIn(paperFonts);
const layoutOf = (data: LabelsData, size: LabelSizeId): LabelLayout => {
  const [first] = data.labels;
  if (!first) throw new Error('no label');
  return labelLayout(data, first, size, 'red', measure);
};

describe('the paper of a label', () => {
  // 105 × 148 mm, 105 × 74 mm (ISO 216) and 4 × 6 in, in points of 1/72 in; A4 and Letter.
  test.each([
    ['A6', 297.638, 419.528],
    ['105x74', 297.638, 209.764],
    ['4x6in', 288, 432],
    ['A4-of-4', 595.276, 841.89],
    ['A4-of-8', 595.276, 841.89],
    ['Letter-of-2', 612, 792],
  ] as const)('%s has its real size', async (sheet, width, height) => {
    const { pages } = await read(labels([label()]), sheet);
    expect(pages).toHaveLength(1);
    expect(pages[0]?.width).toBeCloseTo(width, 1);
    expect(pages[0]?.height).toBeCloseTo(height, 1);
  });

  test('has one label a page in its own size, and fills a sheet from the place that is still free', async () => {
    const three = labels([label(), label({ code: 'C\u201108' }), doubtful]);
    expect((await read(three, 'A6')).pages).toHaveLength(3);
    expect((await read(three, 'A4-of-4')).pages).toHaveLength(1);
    const { pages } = await read(three, 'A4-of-4', { firstPlace: 2 });
    expect(pages).toHaveLength(2);
    // The first free place is the third: the lower half of the first page, nothing above it.
    expect(Math.max(...(pages[0]?.runs.map(({ y }) => y) ?? [0]))).toBeLessThan(841.89 / 2);
  });

  test('has every label once on a sheet, each inside its place', async () => {
    const eight = labels(Array.from({ length: 8 }, (_, at) => label({ code: `K\u2011${at}` })));
    const { pages } = await read(eight, 'A4-of-8');
    const codes = pages[0]?.runs.filter(({ text }) => /^K.\d$/.test(text)) ?? [];
    expect(codes.map(({ text }) => text.at(-1)).sort()).toEqual([...'01234567']);
    const columns = new Set(codes.map(({ x }) => Math.floor(x / (595.28 / 2))));
    const rows = new Set(codes.map(({ y }) => Math.floor((841.89 - y) / (841.89 / 4))));
    expect([columns.size, rows.size]).toEqual([2, 4]);
  });

  test('carries its fonts and everything that it says as data', async () => {
    const data = labels([label()]);
    const { pages, attachments, language } = await read(data, 'A6');
    expect(language).toBe('en');
    expect(pages[0]?.fonts.filter((font) => font.includes('missing'))).toEqual([]);
    expect(pages[0]?.fonts.every((font) => font.includes('DejaVu'))).toBe(true);
    const [[name, bytes] = ['', new Uint8Array()]] = Object.entries(attachments);
    expect(name).toBe('label-C-07-A6-2026-05-14.json');
    expect(JSON.parse(new TextDecoder().decode(bytes))).toEqual(data);
  });
});

describe('what stands on a label', () => {
  test('is the words of the law, contents, hazards, days and owner', async () => {
    const text = await said(labels([label()]), 'A6');
    for (const words of [
      'Hazardous Waste',
      'C‑07',
      'Barren liquor: nitrates after',
      'Danger',
      'Hazard: corrosive and toxic.',
      'Candidate, not confirmed',
      'H314 Causes severe skin burns and eye damage.',
      'P260 Do not breathe mist or vapours.',
      'Never: add ammonia waste, bleach; let it dry.',
      'Vented cap: never seal tight.',
      'accumulation start',
      '30 Mar 2026',
      'must leave by',
      '25 Sep 2026',
      'Waste code D002 (candidate). Waste list 11 02 07* (confirmed by A. Marsh, 12 May 2026).',
      'Weir Yard shed. Telephone: 0555 0142 (Maren). Weir Yard 6, Ostermill.',
      'Generator number: not determined.',
      'Label made 14 May 2026; by: Maren.',
    ])
      expect(text.replace(/\u00a0/g, ' '), words).toContain(words);
  });

  test('names who confirmed and when, and the words where no law was chosen', async () => {
    const standing = { is: 'confirmed', by: 'A. Marsh', on: '2026-05-12' } as const;
    const text = await said(
      labels([label({ hazards: { ...hazards, standing }, law: 'not determined', startIs: 'first-waste' })]),
      'A6',
    );
    expect(text.replace(/\u00a0/g, ' ')).toContain('Confirmed 12 May 2026 by A. Marsh');
    expect(text).not.toContain('Candidate, not confirmed');
    expect(text).toContain('Waste, held as hazardous');
    expect(text).toContain('first waste in');
  });

  test.each(sizes)('says "not determined" for what nobody knows, on %s', async (size) => {
    const unknown = label({
      hazards: 'not determined',
      codes: [],
      codesNot: ['rcra'],
      start: 'not determined',
      mustLeaveBy: 'not determined',
    });
    const text = await said(labels([unknown]), size);
    expect(text).toContain('Hazards not determined');
    expect(text).toContain('Waste code: not determined');
    expect(text.match(/not determined/g)?.length).toBeGreaterThanOrEqual(5);
    const [page] = (await read(labels([unknown]), size)).pages;
    expect(
      page?.roles.filter((role) => role === 'Figure'),
      'only the pattern, no pictogram',
    ).toHaveLength(1);
  });

  test.each(sizes)('says of contents that nobody knows that they are not known, on %s', async (size) => {
    const text = await said(labels([doubtful]), size);
    expect(text).toContain('Contents not determined');
    expect(text).toContain('Do not open. Do not add. Do not move.');
    expect(text).toContain('By the record: Barren liquor');
  });

  test('has a figure for each pictogram and for the pattern', async () => {
    const { pages } = await read(labels([label()]), 'A6');
    expect(pages[0]?.roles.filter((role) => role === 'Figure')).toHaveLength(4);
  });

  test('says so where the frames are not red, and only there', async () => {
    const data = labels([label()]);
    expect(await said(data, 'A6', { frame: 'black' })).toContain('red by rule; this printer has no red');
    expect(await said(data, 'A6')).not.toContain('red by rule');
  });

  test('prints a red frame as a dark grey on a printer without red', async () => {
    const { grey } = await drawPage(await make(labels([label()]), 'A6'), 150);
    const dark = grey.filter((level) => level > 40 && level < 110).length;
    expect(dark).toBeGreaterThan(500);
  });

  test('is marked on a label of the invented workshop', async () => {
    expect(await said(labels([label()], { demo: true }), 'A6')).toContain('invented demo');
    expect(await said(labels([label()]), 'A6')).not.toContain('invented demo');
  });
});

const linesText = ({ lines }: Extract<LabelPart, { kind: 'text' }>): string =>
  lines.map(({ line }) => line.runs.map(({ text }) => text).join('')).join(' ');

type Rectangle = readonly [left: number, top: number, right: number, bottom: number];

/** Where each line of text and each drawing is drawn; white of the pattern does not count. */
function rectanglesOf({ parts }: LabelLayout): Rectangle[] {
  const of = (part: LabelPart): Rectangle[] => {
    if (part.kind === 'rule') return [];
    if (part.kind === 'text')
      return part.lines.map(({ line, x, y }) => [x, y, x + line.width, y + part.style.leading]);
    const { drawing, x, y, width } = part;
    const white = drawing.says.startsWith('Pattern') ? (4 * width) / drawing.width : 0;
    const height = (width * drawing.height) / drawing.width;
    return [[x + white, y + white, x + width - white, y + height - white]];
  };
  return parts.flatMap(of);
}

const overlap = (a: Rectangle, b: Rectangle): boolean =>
  a[0] < b[2] - 0.1 && b[0] < a[2] - 0.1 && a[1] < b[3] - 0.1 && b[1] < a[3] - 0.1;

/** Nothing lies over anything else or leaves the margin. */
function expectApart(layout: LabelLayout, size: LabelSizeId): void {
  const { width, height, margin } = labelSizes[size];
  const all = rectanglesOf(layout);
  for (const [at, one] of all.entries()) {
    expect(one[0]).toBeGreaterThanOrEqual(margin - 0.1);
    expect(one[1]).toBeGreaterThanOrEqual(margin - 0.1);
    expect(one[2]).toBeLessThanOrEqual(width - margin + 0.1);
    expect(one[3]).toBeLessThanOrEqual(height - margin + 0.1);
    expect(all.slice(at + 1).filter((other) => overlap(one, other))).toEqual([]);
  }
}

describe('a label that has more to say than it has room', () => {
  test.each(sizes)('says on itself and beside it what is left out, on %s', async (size) => {
    const data = labels([overfull]);
    const layout = layoutOf(data, size);
    expect(layout.fits).toBe(true);
    expectApart(layout, size);
    expect(layout.leftOut.length).toBeGreaterThan(3);
    const text = await said(data, size);
    const part = text.slice(text.indexOf('H314'), text.search(/Never:|Vented cap:/));
    const codes = new Set(part.match(/[HP]\d{3}[A-Za-z]*/g));
    const counted = [...part.matchAll(/\+ (\d+) more: see sheet/g)].reduce(
      (sum, [, n]) => sum + Number(n),
      0,
    );
    const all = part.includes('Precautions: see sheet.') ? precautions.length : 0;
    expect(codes.size + counted + all, 'every statement is there or counted').toBe(12 + precautions.length);
  });

  test.each(sizes)('counts the statements that it does not name, on %s', async (size) => {
    const many = Array.from({ length: 300 }, (_, at) => ({ code: `H9${String(at).padStart(3, '0')}` }));
    const data = labels([label({ hazards: { ...hazards, statements: many, precautions: [] } })]);
    const text = await said(data, size);
    const more = Number(/\+ (\d+) more: see sheet/.exec(text)?.[1]);
    expect(more).toBeGreaterThan(0);
    expect(new Set(text.match(/H9\d{3}/g)).size + more).toBe(300);
    expect(layoutOf(data, size).leftOut).toContain(`${more} hazard statements`);
  });

  test.each(sizes)('tells that the hazard in words is cut where it is, and nowhere else, on %s', (size) => {
    const seen = new Set<boolean>();
    for (let n = 1; n <= 30; n += 1) {
      const indication = Array.from({ length: n }, (_, at) => `HP\u00a0${at} (a property)`);
      const { parts, leftOut } = layoutOf(labels([label({ hazards: { ...hazards, indication } })]), size);
      const line = parts
        .map((part) => (part.kind === 'text' ? linesText(part) : ''))
        .find((text) => text.startsWith('Hazard:'));
      const cut = line?.includes('see sheet') ?? true;
      expect(leftOut.includes('the end of the hazard in words'), `${n}: ${line}`).toBe(cut);
      seen.add(cut);
    }
    expect(seen.size).toBe(2);
  });

  test('prints a code of 200 characters whole where it can', async () => {
    const { text } = (await read(labels([overfull]), 'A6')).pages[0] ?? { text: '' };
    expect(text.replace(/\s/g, '')).toContain(overfull.code);
  });

  test('prints everything where there is room, and leaves nothing out', () => {
    const roomy = label({ codes: label().codes.slice(0, 1) });
    for (const size of ['A6', '4x6in'] as const) expect(layoutOf(labels([roomy]), size).leftOut).toEqual([]);
  });

  test('never lies over itself, whatever it has to say', () => {
    const text = (longest: number) =>
      fc
        .lorem({ maxCount: longest, mode: 'words' })
        .map((words) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`);
    const pictograms = fc.uniqueArray(
      fc.constantFrom('GHS03', 'GHS04', 'GHS05', 'GHS06', 'GHS07', 'GHS08', 'GHS09'),
      { maxLength: 5 },
    );
    const all = statements(
      'H314',
      'H334',
      'H317',
      'H350i',
      'H360D',
      'H341',
      'H372',
      'H400',
      'H411',
      'H302',
      'H272',
    );
    const standing = fc.oneof(
      fc.constant({ is: 'candidate' as const }),
      text(8).map((by) => ({ is: 'confirmed' as const, by, on: '2026-05-12' })),
    );
    const made = fc.record({
      code: fc.oneof(fc.constant('C\u201107'), fc.stringMatching(/^[A-Z0-9\u2011]{1,200}$/)),
      name: text(40),
      second: text(40),
      pictograms,
      indication: fc.array(text(2), { maxLength: 12 }),
      statements: fc.subarray(all),
      precautions: fc.subarray(precautions),
      standing,
      nevers: fc.array(
        text(8).map((rule) => `Never ${rule}`),
        { maxLength: 10 },
      ),
      codes: fc.array(text(6), { maxLength: 6 }),
      address: text(60),
      size: fc.constantFrom(...sizes),
      unknown: fc.boolean(),
    });
    fc.assert(
      fc.property(made, (one) => {
        const { code, name, second, nevers, codes, address, size, unknown, ...told } = one;
        const data = labels(
          [
            label({
              code,
              nevers,
              contents: unknown
                ? { are: 'doubtful', since: '2026-05-12', byRecord: name }
                : { are: 'known', name, second },
              hazards: unknown ? 'not determined' : { ...hazards, ...told },
              codes: codes.map((each) => ({ list: 'rcra', code: each, standing: { is: 'candidate' } })),
            }),
          ],
          { workshop: { name: 'Shed', address, telephone: '0555 0142', generatorNumber: 'X' } },
        );
        const layout = layoutOf(data, size);
        expect(layout.fits).toBe(true);
        expectApart(layout, size);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the label before a container is shipped', () => {
  // 40 CFR 262.32(b)(1), as quoted in PHMSA letter 10-0045 of 8 July 2010.
  const warning =
    'HAZARDOUS WASTE—Federal Law Prohibits Improper Disposal. If found, contact the nearest police or public safety authority or the U.S. Environmental Protection Agency.';
  const second = (size: LabelSizeId, one: LabelsData['labels'][number], more: Partial<LabelsData> = {}) => {
    const layout = labelLayouts(labels([one], more), one, size, 'red', measure).at(1);
    if (!layout) throw new Error('no second label');
    return layout;
  };
  const pages = async (size: LabelSizeId, data: LabelsData) =>
    (await said(data, size)).replace(/\u00a0/g, ' ').split('\f');

  test.each(sizes)(
    'has the words of the law, whose waste it is, its numbers and a line, on %s',
    async (size) => {
      const workshop = { ...labels([]).workshop, generatorNumber: 'OHD 987 654 321' };
      const [first, mark] = await pages(size, labels([leavingWith('D002', 'D011')], { workshop }));
      expect(first, 'its own label stays as it was').toContain('Hazardous Waste C‑07');
      expect(first).toContain('accumulation start');
      expect(first).not.toContain('Federal Law');
      for (const words of [
        warning,
        'C‑07',
        'Generator’s Name and Address Weir Yard shed, Weir Yard 6, Ostermill',
        'OHD 987 654 321',
        'D002, D011',
        'Manifest Tracking Number (to be written in):',
        'Waste numbers confirmed by A. Marsh, 12 May 2026.',
      ])
        expect(mark, words).toContain(words);
      const line = second(size, leavingWith()).parts.find(({ kind }) => kind === 'rule');
      // Twelve characters by hand, a little over 3 mm each.
      expect(line?.kind === 'rule' && line.width).toBeGreaterThanOrEqual((40 / 25.4) * 72);
    },
  );

  test.each(sizes)('says "not determined" for all but the number of the manifest, on %s', async (size) => {
    const unknown = {
      name: 'not determined',
      address: 'not determined',
      telephone: 'not determined',
      generatorNumber: 'not determined',
    };
    const [, mark = ''] = await pages(size, labels([leavingWith()], { workshop: unknown }));
    expect(mark.match(/not determined/g)).toHaveLength(5);
    expect(mark.match(/to be written in/g)).toHaveLength(1);
  });

  test('takes the next place of a sheet', async () => {
    const { pages: drawn } = await read(labels([leavingWith('D002'), label()]), 'A4-of-4');
    expect(drawn).toHaveLength(1);
    expect(drawn[0]?.roles.filter((role) => role === 'Sect')).toHaveLength(3);
  });

  test.each(sizes)('opens the container, on %s at 203 dpi', async (size) => {
    const drawn = await drawPage(await make(labels([leavingWith('D002')]), size), 203, 2);
    expect(readQr(onThermalPaper(drawn))).toBe(label().link);
  });

  test('never lies over itself, and cuts nothing silently, whatever it has to say', () => {
    const made = fc.record({
      code: fc.stringMatching(/^[A-Z0-9\u2011]{1,200}$/),
      name: fc.lorem({ maxCount: 12 }),
      address: fc.lorem({ maxCount: 60 }),
      number: fc.stringMatching(/^[A-Z0-9 ]{1,60}$/),
      numbers: fc.array(fc.stringMatching(/^[DF]0\d\d$/), { maxLength: 40 }),
      size: fc.constantFrom(...sizes),
    });
    fc.assert(
      fc.property(made, ({ code, name, address, number, numbers, size }) => {
        const workshop = { name, address, telephone: '0555 0142', generatorNumber: number };
        const layout = second(size, { ...leavingWith(...numbers), code }, { workshop });
        expect(layout.fits).toBe(true);
        expectApart(layout, size);
        const text = layout.parts.map((part) => (part.kind === 'text' ? linesText(part) : '')).join(' ');
        expect(text.includes('see sheet'), text).toBe(layout.leftOut.length > 0);
        if (layout.leftOut.length === 0) for (const one of numbers) expect(text).toContain(one);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the pattern, read by another decoder from what a label printer burns', () => {
  // 203 dots an inch is the coarsest of usual label printers; every dot is black or white.
  test.each(sizes)('opens the container, on %s at 203 dpi', async (size) => {
    const wanted = label();
    expect(readQr(onThermalPaper(await drawPage(await make(labels([wanted]), size), 203)))).toBe(wanted.link);
  });

  test('also for an app at a long address', async () => {
    const link = `https://a-rather-long-name-of-a-host.example.org/some/folder/of/the/workshop/leesbook/${label().link.slice(label().link.indexOf('#'))}`;
    const drawn = await drawPage(await make(labels([label({ link })]), '105x74', { frame: 'black' }), 203);
    expect(readQr(onThermalPaper(drawn))).toBe(link);
  });

  test('and where a tenth of it is lost', async () => {
    const wanted = label();
    const drawn = onThermalPaper(await drawPage(await make(labels([wanted]), 'A6'), 203));
    // A white scratch, 2 mm wide and 6 mm long, inside the pattern at the upper right.
    const dots = (mm: number) => Math.round((mm / 25.4) * 203);
    for (let y = dots(17); y < dots(23); y += 1)
      drawn.grey.fill(255, y * drawn.width + dots(84), y * drawn.width + dots(86));
    expect(readQr(drawn)).toBe(wanted.link);
  });
});
