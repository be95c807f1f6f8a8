import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { jsonText } from '../../../../src/paperwork/disposal/disposal-data';
import { fileName } from '../../../../src/paperwork/disposal/disposal-paper';
import { disposalData } from '../../../../src/paperwork/disposal/gather';
import { type ArchiveFile, aboutOf, archiveOf } from '../../../../src/paperwork/tables/archive';
import { fileWords } from '../../../../src/paperwork/tables/read-me';
import { tablesOf } from '../../../../src/paperwork/tables/tables-of';
import { paperSchema } from '../../../support/paper-schema';
import { disposalState } from '../disposal-state';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

async function made(demo = false) {
  const { state, now, barren, wash } = await disposalState();
  const asked = { state: state.value, now: now.value, zone: 'Europe/Paris', madeBy: 'Zoë 🧪' };
  const data = disposalData([barren, wash], { ...asked, sign: ',', demo });
  const json = fileName(data, 'json');
  const files: readonly ArchiveFile[] = [
    {
      name: fileName(data, 'pdf'),
      says: fileWords.pdf,
      bytes: utf8('%PDF-1.7 stands for a paper'),
    },
    { name: json, says: fileWords.json, bytes: utf8(jsonText(data)) },
    { name: 'disposal-paper-1.schema.json', says: fileWords.schema, bytes: utf8(paperSchema()) },
    ...tablesOf(data, ','),
  ];
  const about = aboutOf(data, 'disposal paper for C-07 and C-02', json);
  return { data, files, about, json, archive: archiveOf(files, about) };
}

const textIn = (archive: Uint8Array, name: string): string =>
  new TextDecoder().decode(unzipSync(archive)[name] ?? new Uint8Array());

describe('an archive', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'archive-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  /** As somebody with Python unpacks it. */
  const unpacked = (archive: Uint8Array): void => {
    writeFileSync(join(folder, 'a.zip'), archive);
    const code = "import zipfile; z = zipfile.ZipFile('a.zip'); assert z.testzip() is None; z.extractall()";
    const { status, stderr } = spawnSync('python3', ['-c', code], { cwd: folder });
    expect(status, stderr.toString()).toBe(0);
  };

  test('holds every file as it was given, the READ-ME first', async () => {
    const { archive, files } = await made();
    const held = unzipSync(archive);
    const paths = files.map(({ folder: in_, name }) => (in_ === undefined ? name : `${in_}/${name}`));
    expect(Object.keys(held)).toEqual(['READ-ME.txt', ...paths, 'SHA256SUMS.txt']);
    expect(paths.map((path) => held[path])).toEqual(files.map(({ bytes }) => bytes));
  });

  test('has the same bytes for the same data, in every time zone', async () => {
    const { archive, files, about } = await made();
    const zone = process.env.TZ;
    try {
      for (const elsewhere of ['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'Europe/Berlin']) {
        process.env.TZ = elsewhere;
        expect(Buffer.compare(archiveOf(files, about), archive)).toBe(0);
      }
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
  });

  test('dates its files by the day they were made', async () => {
    const { archive } = await made();
    writeFileSync(join(folder, 'a.zip'), archive);
    const code = "import zipfile; print({i.date_time for i in zipfile.ZipFile('a.zip').infolist()})";
    const { stdout } = spawnSync('python3', ['-c', code], { cwd: folder });
    expect(stdout.toString().trim()).toBe('{(2026, 5, 17, 12, 0, 0)}');
  });

  test('says of each file what it is, and how to check it', async () => {
    const { archive, files, data } = await made();
    const text = textIn(archive, 'READ-ME.txt');
    expect(text).not.toMatch(/[^\r]\n/);
    for (const { name, says } of files) {
      expect(text).toContain(name);
      expect(text).toContain(says);
    }
    for (const caution of data.cautions) expect(text).toContain(caution);
    expect(text).toContain(`Content hash: ${data.contentHash}`);
    expect(text).toContain('Made 2026-05-17, 12:00:00 UTC.');
    expect(text).not.toMatch(/invented/i);
  });

  test('tells of the content hash a command that holds, and that finds a change', async () => {
    const { archive, json } = await made();
    unpacked(archive);
    const [, command = ''] =
      /^(python3 -c .*)$/m.exec(textIn(archive, 'READ-ME.txt').replaceAll('\r', '')) ?? [];
    const says = () => spawnSync('sh', ['-c', command], { cwd: folder }).stdout.toString().trim();
    expect(says()).toBe('True');
    writeFileSync(join(folder, json), textIn(archive, json).replace('17.6', '17.7'));
    expect(says()).toBe('False');
  });

  test('has the SHA-256 of every file, as sha256sum checks them', async () => {
    const { archive } = await made();
    unpacked(archive);
    const { status } = spawnSync('sha256sum', ['--check', '--strict', 'SHA256SUMS.txt'], { cwd: folder });
    expect(status).toBe(0);
    const sums = textIn(archive, 'SHA256SUMS.txt').trimEnd().split('\n');
    const held = Object.entries(unzipSync(archive)).filter(([name]) => name !== 'SHA256SUMS.txt');
    expect(sums).toEqual(
      held.map(([name, bytes]) => `${createHash('sha256').update(bytes).digest('hex')}  ${name}`),
    );
  });

  test('lets no name lead out of it, take the place of another, or be other than ASCII', async () => {
    const { files, about } = await made();
    for (const name of ['../../x.pdf', 'READ-ME.txt', 'sha256sums.TXT', '/etc/x', 'CON', '鉛 C‑07.pdf']) {
      const archive = archiveOf([{ name, says: 'A paper.', bytes: utf8('%PDF') }, ...files], about);
      const names = Object.keys(unzipSync(archive));
      expect(new Set(names.map((path) => path.toLowerCase())).size).toBe(files.length + 3);
      for (const path of names)
        expect(path).toMatch(/^(spreadsheet\/|programs\/)?[A-Za-z0-9_][A-Za-z0-9_.-]*$/);
      expect(textIn(archive, 'READ-ME.txt')).toContain('HOW TO CHECK IT');
    }
  });

  test('says in capitals that its data is invented where it is', async () => {
    const { archive } = await made(true);
    expect(textIn(archive, 'READ-ME.txt')).toContain('EVERYTHING IN HERE IS INVENTED');
  });

  test('is refused without the file that has the data', async () => {
    const { files, about, json } = await made();
    expect(() =>
      archiveOf(
        files.filter(({ name }) => name !== json),
        about,
      ),
    ).toThrow('is not in the archive');
  });
});
