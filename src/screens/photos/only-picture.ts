/**
 * Whether a file holds nothing but its picture. Cameras write into it where it was taken, when, with which phone, and a
 * small copy of the whole; none of that belongs in a record that is handed to others. Only what is known to be part of
 * the picture passes, so that what is not known never does.
 */
import type { Photo } from '../../ledger/entries/photos';
import { pictureType } from '../../storage/picture-type';

const letters = (bytes: Uint8Array, from: number, count: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + count));

/** Parts of a JPEG (ITU-T T.81 table B.1, status memory): tables, frames, and the beginning of the scan. */
const jpegParts = new Set([
  0xc0, 0xc1, 0xc2, 0xc3, 0xc4, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcc, 0xcd, 0xce, 0xcf, 0xdb, 0xdd,
]);
const startOfScan = 0xda;

/** JFIF, a colour profile, and the note on colours that one maker writes. */
const jpegColours: Readonly<Record<number, string>> = { 224: 'JFIF\0', 226: 'ICC_PROFILE\0', 238: 'Adobe' };

function isPart(bytes: Uint8Array, marker: number, at: number): boolean {
  const name = jpegColours[marker];
  return jpegParts.has(marker) || (name !== undefined && letters(bytes, at + 4, name.length) === name);
}

/** After the first scan only further scans and tables may come, and nothing after the end of the image. */
function onlyJpeg(bytes: Uint8Array): boolean {
  let at = 2;
  let inScan = false;
  while (at + 1 < bytes.length) {
    const [first, marker = 0] = [bytes[at], bytes[at + 1]];
    if (first !== 0xff) {
      if (!inScan) return false;
      at += 1;
    } else if (marker === 0xd9) return at + 2 === bytes.length;
    else if (inScan && (marker === 0 || (marker >= 0xd0 && marker <= 0xd7))) at += 2;
    else if (marker === 0xff) at += 1;
    else if (marker !== startOfScan && !isPart(bytes, marker, at)) return false;
    else {
      inScan = marker === startOfScan;
      at += 2 + (bytes[at + 2] ?? 0) * 256 + (bytes[at + 3] ?? 0);
    }
  }
  return false;
}

/** Chunks of a PNG that are the picture and its colours (ISO/IEC 15948 clause 11, status memory). */
const pngChunks = new Set(
  'IHDR PLTE IDAT IEND tRNS gAMA cHRM sRGB iCCP sBIT bKGD pHYs acTL fcTL fdAT'.split(' '),
);
/** Chunks of a WebP likewise (RFC 9649 section 2.7, status memory). */
const webpChunks = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP', 'ANIM', 'ANMF']);

function onlyPng(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let at = 8;
  while (at + 12 <= bytes.length) {
    const name = letters(bytes, at + 4, 4);
    if (!pngChunks.has(name)) return false;
    at += 12 + view.getUint32(at);
    if (name === 'IEND') return at === bytes.length;
  }
  return false;
}

function onlyWebp(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  // What the container says of its own length, without its first eight bytes.
  if (view.getUint32(4, true) + 8 !== bytes.length) return false;
  let at = 12;
  while (at + 8 <= bytes.length) {
    if (!webpChunks.has(letters(bytes, at, 4))) return false;
    const length = view.getUint32(at + 4, true);
    at += 8 + length + (length % 2);
  }
  return at === bytes.length;
}

/** The kind of picture, when nothing but the picture is in the file; else null. */
export function onlyPicture(bytes: Uint8Array): Photo['type'] | null {
  const type = pictureType(bytes);
  if (type === null) return null;
  const only = { 'image/jpeg': onlyJpeg, 'image/png': onlyPng, 'image/webp': onlyWebp }[type];
  return only(bytes) ? type : null;
}
