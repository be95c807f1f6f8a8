/**
 * A room that fills with gas and clears again, by the air that goes through it: with Q' = Q ÷ K
 * V·dC/dt = G − Q'·C. Clearing t = (V ÷ Q')·ln(C₁ ÷ C₂); filling C(t) = (G ÷ Q')·(1 − exp(−Q'·t ÷ V)).
 * Source: university ventilation formulae; CDC 1994, table S3-1 and its notes (reference/nitrous-gas.json).
 */
import { exp, ln, minus, over, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { mixes } from './airflow';

export type Aired = {
  readonly volume: Figure<'m³'>;
  readonly airflow: Figure<'m³/h'>;
  readonly mixing: Figure<'1'>;
};

export type NoTime = {
  readonly code:
    | 'no-room'
    | 'no-airflow'
    | 'no-gas'
    | 'no-limit'
    | 'mixing-outside'
    /** It is as low already. */
    | 'nothing-to-purge'
    /** The air holds it below that for ever. */
    | 'never-reached';
};

export type Timed<F extends Figure> =
  | { readonly ok: true; readonly value: F }
  | { readonly ok: false; readonly failure: NoTime };

const failed = (code: NoTime['code']) => ({ ok: false, failure: { code } }) as const;

function fault({ volume, airflow, mixing }: Aired): NoTime['code'] | undefined {
  if (!volume.value.gt(0)) return 'no-room';
  if (!airflow.value.gt(0)) return 'no-airflow';
  return mixes(mixing) ? undefined : 'mixing-outside';
}

/** Time in which the air that mixes changes once. */
const turn = ({ volume, airflow, mixing }: Aired) => over(times(mixing, volume), airflow);

/** Minutes until what is in the air has come down, once nothing more is made. */
export function purgeTime(room: Aired, from: Figure<'ppm'>, to: Figure<'ppm'>): Timed<Figure<'min'>> {
  const wrong = fault(room);
  if (wrong) return failed(wrong);
  if (!to.value.gt(0)) return failed('no-limit');
  if (to.value.gte(from.value)) return failed('nothing-to-purge');
  return {
    ok: true,
    value: workedOut({
      sentence: 'Time to air the room',
      unit: 'min',
      formula: times(turn(room), ln(over(from, to))),
      note: 'A meter tells when to go in again, never the clock alone.',
    }),
  };
}

/** What a room comes to in the end, ppm, while gas is made at this rate. */
export function settlesAt(room: Aired, rate: Figure<'L/min'>, of: string): Timed<Figure<'ppm'>> {
  const wrong = fault(room);
  if (wrong) return failed(wrong);
  return {
    ok: true,
    value: workedOut({
      sentence: `In the air of the room, ${of}`,
      unit: 'ppm',
      formula: over(times(room.mixing, rate), room.airflow),
    }),
  };
}

/** What is in the air of a clean room after so long, ppm. */
export function buildsUpTo(room: Aired, rate: Figure<'L/min'>, after: Figure<'min'>): Timed<Figure<'ppm'>> {
  const end = settlesAt(room, rate, 'in the end');
  if (!end.ok) return end;
  return {
    ok: true,
    value: workedOut({
      sentence: 'In the air of the room after that time',
      unit: 'ppm',
      formula: times(end.value, minus(1, over(1, exp(over(after, turn(room)))))),
    }),
  };
}

/** Minutes until a clean room has come to `to`. Fails where the air holds it below that for ever. */
export function timeToReach(room: Aired, rate: Figure<'L/min'>, to: Figure<'ppm'>): Timed<Figure<'min'>> {
  if (!rate.value.gt(0)) return failed('no-gas');
  if (!to.value.gt(0)) return failed('no-limit');
  const end = settlesAt(room, rate, 'in the end');
  if (!end.ok) return end;
  if (to.value.gte(end.value.value)) return failed('never-reached');
  return {
    ok: true,
    value: workedOut({
      sentence: 'Time until the room has come to that',
      unit: 'min',
      formula: times(turn(room), ln(over(end.value, minus(end.value, to)))),
    }),
  };
}

/** All the gas in a room that is shut, ppm. */
export function closedIn(volume: Figure<'m³'>, gas: Figure<'L'>): Timed<Figure<'ppm'>> {
  if (!volume.value.gt(0)) return failed('no-room');
  return {
    ok: true,
    value: workedOut({
      sentence: 'In the room when nothing carries it away',
      unit: 'ppm',
      formula: over(gas, volume),
    }),
  };
}

/** Minutes until a room that is shut has come to `to` at this rate: the soonest, with the rate of the peak. */
export function closedReaches(
  volume: Figure<'m³'>,
  rate: Figure<'L/min'>,
  to: Figure<'ppm'>,
): Timed<Figure<'min'>> {
  if (!volume.value.gt(0)) return failed('no-room');
  if (!rate.value.gt(0)) return failed('no-gas');
  return {
    ok: true,
    value: workedOut({
      sentence: 'Soonest that the room has come to that, when nothing carries it away',
      unit: 'min',
      formula: over(times(volume, to), rate),
    }),
  };
}
