/** Whether one package holds a reportable quantity (USA). Without the mass of a package that is not determined. */
import { sourceOf } from '../../chemistry/constants';
import { times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { rcra } from '../../reference/rcra-tables';
import { type SubstanceId, substances } from '../../reference/substances-tables';
import { transport } from '../../reference/transport-tables';
import type { Consignment } from './consignment';

export type Reportable = {
  /** Waste number, or name of the substance. */
  readonly of: string;
  readonly limit: Figure<'lb'>;
  /** In the package; absent where its mass is not told. */
  readonly held?: Figure<'lb'>;
  readonly reached: 'yes' | 'no' | 'not determined';
};

const limits: Readonly<Record<string, string>> = rcra.reportable.values;

const limitOf = (id: string): Figure<'lb'> | null => {
  const value = Object.hasOwn(limits, id) ? limits[id] : undefined;
  return value === undefined
    ? null
    : given({
        origin: `constant/reportable/${id}`,
        sentence: `Reportable quantity of ${id}`,
        value,
        unit: 'lb',
        how: 'constant',
        spread: exact,
        sources: [sourceOf(rcra.reportable)],
      });
};

const reached = (limit: Figure<'lb'>, held: Figure<'lb'> | undefined): Reportable['reached'] => {
  if (!held) return 'not determined';
  return held.high.gte(limit.value) ? 'yes' : 'no';
};

/** Less than a set share of a substance does not count. */
const counts = (limit: Figure<'lb'>, share: Figure<'%'>): boolean => {
  const floor = transport.reportableFrom.of.find(({ quantity }) => limit.value.eq(quantity));
  return floor === undefined || share.high.gte(floor.share);
};

function ofSubstance(id: SubstanceId, share: Figure<'%'>, mass: Figure<'kg'> | undefined): Reportable[] {
  const limit = limitOf(id) ?? (id === 'HNO3-conc' ? limitOf('HNO3') : null);
  if (!limit || !counts(limit, share)) return [];
  const { name } = substances[id];
  if (!mass) return [{ of: name, limit, reached: 'not determined' }];
  const sentence = `${name} in one package`;
  const held = workedOut({ sentence, unit: 'lb', formula: times(mass, share) });
  return [{ of: name, limit, held, reached: reached(limit, held) }];
}

/** Waste that carries a number counts whole, whatever of it brings the number; a substance counts by its share. */
export function reportable({ mixture, rcraCodes, packageMass }: Consignment): readonly Reportable[] {
  const whole =
    packageMass &&
    workedOut({ sentence: 'Waste in one package', unit: 'lb', formula: times(packageMass, 1) });
  const codes = [...new Set(rcraCodes)].flatMap((code): Reportable[] => {
    const limit = limitOf(code);
    return limit
      ? [{ of: code, limit, ...(whole ? { held: whole } : {}), reached: reached(limit, whole) }]
      : [];
  });
  const named = [...mixture.shares].flatMap(([id, share]) => ofSubstance(id, share, packageMass));
  return [...codes, ...named];
}
