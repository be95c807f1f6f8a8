/** A field to sign in: who signs, and a box to draw in with finger, mouse or pen; or the name in letters instead. */
import { useEffect, useId, useRef } from 'preact/hooks';
import SignaturePad from 'signature_pad';
import { Tick } from './choices';
import { FieldNotes } from './field';
import styles from './signature-field.module.css';
import { TextField } from './text-field';

/** Inner size of what is drawn in, and the width of its line, in units of its own. */
export type SignatureBox = { readonly width: number; readonly height: number; readonly pen: number };

type DrawingProps = {
  readonly box: SignatureBox;
  /** SVG path text in units of the box. */
  readonly path: string;
  /** Says what it is: whose signature. */
  readonly label: string;
};

/** A signature that was drawn: sharp at any size, in the ink of the page. */
export const SignatureDrawing = ({ box, path, label }: DrawingProps) => (
  <svg
    class={styles.drawing}
    viewBox={`0 0 ${box.width} ${box.height}`}
    style={{ '--pen': String(box.pen) }}
    role="img"
    aria-label={label}
  >
    <path class={styles.ink} d={path} />
  </svg>
);

export type SignatureFieldWords = {
  readonly name: string;
  readonly draw: string;
  readonly nothingDrawn: string;
  readonly drawn: (name: string) => string;
  readonly clear: string;
  readonly putBack: string;
  readonly inLetters: string;
  readonly inLettersSecond: string;
  readonly lettersShown: string;
};

export type SignatureFieldProps = {
  readonly label: string;
  readonly words: SignatureFieldWords;
  readonly box: SignatureBox;
  readonly name: string;
  readonly onName: (name: string) => void;
  /** What was drawn so far, as SVG path text in units of the box; empty for nothing. */
  readonly path: string;
  /** A finished stroke: x and y in turn, in units of the box. */
  readonly onStroke: (points: readonly number[]) => void;
  readonly onClear: () => void;
  /** Given after a Clear: puts back what stood there. */
  readonly onPutBack?: (() => void) | undefined;
  readonly inLetters: boolean;
  readonly onInLetters: (inLetters: boolean) => void;
  readonly hint?: string | undefined;
  readonly nameError?: string | undefined;
  readonly error?: string | undefined;
};

/** Draws the stroke under way only: what is finished goes to the page, which draws it from its data. */
function usePad({ box, onStroke }: Pick<SignatureFieldProps, 'box' | 'onStroke'>) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const finished = useRef(onStroke);
  finished.current = onStroke;
  useEffect(() => {
    const element = canvas.current;
    if (!element?.getContext('2d')) return;
    const pad = new SignaturePad(element, { minDistance: 1 });
    const scale = (): number => box.width / (element.clientWidth || box.width);
    const fit = (): void => {
      const sharp = Math.max(window.devicePixelRatio, 1);
      element.width = Math.round(element.clientWidth * sharp);
      element.height = Math.round(element.clientHeight * sharp);
      element.getContext('2d')?.scale(sharp, sharp);
      // Half the width: the pad takes it for a radius.
      const radius = box.pen / scale() / 2;
      Object.assign(pad, { minWidth: radius, maxWidth: radius, dotSize: radius });
      pad.redraw();
    };
    const begin = (): void => {
      pad.penColor = getComputedStyle(element).color;
    };
    const end = (): void => {
      const strokes = pad.toData();
      pad.clear();
      for (const { points } of strokes)
        finished.current(points.flatMap(({ x, y }) => [x * scale(), y * scale()]));
    };
    pad.addEventListener('beginStroke', begin);
    pad.addEventListener('endStroke', end);
    const observer = new ResizeObserver(fit);
    observer.observe(element);
    return () => {
      observer.disconnect();
      pad.off();
    };
  }, [box]);
  return canvas;
}

function DrawingPlace(props: SignatureFieldProps) {
  const { words, box, name, path, onClear, onPutBack } = props;
  const canvas = usePad(props);
  return (
    <>
      <div class={styles.place} style={{ '--shape': `${box.width} / ${box.height}` }}>
        <p class={styles.draw} aria-hidden="true">
          {path === '' ? words.draw : ''}
        </p>
        <SignatureDrawing
          box={box}
          path={path}
          label={path === '' ? words.nothingDrawn : words.drawn(name)}
        />
        <canvas ref={canvas} class={styles.canvas} />
      </div>
      {path === '' && onPutBack ? (
        <button type="button" class={styles.act} onClick={onPutBack}>
          {words.putBack}
        </button>
      ) : (
        <button type="button" class={styles.act} disabled={path === ''} onClick={onClear}>
          {words.clear}
        </button>
      )}
    </>
  );
}

export function SignatureField(props: SignatureFieldProps) {
  const { label, words, name, onName, inLetters, onInLetters, hint, nameError, error } = props;
  const id = useId();
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined;
  return (
    <fieldset class={styles.field} aria-describedby={described}>
      <legend class={styles.label}>{label}</legend>
      <TextField
        label={words.name}
        value={name}
        maxLength={120}
        autoComplete="name"
        error={nameError}
        onInput={onName}
      />
      {inLetters ? (
        <div class={styles.place}>
          <p class={styles.letters}>{name}</p>
          <p class={styles.draw}>{words.lettersShown}</p>
        </div>
      ) : (
        <DrawingPlace {...props} />
      )}
      <Tick
        label={words.inLetters}
        second={words.inLettersSecond}
        checked={inLetters}
        onChange={onInLetters}
      />
      <div role={error ? 'alert' : undefined}>
        <FieldNotes id={id} hint={hint} error={error} />
      </div>
    </fieldset>
  );
}
