/**
 * The way to an equilibrium. With coefficients and water held, it is a concave maximum under linear limits:
 * F(λ) = Σ Tᵢ λᵢ − Σ n(λ) over the logarithms λ of the component activities, ν·λ ≤ ln K for each solid, whose amounts are
 * the multipliers. So there is one answer, and Newton's steps climb to it; once they are near, coefficients and water move
 * in the same steps. A step stops at a solid that becomes saturated, which then joins; a solid whose amount comes out
 * negative leaves. Nothing is handed out that does not close.
 */

import { type Assemblage, assemblages, madeOf } from './assemblage';
import { at } from './floats';
import { Newton } from './newton';
import type { Equilibrium, Solved, Start, Water } from './solve';
import { rowTimes } from './sparse';
import { Stand } from './stand';
import type { Totals } from './substances';
import { strengthAt, waterAt } from './surroundings';
import type { System } from './system';

/** Relative gap at which a balance is closed, a tenth of the 1e-9 that is promised; and how still the coefficients are. */
const closed = 1e-10;
const settled = 1e-9;
/** Only once balances are this near do coefficients move along: far off they would run away. */
const near = 0.3;
/** From here on it is known which solids stay. */
const nearlyClosed = 1e-5;
const nearlySettled = 1e-4;
/** Rounding may leave a solid over its saturation by so much, in ln. */
const hair = 1e-8;
/** Share of all moles by which rounding may leave an amount below nothing. */
const rounding = 1e-13;
/** Species below this share of all moles do not hold a step back. */
const counts = 1e-7;

/** Longest rise of ln(amount) in a step, the part of the way that coefficients go, and how many steps at most. */
export type Pace = { readonly rise: number; readonly follow: number; readonly most: number };

/** Climbs from one start after another, in the same room. */
export class Climb {
  readonly #stand: Stand;
  readonly #newton: Newton;
  readonly #assemblage: (phases: readonly number[]) => Assemblage | undefined;
  /** Solids that have left: they come and go again only when all else is closed, or they might for ever. */
  readonly #left = new Set<number>();

  constructor(readonly system: System) {
    this.#assemblage = assemblages(system);
    this.#stand = new Stand(system, this.#of([]));
    this.#newton = new Newton(system);
  }

  run(totals: Totals, water: Water, start: Start, pace: Pace): Solved {
    const stand = this.#stand;
    stand.begin(totals, water, start, this.#of(start.phases));
    this.#left.clear();
    let held = false;
    for (let count = 1; count <= pace.most; count++) {
      stand.look();
      if (!Number.isFinite(stand.worst) || !Number.isFinite(stand.moved)) break;
      const leaving = this.#leaving();
      if (leaving >= 0) {
        this.#become(stand.now.phases.filter((q) => q !== leaving));
        // With coefficients held the liquor is sure to move off the saturation of what has left.
        held = true;
        continue;
      }
      if (stand.worst < closed && stand.moved < settled) {
        const joining = this.#supersaturated();
        if (joining < 0) return { ok: true, value: this.#answer(count) };
        if (!this.#join(joining)) break;
        continue;
      }
      if (held || stand.far > near) this.#newton.solveHeld(stand);
      else this.#newton.solve(stand, pace.follow);
      held = false;
      this.#stride(pace.rise);
    }
    const component = this.system.components[stand.worstAt];
    return { ok: false, failure: { code: 'not-converged', gap: stand.worst, component } };
  }

  /** The solid whose amount is most below nothing, by more than what the balances lack; −1 for none. */
  #leaving(): number {
    const { now, amounts, sum, far, moved } = this.#stand;
    if (far > near) return -1;
    const early = far > nearlyClosed || moved > nearlySettled;
    let least = -Math.max(far, rounding) * sum;
    let leaving = -1;
    for (const q of now.phases) {
      if (this.system.phases[q]?.held || at(amounts, q) >= least) continue;
      if (early && this.#left.has(q)) continue;
      least = at(amounts, q);
      leaving = q;
    }
    if (leaving >= 0) this.#left.add(leaving);
    return leaving;
  }

  /** The solid that is most supersaturated: one that was so from the start, where no step has met its limit. */
  #supersaturated(): number {
    let least = -hair;
    let joining = -1;
    for (const [q, phase] of this.system.phases.entries()) {
      if (phase.held || this.#stand.now.phases.includes(q)) continue;
      const room = this.#stand.room(q);
      if (room >= least) continue;
      least = room;
      joining = q;
    }
    return joining;
  }

  #join(q: number): boolean {
    return this.#become(inOrder(this.#stand.now.phases, q)) || this.#takePlace(q);
  }

  /** A solid made of others that are there takes the place of the one that it uses up first. */
  #takePlace(q: number): boolean {
    const { now, amounts } = this.#stand;
    const nu = this.system.phases[q]?.nu;
    if (!nu) return false;
    let [least, leaving] = [Number.POSITIVE_INFINITY, -1];
    for (const [i, x] of madeOf(now, nu).entries()) {
      const other = now.phases[i] as number;
      if (x <= 1e-9 || this.system.phases[other]?.held || at(amounts, other) / x >= least) continue;
      least = at(amounts, other) / x;
      leaving = other;
    }
    const without = now.phases.filter((other) => other !== leaving);
    return leaving >= 0 && this.#become(inOrder(without, q));
  }

  #become(phases: readonly number[]): boolean {
    const now = this.#assemblage(phases);
    if (now) this.#stand.become(now);
    return now !== undefined;
  }

