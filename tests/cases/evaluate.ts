/** Every case in every file of a folder, by its kind. It knows nothing of any particular case. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { ActivityCase, evaluateActivity } from './activity-case';
import { CaliforniaCase, evaluateCalifornia } from './california-case';
import { ClockCase, evaluateClock } from './clock-case';
import { ClpMixtureCase, evaluateClpMixture } from './clp-mixture-case';
import { CompatibilityCase, evaluateCompatibility } from './compatibility-case';
import { EuHpCase, evaluateEuHp } from './eu-hp-case';
import { evaluateGeneratorMonth, GeneratorMonthCase } from './generator-month-case';
import { evaluateLow, LowCase } from './low-case';
import type { Outcome } from './outcome';
import { evaluateRcraCharacteristic, RcraCharacteristicCase } from './rcra-characteristic-case';
import { evaluateRcraLdr, RcraLdrCase } from './rcra-ldr-case';
import { evaluateSolubility, SolubilityCase } from './solubility-case';
import { evaluateTitration, TitrationCase } from './titration-case';
import { evaluateTransport, TransportCase } from './transport-case';

/** A kind of case: its schema, and what evaluates a case that fits. */
const kind =
  <S extends z.core.$ZodType>(schema: S, evaluate: (c: z.output<S>) => Outcome) =>
  (given: unknown): Outcome => {
    const read = z.safeParse(schema, given);
    if (read.success) return evaluate(read.data);
    return failed(`not a case of its kind: ${z.prettifyError(read.error).replaceAll('\n', ' ')}`);
  };

const kinds: Readonly<Record<string, (given: unknown) => Outcome>> = {
  titration: kind(TitrationCase, evaluateTitration),
  solubility_vs_pH: kind(SolubilityCase, evaluateSolubility),
  solubility: (given) =>
    kinds.solubility_vs_pH?.({ ...(given as object), kind: 'solubility_vs_pH' }) ?? failed('no such kind'),
  activity_coefficients: kind(ActivityCase, evaluateActivity),
  compatibility: kind(CompatibilityCase, evaluateCompatibility),
  'clp-mixture': kind(ClpMixtureCase, evaluateClpMixture),
  'eu-hp': kind(EuHpCase, evaluateEuHp),
  'rcra-characteristic': kind(RcraCharacteristicCase, evaluateRcraCharacteristic),
  'rcra-ldr': kind(RcraLdrCase, evaluateRcraLdr),
  california: kind(CaliforniaCase, evaluateCalifornia),
  'generator-month': kind(GeneratorMonthCase, evaluateGeneratorMonth),
  clock: kind(ClockCase, evaluateClock),
  transport: kind(TransportCase, evaluateTransport),
  low: kind(LowCase, evaluateLow),
};

const failed = (line: string): Outcome => ({ checks: [{ ok: false, line }], computed: null, notes: [] });

export type Evaluated = {
  readonly file: string;
  readonly id: string;
  readonly kind: string;
  readonly outcome: Outcome;
};

const Named = z.looseObject({ id: z.string(), kind: z.string() });

/** One file: one case, a list of them, or `{ cases: [...] }`. */
function casesIn(text: string): unknown[] {
  const read: unknown = JSON.parse(text);
  if (Array.isArray(read)) return read;
  const several = z.safeParse(z.looseObject({ cases: z.array(z.unknown()) }), read);
  return several.success ? several.data.cases : [read];
}

function evaluateOne(file: string, given: unknown, index: number): Evaluated {
  const named = z.safeParse(Named, given);
  if (!named.success) {
    const outcome = failed('a case without id and kind');
    return { file, id: `${file}#${index}`, kind: 'unknown', outcome };
  }
  const { id, kind: name } = named.data;
  const evaluate = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
  if (!evaluate) return { file, id, kind: name, outcome: failed(`no kind of case that this knows: ${name}`) };
  try {
    return { file, id, kind: name, outcome: evaluate(given) };
  } catch (cause) {
    // A case may name what the model does not hold: that is the case's failure, and the others go on.
    return { file, id, kind: name, outcome: failed(cause instanceof Error ? cause.message : String(cause)) };
  }
}

function evaluateFile(folder: string, file: string): Evaluated[] {
  try {
    return casesIn(readFileSync(join(folder, file), 'utf8')).map((given, i) => evaluateOne(file, given, i));
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    return [{ file, id: file, kind: 'unreadable', outcome: failed(`cannot be read: ${why}`) }];
  }
}

/** @throws where the folder cannot be read */
export function evaluateFolder(folder: string): Evaluated[] {
  const files = statSync(folder).isDirectory()
    ? readdirSync(folder, { recursive: true, encoding: 'utf8' })
    : [];
  const found = files.filter((file) => file.endsWith('.json')).sort();
  const all = found.flatMap((file) => evaluateFile(folder, file));
  const seen = new Set<string>();
  return all.map((one) => {
    if (!seen.has(one.id)) {
      seen.add(one.id);
      return one;
    }
    return { ...one, id: `${one.file}/${one.id}`, outcome: failed(`a second case of the name ${one.id}`) };
  });
}

export const passedIn = ({ checks }: Outcome): number => checks.filter((c) => c.ok).length;
export const failedIn = ({ checks }: Outcome): number => checks.filter((c) => !c.ok).length;
