/** Going through a checklist as a careful person would: every answer in order, taken from the list's own file. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

export type Item = {
  readonly id: string;
  readonly ask: string;
  readonly kind: 'confirm' | 'choice' | 'reading';
  readonly yes?: string;
  readonly when?: string;
  readonly min?: string;
  readonly max?: string;
  readonly doors?: readonly {
    readonly do: string;
    readonly leads: string;
    readonly for?: readonly string[];
  }[];
  readonly choices?: readonly {
    readonly answer: string;
    readonly stops?: boolean;
    readonly names?: string;
  }[];
};

export const items: readonly Item[] = readdirSync('checklists', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
  .flatMap((name) => (JSON.parse(readFileSync(`checklists/${name}`, 'utf8')) as { items: Item[] }).items);

/** Whether every answer of the item stands on the page: several lists ask the same, and offer other answers. */
async function offered(page: Page, { choices = [] }: Item): Promise<boolean> {
  for (const { answer } of choices)
    if ((await page.getByRole('button', { name: capital(answer), exact: true }).count()) === 0) return false;
  return true;
}

/** The question that the page asks now. */
export async function questionOn(page: Page): Promise<Item> {
  const ask = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  const same = items.filter((one) => one.ask === ask.trim());
  for (const item of same) if (same.length === 1 || (await offered(page, item))) return item;
  throw new Error(`no item asks "${ask}"`);
}

export const capital = (text: string): string =>
  /^[a-z](?![A-Z])/.test(text) ? text[0]?.toUpperCase() + text.slice(1) : text;

/** A finger comes a second after the question: water on the glass does not count as a tap. */
export const looked = (page: Page): Promise<void> => page.clock.fastForward(1_000);

export async function tapAnswer(page: Page, name: string): Promise<void> {
  await looked(page);
  await page.getByRole('button', { name, exact: true }).click();
}

/** Keys a number on the book's own pad and enters it. */
export async function keyIn(page: Page, digits: string): Promise<void> {
  await looked(page);
  for (const digit of digits)
    await page.getByRole('button', { name: digit === '.' ? 'decimal sign' : digit, exact: true }).click();
  await page.getByRole('button', { name: /^Enter / }).click();
}

async function nameSomebody(page: Page, second: string, withTime: boolean): Promise<void> {
  await page.getByRole('heading', { name: 'Who is it?' }).waitFor();
  await tapAnswer(page, second);
  if (!withTime) return;
  await page.getByLabel('Hour').fill('18:30');
  await tapAnswer(page, 'Keep');
}

/** Who stands by in the workshop that the tests set up. */
const standsBy = 'Bo Lindqvist';

/** Gives the answer that is in order, and waits for what comes next. @param second who stands by */
export async function answerInOrder(page: Page, second = standsBy): Promise<void> {
  const item = await questionOn(page);
  if (item.kind === 'confirm') await tapAnswer(page, item.yes ?? 'Yes, I looked: it is so');
  else if (item.kind === 'reading') await keyIn(page, item.min ?? item.max ?? '1');
  else {
    const choice = item.choices?.find(({ stops }) => !stops);
    if (!choice) throw new Error(`"${item.ask}" has no answer in order`);
    await tapAnswer(page, capital(choice.answer));
    if (choice.names) await nameSomebody(page, second, choice.names === 'person-and-time');
  }
  await page.getByRole('heading', { level: 1 }).filter({ hasNotText: item.ask }).waitFor();
  // It stands there until the list is written down, which is soon.
  await page.getByRole('heading', { name: 'Every question is answered' }).waitFor({ state: 'detached' });
}

const heading = async (page: Page): Promise<string> =>
  ((await page.getByRole('heading', { level: 1 }).textContent()) ?? '').trim();

/** Answers in order until the page asks `ask`, or asks nothing more. */
export async function answerUntil(page: Page, ask?: string, second = standsBy): Promise<void> {
  for (let now = await heading(page); now !== ask; now = await heading(page)) {
    if (!items.some((one) => one.ask === now)) return;
    await answerInOrder(page, second);
  }
}
