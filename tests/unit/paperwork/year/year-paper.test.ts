/** The summary of a year as data and PDF, read and reckoned again by programs that are not ours. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { yearAccount, yearDays } from '../../../../src/ledger/year-account';
import { plotBlock } from '../../../../src/paperwork/pdf/plots';
import { renderPdf } from '../../../../src/paperwork/pdf/render';
import { notDetermined } from '../../../../src/paperwork/words';
import { type YearData, yearText } from '../../../../src/paperwork/year/year-data';
import { attachmentOf, fileName, yearPaper } from '../../../../src/paperwork/year/year-paper';
import { monthsPlot } from '../../../../src/screens/year/plot';
import { plotGeometry } from '../../../../src/ui/plot/plot-geometry';
import { paperFonts } from '../../../support/paper-fonts';
import { readPdf } from '../../../support/read-pdf';
import { handYear } from '../../ledger/hand-year';
import { emptyPaper, handPaper } from './hand-paper';

const folder = mkdtempSync(join(tmpdir(), 'year-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Another language's JSON, SHA-256 and decimals. RFC 8785 of texts, whole numbers and truth values is JSON with its members in order. */
const reckoned = `
import json, sys, hashlib
from decimal import Decimal
data = json.load(open(sys.argv[1], encoding='utf-8'))
told = data.pop('contentHash')
text = json.dumps(data, sort_keys=True, separators=(',', ':'), ensure_ascii=False)
num = lambda f: Decimal(f['value']) if isinstance(f, dict) else Decimal(0)
near = lambda a, b: abs(a - b) < Decimal('1e-9')
balances = [
    near(sum((num(l['sum']) for l in b['ins']), Decimal(0)), num(b['sumIn']))
    and near(sum((num(l['sum']) for l in b['outs']), Decimal(0)), num(b['sumOut']))
    and near(num(b['sumIn']) - num(b['sumOut']), num(b['off']))
    and all(near(sum((num(p['amount']) for p in l['parts']), Decimal(0)), num(l['sum'])) for l in b['ins'] + b['outs'])
    for b in data['balances']
]
arose = num(data['arose']['sum'])
sums = [
    near(sum((num(m['mass']['sum']) for m in data['months']), Decimal(0)), arose),
    near(sum((num(k['mass']['sum']) for k in data['kinds']), Decimal(0)), arose),
    near(sum((num(w['mass']) for w in data['wastes'] if w['counted']), Decimal(0)), arose),
]
print(json.dumps({'hash': hashlib.sha256(text.encode()).hexdigest() == told, 'balances': balances, 'sums': sums}))
`;

function reckonedAgain(data: YearData) {
  const file = join(folder, 'year.json');
  writeFileSync(file, yearText(data));
  return JSON.parse(execFileSync('python3', ['-c', reckoned, file], { encoding: 'utf8' }));
}

describe('the data', () => {
  test('has the hash, the sums and the balances that another language comes to', () => {
    const data = handPaper();
    expect(reckonedAgain(data)).toEqual({
      hash: true,
      balances: data.balances.map(() => true),
      sums: [true, true, true],
    });
    expect(data.balances.map(({ of }) => of)).toEqual(['Cu']);
    // The same with one digit of a waste changed.
    const [first] = data.wastes;
    if (!first || first.mass === notDetermined) throw new Error('no waste');
    const changed = { ...data, wastes: [{ ...first, mass: { ...first.mass, value: '21' } }] };
    expect(reckonedAgain(changed)).toMatchObject({ hash: false, sums: [true, true, false] });
  });

  test('has the working of every figure, each line after those that it stands on', () => {
    const data = handPaper();
    const known = new Set<string>();
    for (const { id, from } of data.working) {
      for (const one of from) expect(known).toContain(one);
      known.add(id);
    }
    const text = JSON.stringify(data);
    const lines = [...text.matchAll(/"line":"([EPW]\d+)"/g)].map(([, line]) => line ?? '');
    expect(lines.length).toBeGreaterThan(40);
    for (const line of lines) expect(known).toContain(line);
  });

  test('names what is not determined, and does not count what came back', () => {
    const data = handPaper();
    expect(data.notDetermined.join(' ')).toContain('Generator number of the workshop: not entered.');
    expect(data.loads.map(({ containers }) => containers.map(({ counted }) => counted))).toEqual([
      [false],
      [true, true],
    ]);
    expect(data.loads[1]).toMatchObject({ destination: 'Salt Quay works', document: notDetermined });
    expect(data.over).toBe(true);
    expect(handPaper('2029').over).toBe(false);
  });

  test('of a record in which nothing stands has no number in it', () => {
    const { arose, start, end, handedOver, balances, silver, lastEntry } = emptyPaper();
    expect([arose, start, end, handedOver].map(({ sum }) => sum)).toEqual(['none', 'none', 'none', 'none']);
    expect([balances, silver.weighed, lastEntry]).toEqual([[], notDetermined, notDetermined]);
  });
});

async function pdfOf(data: YearData, paper: 'A4' | 'Letter') {
  const account = yearAccount(handYear(), yearDays('2028'), 'Europe/Berlin');
  const plot = plotGeometry(monthsPlot(account.months, '.'), { width: 470, text: 8.5, height: 150 });
  const document = yearPaper(data, { paper, plots: [plotBlock(plot)] });
  return readPdf(await renderPdf(document, paperFonts, { attachments: [attachmentOf(data)] }));
}

describe('the paper', () => {
  test.each(['A4', 'Letter'] as const)(
    'on %s says what the data does, to a reader that is not ours',
    async (paper) => {
      const data = handPaper();
      const { title, language, pages, attachments } = await pdfOf(data, paper);
      expect([title, language]).toEqual(['Summary of the year, 2028', 'en']);
      const text = pages.map((page) => page.text).join('\n');
      for (const said of [
        'Nobody has confirmed this.',
        'Closes',
        'Taken out of solution by treating',
        '37.4', // 37.35 of copper by hand
        'came back, not',
        'Salt Quay works',
        'Generator number of the workshop: not entered.',
        data.contentHash,
      ])
        expect(text).toContain(said);
      expect(text).not.toMatch(/\b(safe|compliant)\b/i);
      expect(pages.flatMap(({ fonts }) => fonts).join()).not.toContain('missing');
      expect(pages.map(({ width }) => Math.round(width))).toEqual(
        pages.map(() => (paper === 'A4' ? 595 : 612)),
      );
      expect(pages.every((page, at) => page.text.includes(`page ${at + 1} of ${pages.length}`))).toBe(true);
      expect(new TextDecoder().decode(attachments[fileName(data, 'json')])).toBe(yearText(data));
    },
  );

  test('of a record in which nothing stands says so', async () => {
    const data = emptyPaper();
    const document = yearPaper(data, { paper: 'A4', plots: [] });
    const { pages } = await readPdf(
      await renderPdf(document, paperFonts, { attachments: [attachmentOf(data)] }),
    );
    const text = pages.map((page) => page.text).join('\n');
    for (const said of [
      'No waste was logged',
      'Nothing was handed over',
      'No waste of the time tells',
      'no silver was weighed',
    ])
      expect(text).toContain(said);
  });
});
