/** A large button that asks the phone for files, or its camera for a picture. */
import styles from './photo-field.module.css';

type PickFileProps = {
  readonly words: string;
  /** What may be chosen, as an input of type file has it. */
  readonly accept: string;
  /** Asks the camera at the back; of several of these it stands out. */
  readonly camera?: boolean;
  readonly multiple?: boolean;
  readonly describedBy: string | undefined;
  readonly onFiles: (files: readonly File[]) => void;
};

/** The file input covers its button, so that a tap, a key and a dropped file all reach it. */
export const PickFile = (props: PickFileProps) => (
  <label class={`${styles.pick} ${props.camera ? styles.camera : ''}`}>
    {props.words}
    <input
      class={styles.file}
      type="file"
      accept={props.accept}
      capture={props.camera ? 'environment' : undefined}
      multiple={props.multiple}
      aria-describedby={props.describedBy}
      onChange={(event) => {
        const files = [...(event.currentTarget.files ?? [])];
        // Emptied, so that the same file can be chosen once more.
        event.currentTarget.value = '';
        if (files.length > 0) props.onFiles(files);
      }}
    />
  </label>
);
