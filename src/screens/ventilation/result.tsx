/** What a check comes to: the verdict in plain words, and every figure behind it, each open to its working. */
import type { Figure } from '../../quantities/figure';
import { formatWritten, printed } from '../../quantities/format';
import type { Written } from '../../quantities/written';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import type { VentilationResult } from '../../safety/ventilation/check';
import { eachLot, portionTaken, roundedDown } from '../../safety/ventilation/rounded';
import { estimate, reasonWords, verdictWords } from '../../safety/ventilation/words';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { NamedRows, type ResultProps, SaidLine } from './figure-rows';
import { InRoomPart } from './in-room-part';
import styles from './ventilation.module.css';
import { ventilationWords as w } from './words';

const thin = '\u202f';

/** Metal that is weighed out, or liquor that is poured. */
const largestLot = (result: VentilationResult): Written | undefined =>
  portionTaken(result) ?? (result.liquorPortion && roundedDown(result.liquorPortion));

/** How many lots of how much; how much is expected in the duct. */
function useDetails(result: VentilationResult): readonly string[] {
  const { sign } = useShell();
  const { split, duct } = result;
  const text = (of: Written) => `${formatWritten(of, sign.value)}${thin}${of.unit}`;
  const most = largestLot(result);
  const [mean, peak] = [duct && printed(duct.mean, sign.value), duct && printed(duct.peak, sign.value)];
  return [
    ...(split && most ? [w.splitInto(split.count, text(eachLot(split.each)), text(most))] : []),
    ...(mean && peak ? [w.inDuct(mean.low ?? mean.value, peak.high ?? peak.value)] : []),
  ];
}

const markOf = { enough: undefined, split: 'wrong', none: 'stop' } as const;

function Verdict({ result }: Pick<ResultProps, 'result'>) {
  const { verdict, reasons } = result;
  const details = useDetails(result);
  const mark = markOf[verdict];
  return (
    <div role="status" class={styles.verdict}>
      {mark ? (
        <Notice mark={mark}>{verdictWords[verdict]}</Notice>
      ) : (
        <p class={styles.enough}>{verdictWords[verdict]}</p>
      )}
      {details.map((line) => (
        <p key={line} class={styles.detail}>
          {line}
        </p>
      ))}
      {reasons.map((reason) => (
        <p key={reason}>{reasonWords[reason]}</p>
      ))}
      <p class={styles.estimate}>{estimate}</p>
    </div>
  );
}

const Conditions = ({ conditions }: VentilationResult) =>
  conditions.length === 0 ? null : (
    <Part rule title={w.conditions}>
      {conditions.map(({ id, text, status }) => (
        <SaidLine key={id} text={text} status={status} />
      ))}
    </Part>
  );

/** The largest lot, rounded down: as it is weighed out or poured. */
function Portion({ result, href }: ResultProps) {
  const { sign } = useShell();
  const { portion, liquorPortion, split } = result;
  const taken = largestLot(result);
  if (!taken) return null;
  return (
    <>
      <Row
        title={w.portion}
        second={w.portionSecond}
        figure={<FigureValue value={formatWritten(taken, sign.value)} unit={taken.unit} />}
        href={href('portion')}
        equals={(portion ?? liquorPortion)?.formula !== undefined}
      />
      {split && <FigureRow title={w.eachLot(split.count)} figure={split.each} href={href('each')} />}
    </>
  );
}

/** A chosen number: it has no more digits than its source. */
function MostInDuct({ most, href }: { readonly most: Figure } & Pick<ResultProps, 'href'>) {
  const { sign } = useShell();
  const { value, unit } = roundedDown(most);
  return (
    <Row
      title={w.ductMost}
      figure={<FigureValue value={formatWritten({ value, unit }, sign.value)} unit={unit} />}
      href={href('duct-most')}
      equals
    />
  );
}

function Figures(props: ResultProps) {
  const { duct, station, made } = props.result;
  if (!made) return null;
  const { gas, release } = made;
  const route = [w.route[gas.usual], ...(gas.limitedBy === 'acid' ? [w.byAcid] : [])].join('; ');
  return (
    <Part rule title={w.figures} width="edge">
      {station.is === 'outdoors' && <p>{w.outdoors}</p>}
      <Rows label={w.figures}>
        <Portion {...props} />
        <NamedRows
          href={props.href}
          rows={[
            ['duct-mean', w.ductMean, duct?.mean],
            ['duct-peak', w.ductPeak, duct?.peak],
          ]}
        />
        {duct && <MostInDuct most={duct.most} href={props.href} />}
        <NamedRows
          href={props.href}
          rows={[
            ['air', w.air, station.is === 'ducted-hood' ? station.face?.airflow : undefined],
            ['gas', w.gas, release.gas, route],
            ['rate-mean', w.rateMean, release.mean],
            ['rate-peak', w.ratePeak, release.peak],
          ]}
        />
      </Rows>
    </Part>
  );
}

function RoomAir({ result, href }: ResultProps) {
  const { sign } = useShell();
  const { made } = result;
  if (!made) return null;
  const { name, at } = made.limit;
  const under = w.under(w.of(name, printed(at, sign.value).value));
  return (
    <>
      <Part rule title={w.roomAir}>
        <SaidLine {...nitrousGas.refused['room-air']} />
      </Part>
      <Part width="edge">
        <Rows label={w.roomAir}>
          <NamedRows
            href={href}
            rows={[
              ['air-mean', w.airMean, made.airNeeded.mean, under],
              ['air-peak', w.airPeak, made.airNeeded.peak, under],
            ]}
          />
        </Rows>
      </Part>
    </>
  );
}

export function Result(props: ResultProps) {
  const { result } = props;
  return (
    <>
      <Part rule title={w.result}>
        <Verdict result={result} />
        {result.refused && result.station.is === 'ductless-hood' && <SaidLine {...result.refused} />}
      </Part>
      <Conditions {...result} />
      <Figures {...props} />
      <RoomAir {...props} />
      {result.made && <InRoomPart {...props} />}
      {result.made && (
        <Part rule>
          <SaidLine {...nitrousGas.counted} />
        </Part>
      )}
    </>
  );
}
