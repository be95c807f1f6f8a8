/** A label on the screen, from the same layout and in the same fonts as its file. */
import type { LabelLayout } from '../../paperwork/labels/layout';
import { Shapes } from '../../ui/pictogram';
import styles from './labels.module.css';
import { pictureDrawings, pictureRules, pictureTexts, pictureWords } from './picture-parts';
import { labelPageWords as w } from './words';

export const LabelPicture = ({ layout }: { readonly layout: LabelLayout }) => (
  <svg
    class={styles.label}
    viewBox={`0 0 ${layout.width} ${layout.height}`}
    role="img"
    aria-label={w.previewSays(pictureWords(layout))}
  >
    {pictureRules(layout).map(({ x, y, width, height }) => (
      <rect key={`${x} ${y}`} x={x} y={y} width={width} height={height} />
    ))}
    {pictureDrawings(layout).map(({ key, shapes, transform }) => (
      <g key={key} transform={transform}>
        <Shapes shapes={shapes} />
      </g>
    ))}
    {pictureTexts(layout).map(({ key, x, baseline, size, run }) => (
      <text
        key={key}
        x={x}
        y={baseline}
        font-size={size}
        textLength={run.width}
        lengthAdjust="spacingAndGlyphs"
        class={styles[run.face]}
      >
        {run.text}
      </text>
    ))}
  </svg>
);
