/** A liquor is logged on a narrow phone: no vessel and no size of text cuts a figure off. */
import { expect, test } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectClean, openPhone } from './phone';
import { openSite } from './site';

test('its figures and what is typed are seen whole beside any vessel, at any size of text', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await page.goto(site.address);
  await openWorkshop(page);
  for (const name of ['Batches', /B.03/, 'Log what a step gave', 'Leach liquor'])
    await page.getByRole('link', { name }).first().click();
  const write = (name: string, text: string) => page.getByRole('textbox', { name, exact: true }).fill(text);
  await write('Volume', '8.25');
  await write('Copper', '12.25');
  await write('Nickel', '10.55');
  await page.getByLabel('Free nitric acid, how it is known').selectOption('titration-volumes');
  await write('Sample taken', '5.00');
  await write('Titrant used', '31.05');
  await write('Strength of the titrant', '0.100');
  await page.getByLabel('Into which container').selectOption('new');
  await write('Holds when full', '25');

  /** Whether the page runs past the screen, and numbers that are longer than their field. */
  const cutOff = () =>
    page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement;
      const typed = [...document.querySelectorAll('input')].filter((i) => i.scrollWidth > i.clientWidth);
      return [...(scrollWidth > clientWidth ? ['the page'] : []), ...typed.map(({ value }) => value)];
    });
  for (const size of ['112.5%', '225%']) {
    await page.evaluate((chosen) => {
      document.documentElement.style.fontSize = chosen;
    }, size);
    for (const vessel of ['jerrican', 'bottle', 'tub', 'drum']) {
      await page.getByLabel('Vessel', { exact: true }).selectOption(vessel);
      expect(await cutOff(), `${vessel}, text at ${size}`).toEqual([]);
    }
  }
  expectClean(page);
});
