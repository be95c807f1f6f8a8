/** Checklists at the bench, with what goes wrong there planted on purpose: what of it is caught, and with how many taps. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  answerInOrder,
  answerUntil,
  capital,
  type Item,
  items,
  keyIn,
  looked,
  questionOn,
  tapAnswer,
} from './checklist-answers';
import { inWorkshop } from './invented-workshop';
import { expectAccessible, expectClean } from './phone';

const standsBy = 'Joost Merrin';
const heading = (page: Page, name: string | RegExp = /./) => page.getByRole('heading', { level: 1, name });
const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();
const stop = (page: Page) => page.getByText('STOP', { exact: true });
const inOrder = (page: Page) => answerInOrder(page, standsBy);
const toTheEnd = (page: Page) => answerUntil(page, undefined, standsBy);

type Bench = { readonly page: Page; readonly batch: string; readonly to: (place: string) => Promise<void> };

/** The invented workshop: at its hood, the walk round in date, batch B-03 in the leach. */
async function atTheBench(): Promise<Bench> {
  const { page, goTo: to } = await inWorkshop();
  await to('batches');
  const href = await page.getByRole('link', { name: /B.03/ }).getAttribute('href');
  return { page, to, batch: href?.split('/').at(-1) ?? '' };
}

async function untilItem(page: Page, id: string): Promise<Item> {
  for (let item = await questionOn(page); ; item = await questionOn(page)) {
    if (item.id === id) return item;
    await inOrder(page);
  }
}

/** The last answer of an item that stops, as it stands on its button. */
const wrongOf = ({ choices }: Item): string => choices?.findLast(({ stops }) => stops)?.answer ?? 'No';

const doorOf = ({ doors }: Item, wrong: string): string =>
  doors?.find(({ leads, for: only }) => leads === 'answer-again' && (only ?? [wrong]).includes(wrong))?.do ??
  '';

/** Filtration is cleared at the hood. */
async function cleared({ page, to, batch }: Bench): Promise<void> {
  await to(`check/${batch}/filtration`);
  await toTheEnd(page);
  await heading(page, 'Filtration may start.').waitFor();
}

async function chargeAcid({ page, to, batch }: Bench, percent: string): Promise<void> {
  await to(`batches/${batch}/account`);
  await page.getByLabel('What it was').selectOption('charge acid');
  await page.getByLabel('Volume', { exact: true }).fill('2');
  await page.getByLabel('Strength as charged', { exact: true }).fill(percent);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText(/^Written down/).waitFor();
}

/** Begun without a list: written down from the red page. */
async function begunWithoutList({ page, to, batch }: Bench): Promise<void> {
  await to(`check/${batch}/filtration`);
  const item = await untilItem(page, 'sta-ribbon');
  await tapAnswer(page, capital(wrongOf(item)));
  await tapAnswer(page, 'Already filtered? Write it down.');
  await tapAnswer(page, 'Write it down');
  await heading(page, /Batch B.03/).waitFor();
}

describe('a planted fault', () => {
  it.each([
    ['the wrong gloves', 'filtration', 'fil-gloves'],
    ['a hood that hardly draws', 'filtration', 'sta-ribbon'],
    ['the wrong filter', 'filtration', 'fil-medium'],
    ['a wet tray', 'leach-check', 'lck-tray'],
  ])('%s: stops the list, and stays told when it was made right', async (_, list, id) => {
    const { page, to, batch } = await atTheBench();
    await to(`check/${batch}/${list}`);
    const item = await untilItem(page, id);
    const wrong = wrongOf(item);
    await tapAnswer(page, capital(wrong));
    await stop(page).waitFor();
    await expectAccessible(page);
    await tapAnswer(page, doorOf(item, wrong.toLowerCase() === 'no' ? 'no' : wrong));
    await heading(page, item.ask).waitFor();
    await toTheEnd(page);
    await looked(page);
    await page.getByRole('button', { name: 'Show answers' }).click();
    await page.getByText('stopped', { exact: true }).waitFor();
    expectClean(page);
  });

  it('ten minutes away in the middle, and a reload: the last answers are asked for again', async () => {
    const { page, to, batch } = await atTheBench();
    await to(`check/${batch}/filtration`);
    await untilItem(page, 'fil-medium');
    await page.clock.fastForward(11 * 60_000);
    await page.reload();
    await heading(page, /^You stopped at item 5, 11 min ago/).waitFor();
    await page.getByRole('list', { name: 'Still true?' }).getByText('Butyl').waitFor();
    await expectAccessible(page);
    await tapAnswer(page, 'No. Ask these again.');
    await heading(page, 'Which gloves are on?').waitFor();
    expectClean(page);
  });

  it('another strength of the acid than the list was gone through for', async () => {
    const bench = await atTheBench();
    await chargeAcid(bench, '30');
    await cleared(bench);
    const tag = bench.page.url();
    await chargeAcid(bench, '50');
    await bench.page.goto(tag);
    await heading(bench.page, 'This clearance does not hold.').waitFor();
    await bench.page.getByText(/The acid was 30 % .* and is 50 % now/).waitFor();
    expectClean(bench.page);
  });

  it('another place than the list was gone through at', async () => {
    const bench = await atTheBench();
    await cleared(bench);
    const tag = bench.page.url();
    await bench.to(`batches/${bench.batch}/where`);
    await expectAccessible(bench.page);
    await bench.page.getByRole('button', { name: /^Yard/ }).click();
    await bench.page.goto(tag);
    await bench.page.getByText(/gone through at another place/).waitFor();
    await expectAccessible(bench.page);
    expectClean(bench.page);
  });

  it('another person than went through the list', async () => {
    const bench = await atTheBench();
    await cleared(bench);
    const tag = bench.page.url();
    await bench.to('record/people');
    await bench.page.getByRole('radio', { name: standsBy }).check();
    await bench.page.goto(tag);
    await bench.page.getByText(/Somebody else went through the list/).waitFor();
    expectClean(bench.page);
  });
});

