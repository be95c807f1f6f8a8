/** A hazard pictogram on the screen, the same lines as on a label. */
import { type PictogramId, pictogram } from '../../paperwork/labels/pictograms';
import { pictogramWords } from '../../paperwork/labels/words';
import { Pictogram } from '../../ui/pictogram';

export const HazardPictogram = ({
  id,
  sizePx = 64,
}: {
  readonly id: PictogramId;
  readonly sizePx?: number;
}) => <Pictogram drawing={pictogram(id, pictogramWords[id])} word={pictogramWords[id]} sizePx={sizePx} />;
