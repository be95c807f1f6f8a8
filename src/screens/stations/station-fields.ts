/** A working place as a form holds it, what is wrong in it, and the place as it goes into the record. */
import Decimal from 'decimal.js';
import * as z from 'zod/mini';
import type { StationDescribed } from '../../ledger/entries/stations';
import { inUnit } from '../../quantities/quantity';
import type { Unit } from '../../quantities/unit';
import type { Written } from '../../quantities/written';
import type { WrittenStation } from '../../safety/ventilation/station-schema';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { missing } from '../tried';
import { words } from '../words';
import { stationWords } from './words';

const w = stationWords.fault;

export const lengthUnits = ['cm', 'm', 'in', 'ft'] as const;
export const speedUnits = ['m/s', 'ft/min'] as const;
export const roomUnits = ['m³', 'ft³'] as const;
export const airflowUnits = ['m³/h', 'L/min', 'ft³/min'] as const;

type Length = (typeof lengthUnits)[number];
type Speed = (typeof speedUnits)[number];

export const StationFields = z.object({
  name: z.string(),
  /** Absent until somebody has chosen. */
  is: z.optional(z.enum(['ducted-hood', 'outdoors', 'room', 'ductless-hood'])),
  width: Typed,
  height: Typed,
  speed: Typed,
  measuredOn: z.string(),
  changedOn: z.string(),
  slowest: Typed,
  fastest: Typed,
  certifiedOn: z.string(),
  volume: Typed,
  airflow: Typed,
  note: z.string(),
});
export type StationFields = z.infer<typeof StationFields>;

const shown = (written: Written | undefined, unit: string): Typed =>
  written ? { typed: written.value, unit: written.unit } : typed(unit);

/** The form of a place as it was described last, or of a new one. */
export function fieldsOf(
  body: Pick<StationDescribed, 'name' | 'station' | 'note'> | undefined,
): StationFields {
  const station = body?.station;
  const hood = station?.is === 'ducted-hood' ? station : undefined;
  const room = station?.is === 'room' ? station : undefined;
  return {
    name: body?.name ?? '',
    ...(station ? { is: station.is } : {}),
    width: shown(hood?.width, 'cm'),
    height: shown(hood?.height, 'cm'),
    speed: shown(hood?.face?.speed, 'm/s'),
    measuredOn: hood?.face?.measuredOn ?? '',
    changedOn: hood?.changedOn ?? '',
    slowest: shown(hood?.certificate?.low, 'm/s'),
    fastest: shown(hood?.certificate?.high, 'm/s'),
    certifiedOn: hood?.certificate?.datedOn ?? '',
    volume: shown(room?.volume ?? hood?.room, 'm³'),
    airflow: shown(room?.airflow, 'm³/h'),
    note: body?.note ?? '',
  };
}

export type StationReads = {
  readonly width: FieldRead<Length>;
  readonly height: FieldRead<Length>;
  readonly speed: FieldRead<Speed>;
  readonly slowest: FieldRead<Speed>;
  readonly fastest: FieldRead<Speed>;
  readonly volume: FieldRead<(typeof roomUnits)[number]>;
  readonly airflow: FieldRead<(typeof airflowUnits)[number]>;
};

const aboveZero = { aboveZero: true };

export const readFields = (fields: StationFields): StationReads => ({
  width: readTyped(fields.width, aboveZero),
  height: readTyped(fields.height, aboveZero),
  speed: readTyped(fields.speed, aboveZero),
  slowest: readTyped(fields.slowest, aboveZero),
  fastest: readTyped(fields.fastest, aboveZero),
  volume: readTyped(fields.volume, aboveZero),
  airflow: readTyped(fields.airflow, aboveZero),
});

export type StationFaults = Partial<
  Record<'name' | 'is' | 'speed' | 'measuredOn' | 'changedOn' | 'certificate' | 'certifiedOn', string>
>;

