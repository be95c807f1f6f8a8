/** A local rule as a form holds it, what is wrong with it, and what is written of it. */
import * as z from 'zod/mini';
import {
  type AmountRule,
  isAmountRule,
  Law,
  type LocalRule,
  type LocalRuleStated,
  type RuleName,
  type UsualRule,
} from '../../ledger/entries/local-rules';
import { Photos } from '../../ledger/entries/photos';
import type { IntentionOf } from '../../ledger/intention';
import type { StartingPoint } from '../../rules/starting-points';
import { type FieldRead, readTyped, Typed } from '../form';
import { given, givenPhotos, missing } from '../tried';
import { words } from '../words';
import { ruleWords } from './rule-words';
import { saidFaults, saidOf, saidShape } from './said-fields';

const TakenFrom = z.object({ start: z.string(), cite: z.string(), read: z.string(), value: z.string() });

export const RuleFields = z.object({
  amount: Typed,
  allowed: z.enum(['', 'yes', 'no']),
  laws: z.array(Law),
  category: z.string(),
  /** A starting point that was taken over, while its value still stands there. */
  taken: z.nullable(TakenFrom),
  photos: Photos,
  ...saidShape,
});
export type RuleFields = z.infer<typeof RuleFields>;

const ruleNames = Object.keys(ruleWords) as readonly UsualRule[];
export const isRule = (name: string): name is UsualRule => (ruleNames as readonly string[]).includes(name);

const units: Readonly<Record<AmountRule, readonly [string, ...string[]]>> = {
  'storage-days': ['days'],
  'fill-limit': ['%'],
  'inspection-days': ['days'],
  'month-limit': ['kg', 'lb'],
  'on-site-limit': ['kg', 'lb'],
  'near-work-limit': ['L', 'US gal'],
  'near-work-days': ['days'],
  'proof-days': ['days'],
  'retention-years': ['years'],
};

export const unitsOf = (rule: AmountRule): readonly [string, ...string[]] => units[rule];
export const takesAmount = (rule: RuleName): rule is AmountRule => Object.hasOwn(units, rule);

/** Days, walks and years are whole; kilograms and litres need not be. */
const isWhole = (rule: AmountRule): boolean => ['days', 'years'].includes(units[rule][0]);

/** More is a slip of the finger: a hundred years, a thousand tonnes. Source: reasoned. */
const most: Readonly<Record<string, number>> = {
  '%': 100,
  days: 36_525,
  years: 100,
  kg: 1_000_000,
  lb: 2_000_000,
  L: 100_000,
  'US gal': 25_000,
};

export function readAmount(rule: AmountRule, { amount }: RuleFields): FieldRead<string> {
  const limit = most[amount.unit];
  const read = readTyped(amount, { aboveZero: true, ...(limit === undefined ? {} : { most: limit }) });
  return read.state === 'written' && isWhole(rule) && read.written.value.includes('.')
    ? { state: 'wrong', fault: words.number.whole }
    : read;
}

/** As stated before, or empty. */
export function ruleFieldsOf(rule: UsualRule, body: LocalRuleStated | undefined): RuleFields {
  const stated = body?.stated;
  const amount = stated && isAmountRule(stated) ? stated.value : undefined;
  const unit = takesAmount(rule) ? units[rule][0] : '';
  return {
    amount: { typed: amount?.value ?? '', unit: amount?.unit ?? unit },
    allowed: stated?.rule === 'treatment-allowed' ? stated.value : '',
    laws: stated?.rule === 'laws' ? stated.value : [],
    category: stated?.rule === 'generator-category' ? stated.value : '',
    taken: null,
    photos: body?.photos ?? [],
    ...saidOf(body),
  };
}

/** What taking a starting point over puts into the form; the person may still write another name and day. */
export function takenOver(point: StartingPoint, today: string): Partial<RuleFields> {
  const { start, value, unit, cite, source } = point;
  return {
    amount: { typed: value, unit },
    taken: { start, cite, read: source.status, value },
    saidBy: cite,
    saidOn: today,
  };
}

function amountFault(rule: UsualRule, fields: RuleFields): string | undefined {
  if (!takesAmount(rule)) return undefined;
  const read = readAmount(rule, fields);
  if (read.state === 'wrong') return read.fault;
  return read.state === 'empty' ? words.number.missing : undefined;
}

/** @param today calendar day at the workshop, since nobody can have said it later than that */
export function ruleFaults(rule: UsualRule, fields: RuleFields, today: string) {
  const { allowed, laws, category } = fields;
  return {
    amount: amountFault(rule, fields),
    allowed: rule === 'treatment-allowed' && allowed === '' ? words.choice.missing : undefined,
    laws: rule === 'laws' && laws.length === 0 ? words.choice.missing : undefined,
    category: rule === 'generator-category' ? missing(category) : undefined,
    ...saidFaults(fields, today),
  };
}

function statedRule(rule: UsualRule, fields: RuleFields): LocalRule | null {
  if (rule === 'treatment-allowed') return fields.allowed === '' ? null : { rule, value: fields.allowed };
  if (rule === 'laws') return fields.laws.length === 0 ? null : { rule, value: fields.laws };
  if (rule === 'generator-category')
    return fields.category.trim() === '' ? null : { rule, value: fields.category };
  const read = readAmount(rule, fields);
  // The field offers only the units that the rule takes.
  return read.state === 'written' ? ({ rule, value: read.written } as LocalRule) : null;
}

/** The starting point, if the value is still the one that was taken over. */
const takenFrom = ({ taken, amount }: RuleFields): Pick<LocalRuleStated, 'takenFrom'> =>
  taken && taken.value === amount.typed
    ? { takenFrom: { start: taken.start, cite: taken.cite, read: taken.read } }
    : {};

/** Null while the value is not there. */
export function ruleIntention(rule: UsualRule, fields: RuleFields): IntentionOf<'state-local-rule'> | null {
  const stated = statedRule(rule, fields);
  return (
    stated && {
      do: 'state-local-rule',
      stated,
      saidBy: fields.saidBy,
      saidOn: fields.saidOn,
      ...given('document', fields.document),
      ...takenFrom(fields),
      ...givenPhotos(fields.photos),
    }
  );
}
