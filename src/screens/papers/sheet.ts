/** The sheet that papers are printed on. */
export type Sheet = 'A4' | 'Letter';

/** Letter where letters are written on it, A4 elsewhere. @param language of the browser, e.g. "en-US" */
export const usualSheet = (language: string): Sheet => (/-(US|CA|MX)\b/i.test(language) ? 'Letter' : 'A4');
