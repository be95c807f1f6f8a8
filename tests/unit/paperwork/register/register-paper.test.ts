/** The register as a PDF and from the command line, read by programs that are not ours. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { jsonText } from '../../../../src/paperwork/disposal/disposal-data';
import { disposalData } from '../../../../src/paperwork/disposal/gather';
import { renderPdf } from '../../../../src/paperwork/pdf/render';
import { registerData } from '../../../../src/paperwork/register/gather-register';
import { insidePdf } from '../../../../src/paperwork/register/inside-pdf';
import { registerText } from '../../../../src/paperwork/register/register-data';
import { attachmentOf, registerPaper } from '../../../../src/paperwork/register/register-paper';
import { verifyFile } from '../../../../src/paperwork/register/verify-file';
import { verdictWords } from '../../../../src/paperwork/register/verify-words';
import { paperFonts } from '../../../support/paper-fonts';
import { readPdf } from '../../../support/read-pdf';
import { disposalState } from '../disposal-state';

const days = { firstDay: '2026-05-01', lastDay: '2026-05-31' };
const folder = mkdtempSync(join(tmpdir(), 'register-'));
const file = (name: string): string => join(folder, name);

async function made() {
  const memory = await disposalState();
  const { state, now, does, barren } = memory;
  const opened = state.value.log.find(({ body }) => body.kind === 'container-opened');
  if (opened?.body.kind !== 'container-opened') throw new Error('no container');
  await does({
    do: 'correct-entry',
    corrects: opened.id,
    body: { ...opened.body, cap: 'tight' },
    reason: 'No vent.',
  });
  // More than a page of one part, so that its head has to come again.
  for (let n = 0; n < 60; n += 1)
    await does({ do: 'mark-container', containerId: barren, mark: n % 2 ? 'reopened' : 'closed' });
  const asked = {
    state: state.value,
    now: now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.' as const,
  };
  const data = registerData(days, { ...asked, demo: true });
  const document = registerPaper(data, { paper: 'A4', sign: '.' });
  return {
    data,
    pdf: await renderPdf(document, paperFonts, { attachments: [attachmentOf(data)] }),
    disposal: jsonText(disposalData([barren], { ...asked, demo: true })),
  };
}

let paper: Awaited<ReturnType<typeof made>>;
beforeAll(async () => {
  paper = await made();
  writeFileSync(file('register.pdf'), paper.pdf);
  writeFileSync(file('register.json'), registerText(paper.data));
});
afterAll(() => rmSync(folder, { recursive: true }));

const poppler = (tool: string, ...args: string[]): string => execFileSync(tool, args, { encoding: 'utf8' });

describe('the register as a PDF, read by poppler', () => {
  test('prints each line, what became of it, and its whole content hash', () => {
    const text = poppler('pdftotext', '-layout', file('register.pdf'), '-').replaceAll('\u2011', '-');
    for (const { hash } of paper.data.lines) expect(text).toContain(hash.slice(0, 10));
    const flat = text.replace(/\s+/g, ' ');
    expect(flat).toContain('Corrected by 15; now: cap tight instead of vented.');
    expect(flat).toContain(paper.data.contentHash);
    expect(attachmentOf(paper.data).name).toMatch(/^invented-register-2026-05-01-to-2026-05-31\.json$/);
    expect(flat).toMatch(/Not confirmed until the authority/);
    expect(flat).not.toMatch(/\b(safe|compliant)\b/i);
  });

  test('repeats the head of a table that goes on, and numbers its pages', () => {
    const pages = poppler('pdftotext', '-layout', file('register.pdf'), '-').split('\f').slice(0, -1);
    const going = pages.filter((page) => (page.match(/: (closed|reopened)/g) ?? []).length > 5);
    expect(going.length).toBeGreaterThan(1);
    for (const page of going) expect(page).toMatch(/Happened\s+About\s+What it says/);
    pages.forEach((page, at) => {
      expect(page).toContain(`page ${at + 1} of ${pages.length}`);
    });
  });

  test('bears its title, its fonts and its data', () => {
    expect(poppler('pdfinfo', file('register.pdf'))).toMatch(
      /Title:\s+Register\b[\s\S]*Tagged:\s+yes[\s\S]*595\.\d+ x 841/,
    );
    const fonts = poppler('pdffonts', file('register.pdf')).split('\n').slice(2, -1);
    expect(fonts.length).toBeGreaterThan(1);
    for (const font of fonts) expect(font).toMatch(/\s(yes)\s+(yes)\s+(yes)\s+\d+\s+\d+$/);
    poppler('pdfdetach', '-save', '1', '-o', file('inside.json'), file('register.pdf'));
    expect(readFileSync(file('inside.json'), 'utf8')).toBe(registerText(paper.data));
  });

  test('has the same data inside by our own reader as by another', async () => {
    const theirs = Object.values((await readPdf(paper.pdf)).attachments);
    const ours = Object.values(await insidePdf(paper.pdf));
    const texts = (files: readonly Uint8Array[]) => files.map((bytes) => new TextDecoder().decode(bytes));
    expect(texts(ours)).toEqual(texts(theirs));
    await expect(insidePdf(paper.pdf.slice(0, paper.pdf.length / 2))).rejects.toThrow();
  });
});

/** npm run verify, as a person calls it. */
function verify(name: string) {
  const { status, stdout, stderr } = spawnSync('node', ['.ci/verify.mjs', file(name)], {
    cwd: join(import.meta.dirname, '../../../..'),
    encoding: 'utf8',
  });
  return { status, said: stdout + stderr };
}

