/** A formula with the numbers put in, as one line of text. */
import type { Expression } from './expression';
import { type DecimalSign, formatNumber, inFormula } from './format';

const binding = {
  number: 3,
  figure: 3,
  reading: 3,
  ln: 3,
  exp: 3,
  'not-below-nothing': 1,
  power: 2.5,
  product: 2,
  quotient: 2,
  sum: 1,
  difference: 1,
} as const;

const raisedDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const raisedText = (digits: string): string => digits.replace(/\d/g, (d) => raisedDigits[Number(d)] ?? d);

/** "a, b and c" */
const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;

/** @example formulaText(over(times(2, copper), molarMass)) // '2 × 117.9 g ÷ 63.546 g/mol' */
export function formulaText(e: Expression, sign: DecimalSign = '.'): string {
  const inside = (part: Expression, tighter: boolean): string => {
    const text = formulaText(part, sign);
    const loose = binding[part.op] < binding[e.op] || (tighter && binding[part.op] === binding[e.op]);
    return loose || text.startsWith('−') ? `(${text})` : text;
  };
  switch (e.op) {
    case 'number':
      return formatNumber(e.value, e.value.decimalPlaces(), sign);
    case 'figure':
      return inFormula(e.figure, sign);
    case 'sum':
      return e.terms.map((t) => inside(t, false)).join(' + ');
    case 'difference':
      return `${inside(e.from, false)} − ${inside(e.less, true)}`;
    case 'product':
      return e.factors.map((f, i) => inside(f, i > 0 && f.op === 'quotient')).join(' × ');
    case 'quotient':
      return `${inside(e.over, false)} ÷ ${inside(e.under, true)}`;
    case 'power':
      return e.root === 1
        ? `${inside(e.of, true)}${raisedText(`${e.times}`)}`
        : `${raisedText(`${e.root}`)}√${inside(e.of, true)}`;
    case 'ln':
    case 'exp':
      return `${e.op}(${formulaText(e.of, sign)})`;
    case 'not-below-nothing':
      return `${inside(e.of, false)}, not below 0`;
    case 'reading':
      return `${e.table} at ${listed(e.at.map(({ of }) => formulaText(of, sign)))}`;
  }
}
