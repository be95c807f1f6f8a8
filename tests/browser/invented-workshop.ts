/** The invented workshop on a new phone. */
import type { Page } from 'playwright-core';
import { openPhone, type Phone, untilKept } from './phone';
import { openSite } from './site';

/** Opens it from the first page of the app. */
export async function openWorkshop(page: Page): Promise<void> {
  await page.getByRole('button', { name: /invented workshop/ }).click();
  await page.getByText('Invented demo workshop').waitFor();
}

type Visit = {
  readonly page: Page;
  readonly goTo: (place: string) => Promise<void>;
  /** No server, and no network, from here on. */
  readonly goOffline: () => Promise<void>;
};

/** @param now what the clock of the phone says; absent: the time it is */
export async function inWorkshop(phone: Partial<Phone> = {}, now?: Date): Promise<Visit> {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800, ...phone });
  await page.clock.install(now && { time: now });
  await page.goto(site.address);
  await untilKept(page);
  await openWorkshop(page);
  const goTo = async (place: string): Promise<void> => {
    await page.goto(`${site.address}#/${place}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
  };
  const goOffline = async (): Promise<void> => {
    await site.stop();
    await page.context().setOffline(true);
  };
  return { page, goTo, goOffline };
}

/** In the morning of 14 May 2026, when nothing of it is long past, with no network. */
export async function offlineInWorkshop(phone: Partial<Phone> = {}): Promise<Visit> {
  const visit = await inWorkshop(phone, new Date('2026-05-14T07:42:00Z'));
  await visit.goOffline();
  return visit;
}
