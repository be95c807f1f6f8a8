import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { containerLink, labelled, readLabel } from '../../../../src/paperwork/labels/container-link';

const id = '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6071';

const origin = fc.oneof(
  fc.webUrl({ withFragments: true, withQueryParameters: true }),
  fc.constantFrom(
    'http://localhost:4173/',
    'https://leesbook.example/',
    'https://a.example/deep/er/index.html?x=1#/containers/old',
    'http://192.168.0.12:8080/#/',
  ),
);

/** Either case, letter by letter. */
const anyCase = (text: string) =>
  fc
    .array(fc.boolean(), { minLength: text.length, maxLength: text.length })
    .map((upper) => [...text].map((letter, at) => (upper[at] ? letter.toUpperCase() : letter)).join(''));

const behind = fc.constantFrom(
  '',
  '/',
  '/label',
  '?from=label',
  '#top',
  '&x=1',
  ' ',
  '\r\n',
  '/label?x=/containers/',
);

describe('the address in a label', () => {
  test('comes back as the container that it was made for, from any origin, in any case, with anything behind it', () => {
    fc.assert(
      fc.property(
        origin,
        fc.uuid().chain((made) => fc.tuple(fc.constant(made), fc.constant(made).chain(anyCase))),
        behind,
        (app, [made, written], tail) => {
          const link = containerLink(app, made).replace(made, written);
          expect(readLabel(link + tail)).toEqual({ by: 'id', id: made });
          expect(readLabel(link.toUpperCase() + tail)).toEqual({ by: 'id', id: made });
        },
      ),
    );
  });

  test('leads to the page of the container, whatever page of the app it was made on', () => {
    const wanted = `https://a.example/book/#/containers/${id}`;
    for (const page of ['', '#/today', '?x=1#/containers/b', '#'])
      expect(containerLink(`https://a.example/book/${page}`, id)).toBe(wanted);
  });

  test('is read as a bare id, too, and with slashes that a reader has escaped', () => {
    expect(readLabel(id.toUpperCase())).toEqual({ by: 'id', id });
    expect(readLabel(`https://a.example/#%2Fcontainers%2F${id}`)).toEqual({ by: 'id', id });
  });

  test('of something else is nothing', () => {
    for (const read of [
      '',
      ' ',
      'https://a.example/',
      `https://a.example/#/batches/${id}`,
      'https://a.example/#/containers/new',
      'mailto:a@b.example',
      'WIFI:S:shed;T:WPA;P:x;;',
      'x'.repeat(300),
    ])
      expect(readLabel(read), read).toEqual({ by: 'nothing' });
  });
});

const shelf = [
  { containerId: id, code: 'C-04' },
  { containerId: '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6072', code: 'C-40' },
  { containerId: '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6073', code: 'blue can' },
  { containerId: '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6074', code: 'D-7' },
  { containerId: '019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6075', code: 'D-07' },
];
const found = (typed: string) => labelled(shelf, readLabel(typed)).map(({ code }) => code);

describe('a short code that was typed', () => {
  test('is found with any hyphen, blank or case, and without its zeros', () => {
    const hyphen = fc.constantFrom(
      '-',
      '\u2010',
      '\u2011',
      '\u2012',
      '\u2013',
      '\u2014',
      '\u2212',
      '\uff0d',
      '\u00ad',
      '',
      ' ',
      ' - ',
    );
    const blank = fc.constantFrom('', ' ', '\u00a0', '\u200b', '\t');
    fc.assert(
      fc.property(
        hyphen,
        blank,
        blank,
        fc.constantFrom('c', 'C', '\uff23'),
        fc.constantFrom('04', '4', '004', '\uff14'),
        (dash, before, after, letter, number) => {
          expect(found(`${before}${letter}${dash}${number}${after}`)).toEqual(['C-04']);
        },
      ),
    );
  });

  test('keeps the zeros that make another number', () => {
    expect(found('c40')).toEqual(['C-40']);
    expect(found('c4')).toEqual(['C-04']);
    expect(found('c400')).toEqual([]);
  });

  test('means the one that is written just so, where two look alike, and both where neither is', () => {
    expect(found('d-7')).toEqual(['D-7']);
    expect(found('D‑07')).toEqual(['D-07']);
    expect(found('d7')).toEqual(['D-7', 'D-07']);
  });

  test('may be words', () => {
    expect(found('Blue  Can')).toEqual(['blue can']);
  });

  test('or id that is not on the shelf finds nothing', () => {
    expect(found('X-1')).toEqual([]);
    expect(found('019a2b3c-0000-7f60-8a1b-2c3d4e5f6071')).toEqual([]);
    expect(found('')).toEqual([]);
  });

  test('never throws, whatever is typed', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (typed) => void found(typed)));
  });
});
