/** Chemical formulas and reactions as the reference data writes them, and molar masses from atomic weights. */
import Decimal from 'decimal.js';
import { type Operand, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { atomicWeights } from '../reference/tables';
import { constant } from './constants';

/** Atoms of each element in a formula. */
export type Composition = ReadonlyMap<string, number>;

type FormulaFailure = {
  readonly code: 'unknown-element' | 'unclosed-bracket' | 'empty';
  readonly at: number;
};

type FormulaRead =
  | { readonly ok: true; readonly value: Composition }
  | { readonly ok: false; readonly failure: FormulaFailure };

const failed = (code: FormulaFailure['code'], at: number): FormulaRead => ({
  ok: false,
  failure: { code, at },
});

/**
 * Atoms in a formula such as "Cu(OH)2", "Cu2(OH)3NO3", "CuSO4·5H2O", "PbO·0.33H2O" or "Cu+2" (a charge at the end is left out).
 * Fails with the place where an element is not in the table of atomic weights or a bracket is not closed.
 */
export function composition(formula: string): FormulaRead {
  const atoms = new Map<string, number>();
  let start = 0;
  for (const part of formula.replace(/[+-]\d*$/, '').split('·')) {
    const lead = /^\d+(\.\d+)?/.exec(part)?.[0] ?? '';
    const failure = addAtoms(part.slice(lead.length), start + lead.length, Number(lead || 1), atoms);
    if (failure) return { ok: false, failure };
    start += part.length + 1;
  }
  return atoms.size === 0 ? failed('empty', 0) : { ok: true, value: atoms };
}

const token = /([A-Z][a-z]?)(\d*)|(\()|(\)(\d*))/y;

function addAtoms(
  text: string,
  start: number,
  lead: number,
  atoms: Map<string, number>,
): FormulaFailure | undefined {
  const levels: Map<string, number>[] = [new Map()];
  const add = (element: string, count: number) => {
    const level = levels[levels.length - 1];
    level?.set(element, (level.get(element) ?? 0) + count);
  };
  let at = 0;
  while (at < text.length) {
    token.lastIndex = at;
    const match = token.exec(text);
    if (!match) return { code: 'unknown-element', at: start + at };
    const [whole, element, count, open] = match;
    if (element !== undefined) {
      if (!(element in atomicWeights)) return { code: 'unknown-element', at: start + at };
      add(element, Number(count || 1));
    } else if (open !== undefined) levels.push(new Map());
    else {
      const inner = levels.length > 1 ? levels.pop() : undefined;
      if (!inner) return { code: 'unclosed-bracket', at: start + at };
      for (const [e, n] of inner) add(e, n * Number(match[5] || 1));
    }
    at += whole.length;
  }
  const [outer, ...unclosed] = levels;
  if (unclosed.length > 0) return { code: 'unclosed-bracket', at: start + text.length };
  for (const [e, n] of outer ?? []) atoms.set(e, (atoms.get(e) ?? 0) + n * lead);
  return undefined;
}

/** Composition of a formula in the reference data, which a correct program has right. */
export function parsed(formula: string): Composition {
  const result = composition(formula);
  if (!result.ok) throw new Error(`formula "${formula}": ${result.failure.code} at ${result.failure.at}`);
  return result.value;
}

/** Atomic weight of an element. */
const atomicWeight = (element: string): Figure<'g/mol'> => {
  const weight = atomicWeights[element];
  if (!weight) throw new Error(`no atomic weight of ${element}`);
  return constant(`atomic-weight/${element}`, `Atomic weight of ${element}`, weight, 'g/mol');
};

const molarMasses = new Map<string, Figure<'g/mol'>>();

/**
 * Molar mass, g/mol, from the standard atomic weights; an element's is its atomic weight.
 * @example molarMass('Ca(OH)2').value // 74.092
 */
export function molarMass(formula: string): Figure<'g/mol'> {
  const known = molarMasses.get(formula);
  if (known) return known;
  const atoms = [...parsed(formula)];
  const [first] = atoms;
  const mass =
    first && atoms.length === 1 && first[1] === 1
      ? { ...atomicWeight(first[0]), sentence: `Molar mass of ${formula}` }
      : {
          ...workedOut({
            sentence: `Molar mass of ${formula}`,
            unit: 'g/mol',
            formula: plus(
              ...atoms.map(([e, n]): Operand => (n === 1 ? atomicWeight(e) : times(n, atomicWeight(e)))),
            ),
          }),
          decimals: 3,
        };
  molarMasses.set(formula, mass);
  return mass;
}

/** A reaction as coefficients: negative for what is used up, positive for what is made. */
export type Reaction = ReadonlyMap<string, number>;

/** Reads "3 Cu + 8 HNO3 -> 3 Cu(NO3)2 + 2 NO + 4 H2O"; remarks in words such as "(hydrous)" are left out. */
export function reaction(text: string): Reaction {
  const [used = '', made = ''] = text.replace(/\(hydrous\)/g, '').split('->');
  const side = (terms: string, sign: 1 | -1): [string, number][] =>
    terms.split(' + ').map((term) => {
      const match = /^(\d+) (.+)$/.exec(term.trim());
      return match ? [match[2] ?? '', sign * Number(match[1])] : [term.trim(), sign];
    });
  return new Map([...side(used, -1), ...side(made, 1)]);
}

/** Moles of `other` that go with one mole of `species`, always positive. */
export function ratio(text: string, other: string, species: string): Decimal {
  const coefficients = reaction(text);
  const [a, b] = [coefficients.get(other), coefficients.get(species)];
  if (a === undefined || b === undefined)
    throw new Error(`${other} and ${species} do not both stand in "${text}"`);
  return new Decimal(a).div(b).abs();
}
