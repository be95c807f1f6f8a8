/** A text as a QR pattern, drawn as one path. */
import { encodeQR } from 'qr';
import type { Drawing } from '../document';

/** White around the pattern, in modules, as the standard asks for. ISO/IEC 18004, 5.3.8. memory */
export const quietZone = 4;

/** Runs of dark modules, each a rectangle: one module is one unit. */
function runsOf(row: readonly boolean[], y: number): string {
  const runs: string[] = [];
  for (let x = 0; x < row.length; x += 1) {
    if (!row[x]) continue;
    const from = x;
    while (row[x + 1]) x += 1;
    runs.push(`M${from} ${y}H${x + 1}V${y + 1}H${from}Z`);
  }
  return runs.join('');
}

/**
 * A square of as many units as it has modules, white around it included. A quarter of it may be lost: labels get wet and
 * scratched.
 * @param says what it is, for a reader that cannot see it
 */
export function qrDrawing(text: string, says: string): Drawing {
  const modules = encodeQR(text, 'raw', { ecc: 'quartile', border: quietZone });
  const path = modules.map(runsOf).join('');
  return {
    width: modules.length,
    height: modules.length,
    says,
    shapes: [{ path, fill: '#000000' }],
  };
}
