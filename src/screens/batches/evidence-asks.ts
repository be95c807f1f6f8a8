/** Which lines a way of knowing asks for: what each is called, and in which units. */
import type { Unit } from '../../quantities/unit';
import type { AcidDraft, MetalDraft, MoistureDraft } from './evidence-draft';
import { logWords as w } from './words';

export type Key = 'a' | 'b' | 'c';

/** One line of a form: which field, what it is called, in which units. */
export type Line = {
  readonly key: Key;
  readonly label: string;
  readonly units: readonly [Unit, ...Unit[]];
  /** The other line of the same two bounds: both are in one unit. */
  readonly boundWith?: Key;
  /** It may stay empty beside the others. */
  readonly mayStayEmpty?: true;
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
      return [
        { key: 'a', label: name, units: ['mg/L', 'g/L'] },
        { key: 'b', label: w.stepBelow, units: ['mg/L', 'g/L'], mayStayEmpty: true },
        { key: 'c', label: w.stepAbove, units: ['mg/L', 'g/L'], mayStayEmpty: true },
      ];
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
    case 'typical':
      return [{ key: 'a', label: w.feedIn, units: grams }];
    case 'feed-minus-residue':
      return [
        { key: 'a', label: w.feedIn, units: grams },
        { key: 'b', label: w.residueDried, units: grams },
      ];
    case 'assumed':
      return [
        { key: 'a', label: w.low(name), units: ['g/L', 'mg/L', 'g'], boundWith: 'b' },
        { key: 'b', label: w.high(name), units: ['g/L', 'mg/L', 'g'], boundWith: 'a' },
      ];
  }
}

/** The lines that a way of knowing the free acid asks for. */
export function acidLines(by: AcidDraft['by'], name: string = w.acid): readonly Line[] {
  switch (by) {
    case 'titration':
      return [{ key: 'a', label: name, units: ['mol/L'] }];
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
        { key: 'a', label: w.low(name), units: ['mol/L'] },
        { key: 'b', label: w.high(name), units: ['mol/L'] },
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
