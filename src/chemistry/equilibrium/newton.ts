/**
 * Newton's equations of a liquor that is nearly in equilibrium, or far from it. Unknown are the logarithms λ of the free
 * component activities and, from near on, the surroundings y of the species:
 *   H dλ + P dy = g (balances), dy − Q dλ − R dy = r (surroundings are what the species make of them),
 * H = Σ n ν ν, symmetric. So λ is written by y, dλ = u − V dy with u = H⁻¹g and V = H⁻¹P, and (1 − R + Q V) dy = r + Q u.
 */
import { byStrength, kilogramsPerMole, writeWaterSlope } from './activity';
import type { Assemblage } from './assemblage';
import { factorise, solveBy } from './cholesky';
import { eliminate } from './eliminate';
import { add, at } from './floats';
import { strengthAt, waterAt } from './surroundings';
import type { System } from './system';

/** What Newton's equations are written from. */
export type Place = {
  readonly now: Assemblage;
  readonly waterIsCounted: boolean;
  /** mol/kg and mol of every species. */
  readonly molality: Float64Array;
  readonly moles: Float64Array;
  /** The surroundings that coefficients are worked out in, those that the species make, and their difference. */
  readonly around: Float64Array;
  readonly made: Float64Array;
  readonly lack: Float64Array;
  /** What the balance of each free component lacks, mol. */
  readonly gap: Float64Array;
};

/** Room to work in is kept from step to step and from point to point. */
export class Newton {
  /** Change of the free λ and of the surroundings. */
  readonly step: Float64Array;
  readonly stepAround: Float64Array;
  readonly #system: System;
  /** Unknowns among the surroundings: ln kg, the last, only where water is counted. */
  #unknown = 0;
  readonly #last: number;
  readonly #h: Float64Array;
  /** P, then V, column after column. */
  readonly #p: Float64Array;
  readonly #q: Float64Array;
  readonly #r: Float64Array;
  readonly #next: Float64Array;
  readonly #waterSlope: Float64Array;
  /** Of one species: how its ln n rises with the surroundings, and what it adds to them as ln n rises; only what is not nought. */
  readonly #feels: Entries;
  readonly #adds: Entries;

  constructor(system: System) {
    const [n, size] = [system.components.length, system.feeling.size];
    this.#system = system;
    this.#last = size - 1;
    this.step = new Float64Array(n);
    this.stepAround = new Float64Array(size);
    this.#h = new Float64Array(n * n);
    this.#p = new Float64Array(size * n);
    this.#q = new Float64Array(size * n);
    this.#r = new Float64Array(size * size);
    this.#next = new Float64Array(size);
    this.#waterSlope = new Float64Array(system.species.length);
    this.#feels = new Entries(size);
    this.#adds = new Entries(size);
  }

