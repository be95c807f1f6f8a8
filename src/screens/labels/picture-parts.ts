/** A label's layout as a picture takes it: texts with base lines, drawings with their places, and all of it in words. */
import type { LabelPart } from '../../paperwork/labels/boxes';
import type { LabelLayout } from '../../paperwork/labels/layout';
import type { Run } from '../../paperwork/pdf/lines';
import { baselineIn } from '../../paperwork/pdf/styles';

export type PictureText = {
  readonly key: string;
  readonly x: number;
  readonly baseline: number;
  readonly size: number;
  readonly run: Run;
};

type Text = Extract<LabelPart, { readonly kind: 'text' }>;
type Drawn = Extract<LabelPart, { readonly kind: 'drawing' }>;

const textsOf = ({ lines, style }: Text): PictureText[] =>
  lines.flatMap(({ line, x, y }) => {
    let left = x;
    return line.runs.map((run) => {
      const at = { key: `${left} ${y}`, x: left, baseline: y + baselineIn(style), size: style.size, run };
      left += run.width;
      return at;
    });
  });

export const pictureTexts = ({ parts }: LabelLayout): readonly PictureText[] =>
  parts.flatMap((part) => (part.kind === 'text' ? textsOf(part) : []));

/** Drawings with the SVG transform that puts each in its place. */
export const pictureDrawings = ({ parts }: LabelLayout) =>
  parts
    .filter((part): part is Drawn => part.kind === 'drawing')
    .map(({ drawing, x, y, width }) => ({
      key: `${x} ${y}`,
      shapes: drawing.shapes,
      transform: `translate(${x} ${y}) scale(${width / drawing.width})`,
    }));

export const pictureRules = ({ parts }: LabelLayout) => parts.filter((part) => part.kind === 'rule');

/** Everything that stands on it, in the order in which it is read. */
export const pictureWords = ({ parts }: LabelLayout): string =>
  parts
    .flatMap((part) => {
      if (part.kind === 'rule') return [];
      if (part.kind === 'drawing') return part.drawing.says === '' ? [] : [part.drawing.says];
      return part.lines.map(({ line }) => line.runs.map(({ text }) => text).join(''));
    })
    .join(' ');
