/** The sheet that a paper is printed on, as every page asks for it that makes one. */
import { Choices } from '../../ui/choices';
import type { Sheet } from './sheet';
import { paperWords as w } from './words';

const sheets: readonly Sheet[] = ['A4', 'Letter'];

type Props = { readonly value: Sheet; readonly onChoose: (sheet: Sheet) => void };

export const SheetChoice = ({ value, onChoose }: Props) => (
  <Choices
    legend={w.sheet}
    value={value}
    choices={sheets.map((sheet) => ({ value: sheet, label: w.sheets[sheet], second: w.sheetSeconds[sheet] }))}
    onChoose={onChoose}
  />
);
