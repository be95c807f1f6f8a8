/**
 * Before a waste goes to land (40 CFR 268): the codes that it had when it arose say what it must come down to, whatever it has
 * become since. Diluting it is no way there.
 */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { rcra, type ToxicityCode, toxicityCodes } from '../../reference/rcra-tables';
import { type Candidate, type Ground, standingOf } from '../candidate';
import { cited } from '../cited';
import { type Element, type Levels, levelElements } from '../element-levels';
import { finer } from '../none-found';

export type LandDisposal = {
  /** Codes at the point where the waste arose, of what it was made from as well. */
  readonly originCodes: readonly string[];
  /** Waste water has less than 1 % of organic carbon and less than 1 % of suspended solids. */
  readonly form: 'waste water' | 'other';
  /** Of waste water all that is in it; of all else what is in the extract of the leaching test. */
  readonly measured: Levels<'mg/L'>;
  /** What may be in it and nobody determined, or only of a part. */
  readonly open: readonly Element[];
  /** Of these a laboratory found none down to their high end. */
  readonly noneFound?: ReadonlySet<Figure>;
};

type Rule = 'landDisposal' | 'underlying' | 'deactivate';
const made = (
  code: string,
  standing: Candidate['standing'],
  rule: Rule,
  { grounds = [], lacks = [] }: Partial<Pick<Candidate, 'grounds' | 'lacks'>> = {},
): Candidate => ({ scheme: 'rcra-ldr', code, standing, citation: cited(rcra.rules[rule]), grounds, lacks });

const isToxicity = (code: string): code is ToxicityCode => toxicityCodes.some((one) => one === code);
const isCharacteristic = (code: string): boolean => /^D\d{3}$/.test(code);

/** null: there is none. */
export function standardOf(element: Element, form: LandDisposal['form']): Figure<'mg/L'> | null {
  const { values, source, unit } = rcra.landDisposal;
  const row = values[element];
  if (!row) return null;
  const value = form === 'waste water' ? row.wasteWater : row.other;
  const sentence = `Standard for ${element}, ${form === 'waste water' ? 'waste water' : 'in the extract'}`;
  return constant(
    `rcra/land-disposal/${element}/${form}`,
    sentence,
    { value, unit, uncertainty: '0', source, status: row.status },
    unit,
  );
}

/** Elements that the origin itself gives a standard, each with the code it has it from; of a listed code with its own name. */
function ownElements(codes: readonly string[]): ReadonlyMap<Element, string> {
  return new Map(
    codes.flatMap((code): [Element, string][] => {
      if (isToxicity(code)) return [[rcra.toxicity[code].element as Element, code]];
      return (rcra.landDisposal.listed[code]?.elements ?? []).map((e) => [e as Element, `${code} ${e}`]);
    }),
  );
}

function heldAgainst(element: Element, code: string, rule: Rule, waste: LandDisposal): Candidate | null {
  const limit = standardOf(element, waste.form);
  const figure = waste.measured.get(element);
  if (!limit) return null;
  const asked = waste.form === 'waste water' ? element : `TCLP of ${element}`;
  if (!figure) {
    return rule === 'landDisposal' || waste.open.includes(element)
      ? made(code, 'open', rule, { lacks: [asked] })
      : null;
  }
  const grounds: readonly Ground[] = [{ figure, limit }];
  // At the standard it is met: only what is above fails.
  if (figure.high.gt(limit.value))
    return waste.noneFound?.has(figure)
      ? made(code, 'open', rule, { grounds, lacks: [finer(asked, limit)] })
      : made(code, 'fires', rule, { grounds });
  if (waste.open.includes(element)) return made(code, 'open', rule, { grounds, lacks: [element] });
  return standingOf({ figure, limit }) === null ? null : made(code, 'close', rule, { grounds });
}

/** What a code asks for besides numbers, or what this book does not hold of it. */
function besides(code: string): Candidate | null {
  if (['D001', 'D002', 'D003'].includes(code)) return made(code, 'judgement', 'deactivate');
  const listed = rcra.landDisposal.listed[code];
  if (listed) return made(code, 'open', 'landDisposal', { lacks: [listed.besides] });
  return isToxicity(code) ? null : made(code, 'open', 'landDisposal', { lacks: [`standard of ${code}`] });
}

/**
 * `fires`: above the standard. Without a code of origin nothing is held against anything. Not to be asked for the waste of a
 * very small quantity generator, which is outside these rules.
 */
export function landDisposal(waste: LandDisposal): readonly Candidate[] {
  const codes = [...new Set(waste.originCodes)].sort();
  const own = ownElements(codes);
  const underlying = codes.some(isCharacteristic)
    ? levelElements.filter((e) => !own.has(e) && rcra.landDisposal.values[e]?.underlying !== false)
    : [];
  return [
    ...codes.map(besides),
    ...[...own].map(([element, code]) => heldAgainst(element, code, 'landDisposal', waste)),
    ...underlying.map((element) => heldAgainst(element, `UTS ${element}`, 'underlying', waste)),
  ].filter((found) => found !== null);
}
