/** A hand-over that the record does not have, or of which there is nothing to write down. */
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { words } from '../words';
import { handOverWords as w } from './words';

export const NotKept = ({
  says = w.notKept,
  back = 'hand-overs',
}: {
  readonly says?: string;
  readonly back?: string;
}) => (
  <Frame title={w.title} ways={[{ label: words.back, href: `#/${back}` }]}>
    <Part>
      <p>{says}</p>
    </Part>
  </Frame>
);
