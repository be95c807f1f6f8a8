/** Whether two states tell the same, down to the working of every figure. */
import Decimal from 'decimal.js';

const known = new WeakMap<object, string>();

/** Names that were given to what things are made of. */
const names = new Map<string, string>();

function nameOf(made: string): string {
  const name = names.get(made) ?? `#${names.size}`;
  names.set(made, name);
  return name;
}

/** Slopes and inputs of a figure follow from its formula and its ends. */
const followsFromOthers = new Set(['slopes', 'inputs']);

function parts(value: object): readonly unknown[] {
  if (value instanceof Map || value instanceof Set) return [value.constructor.name, ...value];
  if (Array.isArray(value)) return ['[]', ...value];
  const told = Object.entries(value).filter(
    ([key, part]) => part !== undefined && typeof part !== 'function' && !followsFromOthers.has(key),
  );
  return ['{}', ...told];
}

/** The same name for the same, each part named once: a working is made of thousands of steps. */
function named(value: unknown): string {
  if (Decimal.isDecimal(value)) return `d${value}`;
  if (typeof value !== 'object' || value === null) return `${typeof value} ${value}`;
  const before = known.get(value);
  if (before !== undefined) return before;
  const name = nameOf(parts(value).map(named).join('\n'));
  known.set(value, name);
  return name;
}

/** As much of it as a person wants to read who looks for what differs. */
function shortly(value: unknown, depth = 4): unknown {
  if (Decimal.isDecimal(value)) return value.toString();
  if (typeof value !== 'object' || value === null) return value;
  if ('sentence' in value && 'slopes' in value) {
    const { sentence, value: much, low, high, unit } = value as Record<string, unknown>;
    return `${sentence}: ${much} ${unit} (${low} to ${high}), working ${named(value)}`;
  }
  if (depth === 0) return named(value);
  const [of, ...all] = parts(value);
  return of === '{}'
    ? Object.fromEntries(
        (all as readonly [string, unknown][]).map(([key, part]) => [key, shortly(part, depth - 1)]),
      )
    : all.map((part) => shortly(part, depth - 1));
}

type Telling = Iterable<readonly [string, unknown]>;

/** What one tells and the other does not, or otherwise; nothing where they tell the same. */
export function differences(tells: Telling, alsoTells: Telling): readonly string[] {
  const others = new Map(alsoTells);
  const differing: string[] = [];
  let count = 0;
  for (const [name, value] of tells) {
    count += 1;
    const other = others.get(name);
    if (others.has(name) && named(value) === named(other)) continue;
    const texts = [value, others.has(name) ? other : 'is not told'].map((one) =>
      JSON.stringify(shortly(one)),
    );
    differing.push(`${name}:\n${texts.join('\n')}`);
  }
  return count === others.size ? differing : [...differing, `${count} and ${others.size} are told`];
}
