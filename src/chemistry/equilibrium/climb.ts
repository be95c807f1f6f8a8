/**
 * The way to an equilibrium. With activity coefficients held, it is a concave maximum under linear limits:
 * F(λ) = Σ Tᵢ λᵢ − Σ n(λ) over the logarithms λ of the component activities, ν·λ ≤ ln K for each solid, whose amounts are
 * the multipliers. So there is one answer, and Newton's steps climb to it. A step stops at a solid that becomes saturated,
 * which then joins; a solid whose amount comes out negative leaves. Coefficients and water follow after each step, the
 * ionic strength within it. Nothing is handed out that does not close.
 */
import { kilogramsPerMole, type Surroundings, writeActivity } from './activity';
import type { Assemblage } from './assemblage';
import { factorise, solveBy } from './cholesky';
import { add, at } from './floats';
import type { Equilibrium, Solved, Start, Water } from './solve';
import type { Totals } from './substances';
import type { Phase, System } from './system';

/** Relative gap at which a balance is closed, a tenth of the 1e-9 that is promised; and how still the coefficients are. */
const closed = 1e-10;
const settled = 1e-7;
/** Only once balances are this near do coefficients follow: far off they would run away. */
const near = 0.3;
/** From here on it is known which solids stay. */
const nearlyClosed = 1e-5;
/** Water and coefficients may move a solid over its saturation by so much without its coming down, in ln. */
const hair = 1e-8;
/** Species below this share of all moles do not hold a step back. */
const counts = 1e-7;

/** Longest rise of ln(amount) in a step, the part of the way that coefficients follow, and how many steps at most. */
export type Pace = { readonly rise: number; readonly follow: number; readonly most: number };

export class Climb {
  readonly #lambda: Float64Array;
  readonly #totals: Float64Array;
  readonly #molality: Float64Array;
  readonly #moles: Float64Array;
  #lnGamma: Float64Array;
  #next: Float64Array;
  readonly #balance: Float64Array;
  readonly #amounts: Float64Array;
  readonly #gap: Float64Array;
  readonly #step: Float64Array;
  readonly #byStrength: Float64Array;
  readonly #strength: Float64Array;
  readonly #hessian: Float64Array;
  #around: Surroundings;
  #kilograms: number;
  #phases: readonly number[];
  #now: Assemblage;
  /** Sum of all moles, ionic strength of the moles as they are, largest relative gap and where. */
  #sum = 0;
  #worst: number;
  #worstAt = 0;
  #moved = 0;

  constructor(
    readonly system: System,
    readonly remembered: (phases: readonly number[]) => Assemblage | undefined,
    totals: Totals,
    readonly water: Water,
    start: Start,
    readonly pace: Pace,
  ) {
    const [n, m] = [system.components.length, system.species.length];
    this.#lambda = Float64Array.from(start.lnActivity);
    this.#totals = Float64Array.from(system.components, (c) => totals.of.get(c) ?? 0);
    this.#lnGamma = Float64Array.from(start.lnGamma);
    this.#next = new Float64Array(m);
    this.#molality = new Float64Array(m);
    this.#moles = new Float64Array(m);
    this.#balance = new Float64Array(n);
    this.#amounts = new Float64Array(system.phases.length);
    this.#gap = new Float64Array(n);
    this.#step = new Float64Array(n);
    this.#byStrength = new Float64Array(n);
    this.#strength = new Float64Array(n);
    this.#hessian = new Float64Array(n * n);
    this.#around = { ionicStrength: 0, lnWater: start.lnWater, ionSlope: 0, neutralSlope: 0 };
    this.#kilograms = start.kilograms;
    this.#worst = start.near ? 0 : Number.POSITIVE_INFINITY;
    this.#phases = start.phases;
    const now = remembered(start.phases);
    if (!now) throw new Error('a start with solids that are made of each other');
    this.#now = now;
  }

