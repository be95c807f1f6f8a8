/**
 * Where a climb stands: the activities of the components, the surroundings, the solids that are there, and all that follows
 * from them, down to what each balance lacks.
 */
import { kilogramsPerMole, writeActivity, writeSurroundings } from './activity';
import type { Assemblage } from './assemblage';
import { add, at } from './floats';
import type { Place } from './newton';
import type { Start, Water } from './solve';
import { rowTimes } from './sparse';
import type { Totals } from './substances';
import { strengthAt, waterAt } from './surroundings';
import type { System } from './system';

/** ln of a molality that no liquor has: further than this an amount does not run away. */
const beyond = 60;
/** A balance is measured by its own terms, but not finer than this share of all that it is summed from: rounding hides the rest. */
const ownShare = 1e-4;

export class Stand implements Place {
  readonly lambda: Float64Array;
  readonly around: Float64Array;
  readonly made: Float64Array;
  readonly lack: Float64Array;
  readonly molality: Float64Array;
  readonly moles: Float64Array;
  readonly lnGamma: Float64Array;
  /** What each free component lacks, mol, and each phase's amount, mol. */
  readonly gap: Float64Array;
  readonly amounts: Float64Array;
  now: Assemblage;
  /** mol of all water; undefined where the kilograms stay as they are. */
  allWater: number | undefined;
  kilograms = 0;
  /** Sum of all moles; how far the logarithm of anything would move. */
  sum = 0;
  moved = 0;
  /** Largest gap of a balance as a share of all that it is summed from; of the terms of its own component, and whose that is. */
  far = 0;
  worst = 0;
  worstAt = 0;
  readonly #totals: Float64Array;
  readonly #left: Float64Array;
  readonly #sizes: Float64Array;

  /** Room to work in, which is kept from point to point. @param none the assemblage without solids */
  constructor(
    readonly system: System,
    none: Assemblage,
  ) {
    const [n, m, size] = [system.components.length, system.species.length, system.feeling.size];
    this.lambda = new Float64Array(n);
    this.around = new Float64Array(size);
    this.made = new Float64Array(size);
    this.lack = new Float64Array(size);
    this.molality = new Float64Array(m);
    this.moles = new Float64Array(m);
    this.lnGamma = new Float64Array(m);
    this.gap = new Float64Array(n);
    this.amounts = new Float64Array(system.phases.length);
    this.#totals = new Float64Array(n);
    this.#left = new Float64Array(n);
    this.#sizes = new Float64Array(n);
    this.now = none;
  }

  get waterIsCounted(): boolean {
    return this.allWater !== undefined;
  }

  begin(totals: Totals, water: Water, start: Start, now: Assemblage): void {
    for (const [k, c] of this.system.components.entries()) this.#totals[k] = totals.of.get(c) ?? 0;
    this.lambda.set(start.lnActivity);
    this.around.set(start.around);
    this.allWater = 'moles' in water ? water.moles : undefined;
    if ('kilograms' in water) this.around[this.around.length - 1] = Math.log(water.kilograms);
    this.become(now);
  }

  become(now: Assemblage): void {
    this.now = now;
    this.amounts.fill(0);
  }

  /** Works out everything that follows from the activities and the surroundings. */
  look(): void {
    this.kilograms = Math.exp(at(this.around, this.system.feeling.size - 1));
    this.#fixActivities();
    this.#makeSpecies();
    this.#balance();
    this.#weighSolids();
    this.#measureGaps();
    this.#compareSurroundings();
  }

  /** ln of what is left to saturation of a phase. */
  room(q: number): number {
    const phase = this.system.phases[q];
    if (!phase) return Number.POSITIVE_INFINITY;
    let room = phase.lnK - phase.water * at(this.around, waterAt);
    for (let k = 0; k < phase.nu.length; k++) room -= at(phase.nu, k) * at(this.lambda, k);
    return room;
  }

