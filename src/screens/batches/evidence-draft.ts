/** Evidence as it stands in a form, and what it comes to once it can be read. An empty line says "not determined". */
import * as z from 'zod/mini';
import { acidFault, type EvidenceFault, metalFault, moistureFault } from '../../chemistry/evidence-faults';
import { AcidFinding, Finding } from '../../ledger/entries/findings';
import { Moisture } from '../../ledger/entries/streams';
import { meaningOf, sameDimension, type Unit } from '../../quantities/unit';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { words } from '../words';
import { logWords as w } from './words';

const MetalSymbol = z.enum(['Cu', 'Ni', 'Ag', 'Pd', 'Zn', 'Fe', 'Sn', 'Ba', 'Pb', 'Al']);
export const MetalDraft = z.object({
  metal: MetalSymbol,
  by: z.enum(['photometer', 'assay', 'strip', 'weighing', 'copper-weighed', 'metals-recovered', 'assumed']),
  a: Typed,
  b: Typed,
});
export const AcidDraft = z.object({
  by: z.enum(['titration', 'titration-volumes', 'ph', 'charged-minus-consumed', 'assumed']),
  a: Typed,
  b: Typed,
  c: Typed,
  instrument: z.enum(['paper', 'meter']),
});
export const MoistureDraft = z.object({
  by: z.enum(['not-determined', 'dried-sample', 'stated', 'assumed']),
  a: Typed,
  b: Typed,
});
export type MetalDraft = z.infer<typeof MetalDraft>;
export type AcidDraft = z.infer<typeof AcidDraft>;
export type MoistureDraft = z.infer<typeof MoistureDraft>;
type Lines = { readonly a: Typed; readonly b: Typed; readonly c?: Typed };
type Key = 'a' | 'b' | 'c';

/** One line of a form: which field, what it is called, in which units. */
export type Line = {
  readonly key: Key;
  readonly label: string;
  readonly units: readonly [Unit, ...Unit[]];
  /** The other line of the same two bounds: both are in one unit. */
  readonly boundWith?: Key;
};

const perLitre = ['g/L', 'mg/L'] as const;
const grams = ['g', 'kg', 'lb'] as const;
const litres = ['L', 'mL', 'US gal'] as const;

/** The lines that a way of knowing a metal asks for. */
export function metalLines(by: MetalDraft['by'], name: string): readonly Line[] {
  switch (by) {
    case 'photometer':
    case 'assay':
      return [{ key: 'a', label: name, units: perLitre }];
    case 'strip':
      return [{ key: 'a', label: name, units: ['mg/L', 'g/L'] }];
    case 'weighing':
      return [{ key: 'a', label: name, units: ['g', 'kg', 'mg', 'lb'] }];
    case 'copper-weighed':
      return [
        { key: 'a', label: w.before, units: grams },
        { key: 'b', label: w.after, units: grams },
      ];
    case 'metals-recovered':
      return [
        { key: 'a', label: w.silver, units: grams },
        { key: 'b', label: w.palladium, units: grams },
      ];
    case 'assumed':
      return [
        { key: 'a', label: w.low(name), units: ['g/L', 'mg/L', 'g'], boundWith: 'b' },
        { key: 'b', label: w.high(name), units: ['g/L', 'mg/L', 'g'], boundWith: 'a' },
      ];
  }
}

/** The lines that a way of knowing the free acid asks for. */
export function acidLines(by: AcidDraft['by']): readonly Line[] {
  switch (by) {
    case 'titration':
      return [{ key: 'a', label: w.acid, units: ['mol/L'] }];
    case 'titration-volumes':
      return [
        { key: 'a', label: w.sample, units: ['mL', 'L'] },
        { key: 'b', label: w.titrant, units: ['mL', 'L'] },
        { key: 'c', label: w.strength, units: ['mol/L'] },
      ];
    case 'ph':
      return [{ key: 'a', label: w.ph, units: ['1'] }];
    case 'charged-minus-consumed':
      return [
        { key: 'a', label: w.charged, units: litres },
        { key: 'b', label: w.chargedStrength, units: ['%', 'mol/L', 'kg/L'] },
      ];
    case 'assumed':
      return [
        { key: 'a', label: w.low(w.acid), units: ['mol/L'] },
        { key: 'b', label: w.high(w.acid), units: ['mol/L'] },
      ];
  }
}