describe('a step that was begun without its list', () => {
  it('is led to it from Today, and stays marked when it was gone through late', async () => {
    const bench = await atTheBench();
    const { page } = bench;
    await begunWithoutList(bench);
    await expectAccessible(page);
    await bench.to('today');
    await follow(page, /Filtration.*without clearance.*go through its list now, as late/);
    await page.getByText(/^Late: the step began at/).waitFor();
    await expectAccessible(page);
    await toTheEnd(page);
    await heading(page, 'Written down as late').waitFor();
    await expectAccessible(page);
    await follow(page, 'To the batch');
    await page.getByText(/without clearance, its list gone through at .*, late/).waitFor();
    await bench.to('today');
    await page.getByRole('link', { name: /Filtration.*without clearance.*gone through after all/ }).waitFor();
    expectClean(page);
  });
});

describe('what a list asks while its step runs', () => {
  const warm = items.find(({ id }) => id === 'dil-temp');

  async function diluting(bench: Bench): Promise<void> {
    await bench.to(`check/${bench.batch}/acid-dilution`);
    await toTheEnd(bench.page);
    await looked(bench.page);
    await bench.page.getByRole('button', { name: /^Begin/ }).click();
    await heading(bench.page, /Batch B.03/).waitFor();
  }

  it('is asked from the batch, stops with what to do now, and is gone when it is in order', async () => {
    const bench = await atTheBench();
    const { page } = bench;
    await diluting(bench);
    await expectAccessible(page);
    await follow(page, `Asked while it runs: ${warm?.ask}`);
    await heading(page, warm?.ask).waitFor();
    await expectAccessible(page);
    await keyIn(page, String(Number(warm?.max) + 30));
    await stop(page).waitFor();
    await page.getByText('What to do now').waitFor();
    await expectAccessible(page);
    await follow(page, 'To the step');
    await follow(page, `Asked while it runs: ${warm?.ask}`);
    await keyIn(page, warm?.max ?? '');
    await heading(page, /Batch B.03/).waitFor();
    expect(await page.getByText(/^Asked while it runs/).count()).toBe(0);
    expectClean(page);
  });

  it('never keeps a step from ending', async () => {
    const bench = await atTheBench();
    await diluting(bench);
    const end = bench.page.getByRole('button', { name: new RegExp(`^It has ended.*${warm?.ask}`) });
    await end.click();
    await end.waitFor({ state: 'detached' });
    await bench.page.getByRole('link', { name: /^Asked while it runs/ }).waitFor();
  });
});

