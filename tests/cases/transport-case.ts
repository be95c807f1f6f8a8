/**
 * Cases of kind `transport`: entries that must appear among the candidates, which must not stand first, which are of the USA
 * alone; packing group, word and mark of the entry that is asked for. What came close is told and is no candidate.
 */
import * as z from 'zod/mini';
import { substanceIds } from '../../src/reference/substances-tables';
import { wasteKinds } from '../../src/reference/waste-list-tables';
import { type TransportCandidate, transportCandidates } from '../../src/rules/transport/candidates';
import type { Consignment } from '../../src/rules/transport/consignment';
import { Amount, figureOf } from './amount';
import { kindFromWords } from './kind-of-words';
import { MixtureInput, mixtureOf, stateNamed } from './mixture-input';
import type { Check, Outcome } from './outcome';
import { listed } from './sets';

const Text = z.optional(z.nullable(z.string()));
const Flag = z.optional(z.nullable(z.boolean()));
const PackingGroup = z.enum(['I', 'II', 'III']);
const ByTest = z.optional(z.nullable(z.union([z.boolean(), PackingGroup])));
const OneOrMore = z.optional(z.union([z.string(), z.array(z.string())]));

export const TransportCase = z.object({
  id: z.string(),
  kind: z.literal('transport'),
  title: Text,
  input: z.object({
    ...MixtureInput.shape,
    /** Also in words: "solid, wet with liquor", "dry". */
    state: z._default(z.string(), 'liquid'),
    freeLiquid: Flag,
    ...{ wetWithLiquor: Flag, wet: Flag, dry: Flag },
    rcraCodes: z.optional(z.nullable(z.array(z.string()))),
    ...{ stream: Text, waste: Text, material: Text, description: Text, form: Text, condition: Text },
    oxidiserByTest: ByTest,
    oxidizerByTest: ByTest,
    corrosionCategory: Text,
    corrosive: Flag,
    corrodesMetal: Flag,
    netKg: z.optional(z.nullable(Amount)),
  }),
  expected: z.looseObject({
    candidates: z.optional(z.array(z.string())),
    usOnly: z.optional(z.array(z.string())),
    notFirst: z.optional(z.array(z.string())),
    mustNotPropose: z.optional(z.array(z.string())),
    first: z.optional(z.nullable(z.string())),
    packingGroup: z.optional(z.nullable(z.union([PackingGroup, z.array(PackingGroup)]))),
    class: Text,
    subsidiary: OneOrMore,
    wastePrefix: Flag,
    environmentallyHazardous: Flag,
    technicalNames: z.optional(z.array(z.string())),
    reportableQuantity: Flag,
  }),
});
type TransportCase = z.infer<typeof TransportCase>;
type Input = TransportCase['input'];

const compared = new Set([
  ...['candidates', 'usOnly', 'notFirst', 'mustNotPropose', 'first', 'packingGroup', 'class'],
  ...['subsidiary', 'wastePrefix', 'environmentallyHazardous', 'technicalNames', 'reportableQuantity'],
]);

/** What lets liquid stand free is carried as a liquid. */
function stateOf({ freeLiquid }: Input, words: string): 'liquid' | 'solid' | 'sludge' {
  return freeLiquid === true ? 'liquid' : stateNamed(words);
}

function wetnessOf(input: Input, words: string): Pick<Consignment, 'wetness'> {
  if (input.wetWithLiquor || input.wet || input.freeLiquid === false) return { wetness: 'wet' };
  if (input.dry) return { wetness: 'dry' };
  if (/\b(wet|soaked|moist)\b/.test(words)) return { wetness: 'wet' };
  return /\b(dry|dried)\b/.test(words) ? { wetness: 'dry' } : {};
}

/** "Skin Corr. 1B", "1B", or the packing group that is the same; "none" where it was shown not to be. */
function categoryOf({ corrosive, corrosionCategory }: Input, words: string) {
  const told = corrosionCategory ?? '';
  if (corrosive === false || /none|not/i.test(told) || /\bnot corrosive/.test(words))
    return { skinCorrosion: 'none' as const };
  const category = ({ A: '1A', B: '1B', C: '1C', I: '1A', II: '1B', III: '1C' } as const)[
    (/([ABC]|I{1,3})$/i.exec(told)?.[0].toUpperCase() ?? '') as 'A'
  ];
  if (category) return { skinCorrosion: category };
  return told !== '' || corrosive ? { skinCorrosion: '1B' as const } : {};
}

function oxidisingOf({ oxidiserByTest, oxidizerByTest }: Input) {
  const told = oxidiserByTest ?? oxidizerByTest;
  if (told === null || told === undefined) return {};
  if (typeof told === 'string') return { oxidising: told };
  return { oxidising: told ? ('of no known group' as const) : ('none' as const) };
}

/** What the table of substances does not hold (paper, ceramic) is left out, and told. */
function held(input: Input): { readonly input: Input; readonly leftOut: readonly string[] } {
  const known = (name: string) => substanceIds.some((id) => id === name);
  const all = Object.entries(input.massPercent ?? {});
  const massPercent = Object.fromEntries(all.filter(([name]) => known(name)));
  return { input: { ...input, massPercent }, leftOut: all.flatMap(([name]) => (known(name) ? [] : [name])) };
}