  #of(phases: readonly number[]): Assemblage {
    const now = this.#assemblage(phases);
    if (!now) throw new Error('a start with solids that are made of each other');
    return now;
  }

  #stride(rise: number): void {
    const { lambda, around, now } = this.#stand;
    const { step, stepAround } = this.#newton;
    const { part, joining } = this.#howFar(rise);
    for (const [c, k] of now.free.entries()) lambda[k] = at(lambda, k) + part * at(step, c);
    for (let y = 0; y < around.length; y++) {
      const to = at(around, y) + part * at(stepAround, y);
      around[y] = y === strengthAt ? Math.max(to, at(around, y) / 10) : to;
    }
    if (joining >= 0) this.#join(joining);
  }

  /** Not so far that a species that counts grows out of bounds, and not past the saturation of a solid. */
  #howFar(rise: number): { part: number; joining: number } {
    const { now, moles, sum, far } = this.#stand;
    const { step, stepAround } = this.#newton;
    let longest = 0;
    for (let j = 0; j < moles.length; j++) {
      const r = rowTimes(now.nu, j, step);
      if (r > longest && at(moles, j) * Math.exp(Math.min(r, 60)) > counts * sum) longest = r;
    }
    let part = longest > rise ? rise / longest : 1;
    let joining = -1;
    for (const [q, phase] of this.system.phases.entries()) {
      if (phase.held || now.phases.includes(q) || this.#left.has(q)) continue;
      const rate = rowTimes(now.phaseNu, q, step) + at(now.phaseWater, q) * at(stepAround, waterAt);
      const room = this.#stand.room(q);
      if (room - part * rate > -hair || (rate <= 0 && far > nearlyClosed)) continue;
      if (rate > 0) part = Math.max(0, room / rate);
      joining = q;
    }
    return { part, joining };
  }

  #answer(steps: number): Equilibrium {
    const { system } = this;
    const { lambda, around, lnGamma, amounts, moles, now, kilograms } = this.#stand;
    const solids = new Map<string, number>();
    for (const q of now.phases) {
      const phase = system.phases[q];
      if (!phase || phase.id === 'pH') continue;
      // Rounding may have left it a hair below nothing; what is held may be owed.
      solids.set(phase.id, phase.held ? at(amounts, q) : Math.max(at(amounts, q), 0));
    }
    return {
      system,
      pH: -at(lambda, system.components.length - 1) / Math.LN10,
      ionicStrength: at(around, strengthAt),
      water: kilograms,
      waterInAll: this.#stand.waterInAll(),
      waterActivity: Math.exp(at(around, waterAt)),
      moles: moles.slice(),
      lnGamma: lnGamma.slice(),
      solids,
      start: { lnActivity: lambda.slice(), around: around.slice(), phases: now.phases },
      steps,
    };
  }
}

const inOrder = (phases: readonly number[], one: number): number[] => [...phases, one].sort((a, b) => a - b);
