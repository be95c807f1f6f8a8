/** What only a test of the waste itself decides: whether it feeds fire, whether it eats metal. Flags, never a calculated class. */
import type { Candidate } from '../candidate';
import type { Mixture } from '../mixture';
import { citationOf, worstOf } from './found';
import { hazardText } from './hazard';
import { ownLimit, type Part } from './parts';

const oxidisers = ['Ox. Gas', 'Ox. Liq.', 'Ox. Sol.'];

const feedsFire = ({ substance }: Part): boolean =>
  substance.classes.some((c) => oxidisers.includes(c.class));
const mayFeedFire = ({ substance }: Part): boolean =>
  [...substance.classes, ...(substance.notified ?? [])].some((c) => oxidisers.includes(c.class));

const eatsMetal = ({ substance }: Part): boolean =>
  [...substance.classes, ...(substance.byTest ?? [])].some((c) => c.class === 'Met. Corr.');

/** The class of an acid that the entry itself gives from a share on. */
const byShare = (part: Part) =>
  worstOf(
    'oxidiserByShare',
    (part.substance.limits ?? [])
      .filter((l) => l.class === 'Ox. Liq.')
      .map((l) => ({
        hazard: { class: l.class, category: l.category, code: l.code },
        ground: { figure: part.share, limit: ownLimit(part, l.class, l.category) ?? part.share },
      })),
  );

const metalCorrosion = 'Met. Corr. 1 H290';

/** In the order of what is in it: "Ox. test: contains Cu(NO3)2", "Met. Corr. 1 H290". */
export function flagsByTest(parts: readonly Part[]): string[] {
  const flags = parts.flatMap((part) => [
    ...(feedsFire(part) ? [`Ox. test: contains ${part.id}`] : []),
    ...byShare(part)
      .filter((f) => f.standing === 'fires')
      .map((f) => hazardText(f.hazard)),
    ...(eatsMetal(part) ? [metalCorrosion] : []),
  ]);
  return [...new Set(flags)];
}

/** @param state of the waste: a liquid and a solid are tested in different ways */
export function candidatesByTest(parts: readonly Part[], state: Mixture['state']): Candidate[] {
  const candidate = (code: string, rule: 'oxidiser' | 'metalCorrosion', lacks: string): Candidate => ({
    scheme: 'clp',
    code,
    standing: 'judgement',
    citation: citationOf(rule),
    grounds: [],
    lacks: [lacks],
  });
  const shares = parts.flatMap((part) =>
    byShare(part).map(
      ({ hazard, standing, rule, grounds }): Candidate => ({
        scheme: 'clp',
        code: hazardText(hazard),
        standing,
        citation: citationOf(rule),
        grounds,
        lacks: [],
      }),
    ),
  );
  const oxidiser = state === 'liquid' ? 'Ox. Liq. H272' : 'Ox. Sol. H272';
  return [
    ...shares,
    ...(parts.some(mayFeedFire) && !shares.some((s) => s.standing === 'fires')
      ? [candidate(oxidiser, 'oxidiser', 'oxidiser test')]
      : []),
    ...(parts.some(eatsMetal) ? [candidate(metalCorrosion, 'metalCorrosion', 'metal corrosion test')] : []),
  ];
}
