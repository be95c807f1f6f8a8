/** Ten thousand random intentions through `decide` and `fold`: what must hold of a record holds after each of them. */
import { isDeepStrictEqual } from 'node:util';
import { expect, test } from 'vitest';
import { applyAll, fold } from '../../src/ledger/fold';
import { verifyChain } from '../../src/ledger/verify';
import { Chance } from './chance';
import { howMany, seed } from './how-many';
import { wrongAfter } from './invariants';
import { Workshop } from './workshop';

const wanted = howMany.intentions;
const stepsEach = 200;
/** Every so many steps, and at the end, the whole is made anew from its entries. */
const wholeEvery = 50;

type Fault = { readonly step: number; readonly wrong: readonly string[] };

/** The order in which entries arrive, and whether one arrives twice, makes no difference. */
function wrongInWhole({ state, entries }: Workshop, chance: Chance): readonly string[] {
  const anew = applyAll(entries);
  const arrived = chance.shuffled([...entries, ...entries.slice(0, 5)]);
  const half = arrived.slice(0, arrived.length - 20);
  const late = arrived.slice(half.length).reduce(fold, applyAll(half));
  const chain = verifyChain(entries);
  return [
    ...(isDeepStrictEqual(state, anew) ? [] : ['step by step it is not what it is at once']),
    ...(isDeepStrictEqual(applyAll(arrived), anew) ? [] : ['in another order it is another']),
    ...(isDeepStrictEqual(late, anew) ? [] : ['with some entries late it is another']),
    ...(chain.whole ? [] : [`the chain is broken: ${JSON.stringify(chain.why)}`]),
  ];
}

function faultIn(seeds: readonly number[], workshop = new Workshop()): Fault | null {
  for (const [step, seed] of seeds.entries()) {
    const logBefore = workshop.state.log.length;
    let wrong: readonly string[];
    try {
      const stepped = workshop.step(seed);
      wrong = wrongAfter(stepped, workshop.state, workshop.entries, logBefore);
      const last = step === seeds.length - 1;
      if (wrong.length === 0 && (last || step % wholeEvery === wholeEvery - 1))
        wrong = wrongInWhole(workshop, new Chance(seed));
    } catch (error) {
      wrong = [`thrown: ${error instanceof Error ? error.stack : String(error)}`];
    }
    if (wrong.length > 0) return { step, wrong };
  }
  return null;
}

/** Leaves out whatever may be left out so that a fault still shows: first much at a time, then step by step. */
function shortest(seeds: readonly number[], found: Fault): { seeds: readonly number[]; fault: Fault } {
  let best = { seeds: seeds.slice(0, found.step + 1), fault: found };
  for (let many = Math.ceil(best.seeds.length / 2); many >= 1; many = Math.floor(many / 2))
    for (let from = 0; from < best.seeds.length; ) {
      const tried = [...best.seeds.slice(0, from), ...best.seeds.slice(from + many)];
      const fault = tried.length > 0 ? faultIn(tried) : null;
      if (fault) best = { seeds: tried.slice(0, fault.step + 1), fault };
      else from += many;
    }
  return best;
}

function told(seeds: readonly number[]): string {
  const workshop = new Workshop();
  return seeds
    .map((seed) => {
      const wish = JSON.stringify(workshop.wish(seed).intention);
      try {
        const { decided } = workshop.step(seed);
        return `${wish} -> ${decided.ok ? 'written' : decided.refusal.code}`;
      } catch {
        return `${wish} -> thrown`;
      }
    })
    .join('\n');
}

/** So many kinds of entries come of it: fewer, and the wishes do not reach what they should. */
const kindsWanted = 34;

test('whatever is wanted, the record balances, holds no less than nothing, and gives no container two fates', () => {
  const chance = new Chance(seed());
  const done = { intentions: 0, entries: 0, kinds: new Set<string>() };
  while (done.intentions < wanted) {
    const seeds = Array.from({ length: stepsEach }, () => chance.word());
    const workshop = new Workshop();
    const fault = faultIn(seeds, workshop);
    if (fault) {
      const least = shortest(seeds, fault);
      expect.fail(
        `${least.fault.wrong.join('\n')}\n\nafter:\n${told(least.seeds)}\n\n${least.seeds.join(' ')}`,
      );
    }
    done.intentions += seeds.length;
    done.entries += workshop.entries.length;
    for (const { body } of workshop.entries) done.kinds.add(body.kind);
  }
  console.log(`${done.intentions} intentions, ${done.entries} entries of ${done.kinds.size} kinds`);
  expect(done.entries).toBeGreaterThan(wanted / 2);
  expect(done.kinds.size).toBeGreaterThanOrEqual(kindsWanted);
});
