/**
 * The spot test for silver: three looks that must all fit (a white curd with chloride, gone in ammonia, back in acid), with
 * what tells them from lead, mercury(I), a dirty plate and tap water. What each sight speaks for stands in
 * `reference/silver-check.json` with its source; here stands how they are made and what they come to together.
 */
import { type Look, type LookName, type Seen, silverCheck } from '../reference/silver-check-tables';
import { minutesAfter } from './stated-time';

export type { Look, LookName, Seen };

/** One look as it was made. `at`: UTC with milliseconds. */
export type Looked = { readonly look: string; readonly seen: string; readonly at: string };

export type SilverOutcome = 'silver' | 'not-silver' | 'not-conclusive';

export type Verdict = {
  readonly outcome: SilverOutcome;
  /** What was seen, in the order of the test, with what it speaks for. */
  readonly speaks: readonly { readonly look: Look; readonly seen: Seen }[];
  /** Looks that were due and not made. */
  readonly unlooked: readonly Look[];
  /** What takes the worth from the test: sights that leave it open. */
  readonly doubts: readonly { readonly look: Look; readonly seen: Seen }[];
};

/** In the order in which they are made. */
export const silverLooks: readonly Look[] = silverCheck.looks;

export const lookOf = (name: string): Look | undefined => silverLooks.find(({ look }) => look === name);

/** What was seen at a look; undefined where it was not made, or says something that the test does not know. */
export const sightOf = (looks: readonly Looked[], name: LookName): Seen | undefined => {
  const told = looks.findLast(({ look }) => look === name);
  return lookOf(name)?.seen.find(({ seen }) => seen === told?.seen);
};

/** Where ammonia goes in, and the looks that are made with it in the well. */
export const withAmmonia: readonly LookName[] = ['alkaline', 'ammonia', 'colour', 'strip', 'acid'];

const isWithAmmonia = ({ look }: Pick<Look, 'look'>): boolean => withAmmonia.includes(look);

/**
 * The looks that are due after what was seen so far: nothing with chloride ends it, and so does a white that all goes into
 * hot water, so that no ammonia is opened for lead.
 */
export function due(looks: readonly Looked[]): readonly Look[] {
  const until = (name: LookName): readonly Look[] =>
    silverLooks.slice(0, silverLooks.findIndex(({ look }) => look === name) + 1);
  if (sightOf(looks, 'chloride')?.seen === 'none') return until('chloride');
  if (sightOf(looks, 'hot-water')?.seen === 'gone') return until('hot-water');
  return silverLooks;
}

type Fits = Partial<Readonly<Record<LookName, readonly string[]>>>;

/** Every line must hold. A known silver solution is wanted for a no alone: a yes has shown that the chloride finds silver. */
const silver: Fits = {
  before: ['clear'],
  blank: ['clear'],
  known: ['curd', 'not-done'],
  chloride: ['white-curd'],
  'hot-water': ['stays', 'not-tried'],
  light: ['darkens', 'stays-white', 'not-tried'],
  alkaline: ['alkaline'],
  ammonia: ['gone'],
  colour: ['none', 'blue'],
  strip: ['acid'],
  acid: ['curd', 'cloud'],
};
const nothingCame: Fits = { before: ['clear'], blank: ['clear'], known: ['curd'], chloride: ['none'] };
const onlyLead: Fits = {
  before: ['clear'],
  blank: ['clear'],
  known: ['curd'],
  chloride: ['white-curd', 'crystals'],
  'hot-water': ['gone'],
};

const holds = (looks: readonly Looked[], fits: Fits): boolean =>
  (Object.entries(fits) as [LookName, readonly string[]][]).every(([name, wanted]) =>
    wanted.includes(sightOf(looks, name)?.seen ?? ''),
  );

/** Sights that contradict each other: something was seen where the test had ended before. */
const isContradicted = (looks: readonly Looked[]): boolean =>
  silverLooks.some(({ look }) => sightOf(looks, look) && !due(looks).some((one) => one.look === look));

function outcomeOf(looks: readonly Looked[]): SilverOutcome {
  if (isContradicted(looks) || silverLooks.some(({ look }) => sightOf(looks, look)?.speaks === 'open'))
    return 'not-conclusive';
  if (holds(looks, silver)) return 'silver';
  return holds(looks, nothingCame) || holds(looks, onlyLead) ? 'not-silver' : 'not-conclusive';
}

