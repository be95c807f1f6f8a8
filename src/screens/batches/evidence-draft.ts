/** Evidence as it stands in a form, and what it comes to once it can be read. An empty line says "not determined". */
import * as z from 'zod/mini';
import type { FeedKnown } from '../../chemistry/evidence';
import { acidFault, type EvidenceFault, metalFault, moistureFault } from '../../chemistry/evidence-faults';
import { AcidFinding, Finding } from '../../ledger/entries/findings';
import { Moisture } from '../../ledger/entries/streams';
import { meaningOf, sameDimension, type Unit } from '../../quantities/unit';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { words } from '../words';
import { acidLines, type Key, type Line, metalLines, moistureLines } from './evidence-asks';
import { logWords as w } from './words';

const MetalSymbol = z.enum(['Cu', 'Ni', 'Ag', 'Pd', 'Zn', 'Fe', 'Sn', 'Ba', 'Pb', 'Al']);
export const MetalDraft = z.object({
  metal: MetalSymbol,
  by: z.enum([
    ...(['photometer', 'assay', 'strip', 'weighing', 'copper-weighed', 'metals-recovered'] as const),
    ...(['typical', 'feed-minus-residue', 'assumed'] as const),
  ]),
  a: Typed,
  b: Typed,
  c: z.optional(Typed),
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
type Lines = { readonly a: Typed; readonly b: Typed; readonly c?: Typed | undefined };

/** Digits mean what they meant only in their own unit: under another the line is empty. */
const inUnitOf = (field: Typed, unit: string): Typed => (field.unit === unit ? field : typed(unit));

/**
 * The draft under the units that a new way of knowing has; what was typed in a unit that is not among them goes, and an
 * empty line begins in the unit that is usual for it, unless the person had chosen another.
 * @param before the lines of the way of knowing that was there
 */
export function fitted<D extends Lines>(draft: D, lines: readonly Line[], before: readonly Line[] = []): D {
  const fields: Partial<Record<Key, Typed>> = {};
  for (const { key, units, boundWith } of lines) {
    const field = draft[key] ?? typed(units[0]);
    const usual = before.find((line) => line.key === key)?.units[0];
    const meant = field.typed !== '' || (usual !== undefined && field.unit !== usual);
    const kept = meant && (units as readonly string[]).includes(field.unit);
    const own = kept ? field.unit : units[0];
    fields[key] = inUnitOf(field, (boundWith && fields[boundWith]?.unit) ?? own);
  }
  return { ...draft, ...fields };
}

/** The feed, where the liquor is one that the feed tells of: that of the leach, or what cementation left of it. */
export type FeedTold = Pick<FeedKnown, 'capacitors' | 'liquor'>;

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

/**
 * Most that a liquid can hold; a number beyond is a slip of the finger or of the unit. Pure nitric acid has 24 mol/L; silver
 * nitrate, which dissolves best of all here, about 1 kg of silver a litre. Source: memory.
 */
const mostDissolved: Readonly<Record<string, number>> = { 'g/L': 1500, 'mg/L': 1_500_000, 'mol/L': 24 };

export const readLine = (draft: Lines, { key }: Line): FieldRead<string> => {
  const field = draft[key] ?? typed('');
  return readTyped(field, { most: mostDissolved[field.unit] ?? 1_000_000 });
};

/**
 * Reads every line; a group is empty when all its lines are, and wrong when only some are filled that may not stay empty.
 */
function readGroup<T>(
  draft: Lines,
  lines: readonly Line[],
  make: (fields: Record<Key, unknown>) => T | null,
): GroupRead<T> {
  const reads = lines.map((line) => ({ ...line, read: readLine(draft, line) }));
  if (reads.every(({ read }) => read.state === 'empty')) return { state: 'empty' };
  if (
    reads.some(
      ({ read, mayStayEmpty }) => read.state !== 'written' && !(mayStayEmpty && read.state === 'empty'),
    )
  )
    return { state: 'wrong' };
  // A draft kept by an earlier version may hold two units; the chemistry takes one.
  if (lines.some(({ key, boundWith }) => boundWith && draft[key]?.unit !== draft[boundWith]?.unit))
    return { state: 'wrong', whole: w.oneUnit };
  const fields = Object.fromEntries(
    reads.map(({ key, read }) => [key, read.state === 'written' ? read.written : undefined]),
  );
  const value = make(fields as Record<Key, unknown>);
  return value === null ? { state: 'wrong' } : { state: 'known', value };
}

function checked<T>(group: GroupRead<T>, fault: (value: T) => EvidenceFault | null): GroupRead<T> {
  if (group.state !== 'known') return group;
  const found = fault(group.value);
  return found ? { state: 'wrong', whole: faultWords(found) } : group;
}

/** Steps that were left empty are not written. */
const stepsOf = (below: unknown, above: unknown): object =>
  below === undefined && above === undefined
    ? {}
    : { steps: { ...(below === undefined ? {} : { below }), ...(above === undefined ? {} : { above }) } };

/** @param feed null where the feed tells nothing of the liquor */
export function readMetal(draft: MetalDraft, feed: FeedTold | null = null): GroupRead<Finding> {
  const { by, metal } = draft;
  const group = readGroup(draft, metalLines(by, metal), ({ a, b, c }): Finding | null => {
    const shapes: Readonly<Record<MetalDraft['by'], unknown>> = {
      photometer: { by, metal, concentration: a },
      assay: { by, metal, concentration: a },
      strip: { by, metal, concentration: a, ...stepsOf(b, c) },
      weighing: { by, metal, mass: a },
      'copper-weighed': { by, metal, before: a, after: b },
      'metals-recovered': { by, metal, silver: a, palladium: b },
      typical: { by, metal, feed: a, ...feed },
      'feed-minus-residue': { by, metal, feed: a, residue: b, ...feed },
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
