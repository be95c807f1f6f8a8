/** Where a published value is from, and whether it was read there. */
import { sourceOf } from '../chemistry/constants';
import { containerWords } from './containers/words';

/** "40 CFR 433, …: read in the source, or in a public copy of it" */
export function sourceText(told: Parameters<typeof sourceOf>[0]): string {
  const { title, status } = sourceOf(told);
  return `${title}: ${containerWords.working.status[status]}`;
}
