/** Elements by their names: the metals of this trade, and the others that a rule of toxicity or a laboratory knows. */
import { metals } from '../reference/tables';
import type { Element } from '../rules/element-levels';
import { joined } from './words';

const metalNames: Readonly<Record<string, { readonly name: string }>> = metals;

const otherElements: Readonly<Record<string, string>> = {
  As: 'arsenic',
  Be: 'beryllium',
  Cd: 'cadmium',
  Co: 'cobalt',
  Cr: 'chromium',
  Hg: 'mercury',
  Mo: 'molybdenum',
  Sb: 'antimony',
  Se: 'selenium',
  Ti: 'titanium',
  Tl: 'thallium',
  V: 'vanadium',
};

/** Undefined of what is no symbol here. @example nameOfElement('Pb') // 'lead' */
export const nameOfElement = (symbol: string): string | undefined =>
  metalNames[symbol]?.name ?? otherElements[symbol];

/** @example namesOfElements(['Cu', 'Ni']) // 'copper and nickel' */
export const namesOfElements = (elements: readonly Element[]): string =>
  joined(elements.map((element) => nameOfElement(element) ?? element));
