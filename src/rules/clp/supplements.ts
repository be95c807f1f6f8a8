/** Statements that a label bears besides those of its classes: EUH071, EUH208 (CLP Annex II). */
import { sourceOf } from '../../chemistry/constants';
import { times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import { type Candidate, type Ground, standingOf } from '../candidate';
import { citationOf, limitOf } from './found';
import type { Hazard } from './hazard';
import type { Part } from './parts';
import { sensitisingFrom } from './single';

const tenth = limitOf('Part of the limit from which on a sensitiser is named', clp.elicitation, '1');

export type Supplement = {
  readonly code: 'EUH071' | 'EUH208';
  /** Substances that the statement names. */
  readonly names: readonly string[];
};

const sensitisers = ['Resp. Sens.', 'Skin Sens.'] as const;

/** What reaches a tenth of its limit, with the limit of that. */
function namedFrom(part: Part): Ground[] {
  return sensitisers.flatMap((name) => {
    const from = sensitisingFrom(part, name);
    if (!from) return [];
    const limit: Figure<'%'> = workedOut({
      sentence: `${part.substance.name} is named from`,
      unit: '%',
      formula: times(tenth, from),
      sources: [sourceOf(clp.elicitation)],
    });
    const ground = { figure: part.share, limit };
    return standingOf(ground) === 'fires' ? [ground] : [];
  });
}

/** Sensitisers that the label names, whether or not the mixture is classed as one. */
export const sensitisersNamed = (parts: readonly Part[]): string[] =>
  parts.filter((p) => namedFrom(p).length > 0).map((p) => p.substance.name);

type Told = { readonly supplements: readonly Supplement[]; readonly candidates: readonly Candidate[] };

/** @param fired what the mixture is classed as, the rule of the pH included */
export function supplements(parts: readonly Part[], fired: readonly Hazard[]): Told {
  const candidate = (
    code: string,
    rest: Pick<Candidate, 'standing' | 'citation' | 'grounds'>,
  ): Candidate => ({
    scheme: 'clp',
    code,
    lacks: [],
    ...rest,
  });
  const bare: Told = { supplements: [], candidates: [] };
  const airways = (): Told => {
    const from = parts.filter((p) => p.substance.supplemental?.includes('EUH071'));
    if (from.length === 0) return bare;
    const waysIn = new Set(from.flatMap((p) => p.substance.classes.map((c) => c.route)));
    const inhaled = fired.some((h) => h.class === 'Acute Tox.' && waysIn.has(h.route));
    if (inhaled) {
      const rest = { standing: 'fires', citation: citationOf('airways'), grounds: [] } as const;
      return { supplements: [{ code: 'EUH071', names: [] }], candidates: [candidate('EUH071', rest)] };
    }
    if (!fired.some((h) => h.class === 'Skin Corr.')) return bare;
    const rest = { standing: 'judgement', citation: citationOf('airwaysJudged'), grounds: [] } as const;
    return { supplements: [], candidates: [candidate('EUH071', rest)] };
  };
  const allergy = (): Told => {
    const grounds = parts.flatMap(namedFrom);
    const isSensitising = fired.some((h) => sensitisers.some((name) => name === h.class));
    if (grounds.length === 0 || isSensitising) return bare;
    const rest = { standing: 'fires', citation: citationOf('contains'), grounds } as const;
    return {
      supplements: [{ code: 'EUH208', names: sensitisersNamed(parts) }],
      candidates: [candidate('EUH208', rest)],
    };
  };
  const [first, second] = [airways(), allergy()];
  return {
    supplements: [...first.supplements, ...second.supplements],
    candidates: [...first.candidates, ...second.candidates],
  };
}
