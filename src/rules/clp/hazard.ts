/** A hazard class with its category, as candidates and labels write it: "Skin Corr. 1B H314", "Acute Tox. 4 (oral) H302". */
import { type HazardClassName, hazardClasses, type Route } from '../../reference/substances-tables';

export type Hazard = {
  readonly class: HazardClassName;
  /** "1A", "2"; empty where the class has none, or only a test would give it. */
  readonly category: string;
  /** Of acute toxicity only. */
  readonly route?: Route;
  readonly code: string;
};

const routeWords: Readonly<Record<Route, string>> = {
  oral: 'oral',
  dermal: 'dermal',
  vapour: 'inhalation vapour',
  'dust or mist': 'inhalation dust/mist',
  gas: 'inhalation gas',
};

/** @example hazardText({ class: 'Acute Tox.', category: '4', route: 'vapour', code: 'H332' }) // 'Acute Tox. 4 (inhalation vapour) H332' */
export const hazardText = ({ class: name, category, route, code }: Hazard): string =>
  [name, category, route && `(${routeWords[route]})`, code].filter(Boolean).join(' ');

const routeOf = (words: string): Route | undefined =>
  (Object.keys(routeWords) as Route[]).find((route) => routeWords[route] === words);

/** What `hazardText` wrote; null where it is no class that is known here. */
export function hazardOf(text: string): Hazard | null {
  const name = hazardClasses.find((one) => text.startsWith(one));
  if (!name) return null;
  const read = /^(?: (\d[ABC]?))?(?: \(([^)]+)\))? (H\d{3}[A-Za-z]*)$/.exec(text.slice(name.length));
  if (!read?.[3]) return null;
  const route = read[2] === undefined ? undefined : routeOf(read[2]);
  if (read[2] !== undefined && !route) return null;
  return { class: name, category: read[1] ?? '', ...(route ? { route } : {}), code: read[3] };
}

/** Hazards of one family stand for each other: the more severe one says what a milder one would. */
export function familyOf({ class: name, route }: Hazard): string {
  if (name === 'Skin Corr.' || name === 'Skin Irrit.') return 'skin';
  if (name === 'Eye Dam.' || name === 'Eye Irrit.') return 'eye';
  return route ? `${name} ${route}` : name;
}

/** Smaller is worse, within a family. Plain category 1 is as bad as the worst of it may be. */
function rank({ category }: Hazard): number {
  const [, number, letter] = /^(\d)([ABC]?)$/.exec(category) ?? [];
  return number === undefined ? 0 : Number(number) * 10 + ' ABC'.indexOf(letter || ' ');
}

/** Whether `one` says all that `other` would: of its family, and not milder. */
export const coversHazard = (one: Hazard, other: Hazard): boolean =>
  familyOf(one) === familyOf(other) && rank(one) <= rank(other);
