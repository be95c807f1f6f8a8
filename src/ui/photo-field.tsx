/** A field for photos: two large buttons, and what was taken as tiles that open and can be removed. */
import { useId } from 'preact/hooks';
import { FieldNotes } from './field';
import styles from './photo-field.module.css';
import { PickFile } from './pick-file';

export type PhotoTile = {
  /** Its name in the record; also its key here. */
  readonly hash: string;
  /** Missing while it is being opened, and where there is no picture to show. */
  readonly url?: string | undefined;
  /** Why there is no picture. */
  readonly gone?: 'missing' | 'damaged' | undefined;
  /** Where it opens. */
  readonly href?: string | undefined;
};

export type PhotoTileWords = {
  readonly one: (place: number, of: number) => string;
  readonly open: (place: number) => string;
  readonly missing: string;
  readonly damaged: string;
  readonly loading: string;
};

export type PhotoFieldWords = PhotoTileWords & {
  readonly take: string;
  readonly choose: string;
  /** While a picture is being made smaller and kept. */
  readonly keeping: string;
  readonly optional: string;
  /** Instead of the buttons, once there are as many as fit. */
  readonly full: (most: number) => string;
  readonly remove: string;
  readonly removeOne: (place: number) => string;
  readonly removed: string;
  readonly putBack: string;
};

type PictureProps = {
  readonly tile: PhotoTile;
  readonly place: number;
  readonly of: number;
  readonly words: PhotoTileWords;
};

function Picture({ tile, place, of, words }: PictureProps) {
  const shown = tile.url ? (
    <img class={styles.picture} src={tile.url} alt={words.one(place, of)} />
  ) : (
    <span class={styles.none}>
      <span class="visually-hidden">{words.one(place, of)}: </span>
      {tile.gone ? words[tile.gone] : words.loading}
    </span>
  );
  return tile.href === undefined ? (
    shown
  ) : (
    <a class={styles.open} href={tile.href} aria-label={tile.gone ? undefined : words.open(place)}>
      {shown}
    </a>
  );
}

/** Photos of something that was written down: tiles that open. */
export const PhotoTiles = ({
  photos,
  label,
  words,
}: {
  readonly photos: readonly PhotoTile[];
  readonly label: string;
  readonly words: PhotoTileWords;
}) => (
  <ul class={styles.tiles} aria-label={label}>
    {photos.map((tile, at) => (
      <li key={tile.hash} class={styles.tile}>
        <Picture tile={tile} place={at + 1} of={photos.length} words={words} />
      </li>
    ))}
  </ul>
);

export type PhotoFieldProps = {
  readonly label: string;
  readonly photos: readonly PhotoTile[];
  /** The most that fit. */
  readonly most: number;
  readonly words: PhotoFieldWords;
  /** Pictures as the phone handed them over, in the order chosen. */
  readonly onFiles: (files: readonly File[]) => void;
  readonly onRemove: (hash: string) => void;
  /** Given while one was just removed: puts it back where it was. */
  readonly onPutBack?: (() => void) | undefined;
  /** How many are being kept just now. */
  readonly keeping?: number | undefined;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
};

export function PhotoField(props: PhotoFieldProps) {
  const { label, photos, most, words, onFiles, keeping = 0, hint, error } = props;
  const id = useId();
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined;
  return (
    <fieldset class={styles.field}>
      <legend class={styles.label}>{label}</legend>
      {photos.length > 0 && (
        <ul class={styles.tiles}>
          {photos.map((tile, at) => (
            <li key={tile.hash} class={styles.tile}>
              <Picture tile={tile} place={at + 1} of={photos.length} words={words} />
              <button
                type="button"
                class={styles.remove}
                aria-label={words.removeOne(at + 1)}
                onClick={() => props.onRemove(tile.hash)}
              >
                {words.remove}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div role="status">
        {keeping > 0 && <p class={styles.told}>{words.keeping}</p>}
        {props.onPutBack && <p class={styles.told}>{words.removed}</p>}
      </div>
      {props.onPutBack && (
        <button type="button" class={styles.pick} onClick={props.onPutBack}>
          {words.putBack}
        </button>
      )}
      {photos.length + keeping < most ? (
        <div class={styles.picks}>
          <PickFile accept="image/*" camera words={words.take} describedBy={described} onFiles={onFiles} />
          <PickFile
            accept="image/*"
            multiple
            words={words.choose}
            describedBy={described}
            onFiles={onFiles}
          />
        </div>
      ) : (
        keeping === 0 && <p class={styles.told}>{words.full(most)}</p>
      )}
      <div role={error ? 'alert' : undefined}>
        <FieldNotes id={id} hint={hint} error={error} />
      </div>
    </fieldset>
  );
}
