/** What is said of the days of a load that came back: the careful way, and the other with where it stands. */
import { handingOver } from '../../reference/handing-over-tables';
import { sourceText } from '../source-text';
import { handOverWords as w } from './words';

export const DaysRunOn = () => (
  <>
    <p>{w.clock}</p>
    {handingOver.returned.map((said) => (
      <p key={said.text}>{w.returned(said.text, sourceText(said))}</p>
    ))}
  </>
);
