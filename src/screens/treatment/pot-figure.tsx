/** The curve of the pot, drawn. */
import { useMemo } from 'preact/hooks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { useShell } from '../shell';
import type { Chosen } from './choice';
import { isRough, type PotPlotAsked, potCursor, potPlot } from './pot-plot';
import styles from './treatment.module.css';
import { treatmentWords as w } from './words';

const askedOf = (
  { base, curve, aim, pH, to, which }: Chosen,
  sign: PotPlotAsked['sign'],
): PotPlotAsked | undefined =>
  curve && {
    base,
    curve,
    aim,
    which,
    sign,
    dose: to?.ok ? { x: to.needed.mass.value.toNumber(), y: pH } : undefined,
  };

/** Stands where a plot will. */
export const Coming = () => (
  <div class={styles.coming}>
    <p role="status">{w.coming}</p>
  </div>
);

/** @param chosen absent while it is worked out: its room is kept */
export function PotFigure({ chosen }: { readonly chosen: Chosen | undefined }) {
  const { sign } = useShell();
  const decimal = sign.value;
  const drawn = useMemo(() => {
    const asked = chosen && askedOf(chosen, decimal);
    return asked && { spec: potPlot(asked), cursor: potCursor(asked) };
  }, [chosen, decimal]);
  if (!chosen) return <Coming />;
  return (
    <>
      <Part>
        {drawn ? (
          // Another base is another axis: the cursor begins anew.
          <Plot key={chosen.base} spec={drawn.spec} cursor={drawn.cursor} />
        ) : (
          <Notice mark="unknown">{w.curveFailed}</Notice>
        )}
      </Part>
      {chosen.curve && isRough(chosen.curve) && (
        <Notice mark="unknown" second={w.roughSecond}>
          {w.rough}
        </Notice>
      )}
    </>
  );
}
