/** Invented pictures: true grey JPEGs of a few kilobytes, each of its own bytes. */
import { chanceOf } from '../chance';

const marker = (code: number, ...payload: number[]): number[] => {
  const length = payload.length + 2;
  return [0xff, code, length >> 8, length & 255, ...payload];
};

/** One code of one bit: the sort of the only value that comes up. */
const oneCode = (table: number, value: number): number[] =>
  marker(0xc4, table, 1, ...new Array<number>(15).fill(0), value);

/** Eight by eight pixels of one shade, after ITU-T T.81. */
const head = [
  0xff,
  0xd8,
  ...marker(0xdb, 0, ...new Array<number>(64).fill(8)),
  ...marker(0xc0, 8, 0, 8, 0, 8, 1, 1, 0x11, 0),
  ...oneCode(0x00, 7),
  ...oneCode(0x10, 0),
];
const scan = (shade: number): number[] => [...marker(0xda, 1, 1, 0, 0, 63, 0), shade, 0x7f, 0xff, 0xd9];

const [leastFiller, mostFiller] = [6_000, 20_000];

/** The nth photo of an invented workshop: a few kilobytes, as a comment of the file has them. */
export function photo(n: number): Uint8Array<ArrayBuffer> {
  const chance = chanceOf(n + 1);
  const filler = leastFiller + Math.floor(chance() * (mostFiller - leastFiller));
  const end = scan(64 + Math.floor(chance() * 64));
  const bytes = new Uint8Array(head.length + 4 + filler + end.length);
  bytes.set(head);
  bytes.set([0xff, 0xfe, (filler + 2) >> 8, (filler + 2) & 255], head.length);
  for (let i = 0; i < filler; i += 1) bytes[head.length + 4 + i] = chance() * 256;
  bytes.set(end, head.length + 4 + filler);
  return bytes;
}
