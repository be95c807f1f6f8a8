/** No text becomes markup or code: what could do it stands nowhere in the source, and scripts are named in one way. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../../..');

const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/.test(path))
  .map((path) => [`src/${path}`, readFileSync(join(root, 'src', path), 'utf8')] as const);

/** What each makes of a text, and what stands in its place. */
const sinks = {
  'markup out of a text: give Preact the text':
    /\b(dangerouslySetInnerHTML|innerHTML|outerHTML|insertAdjacentHTML|setHTMLUnsafe|srcdoc|createContextualFragment|parseFromString|document\.write(ln)?)\b/,
  'code out of a text': /\b(eval|Function|setTimeout|setInterval)\(\s*['"`]|\bnew Function\(|\beval\(/,
  'an address that runs': /javascript:/i,
  'a script by a plain address: use ownScript':
    /\bnew (Shared)?Worker\((?!ownScript\()|\bnew Workbox\((?!ownScript\()|serviceWorker\s*\.\s*register\(|\bimportScripts\(/,
} as const;

/** @returns what is found, as "file: what" */
const foundIn = (files: readonly (readonly [path: string, text: string])[]): readonly string[] =>
  files.flatMap(([path, text]) =>
    Object.entries(sinks)
      .filter(([, sink]) => sink.test(text))
      .map(([what]) => `${path}: ${what}`),
  );

describe('texts of other people', () => {
  it('become neither markup nor code anywhere in the app', () => {
    expect(sources.length).toBeGreaterThan(300);
    expect(foundIn(sources)).toEqual([]);
  });

  it.each([
    '<p dangerouslySetInnerHTML={{ __html: note }} />',
    'row.innerHTML = note;',
    "row.insertAdjacentHTML('beforeend', note);",
    "new DOMParser().parseFromString(note, 'text/html');",
    'const run = new Function(note);',
    "setTimeout('go()', 10);",
    'window.eval(note);',
    '<a href="javascript:go()">',
    "new Worker(new URL('./a.ts', import.meta.url));",
    "new Worker('./a.js');",
    "navigator.serviceWorker.register('./service-worker.js');",
  ])('would be found in %s', (line) => {
    expect(foundIn([['src/a.tsx', line]])).toHaveLength(1);
  });

  it('are let through where they stay texts', () => {
    const fine = '<p>{note}</p>; setTimeout(go, 10); new Worker(ownScript(url)); evaluate(note);';
    expect(foundIn([['src/a.tsx', fine]])).toEqual([]);
  });
});
