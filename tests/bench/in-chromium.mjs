// One curve in Chromium, as slow as a phone.
import { chromium } from 'playwright-core';
import { chromiumPath } from '../../.ci/ready.mjs';

/** How many times slower than this machine. */
export const slowdown = 4;

/**
 * @param {string} code the bundle
 * @param {import('./curves').Curve} curve
 * @returns {Promise<number | undefined>} median ms of a curve; undefined without a Chromium
 */
export async function timeInChromium(code, curve) {
  const executablePath = chromiumPath();
  if (executablePath === undefined) return undefined;
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const page = await browser.newPage();
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    return await page.evaluate(
      async ([text, asked]) => {
        const url = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
        /** @type {typeof import('./curves')} */
        const { timesOf } = await import(url);
        return timesOf([asked], 40, 20)[0];
      },
      /** @type {const} */ ([code, curve]),
    );
  } finally {
    await browser.close();
  }
}
