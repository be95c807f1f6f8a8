/** One hazardous property by calculation: each of its limits against what counts towards it. */
import { constant } from '../../chemistry/constants';
import { plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { type CalculatedHp, euHp, type HpLimit, type Term } from '../../reference/eu-hp-tables';
import { substances } from '../../reference/substances-tables';
import { type Candidate, type Ground, standingOf } from '../candidate';
import { cited } from '../cited';
import { calledInRecord } from '../counted-share';
import type { Mixture } from '../mixture';
import { countedIn, openIn, withoutLetters } from './counted';

const printed = ({ code, category, times: factor }: Term): string =>
  `${factor === '1' ? '' : `${factor} × `}${code}${category ? `, category ${category}` : ''}`;

const together = (terms: readonly Term[]): string => terms.map(printed).join(' + ');

/** All that counts, added up; null where nothing does. */
export function sumOf(mixture: Mixture, terms: readonly Term[]): Figure<'%'> | null {
  const parts = countedIn(mixture, terms);
  if (parts.length === 0) return null;
  return workedOut({
    sentence: `Sum of ${together(terms)}`,
    unit: '%',
    formula: plus(
      ...parts.map(({ share, term }) => (term.times === '1' ? share : times(Number(term.times), share))),
    ),
  });
}

function limitOf(hp: CalculatedHp, { combine, of, limit }: HpLimit): Figure<'%'> {
  const { source, status } = euHp.byCalculation[hp];
  return constant(
    `eu-hp/${hp}/${combine} of ${together(of)}`,
    `${hp} from ${combine === 'sum' ? `a sum of ${together(of)}` : `one substance with ${together(of)}`} on`,
    { value: limit, unit: '%', uncertainty: '0', source, status },
    '%',
  );
}

function groundsOf(hp: CalculatedHp, row: HpLimit, mixture: Mixture): readonly Ground[] {
  const limit = limitOf(hp, row);
  if (row.combine === 'each')
    return countedIn(mixture, row.of).map(({ share }) => ({ figure: share, limit }));
  const figure = sumOf(mixture, row.of);
  return figure ? [{ figure, limit }] : [];
}

/**
 * A class that an entry has only from a limit of its own on (ammonia irritates the airways from 5 %) is none of the
 * substance's classes. Whether it counts here nobody has settled: a person judges.
 */
function onlyByOwnLimit(hp: CalculatedHp, row: HpLimit, mixture: Mixture): readonly Ground[] {
  if (row.combine === 'sum') return [];
  const codes = row.of.map(({ code }) => code);
  return [...mixture.shares].flatMap(([id, figure]) => {
    const { classes, limits = [] } = substances[id];
    const named = (all: readonly { code: string }[]) =>
      all.some(({ code }) => codes.includes(withoutLetters(code)));
    const limit = limitOf(hp, row);
    return named(limits) && !named(classes) && figure.high.gte(limit.value) ? [{ figure, limit }] : [];
  });
}

/** null: it does not come near, and nothing that it rests on is missing. */
export function byCalculation(hp: CalculatedHp, mixture: Mixture): Candidate | null {
  const rows = euHp.byCalculation[hp].limits;
  const grounds = rows.flatMap((row) => groundsOf(hp, row, mixture));
  const reached = (standing: Candidate['standing']) => grounds.filter((g) => standingOf(g) === standing);
  const lacks = [...new Set(rows.flatMap((row) => openIn(mixture, row.of)).map(calledInRecord))];
  const candidate = { scheme: 'eu-hp', code: hp, citation: cited(euHp.byCalculation[hp]), lacks } as const;

  const fires = reached('fires');
  if (fires.length > 0) return { ...candidate, standing: 'fires', grounds: fires };
  const judged = rows.flatMap((row) => onlyByOwnLimit(hp, row, mixture));
  const close = [...judged, ...reached('close')];
  if (judged.length > 0) return { ...candidate, standing: 'judgement', grounds: close };
  if (lacks.length > 0) return { ...candidate, standing: 'open', grounds: close };
  return close.length > 0 ? { ...candidate, standing: 'close', grounds: close } : null;
}
