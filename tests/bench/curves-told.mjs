// How long titration curves take, in V8 of Node and of a slowed Chromium.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { slowdown, timeInChromium } from './in-chromium.mjs';

const rounds = 25;
const warmUp = 8;

/** @param {import('./papers.mjs').Tell} tell @param {import('./papers.mjs').Bundled} bundled */
export async function tellCurves(tell, bundled) {
  const bundle = await bundled(new URL('./curves.ts', import.meta.url));
  /** @type {typeof import('./curves')} */
  const { exponent, stepsOf, timesOf } = await import(pathToFileURL(bundle).href);

  /** @type {import('./curves').Curve} */
  const usual = { model: 'sit', points: 100, metals: 8 };
  const [sit = Number.NaN, davies = Number.NaN] = timesOf(
    [usual, { ...usual, model: 'davies' }],
    rounds,
    warmUp,
  );
  tell(
    'curve',
    sit,
    'ms',
    `${usual.points} points, ${usual.metals} metals, specific ion interaction, V8 of Node`,
  );
  tell('rate', (1000 * usual.points) / sit, 'points/s');
  tell('against Davies', sit / davies, '', 'the same curve after Davies, same run');
  tell('steps', stepsOf(usual) / usual.points, 'Newton steps a point');

  const points = [25, 50, 100, 200, 400];
  const byPoints = timesOf(
    points.map((n) => ({ ...usual, points: n })),
    rounds,
    warmUp,
  );
  for (const [i, n] of points.entries()) tell(`curve of ${n} points`, byPoints[i] ?? Number.NaN, 'ms');
  tell('growth with points', exponent(points, byPoints), '', 'power; 1 is linear');

  const metals = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  const byMetals = timesOf(
    metals.map((n) => ({ ...usual, metals: n })),
    rounds,
    warmUp,
  );
  for (const [i, n] of metals.entries()) tell(`curve of ${n} metals`, byMetals[i] ?? Number.NaN, 'ms');
  tell('growth with metals', exponent(metals, byMetals), '', 'power; 1 is linear');

  const onPhone = await timeInChromium(readFileSync(bundle, 'utf8'), usual);
  if (onPhone !== undefined)
    tell('curve in Chromium', onPhone, 'ms', `the first curve above, processor slowed ${slowdown} times`);
}