  /** A step of λ alone, coefficients and water held. */
  solveHeld(place: Place): void {
    const f = place.now.free.length;
    this.#h.fill(0, 0, f * f);
    for (let j = 0; j < place.moles.length; j++) this.#addToH(place, j);
    factorise(this.#h, f);
    this.step.set(place.gap);
    solveBy(this.#h, this.step, f);
    this.stepAround.fill(0);
  }

  /** A step of all unknowns. @param follow part of the way that the surroundings go, 1 for Newton's own step */
  solve(place: Place, follow: number): void {
    const f = place.now.free.length;
    this.#unknown = place.waterIsCounted ? this.#last + 1 : this.#last;
    this.stepAround.fill(0);
    this.#write(place, f);
    factorise(this.#h, f);
    this.step.set(place.gap);
    solveBy(this.#h, this.step, f);
    for (let y = 0; y < this.#unknown; y++) solveBy(this.#h, this.#p, f, y * f);
    this.#solveAround(place.lack, f);
    for (let b = 0; b < this.#unknown; b++) {
      const y = at(this.stepAround, b) * follow;
      this.stepAround[b] = y;
      for (let c = 0; c < f; c++) add(this.step, c, -at(this.#p, b * f + c) * y);
    }
  }

  /** (1 − R + Q V) dy = r + Q u, the right side being what the surroundings would be next if they only followed. */
  #solveAround(lack: Float64Array, f: number): void {
    const u = this.#unknown;
    const next = this.#next;
    for (let a = 0; a < u; a++) {
      let right = at(lack, a);
      for (let c = 0; c < f; c++) right += at(this.#q, a * f + c) * at(this.step, c);
      next[a] = right;
      for (let b = 0; b < u; b++) {
        let sum = (a === b ? 1 : 0) - at(this.#r, a * u + b);
        for (let c = 0; c < f; c++) sum += at(this.#q, a * f + c) * at(this.#p, b * f + c);
        this.#r[a * u + b] = sum;
      }
    }
    this.stepAround.set(next.subarray(0, u));
    eliminate(this.#r, this.stepAround, u);
    // Strong liquors lean on their own coefficients so hard that Newton may point to an equilibrium from which the least
    // disturbance leads away. It points against where the surroundings go of themselves: follow them.
    if (at(this.stepAround, strengthAt) * at(next, strengthAt) < 0) this.stepAround.set(next.subarray(0, u));
  }

  #write(place: Place, f: number): void {
    const u = this.#unknown;
    this.#h.fill(0, 0, f * f);
    this.#q.fill(0, 0, u * f);
    this.#r.fill(0, 0, u * u);
    this.#p.fill(0, 0, u * f);
    writeWaterSlope(this.#system, place.made, this.#waterSlope);
    const slopes = byStrength(this.#system.model, at(place.around, strengthAt));
    for (let j = 0; j < place.moles.length; j++) {
      const z = at(this.#system.charge, j);
      this.#describe(place, j, z === 0 ? slopes.neutralSlope : z * z * slopes.ionSlope);
      this.#addToH(place, j);
      this.#addToOthers(place, j, f);
    }
  }

  /** How species j feels and makes its surroundings. */
  #describe({ now, molality }: Place, j: number, byIonicStrength: number): void {
    const { adds, pull } = this.#system.feeling;
    const m = at(molality, j);
    const water = at(now.water, j);
    this.#feels.clear();
    this.#feels.put(strengthAt, -byIonicStrength);
    this.#feels.put(waterAt, water);
    for (let a = pull.starts[j] as number; a < (pull.starts[j + 1] as number); a++)
      this.#feels.put(pull.columns[a] as number, -at(pull.values, a));
    this.#adds.clear();
    for (let a = adds.starts[j] as number; a < (adds.starts[j + 1] as number); a++)
      this.#adds.put(adds.columns[a] as number, at(adds.values, a) * m);
    this.#adds.put(waterAt, at(this.#waterSlope, j) * m);
    if (this.#unknown > this.#last) this.#adds.put(this.#last, -kilogramsPerMole * water * m);
  }

  #addToH({ now, moles }: Place, j: number): void {
    const { starts, columns, values } = now.nu;
    const f = now.free.length;
    const n = at(moles, j);
    for (let a = starts[j] as number; a < (starts[j + 1] as number); a++) {
      const x = at(values, a) * n;
      const row = (columns[a] as number) * f;
      for (let b = starts[j] as number; b <= a; b++)
        add(this.#h, row + (columns[b] as number), x * at(values, b));
    }
  }

  #addToOthers({ now, moles }: Place, j: number, f: number): void {
    const { starts, columns, values } = now.nu;
    const [p, q, feels, adds] = [this.#p, this.#q, this.#feels, this.#adds];
    const counted = this.#unknown > this.#last;
    const n = at(moles, j);
    for (let a = starts[j] as number; a < (starts[j + 1] as number); a++) {
      const c = columns[a] as number;
      const x = at(values, a);
      for (let i = 0; i < feels.count; i++) add(p, feels.place(i) * f + c, x * n * feels.value(i));
      // Moles grow with the water, whatever the species.
      if (counted) add(p, this.#last * f + c, x * n);
      for (let i = 0; i < adds.count; i++) add(q, adds.place(i) * f + c, x * adds.value(i));
    }
    this.#addToR();
  }

  #addToR(): void {
    const [r, feels, adds] = [this.#r, this.#feels, this.#adds];
    for (let i = 0; i < adds.count; i++) {
      const row = adds.place(i) * this.#unknown;
      const m = adds.value(i);
      for (let k = 0; k < feels.count; k++) add(r, row + feels.place(k), m * feels.value(k));
      // Molalities stay as they are while water and moles grow alike; only the water that species hold grows.
      if (adds.place(i) === this.#last) add(r, row + this.#last, m);
    }
  }
}

/** A few numbers and their places. */
class Entries {
  count = 0;
  readonly #places: Int32Array;
  readonly #values: Float64Array;

  constructor(most: number) {
    this.#places = new Int32Array(most);
    this.#values = new Float64Array(most);
  }

  clear(): void {
    this.count = 0;
  }

  put(place: number, value: number): void {
    if (value === 0) return;
    this.#places[this.count] = place;
    this.#values[this.count] = value;
    this.count += 1;
  }

  place(i: number): number {
    return this.#places[i] as number;
  }

  value(i: number): number {
    return at(this.#values, i);
  }
}