/** What the looks come to. Anything due and not looked at leaves it not conclusive. */
export function silverVerdict(looks: readonly Looked[]): Verdict {
  const speaks = silverLooks.flatMap((look) => {
    const seen = sightOf(looks, look.look);
    return seen ? [{ look, seen }] : [];
  });
  return {
    outcome: outcomeOf(looks),
    speaks,
    unlooked: due(looks).filter(({ look }) => sightOf(looks, look) === undefined),
    doubts: speaks.filter(({ seen }) => seen.speaks === 'open'),
  };
}

/** The answers to offer at a look: what dissolved cannot have been white all the time. */
export const sightsAt = (looks: readonly Looked[], { look, seen }: Look): readonly Seen[] =>
  look === 'acid' && sightOf(looks, 'ammonia')?.seen === 'gone'
    ? seen.filter((one) => one.seen !== 'never-left')
    : seen;

/** A test as it goes on, as plain data that survives a reload. */
export type SilverTest = {
  readonly looks: readonly Looked[];
  /** When the ammonia went in; null before. */
  readonly ammoniaAt: string | null;
  /** The acid goes in at once: looks before it that were not made are not made any more. */
  readonly hurried: boolean;
};

export type NextInTest =
  | { readonly do: 'look'; readonly look: Look }
  | { readonly do: 'ammonia' }
  | { readonly do: 'end' };

/** Where a look stands in the test, 1 for the first, of how many that are due. */
export function placeOf(
  looks: readonly Looked[],
  { look }: Look,
): { readonly at: number; readonly of: number } {
  const all = due(looks);
  return { at: all.findIndex((one) => one.look === look) + 1, of: all.length };
}

/** What comes next. A strip that is not acid yet is looked at again, as more acid goes in. */
export function nextInTest({ looks, ammoniaAt, hurried }: SilverTest): NextInTest {
  const skipped = (look: Look): boolean => hurried && look.look !== 'strip' && look.look !== 'acid';
  const open = due(looks).find(
    (look) =>
      !skipped(look) &&
      (sightOf(looks, look.look) === undefined ||
        (look.look === 'strip' && sightOf(looks, 'strip')?.seen === 'not-acid')),
  );
  if (!open) return { do: 'end' };
  return isWithAmmonia(open) && ammoniaAt === null ? { do: 'ammonia' } : { do: 'look', look: open };
}

/** A look made, in place of an earlier one of the same name. */
export const withLook = (test: SilverTest, looked: Looked): SilverTest => ({
  ...test,
  looks: [...test.looks.filter(({ look }) => look !== looked.look), looked],
});

/** Whether the last look can be taken back: what went into the well cannot. */
export const canTakeBack = ({ looks, ammoniaAt }: SilverTest): boolean => {
  const last = looks.at(-1);
  if (last === undefined) return false;
  return ammoniaAt === null || withAmmonia.some((name) => name === last.look);
};

export const lookTakenBack = (test: SilverTest): SilverTest =>
  canTakeBack(test) ? { ...test, looks: test.looks.slice(0, -1) } : test;

/** Whether what was written shows that the ammonia is destroyed: the strip acid, and the well looked at after it. */
export const isDestroyed = ({ looks }: Pick<SilverTest, 'looks'>): boolean =>
  sightOf(looks, 'strip')?.seen === 'acid' && sightOf(looks, 'acid') !== undefined;

/** Whether there is ammonia in the well that nobody has shown to be destroyed. */
export const ammoniaStands = (test: SilverTest): boolean => test.ammoniaAt !== null && !isDestroyed(test);

/** Whole minutes, rounded up, from the ammonia to the strip that was acid; null where nobody saw it acid. */
export function minutesTaken({ looks, ammoniaAt }: SilverTest): number | null {
  const acid = looks.findLast(({ look, seen }) => look === 'strip' && seen === 'acid');
  return acid && ammoniaAt !== null
    ? Math.max(0, Math.ceil((Date.parse(acid.at) - Date.parse(ammoniaAt)) / 60_000))
    : null;
}

/** Published ceiling in minutes, reference/silver-check.json. */
export const ceilingMinutes = Number(silverCheck.ceiling.value) * 60;

/** @param minutes as the list asks for; never more than the published ceiling */
export const destroyBy = (ammoniaAt: string, minutes: number): string =>
  minutesAfter(ammoniaAt, Math.min(minutes, ceilingMinutes));

/**
 * How urgent it is: `old` past the published ceiling, where it is left alone and the card opened.
 * @param due when it must be destroyed
 */
export function ammoniaAge(ammoniaAt: string, due: string, now: string): 'in-time' | 'overdue' | 'old' {
  if (now > minutesAfter(ammoniaAt, ceilingMinutes)) return 'old';
  return now > due ? 'overdue' : 'in-time';
}
