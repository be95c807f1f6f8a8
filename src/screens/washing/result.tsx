/** What stays in a residue after its washes, and the wash water they made. */
import type { MetalWashed, Washed } from '../../chemistry/washing';
import { type Metal, metals } from '../../reference/tables';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { capital } from '../containers/load-table';
import { containerWords } from '../containers/words';
import { FigureRow } from '../figure-row';
import type { WashingOutcome } from './draft';
import { washingWords as w } from './words';

type Props = {
  readonly outcome: WashingOutcome | undefined;
  readonly metal: Metal;
  readonly containerId: string;
};

export const workingOf = (containerId: string, name: string): string =>
  `#/containers/${containerId}/washing/${name}`;

type MetalProps = { readonly of: MetalWashed; readonly containerId: string; readonly full: boolean };

/** The metal that a limit is for in full, the others by what stays. */
function MetalRows({ of, containerId, full }: MetalProps) {
  const name = capital(metals[of.metal].name);
  const href = (what: string) => workingOf(containerId, `${of.metal}-${what}`);
  return (
    <>
      <FigureRow title={w.stays(name)} figure={of.stays} href={href('stays')} />
      {full && <FigureRow title={w.ofDry} figure={of.perDryMass} href={href('dry')} />}
      {full && <FigureRow title={w.inHeld} figure={of.perLitre} href={href('held')} />}
      <FigureRow title={w.inWater(name)} figure={of.inWashWater} href={href('water')} />
    </>
  );
}

type WaterProps = { readonly after: Washed; readonly containerId: string };

function WaterRows({ after, containerId }: WaterProps) {
  const { acidStays, washWater, water } = after;
  const href = (name: string) => workingOf(containerId, name);
  return (
    <>
      {acidStays && <FigureRow title={w.acidStays} figure={acidStays} href={href('acid')} />}
      <FigureRow title={w.washWater} figure={washWater.volume} href={href('wash-water')} />
      {water !== washWater.volume && (
        <FigureRow title={w.water} second={w.waterSecond} figure={water} href={href('water')} />
      )}
    </>
  );
}

export function AfterWashing({ outcome, metal, containerId }: Props) {
  const after = outcome?.washed;
  if (!outcome || !after)
    return (
      <Part rule title={w.result}>
        <p>{w.notYet}</p>
      </Part>
    );
  const first = after.metals.filter((m) => m.metal === metal);
  const others = after.metals.filter((m) => m.metal !== metal);
  const { evenness } = outcome.washable;
  const [source] = evenness.sources;
  return (
    <Part rule title={w.result} width="edge">
      <Rows>
        <FigureRow title={w.share} figure={after.share} href={workingOf(containerId, 'share')} />
        {[...first, ...others].map((m) => (
          <MetalRows key={m.metal} of={m} containerId={containerId} full={m.metal === metal} />
        ))}
        <WaterRows after={after} containerId={containerId} />
        <FigureRow
          title={w.evenness}
          second={source && w.evennessSecond(containerWords.working.status[source.status])}
          figure={evenness}
          href={workingOf(containerId, 'evenness')}
        />
      </Rows>
    </Part>
  );
}
