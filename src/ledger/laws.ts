/** Laws whose codes, classes and labels the workshop goes by. */
import type { Law } from './entries/local-rules';
import type { State } from './state';

/** Taken while nobody has said which laws apply: the careful answer is to look at more than one. */
const carefulLaws: readonly Law[] = ['us-federal', 'eu'];

/** As the local rules say; where they do not, more than one. */
export function lawsOf(state: State): readonly Law[] {
  const stated = state.rules.get('laws')?.body.stated;
  return stated?.rule === 'laws' ? stated.value : carefulLaws;
}

export const lawsStated = (state: State): boolean => state.rules.has('laws');
