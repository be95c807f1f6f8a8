/** The photos of a form: taken, kept at once, shown, removed and put back. The draft holds what they are called. */
import { mostPhotos, type Photo } from '../../ledger/entries/photos';
import type { PhotoFieldProps, PhotoTile } from '../../ui/photo-field';
import { useRoomWords } from '../keeping/use-keeping';
import { useShell } from '../shell';
import { useKept } from './use-kept';
import { type Sight, useSights } from './use-sights';
import { photoFaultWords, photoWords } from './words';

/** A form that has photos; any `Form` whose schema has `photos: Photos` is one. */
export type FormWithPhotos = {
  readonly value: { readonly photos: readonly Photo[] };
  readonly latest: () => { readonly photos: readonly Photo[] };
  readonly change: (change: { readonly photos: Photo[] }) => void;
};

export type FormPhotos = {
  /** For `<PhotoField>`. */
  readonly field: PhotoFieldProps;
  /**
   * The photos, once those that are being kept just now are kept; null when one of them could not be, which the field
   * then says: asked again it lets the form go on without. Wait for it before the form is written down.
   */
  readonly settled: () => Promise<Photo[] | null>;
};

const tileOf = (hash: string, sight: Sight | undefined): PhotoTile => ({
  hash,
  href: `#/photos/${hash}`,
  url: sight?.state === 'there' ? sight.url : undefined,
  gone: sight?.state === 'missing' || sight?.state === 'damaged' ? sight.state : undefined,
});

/** Photos as tiles that open. */
export function useTiles(photos: readonly Photo[]): readonly PhotoTile[] {
  const hashes = photos.map(({ hash }) => hash);
  const sights = useSights(hashes);
  return hashes.map((hash) => tileOf(hash, sights.get(hash)));
}

export function usePhotos(form: FormWithPhotos, label: string = photoWords.label): FormPhotos {
  const { keepPhoto } = useShell();
  const { field, settled } = useKept<Photo>({
    latest: () => form.latest().photos,
    change: (photos) => form.change({ photos }),
    most: mostPhotos,
    keep: async (picture) => {
      const kept = await keepPhoto(picture);
      return kept.ok ? kept.photo : photoFaultWords(kept.fault);
    },
    tooMany: photoWords.tooMany,
  });
  const photos = useTiles(form.value.photos);
  const room = useRoomWords();
  const hint = room ?? (photos.length === 0 ? photoWords.field.optional : undefined);
  return { field: { ...field, label, photos, words: photoWords.field, hint }, settled };
}
