/** A film of a QR pattern, as Chromium takes it for what stands before the camera. */
import { writeFile } from 'node:fs/promises';
import { encodeQR } from 'qr';

const [width, height] = [640, 480];
/** Not black and white: a shed is dim, and paper is grey in it. */
const [dark, paper, wall] = [40, 205, 150];

function frame(text: string): Buffer {
  const modules = encodeQR(text, 'raw', { ecc: 'quartile', border: 4 });
  const side = Math.floor((height * 0.75) / modules.length);
  const luma = Buffer.alloc(width * height, wall);
  const [left, top] = [(width - side * modules.length) >> 1, (height - side * modules.length) >> 1];
  for (let y = 0; y < side * modules.length; y += 1)
    for (let x = 0; x < side * modules.length; x += 1)
      luma[(top + y) * width + left + x] = modules[Math.floor(y / side)]?.[Math.floor(x / side)]
        ? dark
        : paper;
  return luma;
}

/** YUV4MPEG2 with a quarter of the colour, all of it grey. */
export async function writeFilm(file: string, text: string): Promise<void> {
  const colour = Buffer.alloc((width * height) / 2, 128);
  const one = Buffer.concat([Buffer.from('FRAME\n'), frame(text), colour]);
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F30:1 Ip A1:1 C420mpeg2\n`);
  await writeFile(file, Buffer.concat([head, ...Array.from({ length: 5 }, () => one)]));
}
