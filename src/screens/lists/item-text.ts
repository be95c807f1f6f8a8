/** What a question asks for, in one line: its kind, its range, and what is our own in it. */
import type { Item, ReadingItem } from '../../safety/checklist-item';
import { rangeText } from '../checklist/words';
import { useShell } from '../shell';
import { listsWords as w } from './words';

/** The range as it came with the app, in the item's unit. */
export const shippedOf = ({ shipped, min, max, unit }: ReadingItem) => ({
  ...(shipped ?? { min, max }),
  unit,
});

/** @example text(item) // "reading, 10 to 30 °C, tightened" */
export function useItemText(): (item: Item) => string {
  const { sign } = useShell();
  return (item) => {
    const range = item.kind === 'reading' ? rangeText(item, sign.value) : undefined;
    const mark = item.kind === 'reading' ? item.range : undefined;
    return [w.kind[item.kind], range, mark && w.mark[mark], item.own && w.mark.own]
      .filter(Boolean)
      .join(', ');
  };
}