export function consignmentOf({ input: told, title }: Pick<TransportCase, 'input' | 'title'>): Consignment {
  const { input } = held(told);
  const named = [input.stream, input.waste, input.material, input.description].filter(Boolean).join(' ');
  const state = [input.state, input.form, input.condition].filter(Boolean).join(' ').toLowerCase();
  const words = `${state} ${named} ${title ?? ''}`.toLowerCase();
  const kind = wasteKinds.find((one) => one === named) ?? kindFromWords(named) ?? kindFromWords(title ?? '');
  return {
    mixture: mixtureOf({ ...input, state: stateOf(input, state) }),
    ...wetnessOf(input, words),
    ...(kind ? { kind } : {}),
    rcraCodes: input.rcraCodes ?? [],
    tested: {
      ...categoryOf(input, words),
      ...oxidisingOf(input),
      ...(typeof input.corrodesMetal === 'boolean' ? { corrodesMetal: input.corrodesMetal } : {}),
    },
    ...(input.netKg ? { packageMass: figureOf('net mass', input.netKg, 'kg') } : {}),
  };
}

const plain = (code: string): string => code.replaceAll(/\s/g, '').toUpperCase();
const check = (name: string, expected: string, computed: string): Check => ({
  ok: expected === computed,
  line: `${name}: expected ${expected}, computed ${computed}`,
});
const words = (all: string | readonly string[] | undefined | null): string =>
  [all ?? []].flat().join(', ').toLowerCase() || 'none';

const prefixed = ({ described }: TransportCandidate): boolean =>
  (described.adr ?? described.usa).match(/\bWASTE\b/gi)?.length === 1;

/** What is asked of one entry: the one that must stand first, else the first that must appear, else the first there is. */
function ofEntry(c: TransportCandidate | undefined, expected: TransportCase['expected']): Check[] {
  const { packingGroup, class: of, subsidiary, technicalNames } = expected;
  const groups = [packingGroup ?? []].flat();
  const { wastePrefix, environmentallyHazardous: mark } = expected;
  return [
    ...(groups.length > 0
      ? [
          {
            ...check('packing group', groups.join(' or '), c?.packingGroup ?? 'none'),
            ok: groups.some((g) => g === c?.packingGroup),
          },
        ]
      : []),
    ...(of ? [check('class', of, c?.entry.class ?? 'none')] : []),
    ...(subsidiary === undefined ? [] : [check('subsidiary', words(subsidiary), words(c?.entry.subsidiary))]),
    ...(technicalNames ? [check('technical names', words(technicalNames), words(c?.technicalNames))] : []),
    ...(typeof wastePrefix === 'boolean'
      ? [check('WASTE once', `${wastePrefix}`, `${c ? prefixed(c) : false}`)]
      : []),
    ...(typeof mark === 'boolean'
      ? [check('environmentally hazardous', mark ? 'yes' : 'no', c?.environmentallyHazardous ?? 'none')]
      : []),
  ];
}

export function evaluateTransport(given: TransportCase): Outcome {
  const { expected } = given;
  const found = transportCandidates(consignmentOf(given));
  const proposed = found.candidates.filter(({ standing }) => standing !== 'close');
  const codes = proposed.map(({ code }) => plain(code));
  const [first] = codes;
  const checks: Check[] = [];
  const present = (name: string, wanted: readonly string[], among: readonly string[]) =>
    checks.push({
      ok: wanted.every((code) => among.includes(plain(code))),
      line: `${name}: expected at least ${wanted.join(', ') || 'none'}, computed ${among.join(', ') || 'none'}`,
    });
  if (expected.candidates) {
    present('candidates', expected.candidates, codes);
    if (expected.candidates.length === 0)
      checks.push({
        ok: found.none !== undefined,
        line: `candidates: expected none taken, computed ${listed(codes)}`,
      });
  }
  const ofUSA = proposed.filter(({ entry }) => entry.usaOnly).map(({ code }) => plain(code));
  if (expected.usOnly) present('USA only', expected.usOnly, ofUSA);
  for (const code of expected.notFirst ?? [])
    checks.push({ ok: plain(code) !== first, line: `not first: ${code}, computed ${first ?? 'none'}` });
  for (const code of expected.mustNotPropose ?? [])
    checks.push({
      ok: !codes.includes(plain(code)),
      line: `not proposed: ${code}, computed ${listed(codes)}`,
    });
  if (expected.first !== undefined)
    checks.push(
      expected.first === null
        ? check('first', 'none', found.none ? 'none' : (first ?? 'none'))
        : check('first', plain(expected.first), first ?? 'none'),
    );
  const asked = expected.first ?? expected.candidates?.[0];
  const entry =
    proposed.find(({ code }) => asked !== undefined && plain(code) === plain(asked)) ?? proposed[0];
  checks.push(...ofEntry(entry, expected));
  if (typeof expected.reportableQuantity === 'boolean') {
    const reached = found.reportable.some((r) => r.reached === 'yes');
    checks.push(check('RQ', `${expected.reportableQuantity}`, `${reached}`));
  }
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return {
    checks,
    computed: {
      candidates: found.candidates.map((c) => ({
        ...{ code: c.code, standing: c.standing, class: c.entry.class, subsidiary: c.entry.subsidiary },
        ...{ packingGroup: c.packingGroup, technicalNames: c.technicalNames, described: c.described },
        why: c.why.map(({ rule, cite }) => `${rule} (${cite})`),
        lacks: c.lacks,
      })),
      usOnly: ofUSA,
      none: found.none?.rule ?? null,
      heed: found.heed.map(({ rule }) => rule),
      reportable: found.reportable.map(({ of, reached }) => ({ of, reached })),
    },
    notes: [
      ...proposed.map(({ described, standing }) => `${standing}: ${described.adr ?? described.usa}`),
      ...held(given.input).leftOut.map((name) => `left out, not in the table: ${name}`),
      ...Object.keys(expected).flatMap((key) => (compared.has(key) ? [] : [`not compared: ${key}`])),
    ],
  };
}