describe('the hand', () => {
  it('taps once a question and once a digit, and nothing more', async () => {
    const { page, to, batch } = await atTheBench();
    await page.evaluate(() => {
      addEventListener('click', () => {
        document.documentElement.dataset.taps = String(
          Number(document.documentElement.dataset.taps ?? 0) + 1,
        );
      });
    });
    await page.evaluate((hash) => {
      location.hash = hash;
    }, `#/check/${batch}/filtration`);
    await heading(page, 'What does the ribbon do?').waitFor();
    let [questions, keys] = [0, 0];
    for (; (await heading(page, 'Filtration may start.').count()) === 0; questions += 1) {
      const { kind, min, max } = await questionOn(page);
      if (kind === 'reading') keys += (min ?? max ?? '1').length;
      await inOrder(page);
    }
    expect(questions).toBe(8);
    expect(Number(await page.evaluate(() => document.documentElement.dataset.taps))).toBe(questions + keys);
    await to('today');
  });

  it('finds answers large, apart and below the top third', async () => {
    const { page, to, batch } = await atTheBench();
    await to(`check/${batch}/filtration`);
    for (let left = 8; left > 0; left -= 1) {
      const { kind } = await questionOn(page);
      const boxes = await page
        .getByRole('group', { name: /Answers|Number pad/ })
        .getByRole('button')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON()));
      const least = boxes.length > 4 && kind === 'choice' ? 64 : 72;
      for (const { height, top, left: start } of boxes) {
        expect(height).toBeGreaterThanOrEqual(least);
        expect(top).toBeGreaterThanOrEqual(800 / 3);
        expect(start).toBeGreaterThanOrEqual(16);
      }
      if (kind !== 'reading')
        boxes.slice(1).forEach(({ top }, at) => {
          expect(top - (boxes[at]?.bottom ?? 0)).toBeGreaterThanOrEqual(8);
        });
      await inOrder(page);
    }
  });

  it('can stay on the keys: every question is answered with Tab and Enter', async () => {
    const { page, to, batch } = await atTheBench();
    await to(`check/${batch}/filtration`);
    const press = async (name: RegExp): Promise<void> => {
      for (let tabs = 0; tabs < 60; tabs += 1) {
        await page.keyboard.press('Tab');
        const focused = await page.evaluate(() => document.activeElement?.textContent ?? '');
        if (name.test(focused)) return page.keyboard.press('Enter');
      }
      throw new Error(`Tab does not come to ${name}`);
    };
    for (let left = 8; left > 0; left -= 1) {
      const item = await questionOn(page);
      await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
      await looked(page);
      if (item.kind === 'reading') {
        for (const digit of item.min ?? item.max ?? '1') await press(new RegExp(`^${digit}$`));
        await press(/^Enter /);
      } else
        await press(
          new RegExp(`^${capital(item.choices?.find(({ stops }) => !stops)?.answer ?? item.yes ?? '')}$`),
        );
      await heading(page).filter({ hasNotText: item.ask }).waitFor();
    }
    await heading(page, 'Filtration may start.').waitFor();
  });
});

describe('large text', () => {
  it('at 200 % every question keeps inside the page, and its answers are reached', async () => {
    const { page, to, batch } = await atTheBench();
    await to(`check/${batch}/filtration`);
    await page.evaluate(() => {
      document.documentElement.style.setProperty('font-size', '225%');
    });
    for (let left = 8; left > 0; left -= 1) {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      await expectAccessible(page);
      await inOrder(page);
    }
    await heading(page, 'Filtration may start.').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    expectClean(page);
  });
});

describe('the lists in the record', () => {
  it.each(['light', 'dark'])('read well to a program that checks them (%s)', async (theme) => {
    const { page, to, batch } = await atTheBench();
    await to('record/reading');
    await page.getByRole('radio', { name: new RegExp(theme, 'i') }).check();
    for (const place of [
      'record/lists',
      'record/lists/leach-check',
      'record/lists/leach-check/lck-temp',
      'record/lists/leach-check/lck-temp/range',
      'record/lists/leach-check/add',
      `batches/${batch}/where`,
      `check/${batch}/filtration`,
    ]) {
      await to(place);
      await expectAccessible(page);
    }
    expectClean(page);
  });

  it('take a question of our own, and the list says so before it is gone through again', async () => {
    const bench = await atTheBench();
    const { page } = bench;
    await cleared(bench);
    await bench.to('record/lists/filtration');
    await follow(page, /^Add a question/);
    await page.getByLabel('The question').fill('Radio off');
    await page.reload();
    await expect.poll(() => page.getByLabel('The question').inputValue()).toBe('Radio off');
    for (const name of ['Before the step', /^Looked at/, 'It stops the step'])
      await page.getByRole('radio', { name }).check();
    await page.getByLabel('Why we ask it').fill('The pump is not heard over it.');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('link', { name: /^Radio off.*own question/ }).waitFor();
    await bench.to(`check/${bench.batch}/filtration`);
    await heading(page, /^This list has changed/).waitFor();
    await expectAccessible(page);
    await tapAnswer(page, 'I have read it. Begin.');
    await toTheEnd(page);
    await heading(page, 'Radio off').waitFor();
    await tapAnswer(page, 'Yes, I looked: it is so');
    await heading(page, 'Filtration may start.').waitFor();
    expectClean(page);
  });
});
