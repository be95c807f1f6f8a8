/** After a try to go on, faults show at every field and the first one has the focus, wherever it is on the page. */
import { useEffect, useState } from 'preact/hooks';
import type { FiledPaper } from '../ledger/entries/files';
import type { Photo } from '../ledger/entries/photos';
import { words } from './words';

export function useTried(): { readonly tried: boolean; readonly tryNow: () => void } {
  const [times, setTimes] = useState(0);
  useEffect(() => {
    if (times === 0) return;
    const first = document.querySelector<HTMLElement>('[aria-invalid="true"], [data-wrong="true"]');
    // A group of choices has the focus in its first answer.
    (first?.querySelector('input') ?? first)?.focus();
  }, [times]);
  return { tried: times > 0, tryNow: () => setTimes((n) => n + 1) };
}

/** What is wrong with a text that must be there. */
export const missing = (text: string, fault: string = words.text.missing): string | undefined =>
  text.trim() === '' ? fault : undefined;

/** A field that may stay empty is left out of what is written. @example given('phone', ' ') // {} */
export const given = <K extends string>(key: K, text: string): { readonly [P in K]?: string } =>
  text.trim() === '' ? {} : ({ [key]: text.trim() } as { readonly [P in K]: string });

/** None is left out likewise. */
export const givenPhotos = (photos: readonly Photo[]): { readonly photos?: Photo[] } =>
  photos.length === 0 ? {} : { photos: [...photos] };

export const givenFiles = (files: readonly FiledPaper[]): { readonly files?: FiledPaper[] } =>
  files.length === 0 ? {} : { files: [...files] };

/** Whether a form has no fault. */
export const faultless = (faults: Readonly<Record<string, string | undefined>>): boolean =>
  Object.values(faults).every((fault) => fault === undefined);
