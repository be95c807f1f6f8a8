/** A field for papers that come as a file: a large button, and what was chosen by its name, each of which can be removed. */
import { useId } from 'preact/hooks';
import { FieldNotes } from './field';
import styles from './file-field.module.css';
import fields from './photo-field.module.css';
import { PickFile } from './pick-file';

export type FileFieldWords = {
  readonly choose: string;
  /** While one is being kept. */
  readonly keeping: string;
  readonly optional: string;
  /** Instead of the button, once there are as many as fit. */
  readonly full: (most: number) => string;
  readonly remove: string;
  readonly removeOne: (name: string) => string;
  readonly removed: string;
  readonly putBack: string;
};

/** `hash` is its name in the record, and its key here. */
export type NamedFile = { readonly hash: string; readonly name: string; readonly second: string };

export type FileFieldProps = {
  readonly label: string;
  readonly files: readonly NamedFile[];
  /** The most that fit. */
  readonly most: number;
  /** What may be chosen, as an input of type file has it. */
  readonly accept: string;
  readonly words: FileFieldWords;
  readonly onFiles: (files: readonly File[]) => void;
  readonly onRemove: (hash: string) => void;
  /** Given while one was just removed: puts it back where it was. */
  readonly onPutBack?: (() => void) | undefined;
  /** How many are being kept just now. */
  readonly keeping?: number | undefined;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
};

const Chosen = ({ files, words, onRemove }: Pick<FileFieldProps, 'files' | 'words' | 'onRemove'>) => (
  <ul class={styles.files}>
    {files.map(({ hash, name, second }) => (
      <li key={hash} class={styles.file}>
        <span>
          <span class={styles.name}>{name}</span>
          <span class={styles.second}>{second}</span>
        </span>
        <button
          type="button"
          class={fields.remove}
          aria-label={words.removeOne(name)}
          onClick={() => onRemove(hash)}
        >
          {words.remove}
        </button>
      </li>
    ))}
  </ul>
);

export function FileField(props: FileFieldProps) {
  const { label, files, most, accept, words, onFiles, keeping = 0, hint, error } = props;
  const id = useId();
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined;
  return (
    <fieldset class={fields.field}>
      <legend class={fields.label}>{label}</legend>
      {files.length > 0 && <Chosen {...props} />}
      <div role="status">
        {keeping > 0 && <p class={fields.told}>{words.keeping}</p>}
        {props.onPutBack && <p class={fields.told}>{words.removed}</p>}
      </div>
      {props.onPutBack && (
        <button type="button" class={fields.pick} onClick={props.onPutBack}>
          {words.putBack}
        </button>
      )}
      {files.length + keeping < most ? (
        <div class={fields.picks}>
          <PickFile multiple accept={accept} words={words.choose} describedBy={described} onFiles={onFiles} />
        </div>
      ) : (
        keeping === 0 && <p class={fields.told}>{words.full(most)}</p>
      )}
      <div role={error ? 'alert' : undefined}>
        <FieldNotes id={id} hint={hint} error={error} />
      </div>
    </fieldset>
  );
}
