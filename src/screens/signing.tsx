/** Signing in a form: what stands in its draft, the field for it, and the signature that an entry or a paper takes. */
import { useState } from 'preact/hooks';
import * as z from 'zod/mini';
import type { Signature } from '../ledger/entries/signatures';
import { isDrawn, signatureBox, signaturePath, withStroke } from '../ledger/signature-strokes';
import { SignatureDrawing, SignatureField } from '../ui/signature-field';
import { hour } from './frame';
import { useShell } from './shell';
import { signingWords as w } from './signing-words';

/** Kept with the draft of its form: a reload loses no stroke. `at` is when it was signed, empty before. */
export const Signing = z.object({
  name: z.string(),
  strokes: z.array(z.array(z.int())),
  letters: z.boolean(),
  at: z.string(),
});
export type Signing = z.infer<typeof Signing>;

/** @param name who will sign, as far as that is known */
export const notSigned = (name = ''): Signing => ({ name, strokes: [], letters: false, at: '' });

export const isSigned = ({ letters, strokes }: Signing): boolean => letters || strokes.length > 0;

/** What is wrong with it, in words for its name; a signature that nobody gave is not wrong. */
export const signingFault = (signing: Signing): string | undefined =>
  isSigned(signing) && signing.name.trim() === '' ? w.nameMissing : undefined;

/** Null where nobody signed, or no name stands with it. */
export function signatureOf(signing: Signing): Signature | null {
  const { letters, strokes, at } = signing;
  const name = signing.name.trim();
  if (!isSigned(signing) || name === '') return null;
  if (letters) return { name, signedAt: at, typed: true };
  const { width, height } = signatureBox;
  return { name, signedAt: at, width, height, strokes };
}

type SignHereProps = {
  /** Whose signature, and under what. */
  readonly label: string;
  readonly value: Signing;
  readonly onChange: (signing: Signing) => void;
  /** What stands in the draft at this moment: strokes can come faster than the page is drawn. */
  readonly latest: () => Signing;
  readonly hint?: string;
  readonly error?: string | undefined;
};

export function SignHere({ label, value, onChange, latest, hint, error }: SignHereProps) {
  const { moment } = useShell();
  const [cleared, setCleared] = useState<Signing | null>(null);
  const change = (part: Partial<Signing>): void => onChange({ ...latest(), ...part });
  const clear = (): void => {
    setCleared(latest());
    change({ strokes: [], at: '' });
  };
  return (
    <SignatureField
      label={label}
      words={w}
      box={signatureBox}
      name={value.name}
      onName={(name) => change({ name })}
      path={signaturePath(value.strokes)}
      onStroke={(points) => {
        setCleared(null);
        change({ strokes: withStroke(latest().strokes, points), at: moment() });
      }}
      onClear={clear}
      onPutBack={cleared ? () => change({ strokes: cleared.strokes, at: cleared.at }) : undefined}
      inLetters={value.letters}
      onInLetters={(letters) => change({ letters, at: letters || value.strokes.length > 0 ? moment() : '' })}
      hint={hint}
      nameError={signingFault(value)}
      error={error}
    />
  );
}

/** A signature that was given, as an entry or a paper has it. */
export function SignatureShown({ signature }: { readonly signature: Signature }) {
  const { name, signedAt } = signature;
  return (
    <figure>
      {isDrawn(signature) ? (
        <SignatureDrawing
          box={{ ...signatureBox, width: signature.width, height: signature.height }}
          path={signaturePath(signature.strokes)}
          label={w.drawn(name)}
        />
      ) : null}
      <figcaption>
        {isDrawn(signature) ? w.signedBy(name, hour(signedAt)) : w.inLettersBy(name, hour(signedAt))}
      </figcaption>
    </figure>
  );
}
