/** A candidate as it would be written on the paper that goes with the goods. */
import type { Entry, PackingGroup } from '../../reference/transport-tables';

/** Of an entry, what is written; of any class. */
type Written = Pick<Entry, 'un' | 'name' | 'nameUSA' | 'usaOnly'> & {
  readonly class: string;
  readonly subsidiary: readonly string[];
};

export type Described = {
  readonly entry: Written;
  readonly group: PackingGroup;
  readonly technicalNames: readonly string[];
  readonly environmentallyHazardous: boolean;
  /** Waste numbers of the USA. */
  readonly rcraCodes: readonly string[];
  readonly reportable: boolean;
};

const inBrackets = (names: readonly string[]): string => (names.length === 0 ? '' : ` (${names.join(', ')})`);

/** WASTE stands before the name once, and not at all where the name holds it already. */
export const namedWaste = (name: string, word: 'WASTE' | 'Waste'): string =>
  /\bwaste\b/i.test(name) ? name : `${word} ${name}`;

const classes = ({ class: of, subsidiary }: Written): string =>
  subsidiary.length === 0 ? of : `${of} (${subsidiary.join(', ')})`;

const environment = ({ entry, environmentallyHazardous }: Described): string =>
  environmentallyHazardous && entry.class !== '9' ? ', ENVIRONMENTALLY HAZARDOUS' : '';

/** As ADR 5.4.1.1.1 (a) to (d) orders it, without the tunnel code. @example "UN 3264 WASTE CORROSIVE LIQUID, …, 8, II" */
export const describedInAdr = (d: Described): string =>
  `${d.entry.un} ${namedWaste(d.entry.name, 'WASTE')}${inBrackets(d.technicalNames)}, ${classes(d.entry)}, ${d.group}${environment(d)}`;

/** Where the class rests on what is known of the waste (ADR 2.1.3.5.5): the words at the end stand for the word before. */
export const describedByKnowledge = (d: Described): string =>
  `${d.entry.un} ${d.entry.name}, ${classes(d.entry)}, ${d.group}${environment(d)}, WASTE IN ACCORDANCE WITH 2.1.3.5.5`;

const sentenceCase = (name: string): string => name.slice(0, 1).toUpperCase() + name.slice(1).toLowerCase();

/** As 49 CFR 172.202 orders it. @example "RQ, NA3077, Hazardous waste, solid, n.o.s. (D011), 9, PG III" */
export function describedInUSA(d: Described): string {
  const { entry } = d;
  const name = namedWaste(entry.nameUSA ?? sentenceCase(entry.name), 'Waste');
  const inside = entry.usaOnly ? d.rcraCodes : d.technicalNames;
  const number = entry.un.replace(' ', '');
  return `${d.reportable ? 'RQ, ' : ''}${number}, ${name}${inBrackets(inside)}, ${classes(entry)}, PG ${d.group}`;
}
