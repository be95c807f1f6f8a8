/** The photos that an entry names, as tiles that open. */
import type { Photo } from '../../ledger/entries/photos';
import { PhotoTiles } from '../../ui/photo-field';
import { useTiles } from './use-photos';
import { photoWords } from './words';

export function PhotoStrip({
  photos,
  label = photoWords.label,
}: {
  readonly photos: readonly Photo[];
  readonly label?: string;
}) {
  const tiles = useTiles(photos);
  return tiles.length === 0 ? null : <PhotoTiles photos={tiles} label={label} words={photoWords.field} />;
}
