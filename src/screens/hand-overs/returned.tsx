/** What is said of the days of a load that came back: the careful way, and the other with where it stands. */
import { handingOver } from '../../reference/handing-over-tables';
import record from '../record/record.module.css';
import { sourceText } from '../source-text';
import { handOverWords as w } from './words';

export const DaysRunOn = () => (
  <>
    <p>{w.clock}</p>
    <details class={record.fold}>
      <summary>
        <span>{w.returned}</span>
      </summary>
      {handingOver.returned.map((said) => (
        <p key={said.text}>{`${said.text} ${sourceText(said)}.`}</p>
      ))}
      <p>{w.returnedAsk}</p>
    </details>
  </>
);
