/** Numbers that the equilibrium model tells at a pH, as figures: their range comes from what they are multiplied with. */
import Decimal from 'decimal.js';
import { exact, type Figure, given, type Source, workedOut } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import { sourceOf } from '../constants';

type Told<U extends Unit> = {
  readonly sentence: string;
  readonly pH: number;
  readonly value: number;
  readonly unit: U;
  readonly sources?: readonly Source[];
  readonly note?: string;
};

export const modelTells = <U extends Unit>({ pH, value, sources, ...told }: Told<U>): Figure<U> =>
  workedOut({
    ...told,
    formula: {
      op: 'reading',
      table: 'the equilibrium model',
      at: [{ of: { op: 'figure', figure: phFigure(pH) }, slope: new Decimal(0) }],
      value: new Decimal(value),
      unit: told.unit,
    },
    sources: [sourceOf({ source: 'equilibrium-model', status: 'computed' }), ...(sources ?? [])],
    signed: true,
  });

const phFigure = (pH: number): Figure<'1'> =>
  given({
    origin: `pH/${pH}`,
    sentence: 'pH',
    value: pH,
    unit: '1',
    how: 'stated',
    spread: exact,
    decimals: 1,
  });