  /** Activities that the solids fix follow the free ones and the water. */
  #fixActivities(): void {
    const { fixed, free, inverse, share, phases } = this.now;
    const r = phases.length;
    const lnWater = at(this.around, waterAt);
    for (let p = 0; p < fixed.length; p++) {
      let sum = 0;
      for (let q = 0; q < r; q++) {
        const phase = this.system.phases[phases[q] as number];
        if (phase) sum += at(inverse, p * r + q) * (phase.lnK - phase.water * lnWater);
      }
      for (let c = 0; c < free.length; c++)
        sum -= at(share, p * free.length + c) * at(this.lambda, free[c] as number);
      this.lambda[fixed[p] as number] = sum;
    }
  }

  #makeSpecies(): void {
    const { lnK, water, nu, species } = this.system;
    const lnWater = at(this.around, waterAt);
    writeActivity(this.system, this.around, this.lnGamma);
    this.sum = 0;
    for (let j = 0; j < species.length; j++) {
      const ln = at(lnK, j) + at(water, j) * lnWater - at(this.lnGamma, j) + rowTimes(nu, j, this.lambda);
      const m = Math.exp(Math.min(ln, beyond));
      const n = m * this.kilograms;
      this.molality[j] = m;
      this.moles[j] = n;
      this.sum += n;
    }
    writeSurroundings(this.system, this.molality, this.made);
  }

  /** What solution leaves of every component, and the size of the terms of which that is the sum. */
  #balance(): void {
    const { starts, columns, values } = this.system.nu;
    this.#left.set(this.#totals);
    for (let k = 0; k < this.#totals.length; k++) this.#sizes[k] = Math.abs(at(this.#totals, k));
    for (let j = 0; j < this.moles.length; j++) {
      const n = at(this.moles, j);
      for (let a = starts[j] as number; a < (starts[j + 1] as number); a++) {
        const k = columns[a] as number;
        const x = at(values, a) * n;
        add(this.#left, k, -x);
        add(this.#sizes, k, Math.abs(x));
      }
    }
  }

  /** What solution leaves of the components that solids fix makes the amounts of the solids. */
  #weighSolids(): void {
    const { fixed, inverse, phases } = this.now;
    const r = phases.length;
    for (let q = 0; q < r; q++) {
      let amount = 0;
      for (let p = 0; p < r; p++) amount += at(inverse, p * r + q) * at(this.#left, fixed[p] as number);
      this.amounts[phases[q] as number] = amount;
    }
  }

  #measureGaps(): void {
    const { fixed, free, share } = this.now;
    this.far = 0;
    this.worst = 0;
    for (let c = 0; c < free.length; c++) {
      const k = free[c] as number;
      let gap = at(this.#left, k);
      let size = at(this.#sizes, k);
      for (let p = 0; p < fixed.length; p++) {
        const part = at(share, p * free.length + c);
        if (part === 0) continue;
        gap -= part * at(this.#left, fixed[p] as number);
        size += Math.abs(part) * at(this.#sizes, fixed[p] as number);
      }
      this.gap[c] = gap;
      this.far = Math.max(this.far, Math.abs(gap) / Math.max(size, Number.MIN_VALUE));
      const relative = Math.abs(gap) / Math.max(at(this.#sizes, k), ownShare * size, Number.MIN_VALUE);
      // What is not a number is worse than anything.
      if (relative <= this.worst) continue;
      this.worst = relative;
      this.worstAt = k;
    }
  }

  #compareSurroundings(): void {
    const last = this.system.feeling.size - 1;
    this.moved = 0;
    for (let y = 0; y < last; y++) this.lack[y] = at(this.made, y) - at(this.around, y);
    this.lack[last] =
      this.allWater === undefined
        ? 0
        : ((this.allWater - this.#boundWater()) * kilogramsPerMole) / this.kilograms - 1;
    // The square root of a thin liquor's ionic strength moves with its relative change.
    const strength = at(this.lack, strengthAt) / Math.sqrt(Math.max(at(this.made, strengthAt), 1e-12));
    this.moved = Math.abs(strength);
    for (let y = waterAt; y <= last; y++) this.moved = Math.max(this.moved, Math.abs(at(this.lack, y)));
  }

  /** mol of water: free, in species and in solids. */
  waterInAll(): number {
    return this.allWater ?? this.kilograms / kilogramsPerMole + this.#boundWater();
  }

  /** mol of water that species and solids hold. */
  #boundWater(): number {
    const { water, phases } = this.system;
    let bound = 0;
    for (let j = 0; j < this.moles.length; j++) bound += at(water, j) * at(this.moles, j);
    for (const q of this.now.phases) bound += (phases[q]?.water ?? 0) * at(this.amounts, q);
    return bound;
  }
}
