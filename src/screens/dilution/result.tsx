/** What a dilution comes to: water first, then acid; how warm it may become; the mixture. */

import { warmestC } from '../../chemistry/dilution-heat';
import type { Figure } from '../../quantities/figure';
import { printed } from '../../quantities/format';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { shown } from '../amounts';
import { useShell } from '../shell';
import type { Outcome } from './draft';
import { dilutionWords as w } from './words';

type Props = { readonly outcome: Outcome; readonly batchId: string };

const workingOf = (batchId: string, key: string) => `#/batches/${batchId}/dilution/${key}`;

type FigureRowProps = {
  readonly batchId: string;
  readonly name: string;
  readonly title: string;
  readonly figure: Figure;
  readonly second?: string;
};

/** A figure that was worked out opens; one that was typed stands as it is. */
function FigureRow({ batchId, name, title, figure, second }: FigureRowProps) {
  const { sign } = useShell();
  const open = figure.formula ? { href: workingOf(batchId, name), equals: true } : {};
  return (
    <Row
      title={title}
      {...(second === undefined ? {} : { second })}
      figure={<FigureValue {...shown(figure, sign.value)} />}
      {...open}
    />
  );
}

function Warm({ outcome }: { readonly outcome: Outcome }) {
  const { sign } = useShell();
  const { pouring, dilution, roomC } = outcome;
  const celsius = roomC.replace('.', sign.value);
  if (pouring.kind === 'slowly') return null;
  if (pouring.kind === 'room-too-warm')
    return (
      <Notice mark="wrong" second={w.roomTooWarmSecond}>
        {w.roomTooWarm(warmestC)}
      </Notice>
    );
  const { low = '', high = '' } = printed(dilution.warming.rise, sign.value);
  return (
    <Notice mark="wrong" second={w.warmSecond(low, high, celsius)}>
      {w.warm(warmestC)}
    </Notice>
  );
}

function Pour({ outcome, batchId }: Props) {
  const { sign } = useShell();
  const { pouring, dilution, roomC } = outcome;
  const weighs = (mass: Figure) => {
    const { value, unit } = printed(mass, sign.value);
    return w.weighs(`${value}\u202f${unit}`);
  };
  const { acid, water } = dilution;
  const portions = pouring.kind === 'in-portions';
  return (
    <Rows>
      <FigureRow
        batchId={batchId}
        name="water"
        title={w.waterFirst}
        second={weighs(water.mass)}
        figure={water.volume}
      />
      <FigureRow
        batchId={batchId}
        name="acid"
        title={portions ? w.acidPortions : w.acidSlowly}
        second={weighs(acid.mass)}
        figure={acid.volume}
      />
      {portions && (
        <Row
          title={w.portion}
          second={w.portionSecond(roomC.replace('.', sign.value))}
          figure={
            <FigureValue value={printed(pouring.portion, sign.value).low ?? ''} unit={pouring.portion.unit} />
          }
          href={workingOf(batchId, 'portion')}
          equals
        />
      )}
    </Rows>
  );
}

export function Result({ outcome, batchId }: Props) {
  const { whole, mixture, warming } = outcome.dilution;
  const rows: readonly (readonly [name: string, title: string, figure: Figure])[] = [
    ['volume', w.mixtureVolume, whole.volume],
    ['mass', w.mixtureMass, whole.mass],
    ['percent', w.percent, mixture.percent],
    ['molarity', w.molarity, mixture.molarity],
    ['density', w.density, mixture.density],
    ['heat', w.heat, warming.heat],
    ['rise', w.rise, warming.rise],
  ];
  return (
    <>
      <Part rule title={w.result} width="edge">
        <Warm outcome={outcome} />
        <Pour outcome={outcome} batchId={batchId} />
      </Part>
      <Part rule title={w.makes} width="edge">
        <Rows>
          {rows.map(([name, title, figure]) => (
            <FigureRow key={name} batchId={batchId} name={name} title={title} figure={figure} />
          ))}
        </Rows>
      </Part>
    </>
  );
}
