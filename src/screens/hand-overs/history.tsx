/** Every entry about one hand-over, the newest first. */
import { ThingHistory } from '../record/thing-history';
import { handOverWords as w } from './words';

export const HandOverHistory = ({ at }: { readonly at: Readonly<Record<string, string>> }) => (
  <ThingHistory
    thing={{ is: 'hand-over', id: at.id ?? '' }}
    title={w.historyTitle}
    back={`#/hand-overs/${at.id ?? ''}`}
  />
);
