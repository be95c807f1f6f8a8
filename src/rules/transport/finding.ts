/** What one rule of carriage makes of a consignment, before an entry of the list is looked for. */
import { constant } from '../../chemistry/constants';
import type { Operand } from '../../quantities/expression';
import { plus } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import { type PackingGroup, type TransportRuleId, transport } from '../../reference/transport-tables';
import type { Candidate, Citation, Ground } from '../candidate';
import { cited } from '../cited';

export type Finding = Pick<Candidate, 'standing' | 'grounds' | 'lacks'> & {
  readonly group: PackingGroup;
  readonly citation: Citation;
  /** It decides the class as long as nobody has shown otherwise: it fires, or the greater danger is taken in doubt. */
  readonly taken: boolean;
  /** The group rests on what the consignor knows of the waste (ADR 2.1.3.5.5). */
  readonly byKnowledge?: true;
};

export const citedRule = (id: TransportRuleId): Citation => {
  const { cite, note, ...rule } = transport.rules[id];
  const { readIn, ...citation } = cited(rule);
  return {
    ...citation,
    cite,
    ...(readIn === undefined ? {} : { readIn: note === undefined ? readIn : `${readIn}; ${note}` }),
  };
};

export const limitOf = <U extends Unit>(
  id: keyof typeof transport.limits,
  sentence: string,
  unit: U,
): Figure<U> => constant(`transport/${id}`, sentence, transport.limits[id], unit);

/** A sum of shares, each with its weight; null where there is nothing to add. */
export const sumOf = (sentence: string, terms: readonly Operand[]): Figure<'%'> | null =>
  terms.length === 0 ? null : workedOut({ sentence, unit: '%', formula: plus(...terms) });

export const fires = (
  rule: TransportRuleId,
  group: PackingGroup,
  grounds: readonly Ground[],
  lacks: readonly string[] = [],
): Finding => ({ standing: 'fires', taken: true, group, citation: citedRule(rule), grounds, lacks });

/** The graver of two groups. */
export const graver = (a: PackingGroup, b: PackingGroup): PackingGroup => (a.length <= b.length ? a : b);
