/** The end of a form that tells what happened: a note on it, and when it was. */
import { TextField } from '../ui/text-field';
import { When } from './when';
import { words } from './words';

type Told = { readonly note: string; readonly when: string };

type Props = {
  /** Any `Form` whose schema has both. */
  readonly form: { readonly value: Told; readonly change: (part: Partial<Told>) => void };
  /** What the note is about. */
  readonly label: string;
};

export const NoteAndWhen = ({ form: { value, change }, label }: Props) => (
  <>
    <TextField
      label={label}
      value={value.note}
      maxLength={500}
      hint={words.optional}
      onInput={(note) => change({ note })}
    />
    <When value={value.when} onInput={(when) => change({ when })} />
  </>
);
