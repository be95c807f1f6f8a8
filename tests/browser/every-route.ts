/** Goes to every address that the app knows, by its own list: a new route is gone to without a word here. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

const source = join(import.meta.dirname, '../../src/app/routes.tsx');

/** As they stand in the list of routes, in its order. */
const patterns = async (): Promise<readonly string[]> =>
  [...(await readFile(source, 'utf8')).matchAll(/^ {2}\['([^']+)',/gm)].map(([, pattern = '']) => pattern);

const named = (part: string): boolean => part.startsWith(':');

const fits = (pattern: string, address: string): boolean => {
  const parts = pattern.split('/');
  const given = address.split('/');
  return parts.length === given.length && parts.every((part, i) => named(part) || part === given[i]);
};

/** What stands for the parts of an address that a pattern names, learnt from the links that were met: by the pattern up to them. */
class Learnt {
  readonly #known = new Map<string, string>();

  take(pattern: string, address: string): void {
    const given = address.split('/');
    for (const [i, part] of pattern.split('/').entries())
      if (named(part)) {
        const upTo = pattern.split('/', i + 1).join('/');
        for (const key of [upTo, part]) if (!this.#known.has(key)) this.#known.set(key, given[i] ?? '');
      }
  }

  /** Where nothing was learnt a made-up part stands: the page then says that there is no such thing. */
  fill = (pattern: string): string =>
    pattern
      .split('/')
      .map((part, i) => {
        const upTo = pattern.split('/', i + 1).join('/');
        return named(part) ? (this.#known.get(upTo) ?? this.#known.get(part) ?? '1') : part;
      })
      .join('/');
}

export type Walked = {
  /** Pattern to the address that was gone to. */
  readonly addresses: ReadonlyMap<string, string>;
  /** Links that lead out of the app, as "scheme rel". */
  readonly leaving: ReadonlySet<string>;
  /** Titles of the pages, by address. */
  readonly titles: ReadonlyMap<string, string>;
};

/** Once to each route, along the links of the pages as far as they lead, and then to the others. */
export async function walkEveryRoute(page: Page, address: string): Promise<Walked> {
  const all = await patterns();
  const addresses = new Map<string, string>();
  const titles = new Map<string, string>();
  const leaving = new Set<string>();
  const learnt = new Learnt();
  const toGo = new Map(all.filter((one) => !one.includes(':')).map((one) => [one, one]));
  const look = async (to: string): Promise<void> => {
    await page.goto(`${address}#/${to}`);
    const heading = page.locator('h1:not(:text-is("Opening"))');
    await heading.waitFor();
    titles.set(to, (await heading.textContent()) ?? '');
    const links = await page
      .locator('a[href]')
      .evaluateAll((found) =>
        found.map((link) => [link.getAttribute('href') ?? '', link.getAttribute('rel')]),
      );
    for (const [href = '', rel] of links) {
      if (!href?.startsWith('#')) leaving.add(`${href?.split(':')[0]} ${rel ?? ''}`);
      const next = decodeURI(href?.slice(2) ?? '');
      const pattern = all.find((one) => fits(one, next));
      if (!href?.startsWith('#/') || pattern === undefined) continue;
      learnt.take(pattern, next);
      if (!addresses.has(pattern) && !toGo.has(pattern)) toGo.set(pattern, next);
    }
  };
  for (;;) {
    for (const [pattern, to] of toGo) {
      toGo.delete(pattern);
      addresses.set(pattern, to);
      await look(to);
    }
    const left = all.find((one) => !addresses.has(one));
    if (left === undefined) return { addresses, leaving, titles };
    toGo.set(left, learnt.fill(left));
  }
}
