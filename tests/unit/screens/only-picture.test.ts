import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onlyPicture } from '../../../src/screens/photos/only-picture';

const text = (letters: string) => [...letters].map((letter) => letter.charCodeAt(0));
const bytes = (...parts: readonly (readonly number[])[]) => new Uint8Array(parts.flat());

/** A segment of a JPEG: marker, length with its own two bytes, content. */
const segment = (marker: number, content: readonly number[]) => [
  0xff,
  marker,
  (content.length + 2) >> 8,
  (content.length + 2) & 255,
  ...content,
];
const jpegStart = [0xff, 0xd8];
const jfif = segment(0xe0, text('JFIF\0\x01\x02'));
const tables = [...segment(0xdb, [0, 1, 2]), ...segment(0xc4, [3, 4])];
const frame = segment(0xc0, [8, 0, 1, 0, 1, 1]);
const scan = [...segment(0xda, [1, 0, 0]), 0x12, 0xff, 0x00, 0x34, 0xff, 0xd3, 0x56, 0xff, 0xd9];
const jpeg = (...between: readonly number[][]) => bytes(jpegStart, jfif, ...between, tables, frame, scan);

const chunk = (name: string, content: readonly number[]) => [
  ...[24, 16, 8, 0].map((shift) => (content.length >> shift) & 255),
  ...text(name),
  ...content,
  ...[0, 0, 0, 0],
];
const png = (...between: readonly number[][]) =>
  bytes(text('\x89PNG\r\n\x1a\n'), chunk('IHDR', [1]), ...between, chunk('IDAT', [2, 3]), chunk('IEND', []));

const size = (length: number) => [0, 8, 16, 24].map((shift) => (length >> shift) & 255);
const part = (name: string, content: readonly number[]) => [
  ...text(name),
  ...size(content.length),
  ...content,
  ...(content.length % 2 ? [0] : []),
];
const webp = (...after: readonly number[][]) => {
  const parts = [...text('WEBP'), ...part('VP8 ', [1, 2, 3]), ...after.flat()];
  return bytes(text('RIFF'), size(parts.length), parts);
};

describe('a file with nothing but its picture', () => {
  it('is known by its kind', () => {
    expect(onlyPicture(jpeg())).toBe('image/jpeg');
    expect(onlyPicture(jpeg(segment(0xe2, text('ICC_PROFILE\0\x01'))))).toBe('image/jpeg');
    expect(onlyPicture(png(chunk('gAMA', [0, 1])))).toBe('image/png');
    expect(onlyPicture(webp())).toBe('image/webp');
    const icon = readFileSync(join(import.meta.dirname, '../../../public/icon-192.png'));
    expect(onlyPicture(new Uint8Array(icon))).toBe('image/png');
  });

  it('may have several scans, with tables between them', () => {
    expect(onlyPicture(bytes(jpegStart, tables, frame, scan.slice(0, -2), tables, scan))).toBe('image/jpeg');
  });
});

describe('a file that tells more than its picture', () => {
  const place = text('Exif\0\0GPS');
  it.each([
    ['where it was taken, in a JPEG', jpeg(segment(0xe1, place))],
    ['several pictures in one JPEG', jpeg(segment(0xe2, text('MPF\0')))],
    ['a note in a JPEG', jpeg(segment(0xfe, text('by Ana')))],
    ['a film behind a JPEG', bytes([...jpeg()], text('ftypmp42'))],
    [
      'where it was taken, behind the first scan',
      bytes(jpegStart, tables, frame, scan.slice(0, -2), segment(0xe1, place), scan),
    ],
    ['a place in a PNG', png(chunk('eXIf', place))],
    ['words in a PNG', png(chunk('tEXt', text('Author\0Ana')))],
    ['something behind a PNG', bytes([...png()], [1])],
    ['a place in a WebP', webp(part('EXIF', place))],
    ['words in a WebP', webp(part('XMP ', text('<x/>')))],
    ['something behind a WebP', bytes([...webp()], part('VP8 ', [1]))],
  ])('%s', (_, file) => {
    expect(onlyPicture(file)).toBeNull();
  });

  it('whatever the maker of a camera calls its part of a JPEG', () => {
    const markers = [0xe1, 0xe3, 0xe4, 0xe5, 0xe6, 0xe7, 0xe8, 0xe9, 0xea, 0xeb, 0xec, 0xed, 0xef, 0xfe];
    fc.assert(
      fc.property(
        fc.constantFrom(...markers),
        fc.array(fc.nat(255), { maxLength: 40 }),
        (marker, content) => {
          expect(onlyPicture(jpeg(segment(marker, content)))).toBeNull();
        },
      ),
    );
  });
});

it('a picture cut off anywhere, or any rubbish, is not taken for a whole one', () => {
  const whole = [jpeg(), png(), webp()] as const;
  fc.assert(
    fc.property(fc.constantFrom(...whole), fc.nat(), (file, cut) => {
      expect(onlyPicture(file.slice(0, cut % file.length))).toBeNull();
    }),
  );
  fc.assert(
    fc.property(fc.constantFrom(...whole), fc.uint8Array({ maxLength: 200 }), (file, rest) => {
      expect(onlyPicture(bytes([...file.slice(0, 12)], [...rest], [1]))).toBeNull();
    }),
  );
});