export function moistureLines(by: MoistureDraft['by']): readonly Line[] {
  switch (by) {
    case 'not-determined':
      return [];
    case 'dried-sample':
      return [
        { key: 'a', label: w.sampleWet, units: ['g', 'kg', 'mg'] },
        { key: 'b', label: w.sampleDry, units: ['g', 'kg', 'mg'] },
      ];
    case 'stated':
      return [{ key: 'a', label: w.moisturePercent, units: ['%'] }];
    case 'assumed':
      return [
        { key: 'a', label: w.moistureLow, units: ['%'] },
        { key: 'b', label: w.moistureHigh, units: ['%'] },
      ];
  }
}

/** Digits mean what they meant only in their own unit: under another the line is empty. */
const inUnitOf = (field: Typed, unit: string): Typed => (field.unit === unit ? field : typed(unit));

/** The draft under the units that a new way of knowing has; what was typed in a unit that is not among them goes. */
export function fitted<D extends Lines>(draft: D, lines: readonly Line[]): D {
  const fields: Partial<Record<Key, Typed>> = {};
  for (const { key, units, boundWith } of lines) {
    const field = draft[key] ?? typed(units[0]);
    const own = (units as readonly string[]).includes(field.unit) ? field.unit : units[0];
    fields[key] = inUnitOf(field, (boundWith && fields[boundWith]?.unit) ?? own);
  }
  return { ...draft, ...fields };
}

const ofOneKind = (a: string, b: string): boolean =>
  sameDimension(meaningOf(a as Unit).dimension, meaningOf(b as Unit).dimension);

/**
 * The draft with one line changed. The two bounds of an assumption are in one unit: choosing it for one chooses it for
 * the other, whose digits stay between units of one kind (g/L and mg/L) and go between kinds (g/L and g).
 */
export function withLine<D extends Lines>(draft: D, lines: readonly Line[], key: Key, field: Typed): D {
  const other = lines.find((line) => line.key === key)?.boundWith;
  const bound = other && draft[other];
  if (!bound || bound.unit === field.unit) return { ...draft, [key]: field };
  const kept = ofOneKind(bound.unit, field.unit) ? bound.typed : '';
  return { ...draft, [key]: field, [other]: { typed: kept, unit: field.unit } };
}

export const emptyMetal = (metal: MetalDraft['metal']): MetalDraft => ({
  metal,
  by: 'photometer',
  a: typed('g/L'),
  b: typed('g'),
});
export const emptyAcid = (): AcidDraft => ({
  by: 'titration',
  a: typed('mol/L'),
  b: typed('mL'),
  c: typed('mol/L'),
  instrument: 'paper',
});
export const emptyMoisture = (): MoistureDraft => ({ by: 'not-determined', a: typed('g'), b: typed('g') });

/** What a group of lines comes to. `faults` stand at their lines, `whole` under the group. */
export type GroupRead<T> =
  | { readonly state: 'known'; readonly value: T }
  | { readonly state: 'empty' }
  | { readonly state: 'wrong'; readonly whole?: string };

