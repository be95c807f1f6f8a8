/** What can be done with a history: look for something, check it, print it for a period. */
import { Row, Rows } from '../../ui/row';
import { findWords } from '../find/words';
import { registerPageWords } from '../register/words';
import { verifyWords } from './verify-words';

export const HistoryDoors = () => (
  <Rows>
    <Row title={findWords.title} second={findWords.second} href="#/find" />
    <Row title={verifyWords.title} second={verifyWords.second} href="#/record/verify" />
    <Row title={registerPageWords.title} second={registerPageWords.second} href="#/papers/register" />
  </Rows>
);
