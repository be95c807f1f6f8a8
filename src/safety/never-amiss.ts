/** Questions whose answer never tells anything: they belong into the readiness walk, or out. A review, after some use. */

/** An answer as the record keeps it: one that stopped says so, one that was noted has a reason. */
export type AnswerKept = {
  readonly item: string;
  readonly ask: string;
  readonly answer: string;
  readonly stopped?: boolean | undefined;
  readonly reason?: string | undefined;
};

export type NeverAmiss = {
  readonly item: string;
  /** As it was asked the last time. */
  readonly ask: string;
  /** Runs in a row, the last one included, in which it was asked and in order. */
  readonly times: number;
};

/** A question that did not apply says nothing of what it would have caught. */
const isApart = ({ answer }: AnswerKept): boolean => answer === 'not-applicable';
const isAmiss = ({ stopped, reason }: AnswerKept): boolean => stopped === true || reason !== undefined;

/**
 * Items that were in order in each of the last `enough` runs that asked them.
 * @param runs answers of one list, a run each, the newest last
 * @returns in the order of the newest run; none before there are so many runs
 */
export function neverAmiss(runs: readonly (readonly AnswerKept[])[], enough = 10): readonly NeverAmiss[] {
  const newest = runs.at(-1) ?? [];
  const asked = [...new Map(newest.map((one) => [one.item, one])).values()];
  return asked.flatMap(({ item, ask }) => {
    const told = runs
      .map((run) => run.filter((one) => one.item === item && !isApart(one)))
      .filter((answers) => answers.length > 0);
    const times = told.length - 1 - told.findLastIndex((answers) => answers.some(isAmiss));
    return times >= enough ? [{ item, ask, times }] : [];
  });
}