export const faultWords = (fault: EvidenceFault): string => {
  switch (fault.code) {
    case 'after-more-than-before':
      return w.afterMore;
    case 'high-below-low':
      return w.highBelowLow;
    case 'units-differ':
      return w.oneUnit;
    case 'ph-out-of-range':
      return w.phRange;
    case 'over-hundred-percent':
      return w.percentRange;
    case 'dry-above-wet':
      return w.dryAboveWet;
    case 'nothing-in-sample':
      return words.number.zero;
    case 'residue-above-feed':
      return w.residueAboveFeed;
    case 'steps-out-of-order':
      return w.stepsOutOfOrder;
    case 'strength-outside-table':
      return w.strengthRange(fault.low, fault.high, fault.unit);
  }
};

export const readLine = (draft: Lines, { key }: Line): FieldRead<string> =>
  readTyped(draft[key] ?? typed(''), { most: 1_000_000 });

/** Reads every line; a group is empty when all its lines are, and wrong when only some are filled. */
function readGroup<T>(
  draft: Lines,
  lines: readonly Line[],
  make: (fields: Record<Key, unknown>) => T | null,
): GroupRead<T> {
  const reads = lines.map((line) => [line.key, readLine(draft, line)] as const);
  if (reads.every(([, read]) => read.state === 'empty')) return { state: 'empty' };
  if (reads.some(([, read]) => read.state !== 'written')) return { state: 'wrong' };
  // A draft kept by an earlier version may hold two units; the chemistry takes one.
  if (lines.some(({ key, boundWith }) => boundWith && draft[key]?.unit !== draft[boundWith]?.unit))
    return { state: 'wrong', whole: w.oneUnit };
  const fields = Object.fromEntries(
    reads.map(([key, read]) => [key, read.state === 'written' ? read.written : null]),
  );
  const value = make(fields as Record<Key, unknown>);
  return value === null ? { state: 'wrong' } : { state: 'known', value };
}

function checked<T>(group: GroupRead<T>, fault: (value: T) => EvidenceFault | null): GroupRead<T> {
  if (group.state !== 'known') return group;
  const found = fault(group.value);
  return found ? { state: 'wrong', whole: faultWords(found) } : group;
}

export function readMetal(draft: MetalDraft): GroupRead<Finding> {
  const { by, metal } = draft;
  const group = readGroup(draft, metalLines(by, metal), ({ a, b }): Finding | null => {
    const shapes: Readonly<Record<MetalDraft['by'], unknown>> = {
      photometer: { by, metal, concentration: a },
      assay: { by, metal, concentration: a },
      strip: { by, metal, concentration: a },
      weighing: { by, metal, mass: a },
      'copper-weighed': { by, metal, before: a, after: b },
      'metals-recovered': { by, metal, silver: a, palladium: b },
      assumed: { by, metal, low: a, high: b },
    };
    const read = Finding.safeParse(shapes[by]);
    return read.success ? read.data : null;
  });
  return checked(group, metalFault);
}

export function readAcid(draft: AcidDraft): GroupRead<AcidFinding> {
  const { by, instrument } = draft;
  const group = readGroup(draft, acidLines(by), ({ a, b, c }): AcidFinding | null => {
    const shapes: Readonly<Record<AcidDraft['by'], unknown>> = {
      titration: { by, result: a },
      'titration-volumes': { by, sample: a, titrant: b, titrantStrength: c },
      ph: { by, ph: a, instrument },
      'charged-minus-consumed': { by, volume: a, strength: b },
      assumed: { by, low: a, high: b },
    };
    const read = AcidFinding.safeParse(shapes[by]);
    return read.success ? read.data : null;
  });
  return checked(group, acidFault);
}

export function readMoisture(draft: MoistureDraft): GroupRead<Moisture> {
  const { by } = draft;
  if (by === 'not-determined') return { state: 'known', value: { by } };
  const group = readGroup(draft, moistureLines(by), ({ a, b }): Moisture | null => {
    const shapes = {
      'dried-sample': { by, wet: a, dry: b },
      stated: { by, percent: a },
      assumed: { by, low: a, high: b },
    };
    const read = Moisture.safeParse(shapes[by]);
    return read.success ? read.data : null;
  });
  return checked(group, moistureFault);
}