describe('npm run verify', () => {
  test('says whole of a register as JSON, inside its PDF and in an archive', () => {
    const { entries, heads } = paper.data;
    writeFileSync(
      file('all.zip'),
      zipSync({
        'register.json': new TextEncoder().encode(registerText(paper.data)),
        'register.pdf': paper.pdf,
        'notes.txt': new Uint8Array([1]),
      }),
    );
    for (const name of ['register.json', 'register.pdf', 'all.zip']) {
      const { status, said } = verify(name);
      expect([name, status, said]).toEqual([
        name,
        0,
        expect.stringContaining(`whole: ${entries.length} entries`),
      ]);
      for (const { hash } of heads) expect(said).toContain(hash);
    }
  });

  test('names the entry that was altered: its number, id, code, and both hashes', () => {
    const text = registerText(paper.data);
    const altered = text.replace('"cap":"vented"', '"cap":"open"');
    expect(altered).not.toBe(text);
    writeFileSync(file('altered.json'), altered);
    const wrong = paper.data.entries.find(({ entry }) => entry.body.kind === 'container-opened');
    const { status, said } = verify('altered.json');
    expect(status).toBe(1);
    expect(said).toContain(`Entry ${wrong?.number} (C\u201107)`);
    for (const part of [wrong?.entry.id, wrong?.entry.hash]) expect(said).toContain(part);
  });

  test('names an entry of which a byte is no JSON any more', () => {
    const text = registerText(paper.data);
    const at = text.indexOf('"kind":"container-opened"', text.indexOf('"entries": ['));
    writeFileSync(file('damaged.json'), `${text.slice(0, at)}\0${text.slice(at + 1)}`);
    const wrong = paper.data.entries.find(({ entry }) => entry.body.kind === 'container-opened');
    expect(verify('damaged.json')).toMatchObject({
      status: 1,
      said: expect.stringContaining(`Entry ${wrong?.number}: damaged`),
    });
  });

  test('holds a disposal paper against its content hash', () => {
    writeFileSync(file('paper.json'), paper.disposal);
    expect(verify('paper.json')).toMatchObject({
      status: 0,
      said: expect.stringContaining('disposal paper of C\u201107'),
    });
    writeFileSync(file('other.json'), paper.disposal.replace('Maren', 'Karen'));
    expect(verify('other.json')).toMatchObject({ status: 1, said: expect.stringContaining('content hash') });
  });

  test('says of a file that is not there, or is cut off, what is the matter', () => {
    writeFileSync(file('cut.json'), '{"kind": "register", "v": 1');
    expect(verify('nothing.json')).toEqual({ status: 2, said: expect.stringMatching(/cannot be read/) });
    expect(verify('cut.json')).toEqual({ status: 2, said: expect.stringMatching(/damaged, or no JSON/) });
  });
});

describe('a file of which nothing can be said', () => {
  const unreadable: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['an empty one', '', /empty/],
    ['another list', '[1, 2]', /neither a register nor/],
    ['one of a later version', '{"kind": "register", "v": 2}', /version 2/],
    ['a broken PDF', '%PDF-1.7 no more', /PDF cannot be read/],
    ['a broken archive', 'PK\u0003\u0004 no more', /archive cannot be unpacked/],
    ['an archive of other things', zipSync({ 'a.txt': new Uint8Array([1]) }), /no data of Leesbook inside/],
  ];
  test.each(unreadable)('gives its reason: %s', async (_, content, said) => {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    const [checked] = await verifyFile('file', bytes, insidePdf);
    if (!checked) throw new Error('nothing was checked');
    expect(verdictWords(checked.verdict)).toMatchObject({
      outcome: 'unreadable',
      lines: [expect.stringMatching(said)],
    });
  });
});
