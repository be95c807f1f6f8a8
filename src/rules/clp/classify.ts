/**
 * What CLP makes of a mixture: classes by calculation from what is in it, apart from them those that an extreme pH adds and
 * those that only a test gives. The high end of every share decides. What may be in it and was not determined leaves the
 * classes that it could bring open. Nothing here decides: each is a candidate that a person confirms.
 */
import type { SubstanceId } from '../../reference/substances-tables';
import type { Candidate } from '../candidate';
import { calledInRecord } from '../counted-share';
import type { Mixture } from '../mixture';
import { acute, type Estimates } from './acute';
import { airways } from './airways';
import { type AquaticSums, aquatic } from './aquatic';
import { candidatesByTest, flagsByTest } from './by-test';
import { extremePh } from './extreme-ph';
import { citationOf, type Found } from './found';
import { coversHazard, type Hazard, hazardText } from './hazard';
import { mostOf, type Part, partsOf, withNotified } from './parts';
import { single } from './single';
import { type EyeFractions, eye, type SkinFractions, skin } from './skin-and-eye';
import { type Supplement, sensitisersNamed, supplements } from './supplements';

export type Classified = {
  /** By calculation from what is in it. */
  readonly calculated: readonly Hazard[];
  /** Only because the pH is extreme, and not calculated. */
  readonly phRule: readonly Hazard[];
  /** What only a test decides: "Ox. test: contains Cu(NO3)2", "Met. Corr. 1 H290". */
  readonly byTest: readonly string[];
  /** Null where nothing in it counts. */
  readonly estimates: Estimates;
  readonly aquatic: AquaticSums;
  readonly skin: SkinFractions;
  readonly eye: EyeFractions;
  readonly supplements: readonly Supplement[];
  /** Sensitisers that a label names. */
  readonly sensitisers: readonly string[];
  readonly candidates: readonly Candidate[];
};

/** By calculation alone. */
export function calculate(parts: readonly Part[]) {
  const [skinCame, eyeCame, acuteCame, water] = [skin(parts), eye(parts), acute(parts), aquatic(parts)];
  const found: readonly Found[] = [
    ...skinCame.found,
    ...eyeCame.found,
    ...acuteCame.found,
    ...airways(parts),
    ...single(parts),
    ...water.found,
  ];
  return {
    found,
    estimates: acuteCame.estimates,
    aquatic: water.sums,
    skin: skinCame.fractions,
    eye: eyeCame.fractions,
  };
}

const firing = (found: readonly Found[]): Hazard[] =>
  found.filter((f) => f.standing === 'fires').map((f) => f.hazard);

const isNew = (hazard: Hazard, known: readonly Hazard[]): boolean =>
  !known.some((k) => coversHazard(k, hazard));

const corrosive: Hazard = { class: 'Skin Corr.', category: '1', code: 'H314' };
const damaging: Hazard = { class: 'Eye Dam.', category: '1', code: 'H318' };

/** What the pH adds where the calculation did not make it corrosive already. */
function byPh({ pH }: Mixture, calculated: readonly Hazard[]) {
  const none = { hazards: [] as Hazard[], candidates: [] as Candidate[] };
  if (calculated.some((h) => h.class === 'Skin Corr.')) return none;
  const said = pH ? extremePh(pH) : { standing: 'open' as const, ground: null };
  if (!said) return none;
  const hazards = [corrosive, damaging].filter((h) => isNew(h, calculated));
  const candidates = hazards.map(
    (hazard): Candidate => ({
      scheme: 'clp',
      code: hazardText(hazard),
      standing: said.standing,
      citation: citationOf('extremePh'),
      grounds: said.ground ? [said.ground] : [],
      lacks: pH ? [] : ['pH'],
    }),
  );
  return { hazards: said.standing === 'fires' ? hazards : [], candidates };
}

const alone = new Map<SubstanceId, readonly Found[]>();

/** What as much of a substance as may be would bring; it depends on the substance alone. */
function mostThatItBrings(id: SubstanceId): readonly Found[] {
  const known = alone.get(id) ?? calculate([mostOf(id)]).found.filter((f) => f.standing === 'fires');
  alone.set(id, known);
  return known;
}

/** Classes that what was not determined could bring, beyond those that fire already. */
function leftOpen(open: readonly SubstanceId[], known: readonly Hazard[]): Candidate[] {
  const lacks = new Map<string, { found: Found; names: string[] }>();
  for (const id of open)
    for (const found of mostThatItBrings(id)) {
      if (!isNew(found.hazard, known)) continue;
      const code = hazardText(found.hazard);
      const names = [...(lacks.get(code)?.names ?? []), calledInRecord(id)];
      lacks.set(code, { found, names: [...new Set(names)] });
    }
  return [...lacks].map(([code, { found, names }]) => ({
    scheme: 'clp',
    code,
    standing: 'open',
    citation: citationOf(found.rule),
    grounds: [],
    lacks: names,
  }));
}

const candidateOf = ({ hazard, standing, rule, grounds }: Found): Candidate => ({
  scheme: 'clp',
  code: hazardText(hazard),
  standing,
  citation: citationOf(rule),
  grounds,
  lacks: [],
});

/** Classes that come only with what suppliers notify besides the entry. */
function byNotice(parts: readonly Part[], known: readonly Hazard[]): Candidate[] {
  if (!parts.some((p) => p.substance.notified)) return [];
  return calculate(withNotified(parts))
    .found.filter((f) => f.standing === 'fires' && isNew(f.hazard, known))
    .map((f) => ({ ...candidateOf(f), standing: 'judgement', citation: citationOf('notified') }));
}

/** A gas dissolved in a waste has no share by volume. */
const byGas = (parts: readonly Part[]): Candidate[] =>
  parts.flatMap(({ substance }) =>
    substance.classes
      .filter((c) => c.route === 'gas')
      .map(({ class: name, category, code }) => ({
        scheme: 'clp',
        code: hazardText({ class: name, category, code, route: 'gas' }),
        standing: 'judgement',
        citation: citationOf('gas'),
        grounds: [],
        lacks: [],
      })),
  );

const heaviest = ['fires', 'open', 'judgement', 'close'] as const;

/** Where two rules bring one class, what weighs more is told. */
function oneEach(candidates: readonly Candidate[]): Candidate[] {
  const byWeight = [...candidates].sort(
    (a, b) => heaviest.indexOf(a.standing) - heaviest.indexOf(b.standing),
  );
  const kept = new Map<string, Candidate>();
  for (const one of byWeight) if (!kept.has(one.code)) kept.set(one.code, one);
  return [...kept.values()];
}

export function classify(mixture: Mixture): Classified {
  const parts = partsOf(mixture);
  const { found, ...figures } = calculate(parts);
  const calculated = firing(found);
  const { hazards: phRule, candidates: ofPh } = byPh(mixture, calculated);
  const fired = [...calculated, ...phRule];
  const extra = supplements(parts, fired);
  const telling = found.filter((f) => f.standing === 'fires' || isNew(f.hazard, fired));
  return {
    ...figures,
    calculated,
    phRule,
    byTest: flagsByTest(parts),
    supplements: extra.supplements,
    sensitisers: sensitisersNamed(parts),
    candidates: oneEach([
      ...telling.map(candidateOf),
      ...ofPh,
      ...byNotice(parts, fired),
      ...byGas(parts),
      ...candidatesByTest(parts, mixture.state),
      ...extra.candidates,
      ...leftOpen(mixture.open, fired),
    ]),
  };
}