  run(): Solved {
    for (let count = 1; count <= this.pace.most; count++) {
      this.#fixActivities();
      this.#makeSpecies();
      this.#closeBalances();
      this.#followWater();
      this.#writeEquations();
      if (this.#worst < nearlyClosed && this.#moved < 1e-4) {
        if (this.#letLeave()) continue;
        if (this.#worst < closed && this.#moved < settled) {
          if (this.#letJoin()) continue;
          return { ok: true, value: this.#answer(count) };
        }
      }
      if (!Number.isFinite(this.#worst)) break;
      this.#stride();
    }
    const component = this.system.components[this.#worstAt];
    return { ok: false, failure: { code: 'not-converged', gap: this.#worst, component } };
  }

  /** Activities that the solids fix follow the free ones and the water. */
  #fixActivities(): void {
    const { fixed, free, inverse, share } = this.#now;
    const r = this.#phases.length;
    for (let p = 0; p < fixed.length; p++) {
      let sum = 0;
      for (let q = 0; q < r; q++) {
        const phase = this.system.phases[this.#phases[q] as number];
        if (phase) sum += at(inverse, p * r + q) * (phase.lnK - phase.water * this.#around.lnWater);
      }
      for (let c = 0; c < free.length; c++)
        sum -= at(share, p * free.length + c) * at(this.#lambda, free[c] as number);
      this.#lambda[fixed[p] as number] = sum;
    }
  }

  /** Species by mass action, then the coefficients that follow from them, then the species again. */
  #makeSpecies(): void {
    const { species, lnK, water, nu } = this.system;
    const { starts, columns, values } = nu;
    const { lnWater } = this.#around;
    for (let j = 0; j < species.length; j++) {
      let ln = at(lnK, j) + at(water, j) * lnWater - at(this.#lnGamma, j);
      for (let a = starts[j] as number; a < (starts[j + 1] as number); a++)
        ln += at(values, a) * at(this.#lambda, columns[a] as number);
      this.#molality[j] = Math.exp(Math.min(ln, 60));
    }
    this.#moved = this.#worst > near ? Number.POSITIVE_INFINITY : this.#followActivity();
    this.#sum = 0;
    for (let j = 0; j < species.length; j++) {
      const n = at(this.#molality, j) * this.#kilograms;
      this.#moles[j] = n;
      this.#sum += n;
    }
  }

  /** @returns how far the logarithm of anything moved */
  #followActivity(): number {
    const { system } = this;
    const before = this.#around.lnWater;
    this.#around = writeActivity(system, this.#molality, this.#next);
    const { follow } = this.pace;
    if (follow < 1) this.#goPartOfTheWay(follow, before);
    const byWater = this.#around.lnWater - before;
    let moved = Math.abs(byWater);
    for (let j = 0; j < system.species.length; j++) {
      const change = at(this.#lnGamma, j) - at(this.#next, j) + at(system.water, j) * byWater;
      if (change === 0) continue;
      if (Math.abs(change) > moved) moved = Math.abs(change);
      this.#molality[j] = at(this.#molality, j) * Math.exp(change);
    }
    [this.#lnGamma, this.#next] = [this.#next, this.#lnGamma];
    return moved;
  }

  /** Where coefficients lean hard on each other, following them all the way goes to and fro for ever. */
  #goPartOfTheWay(follow: number, lnWaterBefore: number): void {
    for (let j = 0; j < this.#next.length; j++)
      this.#next[j] = at(this.#lnGamma, j) + follow * (at(this.#next, j) - at(this.#lnGamma, j));
    const { lnWater } = this.#around;
    this.#around = { ...this.#around, lnWater: lnWaterBefore + follow * (lnWater - lnWaterBefore) };
  }

  /** What the balances lack over all components: those that solids fix give the amounts of the solids. */
  #closeBalances(): void {
    const { starts, columns, values } = this.system.nu;
    this.#balance.set(this.#totals);
    for (let j = 0; j < this.#moles.length; j++) {
      const n = at(this.#moles, j);
      for (let a = starts[j] as number; a < (starts[j + 1] as number); a++)
        add(this.#balance, columns[a] as number, -at(values, a) * n);
    }
    const { fixed, inverse } = this.#now;
    const r = this.#phases.length;
    for (let q = 0; q < r; q++) {
      let amount = 0;
      for (let p = 0; p < r; p++) amount += at(inverse, p * r + q) * at(this.#balance, fixed[p] as number);
      this.#amounts[this.#phases[q] as number] = amount;
    }
  }

  /** Free water is all water less what species and solids hold. */
  #followWater(): void {
    if (!('moles' in this.water)) return;
    const { water, phases } = this.system;
    let free = this.water.moles;
    for (let j = 0; j < this.#moles.length; j++) free -= at(water, j) * at(this.#moles, j);
    for (const q of this.#phases) free -= (phases[q]?.water ?? 0) * at(this.#amounts, q);
    // While the species are still far off they may claim any part of the water, or all of it.
    if (this.#moved === Number.POSITIVE_INFINITY) return;
    const factor = Math.min(Math.max((free * kilogramsPerMole) / this.#kilograms, 0.8), 1.25);
    if (!Number.isFinite(factor)) return;
    this.#kilograms *= factor;
    this.#moved = Math.max(this.#moved, Math.abs(factor - 1));
  }

  /** Newton's equations over the free components, and how far each balance is from closed. */
  #writeEquations(): void {
    const { free, nu } = this.#now;
    const { starts, columns, values } = nu;
    const { charge } = this.system;
    const { ionSlope, neutralSlope } = this.#around;
    const f = free.length;
    this.#freeTotals();
    this.#hessian.fill(0, 0, f * f);
    this.#byStrength.fill(0, 0, f);
    this.#strength.fill(0, 0, f);
    for (let j = 0; j < this.#moles.length; j++) {
      const n = at(this.#moles, j);
      const z2 = at(charge, j) ** 2;
      const slope = z2 === 0 ? neutralSlope : z2 * ionSlope;
      for (let a = starts[j] as number; a < (starts[j + 1] as number); a++) {
        const c = columns[a] as number;
        const x = at(values, a) * n;
        add(this.#step, c, -x);
        add(this.#gap, c, Math.abs(x));
        add(this.#byStrength, c, x * slope);
        add(this.#strength, c, (x * z2) / (2 * this.#kilograms));
        for (let b = starts[j] as number; b <= a; b++)
          add(this.#hessian, c * f + (columns[b] as number), x * at(values, b));
      }
    }
    this.#worst = 0;
    for (let c = 0; c < f; c++) {
      const gap = Math.abs(at(this.#step, c)) / at(this.#gap, c);
      if (gap <= this.#worst) continue;
      this.#worst = gap;
      this.#worstAt = free[c] as number;
    }
  }

  /** Totals of the free components once the fixed ones are written out, and the sizes they are sums of. */
  #freeTotals(): void {
    const { fixed, free, share } = this.#now;
    for (let c = 0; c < free.length; c++) {
      let total = at(this.#totals, free[c] as number);
      let size = Math.abs(total);
      for (let p = 0; p < fixed.length; p++) {
        const part = at(share, p * free.length + c) * at(this.#totals, fixed[p] as number);
        total -= part;
        size += Math.abs(part);
      }
      this.#step[c] = total;
      this.#gap[c] = Math.max(size, Number.MIN_VALUE);
    }
  }

  /** Takes away the solid whose amount came out most below nothing. */
  #letLeave(): boolean {
    let least = -1e-13 * this.#sum;
    let leaving = -1;
    for (const q of this.#phases) {
      if (this.system.phases[q]?.held || at(this.#amounts, q) >= least) continue;
      least = at(this.#amounts, q);
      leaving = q;
    }
    return leaving >= 0 && this.#become(this.#phases.filter((q) => q !== leaving));
  }

  /** Adds the solid that is most supersaturated: one that was so from the start, where no step has met its limit. */
  #letJoin(): boolean {
    let least = -hair;
    let joining = -1;
    for (const [q, phase] of this.system.phases.entries()) {
      if (phase.held || this.#phases.includes(q)) continue;
      const room = this.#room(phase);
      if (room >= least) continue;
      least = room;
      joining = q;
    }
    return joining >= 0 && this.#become(inOrder(this.#phases, joining));
  }

  /** ln of what is left to saturation. */
  #room(phase: Phase): number {
    let room = phase.lnK - phase.water * this.#around.lnWater;
    for (let k = 0; k < phase.nu.length; k++) room -= at(phase.nu, k) * at(this.#lambda, k);
    return room;
  }

  #become(phases: readonly number[]): boolean {
    const now = this.remembered(phases);
    if (!now) return false;
    this.#phases = phases;
    this.#now = now;
    this.#amounts.fill(0);
    return true;
  }

  /**
   * Newton's step, with the ionic strength moving along: H dλ + p dI = g, dI = ΔI + q·dλ + s dI, solved as
   * dλ = u − v dI with u = H⁻¹g, v = H⁻¹p.
   */
  #stride(): void {
    const { free } = this.#now;
    const f = free.length;
    factorise(this.#hessian, f);
    solveBy(this.#hessian, this.#step, f);
    solveBy(this.#hessian, this.#byStrength, f);
    let [lack, own] = [0, 1];
    const { charge } = this.system;
    const { ionSlope, ionicStrength } = this.#around;
    const following = Number.isFinite(this.#moved) && this.pace.follow === 1;
    if (following) {
      let now = 0;
      for (let j = 0; j < this.#moles.length; j++) {
        const z2 = at(charge, j) ** 2;
        const part = (z2 * at(this.#moles, j)) / (2 * this.#kilograms);
        now += part;
        own -= part * z2 * ionSlope;
      }
      lack = now - ionicStrength;
      for (let c = 0; c < f; c++) {
        lack += at(this.#strength, c) * at(this.#step, c);
        own += at(this.#strength, c) * at(this.#byStrength, c);
      }
    }
    const rise = following && own > 0.1 ? lack / own : 0;
    for (let c = 0; c < f; c++) add(this.#step, c, -at(this.#byStrength, c) * rise);
    const { part, joining } = this.#howFar();
    for (let c = 0; c < f; c++) add(this.#lambda, free[c] as number, part * at(this.#step, c));
    this.#predictActivity(part * rise);
    if (joining >= 0) this.#become(inOrder(this.#phases, joining));
  }

  #predictActivity(rise: number): void {
    const { charge } = this.system;
    const { ionSlope, neutralSlope } = this.#around;
    for (let j = 0; j < this.#lnGamma.length; j++) {
      const z2 = at(charge, j) ** 2;
      add(this.#lnGamma, j, -rise * (z2 === 0 ? neutralSlope : z2 * ionSlope));
    }
  }

  /** Not so far that a species that counts grows out of bounds, and not past the saturation of a solid. */
  #howFar(): { part: number; joining: number } {
    const { starts, columns, values } = this.#now.nu;
    let longest = 0;
    for (let j = 0; j < this.#moles.length; j++) {
      let r = 0;
      for (let a = starts[j] as number; a < (starts[j + 1] as number); a++)
        r += at(values, a) * at(this.#step, columns[a] as number);
      if (r > longest && at(this.#moles, j) * Math.exp(Math.min(r, 60)) > counts * this.#sum) longest = r;
    }
    let part = longest > this.pace.rise ? this.pace.rise / longest : 1;
    let joining = -1;
    for (const [q, phase] of this.system.phases.entries()) {
      if (phase.held || this.#phases.includes(q)) continue;
      const rate = this.#rate(q);
      const room = this.#room(phase);
      if (room - part * rate > -hair || (rate <= 0 && this.#worst > nearlyClosed)) continue;
      if (rate > 0) part = Math.max(0, room / rate);
      joining = q;
    }
    return { part, joining };
  }

  #rate(q: number): number {
    const { starts, columns, values } = this.#now.phaseNu;
    let rate = 0;
    for (let a = starts[q] as number; a < (starts[q + 1] as number); a++)
      rate += at(values, a) * at(this.#step, columns[a] as number);
    return rate;
  }

  #answer(steps: number): Equilibrium {
    const { system, water } = this;
    let waterInAll = this.#kilograms / kilogramsPerMole;
    for (let j = 0; j < system.species.length; j++) waterInAll += at(system.water, j) * at(this.#moles, j);
    const solids = new Map<string, number>();
    for (const q of this.#phases) {
      const phase = system.phases[q];
      if (!phase) continue;
      waterInAll += phase.water * at(this.#amounts, q);
      if (phase.id !== 'pH') solids.set(phase.id, at(this.#amounts, q));
    }
    return {
      system,
      pH: -at(this.#lambda, system.components.length - 1) / Math.LN10,
      ionicStrength: this.#around.ionicStrength,
      water: this.#kilograms,
      waterInAll: 'moles' in water ? water.moles : waterInAll,
      waterActivity: Math.exp(this.#around.lnWater),
      moles: this.#moles,
      lnGamma: this.#lnGamma,
      solids,
      start: {
        lnActivity: this.#lambda,
        lnGamma: this.#lnGamma,
        lnWater: this.#around.lnWater,
        kilograms: this.#kilograms,
        phases: this.#phases,
        near: true,
      },
      steps,
    };
  }
}

const inOrder = (phases: readonly number[], one: number): number[] => [...phases, one].sort((a, b) => a - b);
