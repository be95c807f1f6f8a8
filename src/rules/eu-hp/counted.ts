/**
 * What of a waste counts towards a hazardous property, and with which share. Classes are those of the substance itself:
 * neither its own limits nor its multiplying factors are taken here.
 */
import type { Figure } from '../../quantities/figure';
import type { Term } from '../../reference/eu-hp-tables';
import { type HazardClass, type SubstanceId, substances } from '../../reference/substances-tables';
import { countedShare } from '../counted-share';
import type { Mixture } from '../mixture';

export type Counted = {
  readonly id: SubstanceId;
  readonly share: Figure<'%'>;
  readonly term: Term;
};

/** "H350i" is a kind of H350. */
export const withoutLetters = (code: string): string => /^[EU]*H\d{3}/.exec(code)?.[0] ?? code;

const isOf = ({ code, category }: HazardClass, term: Term): boolean =>
  withoutLetters(code) === term.code && (term.category === undefined || term.category === category);

/** Of several statements that a substance has, the one that counts most; a share is never counted twice in one sum. */
function termOf(id: SubstanceId, terms: readonly Term[]): Term | undefined {
  const had = terms.filter((term) => substances[id].classes.some((c) => isOf(c, term)));
  return had.sort((a, b) => Number(b.times) - Number(a.times))[0];
}

/** What has one of the statements. `all`: also what stays under the share from which it counts. */
export const countedIn = ({ shares }: Mixture, terms: readonly Term[], all?: 'all'): readonly Counted[] =>
  [...shares].flatMap(([id, whole]) => {
    const term = termOf(id, terms);
    if (!term) return [];
    const share = countedShare(substances[id], whole);
    const counts = share.high.gt(0) && (all === 'all' || share.high.gte(term.cutOff ?? 0));
    return counts ? [{ id, share, term }] : [];
  });

/** What nobody determined and would count. */
export const openIn = ({ open }: Mixture, terms: readonly Term[]): readonly SubstanceId[] =>
  open.filter((id) => termOf(id, terms));
