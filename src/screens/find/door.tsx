/** The way to finding something, above a list. */
import { Row, Rows } from '../../ui/row';
import { findWords as w } from './words';

export const FindDoor = () => (
  <Rows>
    <Row title={w.title} second={w.second} href="#/find" />
  </Rows>
);
