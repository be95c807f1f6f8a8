/** The words for what meetings tell. What happens by rule stands in reference/reactivity.json. */
import { type HazardCode, reactivity } from '../../reference/reactivity-tables';
import type { Cited } from '../cited';
import { chartCell, codeName, groupsOfCell } from './chart';
import type { Meeting } from './meetings';
import type { Held } from './vessel';

/** Keeps a figure and its percent sign on one line. */
const whole = (text: string): string => text.replaceAll(' %', '\u00a0%');

export const codesText = (codes: readonly HazardCode[]): string => codes.map(codeName).join(', ');

function cellText(cell: string, codes: readonly HazardCode[]): string {
  const never = Object.entries(reactivity.withAnything).find(([group]) => cell.split('-').includes(group));
  if (never) return never[1].says;
  const [a = '', b = ''] = groupsOfCell(cell);
  return `${a} with ${b.slice(0, 1).toLowerCase()}${b.slice(1)}: ${codesText(codes)}.`;
}

const because: Readonly<Record<Held['why'], string>> = {
  never: 'Nitric acid must not stand in it.',
  'too-strong': 'The acid is too strong for it.',
  'limited-life': 'It holds this acid for a limited time.',
  'strength-open': 'Whether it holds is not determined: it hangs on the strength of the acid.',
  'not-this': '',
};

/** What would happen. */
export function effectOf({ ruling, codes }: Meeting): string {
  if (ruling.kind === 'rule') return ruling.rule.effect;
  if (ruling.kind === 'chart') return cellText(ruling.cell.cell, codes);
  return because[ruling.held.why] || ruling.held.says;
}

/** More of what would happen. */
export function moreOf({ ruling }: Meeting): string | undefined {
  if (ruling.kind === 'material')
    return because[ruling.held.why] === '' ? undefined : whole(ruling.held.says);
  return ruling.kind === 'rule' ? ruling.rule.how : undefined;
}

/** What is right instead; undefined where only the chart speaks. */
export const insteadOf = ({ ruling }: Meeting): string | undefined =>
  ruling.kind === 'rule' ? ruling.rule.do : undefined;

/** "Rule AG-NH3", "Chart, cell 2-10": where to look it up. */
export function rulingName({ ruling, by }: Meeting): string {
  if (ruling.kind === 'rule') return `Rule ${by}`;
  if (ruling.kind === 'material') return 'Materials against nitric acid';
  return ruling.cell.suspected ? `Chart, cell ${by}, blank in the copy that was read` : `Chart, cell ${by}`;
}

/** What is said of a rule, a cell or a material by its name alone, as a refusal or a flag keeps it. */
export function saidBy(by: string): string {
  const rule = reactivity.rules.find(({ id }) => id === by);
  if (rule) return rule.effect;
  const cell = reactivity.chart.cells[by] ?? reactivity.suspected[by]?.codes;
  if (cell) return cellText(by, cell);
  return whole(reactivity.materials[by]?.says ?? '') || cellText(by, ['U']);
}

/** Where that is from; undefined where nothing is known by the name any more. */
export const citedBehind = (by: string): Cited | undefined =>
  reactivity.rules.find(({ id }) => id === by) ?? chartCell(by)?.cited ?? reactivity.materials[by];
