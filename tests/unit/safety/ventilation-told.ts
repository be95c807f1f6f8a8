/** Charges and stations of an invented workshop. */
import { exact, type Figure, given } from '../../../src/quantities/figure';
import type { Unit } from '../../../src/quantities/unit';
import type { Metal } from '../../../src/reference/tables';
import type { Asked } from '../../../src/safety/ventilation/check';
import {
  type GassingCharge,
  WrittenCharge,
  WrittenStation,
} from '../../../src/safety/ventilation/station-schema';

export const today = '2026-11-29';

export const figure = <U extends Unit>(value: number | string, unit: U): Figure<U> =>
  given({ origin: `${value} ${unit}`, sentence: 'Given', value, unit, how: 'stated', spread: exact });

export type Grams = Partial<Record<Metal, string>>;

type Told = Partial<Omit<GassingCharge, 'step' | 'metals'>>;

const usual = {
  acid: { volume: { value: '10.0', unit: 'L' }, strength: { value: '7.9', unit: 'mol/L' } },
  release: { value: '2', unit: 'h' },
  limit: 'niosh-15-min',
  mixing: { value: '3', unit: '1' },
} as const;

/** A leach of these grams, in acid to spare. */
export const leach = (grams: Grams, told: Told = {}) => {
  const masses = Object.entries(grams).map(([metal, value]) => ({ metal, mass: { value, unit: 'g' } }));
  const charge = { step: 'leach', metals: { known: 'each', masses }, ...usual, ...told };
  return WrittenCharge.parse(charge) as Extract<WrittenCharge, { step: 'leach' }>;
};

export const leachOfUnknown = (grams: string, told: Told = {}) =>
  WrittenCharge.parse({
    step: 'leach',
    metals: { known: 'total', mass: { value: grams, unit: 'g' } },
    ...usual,
    ...told,
  }) as Extract<WrittenCharge, { step: 'leach' }>;

/** Cementation in liquor with free acid, litres and mol/L. */
export const cementation = (litres: string, strength: string, told: Told = {}) =>
  WrittenCharge.parse({
    step: 'cementation',
    ...usual,
    acid: { volume: { value: litres, unit: 'L' }, strength: { value: strength, unit: 'mol/L' } },
    ...told,
  }) as Extract<WrittenCharge, { step: 'cementation' }>;

type Hood = Extract<WrittenStation, { is: 'ducted-hood' }>;

/** 0.90 m × 0.45 m at 0.50 m/s, measured two months ago. */
export const hood = (told: Partial<Hood> = {}, speed = '0.50') =>
  WrittenStation.parse({
    is: 'ducted-hood',
    width: { value: '0.900', unit: 'm' },
    height: { value: '0.450', unit: 'm' },
    face: { speed: { value: speed, unit: 'm/s' }, measuredOn: '2026-09-29' },
    ...told,
  }) as Hood;

export const room = (volume: string, airflow?: string) =>
  WrittenStation.parse({
    is: 'room',
    volume: { value: volume, unit: 'm³' },
    ...(airflow === undefined ? {} : { airflow: { value: airflow, unit: 'm³/h' } }),
  });

export const asked = (station: WrittenStation, charge: WrittenCharge): Asked => ({
  station,
  charge,
  on: today,
});