/** A day of the past, wanted or not. */
function dayFault(day: string, wanted: boolean, today: string): string | undefined {
  if (day === '') return wanted ? w.dateMissing : undefined;
  return day > today ? w.dateAhead : undefined;
}

const metresASecond = (written: Written<Unit>): Decimal => new Decimal(inUnit(written, 'm/s'));

function certificateFault(fields: StationFields, { slowest, fastest }: StationReads): string | undefined {
  const some = [slowest, fastest].some(({ state }) => state !== 'empty') || fields.certifiedOn !== '';
  if (!some || slowest.state === 'wrong' || fastest.state === 'wrong') return undefined;
  if (slowest.state === 'empty' || fastest.state === 'empty' || fields.certifiedOn === '')
    return w.windowMissing;
  return metresASecond(fastest.written).lt(metresASecond(slowest.written)) ? w.windowTurned : undefined;
}

/** A reading has a speed and a day. */
export const readingFaults = (
  speed: FieldRead<string>,
  measuredOn: string,
  today: string,
): Pick<StationFaults, 'speed' | 'measuredOn'> => ({
  ...(speed.state === 'empty' && measuredOn !== '' ? { speed: w.speedMissing } : {}),
  ...found('measuredOn', dayFault(measuredOn, speed.state !== 'empty', today)),
});

const found = <K extends string>(key: K, fault: string | undefined): { readonly [P in K]?: string } =>
  fault === undefined ? {} : ({ [key]: fault } as { readonly [P in K]: string });

/** What is wrong beyond the numbers themselves, by field. @param today "2026-11-29" */
export function faultsOf(fields: StationFields, today: string): StationFaults {
  const name = {
    ...found('name', missing(fields.name)),
    ...found('is', fields.is === undefined ? words.choice.missing : undefined),
  };
  if (fields.is !== 'ducted-hood') return name;
  const reads = readFields(fields);
  return {
    ...name,
    ...readingFaults(reads.speed, fields.measuredOn, today),
    ...found('changedOn', dayFault(fields.changedOn, false, today)),
    ...found('certificate', certificateFault(fields, reads)),
    ...found('certifiedOn', dayFault(fields.certifiedOn, false, today)),
  };
}

const sound = (...reads: readonly FieldRead<string>[]): boolean =>
  reads.every(({ state }) => state !== 'wrong');

function hoodOf(fields: StationFields): WrittenStation | undefined {
  const { width, height, speed, slowest, fastest, volume } = readFields(fields);
  if (!sound(speed, slowest, fastest, volume) || width.state !== 'written' || height.state !== 'written')
    return undefined;
  return {
    is: 'ducted-hood',
    width: width.written,
    height: height.written,
    ...(speed.state === 'written' ? { face: { speed: speed.written, measuredOn: fields.measuredOn } } : {}),
    ...(fields.changedOn === '' ? {} : { changedOn: fields.changedOn }),
    ...(slowest.state === 'written' && fastest.state === 'written'
      ? { certificate: { low: slowest.written, high: fastest.written, datedOn: fields.certifiedOn } }
      : {}),
    ...(volume.state === 'written' ? { room: volume.written } : {}),
  };
}

function roomOf(fields: StationFields): WrittenStation | undefined {
  const { volume, airflow } = readFields(fields);
  if (volume.state !== 'written' || airflow.state === 'wrong') return undefined;
  return {
    is: 'room',
    volume: volume.written,
    ...(airflow.state === 'written' ? { airflow: airflow.written } : {}),
  };
}

/** The place as it goes into the record; undefined while something in the form is missing or wrong. */
export function stationOf(fields: StationFields, today: string): WrittenStation | undefined {
  if (Object.keys(faultsOf(fields, today)).length > 0) return undefined;
  switch (fields.is) {
    case 'ducted-hood':
      return hoodOf(fields);
    case 'room':
      return roomOf(fields);
    case 'outdoors':
    case 'ductless-hood':
      return { is: fields.is };
    case undefined:
      return undefined;
  }
}
