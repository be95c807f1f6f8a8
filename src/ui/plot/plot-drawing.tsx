/** A plot's geometry as SVG, with its title and description. */
import styles from './plot.module.css';
import type { PlotGeometry } from './plot-geometry';

export const PlotDrawing = ({ id, geometry }: { readonly id: string; readonly geometry: PlotGeometry }) => (
  <svg
    class={styles.drawing}
    width={geometry.width}
    height={geometry.height}
    viewBox={`0 0 ${geometry.width} ${geometry.height}`}
    role="img"
    aria-labelledby={`${id}-title`}
    aria-describedby={`${id}-says`}
  >
    <title id={`${id}-title`}>{geometry.title}</title>
    <desc id={`${id}-says`}>{geometry.says}</desc>
    <g>
      {geometry.paths.map(({ look, path, dash }, at) => (
        <path
          key={`${at} ${look}`}
          d={path}
          class={`${styles.path} ${styles[look]}`}
          stroke-dasharray={dash?.join(' ')}
        />
      ))}
      {geometry.texts.map(({ look, x, y, text, size, anchor, over }) => (
        <text
          key={`${text} ${x} ${y}`}
          x={x}
          y={y}
          font-size={size}
          text-anchor={anchor}
          class={`${styles[`${look}Text`]} ${over ? styles.halo : ''}`}
        >
          {text}
        </text>
      ))}
    </g>
  </svg>
);
