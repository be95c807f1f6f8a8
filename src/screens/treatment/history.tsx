/** Every entry about one treatment, the newest first. */
import { ThingHistory } from '../record/thing-history';
import { runWords as w } from './run-words';

export const TreatmentHistory = ({ at }: { readonly at: Readonly<Record<string, string>> }) => (
  <ThingHistory
    thing={{ is: 'treatment', id: at.treatment ?? '' }}
    title={w.entries}
    back={`#/treatment/${at.treatment ?? ''}`}
  />
);
