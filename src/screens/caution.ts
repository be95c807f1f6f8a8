/** Stands on the first page and under papers and plans. */
export const caution =
  'For planning. Local rules, your authority and a licensed collector decide; the safety data sheet goes before this page.';
