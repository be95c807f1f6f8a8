/** In a page of its own, at an address in a folder of a static host. */
import { expect, it } from 'vitest';
import { ownScript } from '../../../src/ui/own-script';

const page = new URL('./', document.baseURI).href;

it('lets a script of the app through, its address whole', () => {
  expect(ownScript('./service-worker.js')).toBe(`${page}service-worker.js`);
  expect(ownScript(`${page}assets/paper-worker-1a2b.js`)).toBe(`${page}assets/paper-worker-1a2b.js`);
});

it.each([
  'https://elsewhere.example/a.js',
  '//elsewhere.example/a.js',
  'data:text/javascript,postMessage(1)',
  'javascript:alert(1)',
  'blob:https://elsewhere.example/1',
])('refuses %s', (address) => {
  expect(() => ownScript(address)).toThrow(TypeError);
});
