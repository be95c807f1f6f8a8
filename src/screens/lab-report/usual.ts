/** Elements that are offered first. */
import { toxicityCodes } from '../../reference/rcra-tables';
import type { Element } from '../../rules/element-levels';
import { elementOfCode } from '../../rules/rcra/toxicity';

/** Metals of the table in 40 CFR 261.24, in the order of their codes. */
export const theEight: readonly Element[] = toxicityCodes.map(elementOfCode);

/** What this trade dissolves most of. */
export const theUsual: readonly Element[] = ['Cu', 'Ni', 'Zn'];
