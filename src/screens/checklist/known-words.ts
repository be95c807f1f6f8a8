/** Where a limit comes from that the app knows. One short line each: it is kept with the answer. */
import { type DecimalSign, formatWritten } from '../../quantities/format';

const number = (value: string, sign: DecimalSign): string => formatWritten({ value, unit: '1' }, sign);

export const knownWords = {
  plan: 'the plan for this container',
  band: (aim: string, sign: DecimalSign) =>
    `The plan goes to pH ${number(aim, sign)}; half a pH either way, as near as paper reads.`,
  fill: (foaming: boolean, byRecord: string | null) =>
    [
      foaming
        ? 'The plan has a carbonate: its foam needs two thirds of the vessel.'
        : 'Slurry and stirring need half the vessel.',
      byRecord === null ? '' : `By the record it is ${byRecord} % full.`,
    ]
      .filter(Boolean)
      .join(' '),
  neutraliser: (moles: string, where: string, sign: DecimalSign) =>
    `84 g for each mol of acid; ${number(moles, sign)} mol at most in ${where} by the record.`,
  runs: (since: string) => `By the record the step began at ${since}.`,
  paper: (fileName: string) => `As many as stand on ${fileName}.`,
  limit: (stated: boolean) =>
    stated ? 'The fill limit of your local rules.' : 'No local rule entered: the careful limit.',
} as const;
