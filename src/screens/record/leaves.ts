/** What an entry says, taken apart into single statements, each with the way to it; and the body put together again. */
import { PlainBody } from '../../ledger/entries/body';

export type Path = readonly (string | number)[];

/** A written quantity, or one text. */
export type Leaf =
  | { readonly is: 'quantity'; readonly path: Path; readonly value: string; readonly unit: string }
  | { readonly is: 'text'; readonly path: Path; readonly value: string };

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const isQuantity = (value: unknown): value is { readonly value: string; readonly unit: string } =>
  isObject(value) &&
  typeof value.value === 'string' &&
  typeof value.unit === 'string' &&
  Object.keys(value).length === 2;

/** What a hand drew says nothing in words: a thousand numbers, shown as a picture. */
const drawn = new Set(['strokes', 'width', 'height']);
const isOfDrawing = (key: string, inside: Readonly<Record<string, unknown>>): boolean =>
  'strokes' in inside && drawn.has(key);

/** Every statement of a body in its order, without the kind and the version of its shape. */
export function leavesOf(value: unknown, path: Path = []): readonly Leaf[] {
  if (isQuantity(value)) return [{ is: 'quantity', path, value: value.value, unit: value.unit }];
  if (Array.isArray(value)) return value.flatMap((one, at) => leavesOf(one, [...path, at]));
  if (isObject(value))
    return Object.entries(value).flatMap(([key, one]) =>
      (path.length === 0 && (key === 'kind' || key === 'v')) || isOfDrawing(key, value)
        ? []
        : leavesOf(one, [...path, key]),
    );
  return value === null || value === undefined ? [] : [{ is: 'text', path, value: String(value) }];
}

export const keyOf = (path: Path): string => path.join('.');

/** What stands at a path; undefined when nothing does. */
export const at = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((inside, key) => (isObject(inside) ? inside[key as string] : undefined), value);

/** A copy with another value at a path; undefined takes it out. */
export function withAt(value: unknown, path: Path, put: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return put;
  if (Array.isArray(value)) return value.map((one, i) => (i === key ? withAt(one, rest, put) : one));
  if (!isObject(value)) return value;
  if (rest.length === 0 && put === undefined) {
    const { [key]: _, ...others } = value;
    return others;
  }
  return { ...value, [key]: withAt(value[key], rest, put) };
}

const fits = (body: unknown): boolean => PlainBody.safeParse(body).success;

const families: readonly (readonly string[])[] = [
  ['L', 'mL', 'US gal'],
  ['g', 'kg', 'mg', 'lb'],
  ['g/L', 'mg/L'],
  ['kg/L', 'g/mL'],
];

/** Units that the schema takes in this place, the one written first. */
export function unitsAt(
  body: PlainBody,
  { path, unit }: Extract<Leaf, { is: 'quantity' }>,
): readonly string[] {
  const family = families.find((units) => units.includes(unit)) ?? [unit];
  const others = family.filter((other) => other !== unit && fits(withAt(body, [...path, 'unit'], other)));
  return [unit, ...others];
}

/** Whether a person could have written something else in this place: not a name of a thing, nor one of a few answers. */
const isFree = (body: PlainBody, { path, value }: Leaf): boolean => fits(withAt(body, path, `${value} x`));
const isDay = (value: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(value);

export type Correctable =
  | (Extract<Leaf, { is: 'quantity' }> & { readonly units: readonly string[] })
  | (Extract<Leaf, { is: 'text' }> & { readonly day: boolean; readonly mayGo: boolean });

/** What stands where it does by its hash, or under a hand: another name would be another paper, another signature. */
const fixed = new Set(['files', 'signatures', 'signature']);

/** What of a body a simple form can correct. Answers of a checklist stay: it is withdrawn and gone through again. */
export function correctable(body: PlainBody): readonly Correctable[] {
  if (body.kind === 'checklist-finished' || body.kind === 'paper-made') return [];
  return leavesOf(body).flatMap((leaf): Correctable[] => {
    if (leaf.path.some((key) => fixed.has(String(key)))) return [];
    if (leaf.is === 'quantity') return [{ ...leaf, units: unitsAt(body, leaf) }];
    const day = isDay(leaf.value);
    if (!day && !isFree(body, leaf)) return [];
    return [{ ...leaf, day, mayGo: fits(withAt(body, leaf.path, undefined)) }];
  });
}

/** The body with other values, if it still is one. */
export function withValues(body: PlainBody, values: ReadonlyMap<Path, unknown>): PlainBody | null {
  const changed = [...values].reduce<unknown>((so, [path, value]) => withAt(so, path, value), body);
  const read = PlainBody.safeParse(changed);
  return read.success ? read.data : null;
}

export type Change = { readonly path: Path; readonly was: Leaf | undefined; readonly is: Leaf | undefined };

const textOf = (leaf: Leaf | undefined): string =>
  leaf === undefined ? '' : leaf.is === 'quantity' ? `${leaf.value} ${leaf.unit}` : leaf.value;

/** What differs between two bodies of one kind. */
export function changesBetween(was: unknown, is: unknown): readonly Change[] {
  const before = new Map(leavesOf(was).map((leaf) => [keyOf(leaf.path), leaf]));
  const after = new Map(leavesOf(is).map((leaf) => [keyOf(leaf.path), leaf]));
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): Change[] => {
    const [a, b] = [before.get(key), after.get(key)];
    if (textOf(a) === textOf(b)) return [];
    return [{ path: (b ?? a)?.path ?? [], was: a, is: b }];
  });
}
