/** Words in the data of a set: amounts, the statement, what to do if it goes wrong, carriage. */
import { joined, notDetermined } from '../words';
import { noneLogged } from './data-words';

export const setWords = {
  noneLogged,
  ammonia: 'ammonia',
  chloride: 'chloride',
  liquidByLevel: 'Liquid by its level',
  solidByLevel: 'Solids as weighed',
  liquidByRecord: 'Liquid by the record',
  solidByRecord: 'Solids by the record',
  liquidInAll: 'Liquid in all containers',
  solidInAll: 'Wet solids in all containers',
  massInAll: 'Waste in all containers',
  solidsIn: 'Wet solids in the container',
  shareOf: (name: string) => `Share of ${name} by mass`,
  // What is not determined
  amountOf: (names: readonly string[]) => `how much ${joined(names)}`,
  whollyOf: (names: readonly string[]) => `how much ${joined(names)} in all: what is told is at least there`,
  contents: 'what is in it, for sure',
  ph: 'pH as it is now',
  colour: 'colour',
  layers: 'layers',
  mass: 'mass',
  madeOf: 'what the vessel is made of',
  mustLeave: 'by when it must leave',
  decides: (what: readonly string[]) => `for candidates besides: ${joined(what)}`,
  // The statement
  states: (name: string, entry: number) =>
    `${name === notDetermined ? 'The generator' : name} states this to the best of its knowledge, from its record as it stood at entry ${entry}.`,
  aboutEach: (n: number) =>
    `What ${n === 1 ? 'the container holds' : `each of the ${n} containers holds`}, how it came about and what was done to it is told on its sheet, as it was written down at the time.`,
  measured: (how: readonly string[]) => `Measured or read by somebody: ${joined(how)}.`,
  notMeasured: (how: readonly string[]) =>
    `Not measured, but stated, assumed, or usual for the kind: ${joined(how)}.`,
  nothingMeasured: 'Nothing of it was measured or read by anybody.',
  workedOut: 'Every other figure is worked out from these; its working is in this file.',
  openOf: (codes: readonly string[], all: boolean) =>
    `Of ${all ? 'every container' : joined(codes)} something is not determined; each sheet lists it. Not determined does not mean absent.`,
  nothingOpen: 'The sheets list what is not determined.',
  candidates:
    'Hazard classes, waste codes and transport entries are candidates, unless somebody is named beside them. The collector and the authority confirm them.',
  notDiluted:
    'As far as the record tells, nothing was mixed with another waste or with water so that one of its codes disappeared.',
  diluted:
    'By mixing, codes of waste in it disappeared. They are listed below, and count as if they still held.',
  dilutionLaws: (laws: readonly string[]) => `Looked at by the laws of: ${joined(laws)}.`,
  noCertificate:
    'This is no certificate, no laboratory report and no classification. Whoever takes the waste may test it, and what they find goes before this.',
  put: (what: string, into: string) => `${what} into ${into}`,
  // In an emergency
  emergencyNumber: 'Emergency number',
  knowsWaste: 'Somebody who knows the waste',
  knows: (name: string) => `${name}, who knows the waste`,
  services: {
    eu: 'Emergency services, European Union',
    us: 'Emergency services, United States',
  },
  collector: (name: string) => `Collector, ${name}`,
  // Carriage
  package: (capacity: string, vessel: string, material: string, cap: string) =>
    `1 ${vessel} of ${capacity}, ${material === notDetermined ? 'material not determined' : material}, ${cap}`,
  bestFirst: 'The first fits best by the rules; a person decides.',
  class: (of: string, subsidiary: readonly string[]) =>
    subsidiary.length === 0 ? of : `${of} (${subsidiary.join(', ')})`,
  reached: { yes: 'yes', no: 'no', 'not determined': 'not determined' },
} as const;
