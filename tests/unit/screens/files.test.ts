import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FiledPaper } from '../../../src/ledger/entries/files';
import { filesNamed, papersNamed, photosNamed } from '../../../src/ledger/photos-named';
import { mostFileMegabytes, nameKept, prepareFile } from '../../../src/screens/files/prepare-file';
import { sizeText } from '../../../src/screens/files/words';

const file = (content: BlobPart, name = 'a.pdf') => new File([content], name, { type: 'application/pdf' });

describe('a paper that came as a file', () => {
  test('is kept byte for byte, under its name', async () => {
    const content = new Uint8Array([...new TextEncoder().encode('%PDF-1.7'), 0, 255, 13, 10]);
    const prepared = await prepareFile(file(content, 'Cert 4.pdf'));
    expect(prepared).toEqual({
      ok: true,
      bytes: content,
      paper: { type: 'application/pdf', bytes: 12, name: 'Cert 4.pdf' },
    });
  });

  test.each([
    ['a page with script', '<html><script>1</script></html>'],
    ['nothing', ''],
    ['a PDF that begins too late', ' %PDF-1.7'],
  ])('that is %s is none, whatever it calls itself', async (_, content) => {
    expect(await prepareFile(file(content))).toEqual({ ok: false, fault: { code: 'not-a-pdf' } });
  });

  test('may be as large as is said, and not a byte larger', async () => {
    const of = (size: number) => {
      const content = new Uint8Array(size);
      content.set(new TextEncoder().encode('%PDF-'));
      return prepareFile(file(content));
    };
    expect((await of(mostFileMegabytes * 1e6)).ok).toBe(true);
    expect(await of(mostFileMegabytes * 1e6 + 1)).toEqual({ ok: false, fault: { code: 'too-big' } });
  });

  test('that the phone does not give is told of', async () => {
    const cloud = file('%PDF-');
    cloud.arrayBuffer = () => Promise.reject(new DOMException('gone', 'NotReadableError'));
    expect(await prepareFile(cloud)).toEqual({ ok: false, fault: { code: 'not-handed-over' } });
  });

  test.each([
    ['Cert 14.PDF', 'Cert 14.pdf'],
    ['../../etc/passwd', '.. .. etc passwd.pdf'],
    ['a\u202egnp.exe', 'a gnp.exe.pdf'],
    [' .pdf', 'paper.pdf'],
    ['', 'paper.pdf'],
    ['proof\n of\tdisposal', 'proof of disposal.pdf'],
  ])('%j is called %j', (name, kept) => expect(nameKept(name)).toBe(kept));

  test('whatever it was called, its name fits an entry, ends in .pdf and names no folder', () => {
    const hash = 'a'.repeat(64);
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ maxLength: 200 })),
        (name) => {
          const kept = nameKept(name);
          expect(kept).toMatch(/^[^/\\]+\.pdf$/);
          const paper = { hash, type: 'application/pdf', bytes: 1, name: kept };
          expect(FiledPaper.safeParse(paper)).toMatchObject({ success: true, data: { name: kept } });
        },
      ),
      { numRuns: 500 },
    );
  });

  test('is found in a body beside its photos, each as what it is', () => {
    const paper = { hash: 'a'.repeat(64), type: 'application/pdf', bytes: 3, name: 'a.pdf' } as const;
    const photo = { hash: 'b'.repeat(64), type: 'image/png', bytes: 3 } as const;
    const body = { deep: [{ photos: [photo] }, { files: [paper] }] };
    expect(papersNamed(body)).toEqual([paper]);
    expect(photosNamed(body)).toEqual([photo]);
    expect(filesNamed(body)).toEqual([photo, paper]);
  });

  test.each([
    [1, 'PDF, 1 kB'],
    [240_400, 'PDF, 240 kB'],
    [999_999, 'PDF, 1000 kB'],
    [1_000_000, 'PDF, 1.0 MB'],
    [19_960_000, 'PDF, 20.0 MB'],
  ])('of %d bytes reads %s', (bytes, text) => {
    expect(sizeText(bytes, '.').replaceAll(/\s/g, ' ')).toBe(text);
  });
});
