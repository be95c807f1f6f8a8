/** Choices that can be made again: the same seed makes the same ones. */
import { chanceOf } from '../support/chance';

export class Chance {
  readonly #next: () => number;

  constructor(seed: number) {
    this.#next = chanceOf(seed);
  }

  /** A whole number from 0 up to 2³² − 1. */
  word = (): number => this.#next() * 2 ** 32;

  /** From 0 up to `end` − 1. */
  below(end: number): number {
    return this.word() % end;
  }

  /** One time in `times`. */
  oneIn(times: number): boolean {
    return this.below(times) === 0;
  }

  one<const T>(of: readonly [T, ...T[]]): T {
    return of[this.below(of.length)] ?? of[0];
  }

  /** One of them, or undefined when there is none. */
  any<T>(of: Iterable<T>): T | undefined {
    const all = [...of];
    return all[this.below(Math.max(1, all.length))];
  }

  shuffled<T>(of: readonly T[]): readonly T[] {
    const all = [...of];
    for (let i = all.length - 1; i > 0; i--) {
      const other = this.below(i + 1);
      [all[i], all[other]] = [all[other] as T, all[i] as T];
    }
    return all;
  }
}
