/** Forms that survive a reload, a call and an update: every key goes into a draft at once. */
import { useEffect, useRef, useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { readNumber, type Written } from '../quantities/written';
import { useShell } from './shell';
import { numberFault, words } from './words';

/** A number as it stands in a form: as typed, with the unit chosen. */
export const Typed = z.object({ typed: z.string(), unit: z.string() });
export type Typed = z.infer<typeof Typed>;
export const typed = (unit: string): Typed => ({ typed: '', unit });

export type Form<T> = {
  readonly value: T;
  /** Changes some fields; kept at once. */
  readonly change: (change: Partial<T>) => void;
  /** Drops the draft: it was written into the record, or given up. */
  readonly done: () => void;
  /** It opened with what an earlier visit had left. */
  readonly restored: boolean;
  /** Empties it, and drops the draft. */
  readonly reset: () => void;
  /** What stands in it at this moment, also between two drawings of the screen. */
  readonly latest: () => T;
};

/** A form with the draft it left behind, or `empty`. @param name names the form in this record */
export function useForm<S extends z.ZodMiniType<object>>(
  name: string,
  schema: S,
  empty: () => z.infer<S>,
): Form<z.infer<S>> {
  const { draft, changedElsewhere } = useShell();
  const [left, setLeft] = useState(() => draft.read(name, schema));
  const [value, setValue] = useState<z.infer<S>>(() => left ?? empty());
  const latest = useRef(value);
  const show = (shown: z.infer<S>): void => {
    latest.current = shown;
    setValue(shown);
  };
  const takeOver = (): void => {
    changedElsewhere.value = null;
    const there = draft.read(name, schema);
    setLeft(there);
    show(there ?? empty());
  };
  useEffect(() => {
    const stop = draft.watch(name, (there) => {
      changedElsewhere.value = { there, takeOver };
    });
    return () => {
      stop();
      changedElsewhere.value = null;
    };
  }, [name]);
  const change = (part: Partial<z.infer<S>>): void => {
    latest.current = { ...latest.current, ...part };
    // Whoever types here has seen it; the other window is told of this.
    if (changedElsewhere.peek()?.there === 'typed') changedElsewhere.value = null;
    draft.keep(name, latest.current);
    setValue(latest.current);
  };
  const done = (): void => draft.drop(name);
  const reset = (): void => {
    done();
    setLeft(null);
    show(empty());
  };
  return { value, change, done, restored: left !== null, reset, latest: () => latest.current };
}

/** A number read from a form: written, empty, or wrong with the words to say so. */
export type FieldRead<U extends string> =
  | { readonly state: 'written'; readonly written: Written<U> }
  | { readonly state: 'empty' }
  | { readonly state: 'wrong'; readonly fault: string };

type Limits = { readonly most?: number; readonly aboveZero?: boolean };

/** @param limits `most` in the unit typed; `aboveZero` refuses 0 */
export function readTyped<U extends string>(field: Typed, limits: Limits = {}): FieldRead<U> {
  const read = readNumber(field.typed);
  if (!read.ok)
    return read.failure.code === 'empty'
      ? { state: 'empty' }
      : { state: 'wrong', fault: numberFault(read.failure) };
  const value = Number(read.value);
  if (limits.aboveZero && value === 0) return { state: 'wrong', fault: words.number.zero };
  if (limits.most !== undefined && value > limits.most)
    return { state: 'wrong', fault: words.number.tooMuch(String(limits.most), field.unit) };
  return { state: 'written', written: { value: read.value, unit: field.unit as U } };
}

/** The fault to show at a field: what is wrong with it, or that it is missing once the person has tried to go on. */
export function faultOf(read: FieldRead<string>, tried: boolean): string | undefined {
  if (read.state === 'wrong') return read.fault;
  return read.state === 'empty' && tried ? words.number.missing : undefined;
}
