/** The waste of a test: how much, and into which jar of its own kind. */
import { holdsOnly } from '../../ledger/silver-test';
import { printed } from '../../quantities/format';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { IntoContainer } from '../batches/into-container';
import { Fault } from '../fault';
import { FigureRow } from '../figure-row';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words as shared, streamName } from '../words';
import { StillStands } from './test-end';
import { useKeepTest } from './use-keep-test';
import type { TestOnScreen } from './use-test';
import { kindsMade, readDrops, readSample, readVolume, type TestWaste, workedVolume } from './waste-draft';
import { silverWords as w } from './words';

type Props = { readonly on: TestOnScreen; readonly batchId: string };

/** Sample and drops, and what they come to. */
function SampleAndDrops({ on, batchId }: Props) {
  const { sign } = useShell();
  const { test, form } = on;
  const volume = workedVolume(test);
  const [first] = kindsMade(test);
  const text = volume && printed(volume, '.');
  return (
    <Part>
      <NumberField
        label={w.waste.sample}
        field={test.sample}
        units={['mL']}
        onChange={(sample) => form.change({ sample })}
        read={readSample(test)}
        optional
      />
      <NumberField
        label={w.waste.drops}
        field={test.drops}
        units={['1']}
        onChange={(drops) => form.change({ drops })}
        read={readDrops(test)}
        optional
      />
      {volume && text && (
        <>
          <Rows>
            <FigureRow
              title={w.waste.worked}
              figure={volume}
              href={`#/batches/${batchId}/silver-check/working/volume`}
            />
          </Rows>
          <Button
            onTap={() =>
              form.change({ [first]: { ...test[first], volume: { typed: text.value, unit: 'mL' } } })
            }
          >
            {w.waste.take(`${printed(volume, sign.value).value}\u202fmL`)}
          </Button>
        </>
      )}
    </Part>
  );
}

type WasteProps = {
  readonly on: TestOnScreen;
  readonly kind: TestWaste;
  readonly wanted: boolean;
  readonly tried: boolean;
};

function Waste({ on, kind, wanted, tried }: WasteProps) {
  const { state } = useShell();
  const draft = on.test[kind];
  const change = (part: Partial<typeof draft>): void =>
    on.form.change({ [kind]: { ...on.form.latest()[kind], ...part } });
  const made = wanted || draft.volume.typed !== '';
  return (
    <Part rule title={streamName[kind]}>
      <NumberField
        label={w.waste.volume}
        field={draft.volume}
        units={['mL', 'L']}
        onChange={(volume) => change({ volume })}
        read={readVolume(draft)}
        tried={tried}
        optional={!wanted}
        hint={wanted ? w.waste.volumeHint : w.waste.chlorideHint}
      />
      {made && (
        <IntoContainer
          into={draft.into}
          onChange={(into) => change({ into })}
          tried={tried}
          only={(container) =>
            container.body.containerId === draft.into.where || holdsOnly(state.value, container, kind)
          }
        />
      )}
    </Part>
  );
}

/** Every line that is wanted can be read, and what is there has its jar. */
function isComplete({ test }: TestOnScreen): boolean {
  if (readSample(test).state === 'wrong' || readDrops(test).state === 'wrong') return false;
  return kindsMade(test).every((kind, at) => {
    const volume = readVolume(test[kind]);
    if (volume.state === 'empty') return at > 0;
    return volume.state === 'written' && test[kind].into.where !== '';
  });
}

export function WastePage({ on, batchId }: Props) {
  const { tried, tryNow } = useTried();
  const keeping = useKeepTest(on, batchId);
  const complete = isComplete(on);
  const keep = (seen: string | null): void => {
    tryNow();
    if (complete) void keeping.keep(seen, true);
  };
  return (
    <Frame
      title={w.waste.title}
      second={w.waste.second}
      focusKey="waste"
      ways={[
        { label: shared.back, onTap: () => on.form.change({ atWaste: false }) },
        { label: w.waste.keep, onTap: () => keep(null), strong: true, disabled: keeping.busy },
      ]}
    >
      <StillStands on={on} />
      <SampleAndDrops on={on} batchId={batchId} />
      {kindsMade(on.test).map((kind, at) => (
        <Waste key={kind} on={on} kind={kind} wanted={at === 0} tried={tried} />
      ))}
      <Part>
        <Fault words={keeping.against ?? keeping.fault} />
        {keeping.against !== null && (
          <Button disabled={keeping.busy} onTap={() => keep(keeping.against)}>
            {w.waste.happened}
          </Button>
        )}
        {tried && !complete && <Fault words={shared.number.look} />}
        <Button
          disabled={keeping.busy}
          second={w.waste.withoutSecond}
          onTap={() => void keeping.keep(null, false)}
        >
          {w.waste.without}
        </Button>
      </Part>
    </Frame>
  );
}
