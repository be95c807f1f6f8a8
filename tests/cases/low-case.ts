/**
 * Cases of kind `low`, the European list of waste: which entry must stand first, and which must not be proposed, that is be
 * absent or marked wrong. The waste may be named by a kind of ours or in free words; see `words` in waste-list.json.
 */
import * as z from 'zod/mini';
import { wasteKinds, wasteList, workViews } from '../../src/reference/waste-list-tables';
import { euHpCandidates } from '../../src/rules/eu-hp/candidates';
import { type WasteAsked, wasteListEntries } from '../../src/rules/waste-list/entries';
import { kindFromWords, viewFromWords } from './kind-of-words';
import { MixtureInput, mixtureOf, stateNamed } from './mixture-input';
import type { Check, Outcome } from './outcome';

const Text = z.optional(z.nullable(z.string()));
const Flag = z.optional(z.nullable(z.boolean()));

const Words = {
  stream: Text,
  waste: Text,
  material: Text,
  description: Text,
  text: Text,
  what: Text,
  name: Text,
};

/** A list, or in a string: "HP 7, HP 14"; "none" is none. */
const Properties = z.optional(z.nullable(z.union([z.array(z.string()), z.string()])));

export const LowCase = z.object({
  id: z.string(),
  kind: z.literal('low'),
  title: Text,
  input: z.union([
    z.string(),
    z.looseObject({
      ...MixtureInput.shape,
      ...Words,
      state: Text,
      kind: Text,
      process: Text,
      source: Text,
      hp: Properties,
      hazardousProperties: Properties,
      hazardous: Flag,
      shownNotHazardous: Flag,
      household: Flag,
    }),
  ]),
  expected: z.looseObject({
    first: z.optional(z.nullable(z.string())),
    candidates: z.optional(z.array(z.string())),
    mustNotPropose: z.optional(z.array(z.string())),
    hazardous: Flag,
    type: Text,
    counterpart: Text,
  }),
});
type LowCase = z.infer<typeof LowCase>;
type Input = Exclude<LowCase['input'], string>;

const compared = new Set(['first', 'candidates', 'mustNotPropose', 'hazardous', 'type', 'counterpart']);

/** Told outright, or in the words; else the properties that the make-up brings; else nobody looked. */
function propertiesOf(input: Input, words: string): WasteAsked['properties'] {
  const told = input.hazardous ?? (input.shownNotHazardous ? false : undefined);
  const listed = input.hp ?? input.hazardousProperties;
  const firing = [listed ?? []]
    .flat()
    .flatMap((said) =>
      [...said.matchAll(/HP ?\d+/gi)].map(([code]) => ({ code, standing: 'fires' as const })),
    );
  if (firing.length > 0) return firing;
  if (told === true) return [{ code: 'HP', standing: 'fires' }];
  if (told === false || listed) return [];
  if (/\b(not|non)[ -]?hazardous/.test(words)) return [];
  const { massPercent, elementMassPercent, gramPerL, elementGramPerL } = input;
  if (![massPercent, elementMassPercent, gramPerL, elementGramPerL].some(Boolean)) return null;
  return euHpCandidates(mixtureOf({ ...input, state: stateNamed(input.state ?? '') }));
}

/** Keys that say where a waste comes from, and not what it is. */
const isOrigin = (key: string): boolean =>
  /process|source|origin|activity|trade|from|arises|context|business|sector|site/i.test(key);

const wordsUnder = (input: Input, keys: (key: string) => boolean): string =>
  Object.entries(input)
    .filter(([key, value]) => keys(key) && typeof value === 'string')
    .map(([, value]) => value)
    .join(', ');

export function wasteAsked({ input: given, title }: Pick<LowCase, 'input' | 'title'>): WasteAsked {
  const input: Input = typeof given === 'string' ? { description: given } : given;
  const own = wasteKinds.find((kind) => [input.kind, input.stream, input.waste].includes(kind));
  const said = [
    input.stream,
    input.waste,
    input.material,
    input.what,
    input.name,
    input.kind,
    input.text,
    input.description,
  ];
  const words = said.filter(Boolean).join(', ').toLowerCase();
  const kind =
    own ??
    kindFromWords(words) ??
    kindFromWords(wordsUnder(input, (key) => !isOrigin(key))) ??
    kindFromWords(title ?? '');
  const process = wordsUnder(input, isOrigin);
  const view = workViews.find((one) => one === process) ?? viewFromWords(process);
  return {
    kind,
    ...(view ? { view } : {}),
    properties: propertiesOf(input, `${words}, ${title ?? ''}`.toLowerCase()),
  };
}

const plain = (code: string): string => code.replaceAll(/\s/g, '');
/** The asterisk counts where the case writes one anywhere; a bare code is right for both. */
const same = (expected: string, computed: string): boolean =>
  plain(expected) === plain(computed) || plain(expected) === plain(computed).replace('*', '');

export function evaluateLow(given: LowCase): Outcome {
  const { expected } = given;
  const asked = wasteAsked(given);
  const found = wasteListEntries(asked);
  const codes = found.candidates.map(({ code }) => code);
  const marked = found.wrong.map(({ code }) => code);
  const [first] = found.candidates;
  const checks: Check[] = [];
  if (expected.first !== undefined) {
    const ok = expected.first === null ? !first : first !== undefined && same(expected.first, first.code);
    checks.push({
      ok,
      line: `first: expected ${expected.first ?? 'none'}, computed ${first?.code ?? 'none'}`,
    });
  }
  for (const code of expected.candidates ?? [])
    checks.push({
      ok: codes.some((c) => same(code, c)),
      line: `candidate: expected ${code}, computed ${codes.join(', ')}`,
    });
  for (const code of expected.mustNotPropose ?? []) {
    const proposed = codes.some((c) => plain(c).replace('*', '') === plain(code).replace('*', ''));
    const wrong = marked.some((c) => same(code.replace('*', ''), c));
    checks.push({ ok: !proposed, line: `not proposed: ${code}, ${wrong ? 'marked wrong' : 'absent'}` });
  }
  if (typeof expected.hazardous === 'boolean')
    checks.push({
      ok: first?.entry.hazardous === expected.hazardous,
      line: `hazardous: expected ${expected.hazardous}, computed ${first?.entry.hazardous}`,
    });
  if (expected.type)
    checks.push({
      ok: first !== undefined && expected.type.toLowerCase().startsWith(first.entry.type.slice(0, 6)),
      line: `type: expected ${expected.type}, computed ${first?.entry.type}`,
    });
  if (expected.counterpart)
    checks.push({
      ok: same(expected.counterpart, first?.counterpart ?? ''),
      line: `counterpart: expected ${expected.counterpart}, computed ${first?.counterpart ?? 'none'}`,
    });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  const told = (all: typeof found.wrong) => all.map(({ code, why }) => ({ code, why: why.rule }));
  return {
    checks,
    computed: {
      kind: asked.kind,
      candidates: found.candidates.map((c) => ({
        code: c.code,
        standing: c.standing,
        type: c.entry.type,
        counterpart: c.counterpart ?? null,
        why: c.why,
      })),
      otherwise: told(found.otherwise),
      wrong: told(found.wrong),
    },
    notes: [
      `taken for: ${asked.kind ? wasteList.kinds[asked.kind].name : 'no kind of this trade'}`,
      ...Object.keys(expected).flatMap((key) => (compared.has(key) ? [] : [`not compared: ${key}`])),
    ],
  };
}
