/** A trial on the bench as it stands in its form. */
import * as z from 'zod/mini';
import { Base } from '../../ledger/entries/bases';
import type { BenchTested } from '../../ledger/entries/treatments';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import type { Shell } from '../shell';
import { WhenDraft } from '../when';
import { readPh, TreatmentDraft, treatmentDraftName } from './draft';

export const BenchDraft = z.object({
  sample: Typed,
  agent: Base,
  mass: Typed,
  purity: Typed,
  endPh: Typed,
  instrument: z.optional(z.enum(['paper', 'meter'])),
  note: z.string(),
  when: WhenDraft,
});
export type BenchDraft = z.infer<typeof BenchDraft>;

export const benchDraftName = (containerId: string): string => `bench-${containerId}`;

export const emptyBench = (): BenchDraft => ({
  sample: typed('mL'),
  agent: 'hydrated-lime',
  mass: typed('g'),
  purity: typed('%'),
  endPh: typed('1'),
  instrument: undefined,
  note: '',
  when: '',
});

/** The pH that was typed on the page of the plan; null where none was. */
export function aimOfPlan({ draft }: Pick<Shell, 'draft'>, containerId: string): number | null {
  const chosen = draft.read(treatmentDraftName(containerId), TreatmentDraft);
  const read = chosen && readPh(chosen.target);
  return read?.state === 'written' ? Number(read.written.value) : null;
}

export const sampleUnits = ['mL', 'L', 'US gal'] as const;
export const massUnits = ['g', 'mg', 'kg', 'lb'] as const;

export type BenchReads = {
  readonly sample: FieldRead<BenchTested['sampleVolume']['unit']>;
  readonly mass: FieldRead<BenchTested['mass']['unit']>;
  readonly purity: FieldRead<'%'>;
  readonly endPh: FieldRead<'1'>;
  /** Undefined until every line that is needed can be read. */
  readonly trial: Omit<BenchTested, 'kind' | 'v' | 'containerId' | 'note'> | undefined;
};

export function readBench(draft: BenchDraft): BenchReads {
  const sample = readTyped<BenchTested['sampleVolume']['unit']>(draft.sample, { aboveZero: true });
  const mass = readTyped<BenchTested['mass']['unit']>(draft.mass, { aboveZero: true });
  const purity = readTyped<'%'>(draft.purity, { aboveZero: true, most: 100 });
  const endPh = readPh(draft.endPh);
  const { instrument } = draft;
  return {
    sample,
    mass,
    purity,
    endPh,
    trial:
      sample.state === 'written' &&
      mass.state === 'written' &&
      endPh.state === 'written' &&
      instrument !== undefined &&
      purity.state !== 'wrong'
        ? {
            sampleVolume: sample.written,
            agent: draft.agent,
            mass: mass.written,
            endPh: endPh.written,
            instrument,
            ...(purity.state === 'written' ? { purity: purity.written } : {}),
          }
        : undefined,
  };
}
