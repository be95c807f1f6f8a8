/** The lines of a hood with a duct: its opening, the air in it, what was changed, its certificate. */
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { NumberField } from '../number-field';
import {
  lengthUnits,
  type StationFaults,
  type StationFields,
  type StationReads,
  speedUnits,
} from './station-fields';
import { stationWords as w } from './words';

type Props = {
  readonly value: StationFields;
  readonly change: (part: Partial<StationFields>) => void;
  readonly reads: StationReads;
  readonly faults: StationFaults;
  readonly tried: boolean;
};

const Opening = ({ value, change, reads, tried }: Props) => (
  <Part rule title={w.opening}>
    <NumberField
      label={w.width}
      field={value.width}
      onChange={(width) => change({ width })}
      read={reads.width}
      tried={tried}
      units={lengthUnits}
    />
    <NumberField
      label={w.height}
      field={value.height}
      onChange={(height) => change({ height })}
      read={reads.height}
      tried={tried}
      units={lengthUnits}
      hint={w.heightHint}
    />
  </Part>
);

const Air = ({ value, change, reads, faults, tried }: Props) => (
  <Part rule title={w.air}>
    <NumberField
      label={w.speed}
      field={value.speed}
      onChange={(speed) => change({ speed })}
      read={faults.speed === undefined ? reads.speed : { state: 'wrong', fault: faults.speed }}
      tried={tried}
      units={speedUnits}
      optional
      hint={w.speedHint}
    />
    <TextField
      label={w.measuredOn}
      kind="date"
      value={value.measuredOn}
      onInput={(measuredOn) => change({ measuredOn })}
      error={faults.measuredOn}
    />
    <TextField
      label={w.changed}
      kind="date"
      value={value.changedOn}
      onInput={(changedOn) => change({ changedOn })}
      hint={w.changedHint}
      error={faults.changedOn}
    />
  </Part>
);

const Certificate = ({ value, change, reads, faults, tried }: Props) => (
  <Part rule title={w.certificate}>
    <p>{w.certificateHint}</p>
    <NumberField
      label={w.slowest}
      field={value.slowest}
      onChange={(slowest) => change({ slowest })}
      read={reads.slowest}
      tried={tried}
      units={speedUnits}
      optional
    />
    <NumberField
      label={w.fastest}
      field={value.fastest}
      onChange={(fastest) => change({ fastest })}
      read={reads.fastest}
      tried={tried}
      units={speedUnits}
      optional
    />
    <TextField
      label={w.certifiedOn}
      kind="date"
      value={value.certifiedOn}
      onInput={(certifiedOn) => change({ certifiedOn })}
      error={faults.certifiedOn}
    />
    {faults.certificate !== undefined && (
      <div data-wrong="true" tabIndex={-1}>
        <Notice mark="wrong" role="alert">
          {faults.certificate}
        </Notice>
      </div>
    )}
  </Part>
);

export const HoodFields = (props: Props) => (
  <>
    <Opening {...props} />
    <Air {...props} />
    <Certificate {...props} />
  </>
);
