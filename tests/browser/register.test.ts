import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible } from './phone';

test('a register is made with no network, and the phone says later whether the file is still as it was made', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await goTo('papers/register');
  await expectAccessible(page);
  await page.getByRole('radio', { name: /This month/ }).check();
  await page.getByRole('button', { name: /Make the register/ }).click();
  await page.getByRole('heading', { name: 'The register is made' }).waitFor({ timeout: 120_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save it' }).click();
  const pdf = await (await saving).path();
  expect((await readFile(pdf)).subarray(0, 5).toString()).toBe('%PDF-');

  await goTo('record/check');
  await page.getByLabel('Choose a file').setInputFiles(pdf);
  await page.getByText('Whole', { exact: true }).waitFor({ timeout: 120_000 });
  await expectAccessible(page);

  const bytes = await readFile(pdf);
  await page.getByLabel('Choose another file').setInputFiles({
    name: 'cut.pdf',
    mimeType: 'application/pdf',
    buffer: bytes.subarray(0, bytes.length / 2),
  });
  await page.getByText(/damaged or not whole/).waitFor({ timeout: 120_000 });
});
