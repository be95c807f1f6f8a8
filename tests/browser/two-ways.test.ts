/** Handing over as it is beside treating first, as a phone shows it: in the invented workshop, with prices of its own. */
import { test } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider, openPhone } from './phone';
import { openSite } from './site';

test('both ways stand side by side, take prices in place, and open their working', {
  timeout: 120_000,
}, async () => {
  const { address } = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await page.goto(address);
  await openWorkshop(page);
  await page.goto(`${address}#/containers`);
  await page.getByRole('link', { name: /Hand over as it is/ }).click();
  await page.getByRole('list', { name: 'To hand over' }).waitFor();
  await expectAccessible(page);
  const field = (name: string) => page.getByRole('textbox', { name, exact: true });
  await field('Hydrated lime, a kilogram').fill('0,85');
  await field('Collection, a litre').fill('1,90');
  await field('Collection, a kilogram').fill('2,35');
  await field('Collection, a visit').fill('85');
  await page.getByRole('button', { name: 'Keep the prices' }).click();
  await page.getByRole('link', { name: /As it is In all: .*EUR/ }).click();
  await page.getByRole('heading', { level: 1, name: 'In all' }).waitFor();
  await expectAccessible(page);
  await expectNoWider(page);
  expectClean(page);
});
