/** Loads of invented liquors for the tests of treatment. */
import { liquorFrom } from '../../../../src/chemistry/liquor';
import { type Load, loadOf } from '../../../../src/chemistry/load';
import type { Metal } from '../../../../src/reference/tables';

/** `litres` of liquor with so many mol/L of acid (± 5 % unless told) and g/L of metals (± 5 %). */
export function loadWith(
  litres: number,
  acid: number,
  metals: Readonly<Partial<Record<Metal, number>>>,
  acidSpread = '5',
  origin = 'test',
): Load {
  return loadOf(
    liquorFrom({
      origin,
      volume: { value: litres.toFixed(6), unit: 'L' },
      volumeSpread: { plusMinus: { value: '1', unit: '%' }, as: 'k2' },
      findings: Object.entries(metals).map(([metal, grams]) => ({
        by: 'assay' as const,
        metal: metal as Metal,
        concentration: { value: grams.toFixed(6), unit: 'g/L' as const },
        spread: { plusMinus: { value: '5', unit: '%' as const }, as: 'k2' as const },
      })),
      freeAcid: [
        {
          by: 'titration',
          result: { value: acid.toFixed(6), unit: 'mol/L' },
          spread: { plusMinus: { value: acidSpread, unit: '%' }, as: 'k2' },
        },
      ],
    }),
    origin,
  );
}
