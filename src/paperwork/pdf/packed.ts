/**
 * Puts the small objects of a file into compressed streams, and its table of places as well (ISO 32000-1, 7.5.7 and 7.5.8):
 * a tagged paper is mostly objects of a hundred bytes, and must be small enough to mail. Reads files as pdfkit writes them:
 * one table of places, no object of a later generation, nothing encrypted, a line end after each part.
 */
import { zlibSync } from 'fflate';

/** Objects in one stream: a reader opens all of a stream for one object in it. */
const inOneStream = 200;

const latin = new TextDecoder('latin1');
const utf8 = new TextEncoder();

/** `body` is what stands between its "obj" and "endobj"; null for one with a stream, which stays as it is. */
type PdfObject = { readonly number: number; readonly bytes: Uint8Array; readonly body: Uint8Array | null };

/** Where an object stands: at a place in the file, or as one of those in a stream. */
type Place = { readonly at: number } | { readonly inside: number; readonly index: number };

const ending = (bytes: Uint8Array, text: string): boolean =>
  latin.decode(bytes.subarray(-text.length)) === text;

function objectOf(number: number, bytes: Uint8Array): PdfObject {
  const body = bytes.subarray(`${number} 0 obj\n`.length, -'\nendobj\n'.length);
  return { number, bytes, body: ending(body, 'endstream') ? null : body };
}

/** What a file consists of, its objects in the order in which they stand. */
function partsOf(file: Uint8Array) {
  const end = latin.decode(file.subarray(-64));
  const tableAt = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(end)?.[1]);
  const [table = '', trailer = ''] = latin.decode(file.subarray(tableAt)).split('trailer\n');
  const places = table
    .split('\n')
    .slice(2)
    .flatMap((line, number) => (line[17] === 'n' ? [{ number, at: Number(line.slice(0, 10)) }] : []))
    .sort((a, b) => a.at - b.at);
  const named = (name: string): string =>
    new RegExp(`/${name} (\\[[^\\]]*\\]|\\d+ 0 R)`).exec(trailer)?.[1] ?? '';
  const [first] = places;
  if (!first) throw new Error('a PDF without objects cannot be packed');
  return {
    head: file.subarray(0, first.at),
    objects: places.map(({ number, at }, i) =>
      objectOf(number, file.subarray(at, places[i + 1]?.at ?? tableAt)),
    ),
    size: Number(/\/Size (\d+)/.exec(trailer)?.[1]),
    trailer: `/Root ${named('Root')} /Info ${named('Info')} /ID ${named('ID')}`,
  };
}

const joined = (parts: readonly Uint8Array[]): Uint8Array => {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
};

function streamObject(number: number, dictionary: string, content: Uint8Array): Uint8Array {
  const packed = zlibSync(content);
  const head = `${number} 0 obj\n<< ${dictionary} /Length ${packed.length} /Filter /FlateDecode >>\nstream\n`;
  return joined([utf8.encode(head), packed, utf8.encode('\nendstream\nendobj\n')]);
}

/** Several small objects in one: their numbers with their places in front, then they themselves. */
function objectStream(
  number: number,
  objects: readonly (PdfObject & { readonly body: Uint8Array })[],
): Uint8Array {
  let at = 0;
  const places = objects.map((object) => {
    const place = `${object.number} ${at}`;
    at += object.body.length + 1;
    return place;
  });
  const index = utf8.encode(`${places.join(' ')}\n`);
  const bodies = objects.flatMap(({ body }) => [body, utf8.encode('\n')]);
  return streamObject(
    number,
    `/Type /ObjStm /N ${objects.length} /First ${index.length}`,
    joined([index, ...bodies]),
  );
}

/** Bytes of a line of the table: what the object is, its place or its stream, its index there. */
const widths = [1, 4, 2] as const;

function tableOf(places: ReadonlyMap<number, Place>, size: number): Uint8Array {
  const line = widths[0] + widths[1] + widths[2];
  const table = new DataView(new ArrayBuffer(size * line));
  for (const [number, place] of places) {
    const at = number * line;
    const isPacked = 'inside' in place;
    table.setUint8(at, isPacked ? 2 : 1);
    table.setUint32(at + widths[0], isPacked ? place.inside : place.at);
    table.setUint16(at + widths[0] + widths[1], isPacked ? place.index : 0);
  }
  return new Uint8Array(table.buffer);
}

const isSmall = (object: PdfObject): object is PdfObject & { readonly body: Uint8Array } =>
  object.body !== null;

/** The same paper in fewer bytes. @throws when the file is not as pdfkit writes one */
export function packed(file: Uint8Array): Uint8Array {
  const { head, objects, size: first, trailer } = partsOf(file);
  const places = new Map<number, Place>();
  const parts: Uint8Array[] = [head];
  let length = head.length;
  const add = (number: number, bytes: Uint8Array): void => {
    places.set(number, { at: length });
    parts.push(bytes);
    length += bytes.length;
  };
  for (const { number, bytes, body } of objects) if (body === null) add(number, bytes);
  const small = objects.filter(isSmall).sort((a, b) => a.number - b.number);
  let next = first;
  for (let i = 0; i < small.length; i += inOneStream) {
    const some = small.slice(i, i + inOneStream);
    const number = next++;
    for (const [index, object] of some.entries()) places.set(object.number, { inside: number, index });
    add(number, objectStream(number, some));
  }
  const [tableAt, size] = [length, next + 1];
  places.set(next, { at: tableAt });
  const about = `/Type /XRef /Size ${size} /W [${widths.join(' ')}] ${trailer}`;
  add(next, streamObject(next, about, tableOf(places, size)));
  return joined([...parts, utf8.encode(`startxref\n${tableAt}\n%%EOF\n`)]);
}
