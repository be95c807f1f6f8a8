// Draws the PNG icons in public/ from public/icon.svg. Run it after a change of the drawing: npm run icons
import { readFile, writeFile } from 'node:fs/promises';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../../.ci/ready.mjs';

const folder = new URL('../../public/', import.meta.url);
const drawing = await readFile(new URL('icon.svg', folder), 'utf8');

// A maskable icon may be cut to a circle of 80 % of its width, so the drawing shrinks and the paper goes on around it.
const pictures = [
  { file: 'icon-192.png', sizePx: 192, drawingPx: 192 },
  { file: 'icon-512.png', sizePx: 512, drawingPx: 512 },
  { file: 'icon-maskable-512.png', sizePx: 512, drawingPx: 400 },
  { file: 'apple-touch-icon.png', sizePx: 180, drawingPx: 156 },
];

const browser = await chromium.launch({ executablePath: chromiumPath() ?? '', args: ['--no-sandbox'] });
const page = await browser.newPage();
for (const { file, sizePx, drawingPx } of pictures) {
  await page.setViewportSize({ width: sizePx, height: sizePx });
  await page.setContent(`<style>
    body { margin: 0; height: 100vh; display: grid; place-items: center; background: #fdfdfb }
    svg { width: ${drawingPx}px }
  </style>${drawing}`);
  await writeFile(new URL(file, folder), await page.screenshot());
}
await browser.close();
