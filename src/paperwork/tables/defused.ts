/**
 * Text that a spreadsheet would take for something else begins with an apostrophe, and so does text that begins with one:
 * whoever takes one apostrophe away from the beginning of a cell has what was written.
 */

/** A number in either form: the only thing that may begin with a sign. */
const number = String.raw`-?\d+(?:[.,]\d+)?$`;

/**
 * What begins a formula: = + - @ in every form that Unicode counts as the same (NFKC), the typographic minus, tabs and line
 * ends, also after spaces and what is not seen. The signs: OWASP, "CSV Injection" (verified); spaces and other forms: reasoned.
 */
const signs =
  '=+\\-@\u2212\u207a\u208a\u207c\u208c\u2a74\u2a75\u2a76\ufb29\ufe62\ufe63\ufe66\ufe6b\uff0b\uff0d\uff1d\uff20';
const formula = new RegExp(String.raw`^(?!${number})(?:['\t\r\n]|[\s\p{Z}\p{C}\p{M}]*[${signs}])`, 'u');

export const isFormula = (text: string): boolean => formula.test(text);

/** First letters of months in English, German, French, Spanish, Italian, Portuguese, Dutch, Swedish (memory). */
const month =
  'jan|ene|gen|feb|fév|fev|mar|mär|maa|mrt|mrz|apr|abr|avr|mai|may|maj|mag|mei|jun|jui|giu|jul|lug|aug|ago|aoû|aou|sep|set|okt|oct|ott|out|nov|dec|dez|déc|dic';

/**
 * Text that a spreadsheet makes a number, a day or an hour of: "007" would lose its zeros, "10 01 02" become a number, "3-4" and
 * "Mar-1" a day (common practice, no source).
 */
const lookAlikes = [
  /^(?!\d{8}(?:-\d{4}){3}-\d{12}$)(?=\D*\d)[\s\d.,:/'’%()\p{Sc}\p{Pd}\u2212]+$/u,
  /^\s*\d[\d.,\s]*e[+-]?\d+\s*$/iu,
  /^\s*\d{1,2}([:.]\d{2}){0,2}\s*[ap]\.?m?\.?\s*$/iu,
  new RegExp(String.raw`^(?=\D*\d)[\s\d.,/'\p{Pd}]*(?:${month})\p{L}{0,7}[\s\d.,:/'\p{Pd}]*$`, 'iu'),
];

/** Only where it is text: a column of numbers is left to be numbers. */
export const looksLikeNumber = (text: string): boolean => lookAlikes.some((like) => like.test(text));
