/** A passphrase, typed in private or to be seen. It is kept nowhere: no draft, no record. */
import { Tick } from '../../ui/choices';
import { TextField } from '../../ui/text-field';
import { makeWords as w } from './words';

export type Passphrase = { readonly first: string; readonly again: string; readonly shown: boolean };

export const noPassphrase: Passphrase = { first: '', again: '', shown: false };

export function passphraseFault({ first, again }: Passphrase): 'missing' | 'differs' | null {
  if (first === '') return 'missing';
  return first === again ? null : 'differs';
}

/** Characters. Shorter ones can all be tried: common practice, no source. */
const shortest = 12;

/** Told, never forbidden: nobody else decides how much a record is worth keeping from others. */
const isShort = (passphrase: string): boolean =>
  passphrase !== '' && [...passphrase.trim()].length < shortest;

type PassphraseFieldsProps = {
  readonly value: Passphrase;
  readonly change: (value: Passphrase) => void;
  /** Once the person has tried to go on. */
  readonly tried: boolean;
};

/** Typed twice, as a slip of the thumb locks the file for ever. */
export function NewPassphrase({ value, change, tried }: PassphraseFieldsProps) {
  const fault = tried ? passphraseFault(value) : null;
  const kind = value.shown ? 'text' : 'password';
  return (
    <>
      <TextField
        label={w.passphrase}
        kind={kind}
        autoComplete="new-password"
        hint={isShort(value.first) ? w.passphraseShort : w.passphraseHint}
        value={value.first}
        error={fault === 'missing' ? w.missing : undefined}
        onInput={(first) => change({ ...value, first })}
      />
      <TextField
        label={w.again}
        kind={kind}
        autoComplete="new-password"
        value={value.again}
        error={fault === 'differs' ? w.differs : undefined}
        onInput={(again) => change({ ...value, again })}
      />
      <Tick label={w.show} checked={value.shown} onChange={(shown) => change({ ...value, shown })} />
    </>
  );
}
