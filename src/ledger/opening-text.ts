/** An opening as text, to be kept beside the record. */
import Decimal from 'decimal.js';
import type { Opening } from './opening';

/** Raised with every change of what an opening holds, or of how it is worked out. */
const version = 5;

/** Decimals, maps and sets as an object with one member that no body has. */
function told(this: Record<string, unknown>, key: string, value: unknown): unknown {
  const plain = this[key];
  if (plain instanceof Decimal) return { '#decimal': plain.toFixed() };
  if (plain instanceof Map) return { '#map': [...plain] };
  if (plain instanceof Set) return { '#set': [...plain] };
  return value;
}

function understood(_key: string, value: unknown): unknown {
  if (value === null || typeof value !== 'object') return value;
  if ('#decimal' in value) return new Decimal(value['#decimal'] as string);
  if ('#map' in value) return new Map(value['#map'] as [string, unknown][]);
  if ('#set' in value) return new Set(value['#set'] as string[]);
  return value;
}

/** The same JSON in ASCII alone: one letter beyond that makes the reading of all of it several times as slow. */
const inAscii = (json: string): string =>
  json.replace(/[\u0080-\uffff]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);

/**
 * Text of an opening. The entries, by far the most of it, are JSON as it is, which is read fast.
 * @param by what worked it out: another version of the app may work it out otherwise
 */
export const openingText = ({ carried, named, putAway, ...plain }: Opening, by: string): string =>
  inAscii(
    JSON.stringify({
      version,
      by,
      plain,
      carried: JSON.stringify({ carried, named }, told),
      putAway: JSON.stringify(putAway()),
    }),
  );

type Told = {
  readonly version: unknown;
  readonly by: unknown;
  readonly plain: Omit<Opening, 'carried' | 'named' | 'putAway'>;
  readonly carried: string;
  readonly putAway: string;
};

/** The opening of what its text says; null where it is of another version, or says none. @param json that was read of a text as it was kept. @param by as it was kept */
export function openingFrom(json: unknown, by: string): Opening | null {
  const read = json as Told | null;
  if (read?.version !== version || read.by !== by) return null;
  let rows: ReturnType<Opening['putAway']> | undefined;
  const putAway = () => {
    rows ??= JSON.parse(read.putAway) as ReturnType<Opening['putAway']>;
    return rows;
  };
  try {
    return { ...read.plain, ...JSON.parse(read.carried, understood), putAway };
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
