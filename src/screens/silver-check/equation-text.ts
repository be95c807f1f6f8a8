/** A reaction as people read it: charges and small numbers in their places. */

const raised: Readonly<Record<string, string>> = { '1': '', '2': '²', '3': '³' };
const lowered = '₀₁₂₃₄₅₆₇₈₉';
const low = (digits: string): string => digits.replace(/\d/g, (digit) => lowered[Number(digit)] ?? digit);

/** "Ag(NH3)2+" becomes "[Ag(NH₃)₂]⁺"; "Cu(NH3)4+2" becomes "[Cu(NH₃)₄]²⁺". */
function speciesText(species: string): string {
  const [, formula = species, sign, charge = '1'] = /^(.+?)(?:([+-])(\d*))?$/.exec(species) ?? [];
  const written = formula.replace(/(?<=[A-Za-z)])\d+/g, low);
  if (sign === undefined) return written;
  const whole = formula.includes('(') ? `[${written}]` : written;
  return `${whole}${raised[charge || '1'] ?? charge}${sign === '+' ? '⁺' : '⁻'}`;
}

/** @example equationText('Ag+ + Cl- -> AgCl') // 'Ag⁺ + Cl⁻ → AgCl' */
export const equationText = (equation: string): string =>
  equation
    .split('->')
    .map((side) =>
      side
        .trim()
        .split(' + ')
        .map((term) => {
          const [, count, species = term] = /^(?:(\d+) )?(.+)$/.exec(term) ?? [];
          return count === undefined ? speciesText(species) : `${count}\u2009${speciesText(species)}`;
        })
        .join(' + '),
    )
    .join(' → ');
