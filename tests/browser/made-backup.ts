/** A backup as a person makes it. */
import type { Page } from 'playwright-core';

/**
 * Makes a backup and says that it is where it belongs.
 * @param passphrase null: anybody can open it
 * @returns the path of the file
 */
export async function madeBackup(
  page: Page,
  goTo: (place: string) => Promise<void>,
  passphrase: string | null = null,
): Promise<string> {
  await goTo('record/backup');
  await page.getByRole('radio', { name: passphrase === null ? /Anybody/ : /Only who knows/ }).check();
  if (passphrase !== null)
    for (const label of ['Passphrase', 'Passphrase once more'])
      await page.getByLabel(label, { exact: true }).fill(passphrase);
  await page.getByRole('button', { name: 'Make the backup' }).click();
  await page.getByRole('heading', { name: 'The backup is made' }).waitFor({ timeout: 120_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: /Save it/ }).click();
  const file = await (await saving).path();
  await page.getByRole('button', { name: 'Yes, it is there' }).click();
  await page.getByText(/this backup counts/).waitFor();
  return file;
}
