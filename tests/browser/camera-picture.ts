/** Pictures as a phone hands them over, drawn in the page and given what a camera writes into its files. */
import type { Page } from 'playwright-core';

/** JPEG of a red field with its upper left quarter blue, as base64. */
const drawn = (page: Page, size: { readonly width: number; readonly height: number }): Promise<string> =>
  page.evaluate(async ({ width, height }) => {
    const canvas = Object.assign(document.createElement('canvas'), { width, height });
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no canvas');
    pen.fillStyle = 'red';
    pen.fillRect(0, 0, width, height);
    pen.fillStyle = 'blue';
    pen.fillRect(0, 0, width / 2, height / 2);
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1] ?? '';
  }, size);

/**
 * A segment "Exif" with an orientation and the latitude reference N (CIPA DC-008, 4.6; TIFF 6.0 section 2): big-endian,
 * two entries, the second the directory of the place.
 */
const exif = (orientation: number): Buffer => {
  const tiff = Buffer.from(
    '4d4d002a00000008' +
      `0002${'011200030000000100'}0${orientation}0000` +
      '88250004000000010000002600000000' +
      '00010001000200000002' +
      '4e00000000000000',
    'hex',
  );
  const content = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, (content.length + 2) >> 8, (content.length + 2) & 255]);
  return Buffer.concat([head, content]);
};

/** A picture of a camera that was held on its side (orientation 6: to be turned clockwise), with its place in it. */
export async function cameraPicture(page: Page, width: number, height: number): Promise<Buffer> {
  const jpeg = Buffer.from(await drawn(page, { width, height }), 'base64');
  return Buffer.concat([jpeg.subarray(0, 2), exif(6), jpeg.subarray(2)]);
}
