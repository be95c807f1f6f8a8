/**
 * Where a person was on a page, to come back to: the first link in view and how far from the top it stood. In a long list the
 * heights of rows that were not drawn yet are only guessed, so that a distance from the start would lead astray.
 */

export type KeptPlace = {
  readonly link: string | null;
  readonly top: number;
  readonly scrolled: number;
};

/** Where the page stands now; null at its start. */
export function placeOnPage(): KeptPlace | null {
  const scrolled = window.scrollY;
  if (scrolled <= 0) return null;
  for (const link of document.querySelectorAll('main a[href]')) {
    const { top } = link.getBoundingClientRect();
    if (top >= 0) return { link: link.getAttribute('href'), top, scrolled };
  }
  return { link: null, top: 0, scrolled };
}

export function returnTo({ link, top, scrolled }: KeptPlace): void {
  const found = [...document.querySelectorAll('main a[href]')].find(
    (one) => one.getAttribute('href') === link,
  );
  window.scrollTo(0, scrolled);
  if (!found) return;
  found.scrollIntoView({ block: 'start' });
  window.scrollBy(0, found.getBoundingClientRect().top - top);
}
