/** Reads QR patterns with a decoder that shares no code with the one that wrote them. */
import {
  BinaryBitmap,
  DecodeHintType,
  HybridBinarizer,
  QRCodeReader,
  RGBLuminanceSource,
} from '@zxing/library';
import type { Drawn } from './draw-pdf';

const tryHarder = new Map([[DecodeHintType.TRY_HARDER, true]]);

/** The text of the pattern in a picture. @throws when there is none that can be read */
export function readQr({ grey, width, height }: Drawn): string {
  const source = new RGBLuminanceSource(new Uint8ClampedArray(grey), width, height);
  return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)), tryHarder).getText();
}
