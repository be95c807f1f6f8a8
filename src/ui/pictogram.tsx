/** A drawing made of filled and stroked paths: a hazard pictogram, or parts of a paper. Its name is read out. */

export type DrawnShape = {
  /** SVG path data. */
  readonly path: string;
  readonly fill?: string;
  readonly fillRule?: 'nonzero' | 'evenodd';
  readonly stroke?: string;
  readonly strokeWidth?: number;
  readonly dash?: readonly number[];
};

export const Shapes = ({ shapes }: { readonly shapes: readonly DrawnShape[] }) => (
  <>
    {shapes.map(({ path, fill, fillRule, stroke, strokeWidth, dash }, at) => (
      <path
        key={at}
        d={path}
        fill={fill ?? 'none'}
        fill-rule={fillRule}
        stroke={stroke}
        stroke-width={strokeWidth}
        stroke-dasharray={dash?.join(' ')}
        stroke-linejoin="round"
      />
    ))}
  </>
);

export type PictogramProps = {
  readonly drawing: {
    readonly width: number;
    readonly height: number;
    readonly shapes: readonly DrawnShape[];
  };
  /** Its name in words; left out where the words stand beside it. */
  readonly word?: string | undefined;
  /** Width in px. */
  readonly sizePx: number;
};

export const Pictogram = ({ drawing, word, sizePx }: PictogramProps) => (
  <svg
    width={sizePx}
    viewBox={`0 0 ${drawing.width} ${drawing.height}`}
    role={word === undefined ? undefined : 'img'}
    aria-label={word}
    aria-hidden={word === undefined ? 'true' : undefined}
  >
    <Shapes shapes={drawing.shapes} />
  </svg>
);
