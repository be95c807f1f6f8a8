/**
 * A ventilation station as figures, and whether a ducted hood holds what is worked in it: the mean speed of the air in its
 * opening lies in its window, was measured within a year, and nothing was changed since. Window and guards:
 * reference/nitrous-gas.json. The airflow of a hood is the area of its opening times that speed.
 */
import { constant, sourceOf } from '../../chemistry/constants';
import { times } from '../../quantities/expression';
import { exact, type Figure, read, within, workedOut } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import type { Written } from '../../quantities/written';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { readingEnds } from './reading-due';
import type { WrittenStation } from './station-schema';

/** Speeds between which a hood holds, and who says so. */
export type Window = {
  readonly by: 'usual' | 'certificate';
  readonly slowest: Figure<'m/s'>;
  readonly fastest: Figure<'m/s'>;
};

export type DuctedHood = {
  readonly is: 'ducted-hood';
  readonly width: Figure<'m'>;
  readonly height: Figure<'m'>;
  readonly window: Window;
  /** A certificate is there and does not count: older than the last change, not dated yet, or outside what any hood may have. */
  readonly certificateOut: boolean;
  /** Absent where nobody has measured it. */
  readonly face?: {
    readonly speed: Figure<'m/s'>;
    readonly measuredOn: string;
    readonly airflow: Figure<'m³/h'>;
  };
  readonly changedOn?: string;
  /** Of the room that it stands in. */
  readonly room?: Figure<'m³'>;
};

export type Station =
  | DuctedHood
  | { readonly is: 'room'; readonly volume: Figure<'m³'>; readonly airflow?: Figure<'m³/h'> }
  | { readonly is: 'outdoors' }
  | { readonly is: 'ductless-hood' };

const { face: known } = nitrousGas;
const slowest = constant('face-slowest', 'Slowest face speed, usual', known.slowest, 'm/s');
const fastest = constant('face-fastest', 'Fastest face speed, usual', known.fastest, 'm/s');

/** Measured in a workshop: as near as that is usual, or as the last digit hides. */
const measured = <U extends Unit>(
  written: Written<Unit>,
  unit: U,
  origin: string,
  sentence: string,
): Figure<U> =>
  read({
    origin,
    sentence,
    written,
    unit,
    how: 'reading',
    spread: (value) => within(value.times(known.measuredWithin.value).div(100)),
    sources: [sourceOf(known.measuredWithin)],
  });

const length = (written: Written<Unit>, origin: string, sentence: string): Figure<'m'> =>
  read({ origin, sentence, written, unit: 'm', how: 'reading', spread: () => exact });

type WrittenHood = Extract<WrittenStation, { is: 'ducted-hood' }>;

const certified = (written: Written<Unit>, which: string): Figure<'m/s'> =>
  read({
    origin: `station/certificate/${which}`,
    sentence: `${which} face speed, by the certificate of this hood`,
    written,
    unit: 'm/s',
    how: 'stated',
    spread: () => exact,
  });

/** The window of the certificate, inside the guards; undefined where it does not count. */
function certifiedWindow({ certificate, changedOn }: WrittenHood, on: string): Window | undefined {
  if (!certificate || certificate.datedOn > on) return undefined;
  if (changedOn !== undefined && certificate.datedOn < changedOn) return undefined;
  const [low, high] = [certified(certificate.low, 'Slowest'), certified(certificate.high, 'Fastest')];
  const guardLow = constant('face-guard-low', 'Slowest for any hood', known.certifiedSlowest, 'm/s');
  const guardHigh = constant('face-guard-high', 'Fastest for any hood', known.certifiedFastest, 'm/s');
  const window: Window = {
    by: 'certificate',
    slowest: low.value.lt(guardLow.value) ? guardLow : low,
    fastest: high.value.gt(guardHigh.value) ? guardHigh : high,
  };
  return window.slowest.value.lte(window.fastest.value) ? window : undefined;
}

function hoodFrom(written: WrittenHood, on: string): DuctedHood {
  const width = length(written.width, 'station/width', 'Width of the opening, sash at its mark');
  const height = length(written.height, 'station/height', 'Height of the opening, sash at its mark');
  const window = certifiedWindow(written, on);
  const speed =
    written.face &&
    measured(written.face.speed, 'm/s', 'station/face', 'Mean speed of the air in the opening');
  const room = written.room && measured(written.room, 'm³', 'station/room', 'Volume of the room');
  return {
    is: 'ducted-hood',
    width,
    height,
    window: window ?? { by: 'usual', slowest, fastest },
    certificateOut: written.certificate !== undefined && !window,
    ...(written.face && speed
      ? {
          face: {
            speed,
            measuredOn: written.face.measuredOn,
            airflow: workedOut({
              sentence: 'Air that the hood takes away',
              unit: 'm³/h',
              formula: times(width, height, speed),
            }),
          },
        }
      : {}),
    ...(written.changedOn === undefined ? {} : { changedOn: written.changedOn }),
    ...(room ? { room } : {}),
  };
}

/** A station as figures. @param on the day of the step, "2026-11-29" */
export function stationFrom(written: WrittenStation, on: string): Station {
  switch (written.is) {
    case 'ducted-hood':
      return hoodFrom(written, on);
    case 'room':
      return {
        is: 'room',
        volume: measured(written.volume, 'm³', 'station/room', 'Volume of the room'),
        ...(written.airflow
          ? {
              airflow: measured(written.airflow, 'm³/h', 'station/airflow', 'Air that goes through the room'),
            }
          : {}),
      };
    case 'outdoors':
    case 'ductless-hood':
      return { is: written.is };
  }
}

export type HoodFault =
  | 'opening-missing'
  | 'face-not-measured'
  | 'face-too-slow'
  | 'face-too-fast'
  | 'reading-too-old'
  | 'reading-before-change'
  | 'reading-not-yet'
  /** Beside another: its certificate would say otherwise, and does not count. */
  | 'certificate-does-not-count';

/** Why a hood is not counted on; empty where it is. @param on the day of the step */
export function hoodFaults(hood: DuctedHood, on: string): readonly HoodFault[] {
  const { face, window, changedOn, width, height } = hood;
  if (!width.value.gt(0) || !height.value.gt(0)) return ['opening-missing'];
  if (!face) return ['face-not-measured'];
  const faults: HoodFault[] = [];
  if (face.speed.value.lt(window.slowest.value)) faults.push('face-too-slow');
  if (face.speed.value.gt(window.fastest.value)) faults.push('face-too-fast');
  if (faults.length > 0 && hood.certificateOut) faults.push('certificate-does-not-count');
  if (face.measuredOn > on) faults.push('reading-not-yet');
  else if (readingEnds(face.measuredOn) < on) faults.push('reading-too-old');
  if (changedOn !== undefined && face.measuredOn < changedOn) faults.push('reading-before-change');
  return faults;
}
