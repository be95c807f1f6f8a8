/** Acute toxicity of a mixture by route, from the estimates of what is in it (CLP Annex I, 3.1.3.6.1). */
import { sourceOf } from '../../chemistry/constants';
import { over } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { clp, type EstimatedRoute } from '../../reference/clp-tables';
import { type Found, whole, worstOf } from './found';
import { isRelevant, type Part, partsOfLimits } from './parts';

export const estimatedRoutes = Object.keys(clp.acute) as EstimatedRoute[];

export type Estimate = Figure<'mg/kg' | 'mg/L'>;
export type Estimates = Readonly<Record<EstimatedRoute, Estimate | null>>;

const routeWords: Readonly<Record<EstimatedRoute, string>> = {
  oral: 'swallowed',
  dermal: 'on the skin',
  vapour: 'breathed in as vapour',
  'dust or mist': 'breathed in as dust or mist',
};

/** The entry's own estimate, else the one that stands for its category; absent where it is not classed by this route. */
function estimateOf({ substance }: Part, route: EstimatedRoute): Figure<'mg/kg' | 'mg/L'> | undefined {
  const { unit, converted } = clp.acute[route];
  const own = substance.toxicity?.find((t) => t.route === route);
  const category = substance.classes.find((c) => c.class === 'Acute Tox.' && c.route === route)?.category;
  const value = own?.estimate ?? (category && converted[Number(category) - 1]);
  if (!value) return undefined;
  return given({
    origin: `constant/clp/${substance.formula}/${route}`,
    sentence: own
      ? `Estimate of ${substance.name}, ${routeWords[route]}`
      : `Estimate that stands for category ${category} of ${substance.name}, ${routeWords[route]}`,
    value,
    unit,
    how: 'constant',
    spread: exact,
    sources: [sourceOf(own ? substance : clp.acute[route])],
  });
}

/** Null where nothing in it is classed by this route from 1 % on. */
export function estimate(all: readonly Part[], route: EstimatedRoute): Estimate | null {
  const terms = all.flatMap((part) => {
    const limit = isRelevant(part) ? estimateOf(part, route) : undefined;
    return limit ? [{ share: part.share, limit }] : [];
  });
  const formula = partsOfLimits(terms);
  if (!formula) return null;
  return workedOut({
    sentence: `Acute toxicity estimate, ${routeWords[route]}`,
    unit: clp.acute[route].unit,
    formula: over(1, formula),
  });
}

/** Held against a category as how many times its highest estimate is the mixture's: more than whole is more toxic. */
function against(mix: Estimate, route: EstimatedRoute, at: number): Figure<'1'> {
  const { unit, upTo } = clp.acute[route];
  const bound = given({
    origin: `constant/clp/${route}/${at}`,
    sentence: `Highest estimate of category ${at + 1}, ${routeWords[route]}`,
    value: upTo[at] ?? '0',
    unit,
    how: 'constant',
    spread: exact,
    sources: [sourceOf(clp.acute[route])],
  });
  return workedOut({
    sentence: `Toxicity against category ${at + 1}, ${routeWords[route]}`,
    unit: '1',
    formula: over(bound, mix),
  });
}

export function acute(all: readonly Part[]): { readonly estimates: Estimates; readonly found: Found[] } {
  const estimates = Object.fromEntries(
    estimatedRoutes.map((route) => [route, estimate(all, route)]),
  ) as Estimates;
  const found = estimatedRoutes.flatMap((route) => {
    const mix = estimates[route];
    if (!mix) return [];
    return worstOf(
      'acute',
      clp.acute[route].codes.map((code, at) => ({
        hazard: { class: 'Acute Tox.', category: String(at + 1), route, code },
        ground: { figure: against(mix, route, at), limit: whole },
      })),
    );
  });
  return { estimates, found };
}
