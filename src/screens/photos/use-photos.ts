/** The photos of a form: taken, kept at once, shown, removed and put back. The draft holds what they are called. */
import { useRef, useState } from 'preact/hooks';
import { mostPhotos, type Photo } from '../../ledger/entries/photos';
import type { PhotoFieldProps, PhotoTile } from '../../ui/photo-field';
import { useShell } from '../shell';
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

/** Pictures that are being kept, one after the other: a phone has little memory. */
function useKeeping(form: FormWithPhotos) {
  const { keepPhoto } = useShell();
  const [keeping, setKeeping] = useState(0);
  const [fault, setFault] = useState<string | null>(null);
  // Between two drawings of the screen only a reference knows what has begun.
  const now = useRef({ keeping: 0, failed: 0, last: Promise.resolve() });
  const count = (more: number): void => {
    now.current.keeping += more;
    setKeeping(now.current.keeping);
  };
  async function keep(picture: File): Promise<void> {
    try {
      const kept = await keepPhoto(picture);
      const { photos } = form.latest();
      if (!kept.ok) {
        now.current.failed += 1;
        setFault(photoFaultWords(kept.fault));
        // The same picture twice is one photo.
      } else if (photos.every(({ hash }) => hash !== kept.photo.hash))
        form.change({ photos: [...photos, kept.photo] });
    } finally {
      count(-1);
    }
  }
  const take = (files: readonly File[]): void => {
    const room = mostPhotos - form.latest().photos.length - now.current.keeping;
    setFault(files.length > room ? photoWords.tooMany(mostPhotos) : null);
    for (const file of files.slice(0, Math.max(0, room))) {
      count(1);
      const next = () => keep(file);
      // One that went wrong keeps no other back.
      now.current.last = now.current.last.then(next, next);
    }
  };
  /** What failed before was told before, and keeps nobody from going on. */
  async function settled(): Promise<boolean> {
    const { failed } = now.current;
    await now.current.last;
    return now.current.failed === failed;
  }
  return { keeping, fault, setFault, take, settled };
}

export function usePhotos(form: FormWithPhotos, label: string = photoWords.label): FormPhotos {
  const { keeping, fault, setFault, take, settled } = useKeeping(form);
  const [removed, setRemoved] = useState<{ readonly photo: Photo; readonly at: number } | null>(null);
  const tiles = useTiles(form.value.photos);
  const remove = (gone: string): void => {
    const { photos } = form.latest();
    const at = photos.findIndex(({ hash }) => hash === gone);
    const photo = photos[at];
    if (!photo) return;
    setFault(null);
    setRemoved({ photo, at });
    form.change({ photos: photos.filter(({ hash }) => hash !== gone) });
  };
  const putBack = (): void => {
    if (!removed) return;
    const { photos } = form.latest();
    form.change({ photos: photos.toSpliced(removed.at, 0, removed.photo) });
    setRemoved(null);
  };
  const takeNow = (files: readonly File[]): void => {
    setRemoved(null);
    take(files);
  };
  const field: PhotoFieldProps = {
    label,
    photos: tiles,
    most: mostPhotos,
    words: photoWords.field,
    onFiles: takeNow,
    onRemove: remove,
    onPutBack: removed ? putBack : undefined,
    keeping,
    hint: tiles.length === 0 ? photoWords.field.optional : undefined,
    error: fault ?? undefined,
  };
  return { field, settled: async () => ((await settled()) ? [...form.latest().photos] : null) };
}
