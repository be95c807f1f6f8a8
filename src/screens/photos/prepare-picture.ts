/**
 * Makes a photo out of whatever picture the phone hands over: upright, at most 1600 pixels long, with nothing in it but
 * the picture. Where and with what it was taken stays on the phone.
 */
import type { Photo } from '../../ledger/entries/photos';
import type { StoreFailure } from '../../storage/failure';
import { onlyPicture } from './only-picture';

/** Why a picture cannot be a photo of the record. */
type PictureFault =
  | { readonly code: 'not-a-picture' }
  | { readonly code: 'too-big' }
  /** A picture, of a kind that this browser cannot open. */
  | { readonly code: 'format-not-opened' }
  /** The phone named the file and then did not give it. */
  | { readonly code: 'not-handed-over' };

/** Why a photo was not kept. */
export type PhotoFault = PictureFault | { readonly code: 'not-stored'; readonly failure: StoreFailure };

export type Prepared =
  | {
      readonly ok: true;
      readonly bytes: Uint8Array<ArrayBuffer>;
      readonly picture: Pick<Photo, 'type' | 'width' | 'height'>;
    }
  | { readonly ok: false; readonly fault: PictureFault };

/** A label 20 cm wide stays readable, and a hundred photos take some 30 MB. Reasoned. */
const longestSide = 1600;
/** A picture that small is kept as it is, when nothing but the picture is in it. Reasoned. */
const smallBytes = 600_000;
/** No phone takes larger ones; opening one takes many times as much memory. Reasoned. */
export const mostMegabytes = 40;
/** Common practice: below it lettering begins to blur. */
const jpegQuality = 0.8;

const fault = (code: PictureFault['code']): Prepared => ({ ok: false, fault: { code } });

/**
 * Whether it is a picture all the same, in a box of ISO/IEC 14496-12 (HEIC, AVIF: "ftyp" at byte 4) or TIFF (raw
 * pictures: "II*" or "MM\0*"). Status: memory.
 */
function isOtherPicture(bytes: Uint8Array): boolean {
  const begin = String.fromCharCode(...bytes.subarray(0, 8));
  return begin.slice(4) === 'ftyp' || begin.startsWith('II*\0') || begin.startsWith('MM\0*');
}

/** Null where the browser cannot open it. Upright, whichever way the phone was held. */
async function opened(picture: Blob): Promise<ImageBitmap | null> {
  try {
    return await createImageBitmap(picture, { imageOrientation: 'from-image' });
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

async function bytesOf(picture: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await picture.arrayBuffer());
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

/** Size inside the longest side, in pixels, never larger than it is and never nothing. */
export function sizeKept(width: number, height: number): { readonly width: number; readonly height: number } {
  const share = Math.min(1, longestSide / Math.max(width, height));
  const kept = (side: number): number => Math.max(1, Math.round(side * share));
  return { width: kept(width), height: kept(height) };
}

async function redrawn(bitmap: ImageBitmap): Promise<Prepared> {
  const size = sizeKept(bitmap.width, bitmap.height);
  const canvas = Object.assign(document.createElement('canvas'), size);
  const pen = canvas.getContext('2d');
  if (!pen) return fault('format-not-opened');
  // A JPEG has no see-through: what was so is paper, not black.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, size.width, size.height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(bitmap, 0, 0, size.width, size.height);
  const made = await new Promise<Blob | null>((resolve) => {
    canvas.toBlob(resolve, 'image/jpeg', jpegQuality);
  });
  if (!made) return fault('format-not-opened');
  const bytes = new Uint8Array(await made.arrayBuffer());
  return { ok: true, bytes, picture: { type: 'image/jpeg', ...size } };
}

/** The photo to keep of a picture, or why there is none. */
export async function preparePicture(picture: Blob): Promise<Prepared> {
  if (picture.size > mostMegabytes * 1e6) return fault('too-big');
  const bytes = await bytesOf(picture);
  if (!bytes) return fault('not-handed-over');
  const bitmap = await opened(picture);
  if (!bitmap) return fault(isOtherPicture(bytes) ? 'format-not-opened' : 'not-a-picture');
  try {
    const { width, height } = bitmap;
    const small = Math.max(width, height) <= longestSide && bytes.length <= smallBytes;
    const type = small ? onlyPicture(bytes) : null;
    if (type !== null) return { ok: true, bytes, picture: { type, width, height } };
    return await redrawn(bitmap);
  } finally {
    bitmap.close();
  }
}
