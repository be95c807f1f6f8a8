/** What people call the kinds and symbols of the record, so that either is found. */
import { nameOfElement } from '../../paperwork/element-names';
import { capacitorWords, stepWords } from '../batches/words';
import { vesselWords } from '../containers/words';
import { streamName } from '../words';
import { findWords } from './words';

const names: Readonly<Record<string, string>> = {
  ...findWords.is,
  ...findWords.papers,
  ...vesselWords,
  ...capacitorWords,
  ...stepWords,
  ...streamName,
};

export const say = (word: string): string | undefined => names[word] ?? nameOfElement(word);
