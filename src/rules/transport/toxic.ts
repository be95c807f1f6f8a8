/** Class 6.1: toxicity by mouth, and of dust where it is a solid; soluble lead and barium, which the list names. */
import { sourceOf } from '../../chemistry/constants';
import { over, times } from '../../quantities/expression';
import { exact, type Figure, given } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import { type SubstanceId, substances } from '../../reference/substances-tables';
import { type EntryId, type PackingGroup, transport } from '../../reference/transport-tables';
import { standingOf } from '../candidate';
import { type Consignment, type Part, partsOf } from './consignment';
import { citedRule, type Finding, sumOf } from './finding';

type ToxicRoute = keyof typeof transport.toxicity;
const groups: readonly PackingGroup[] = ['I', 'II', 'III'];

/** Toxicity of a constituent by one route: as its entry prints it, else what stands for its category (CLP table 3.1.2). */
function estimateOf(id: SubstanceId, route: ToxicRoute): Figure<'mg/kg' | 'mg/L'> | null {
  const { name, toxicity, classes } = substances[id];
  const unit = transport.toxicity[route].unit;
  const figure = (value: string, told: Parameters<typeof sourceOf>[0]) =>
    given({
      origin: `constant/toxicity/${id}/${route}`,
      sentence: `Acute toxicity of ${name}, ${route}`,
      value,
      unit,
      how: 'constant',
      spread: exact,
      sources: [sourceOf(told)],
    });
  const printed = toxicity?.find((t) => t.route === route);
  if (printed) return figure(printed.estimate, substances[id]);
  const category = classes.find((c) => c.class === 'Acute Tox.' && c.route === route)?.category;
  if (category === undefined) return null;
  const converted = clp.acute[route].converted[Number(category) - 1];
  return converted === undefined ? null : figure(converted, clp.acute[route]);
}

/** How far the constituents together reach the limit of a group: Σ share × limit ÷ estimate, 100 % at the limit. */
function reached(parts: readonly Part[], route: ToxicRoute, group: PackingGroup): Figure<'%'> | null {
  const told = transport.toxicity[route];
  const limit = given({
    origin: `constant/toxicity/${route}/${group}`,
    sentence: `Highest estimate of packing group ${group}, ${route}`,
    value: told[group],
    unit: told.unit,
    how: 'constant',
    spread: exact,
    sources: [sourceOf(told)],
  });
  return sumOf(
    `How far toxicity (${route}) reaches packing group ${group}`,
    parts.flatMap(({ id, share }) => {
      const estimate = share.high.gte(transport.limits.relevant.value) ? estimateOf(id, route) : null;
      return estimate ? [times(share, over(limit, estimate))] : [];
    }),
  );
}

const all = given({
  origin: 'definition/all',
  sentence: 'The limit itself',
  value: '100',
  unit: '%',
  how: 'constant',
  spread: exact,
});

function byRoute(parts: readonly Part[], route: ToxicRoute): Finding | null {
  for (const group of groups) {
    const figure = reached(parts, route, group);
    const standing = figure && standingOf({ figure, limit: all });
    if (!figure || !standing || (standing === 'close' && group !== 'III')) continue;
    const dust = route === 'dust or mist';
    return {
      standing: standing === 'fires' && dust ? 'judgement' : standing,
      taken: standing === 'fires' && !dust,
      group,
      citation: citedRule(dust ? 'toxic-dust' : 'toxic'),
      grounds: [{ figure, limit: all }],
      lacks: dust ? ['share of the dust that can be breathed in'] : [],
    };
  }
  return null;
}

const order: readonly Finding['standing'][] = ['fires', 'judgement', 'open', 'close'];

/** Findings of class 6.1: what decides first, then what is graver. */
export function toxic({ mixture }: Consignment): readonly Finding[] {
  const parts = partsOf(mixture);
  const routes: readonly ToxicRoute[] = mixture.state === 'liquid' ? ['oral'] : ['oral', 'dust or mist'];
  return routes
    .flatMap((route) => byRoute(parts, route) ?? [])
    .sort((a, b) => order.indexOf(a.standing) - order.indexOf(b.standing) || a.group.length - b.group.length);
}

export type NamedToxic = { readonly entry: EntryId; readonly part: Part; readonly finding: Finding };

/** Soluble salts of which the list has a collective entry in class 6.1; in a mixture the toxicity of the whole decides. */
export const namedToxic = ({ mixture }: Consignment): readonly NamedToxic[] =>
  partsOf(mixture).flatMap((part) => {
    const entry = part.as.toxicAs;
    if (entry === undefined || part.share.high.lt(transport.limits.relevant.value)) return [];
    return {
      entry,
      part,
      finding: {
        standing: 'judgement',
        taken: false,
        group: 'III',
        citation: citedRule('toxic-named'),
        grounds: [],
        lacks: ['toxicity of the mixture by mouth'],
      },
    };
  });
