/** A reading of the pot as it stands in its form, and what is written of it. */
import * as z from 'zod/mini';
import type { PotRead } from '../../ledger/entries/treatments';
import type { TreatmentState } from '../../ledger/state';
import { lastPh } from '../../ledger/treatment';
import { emptyMetal, MetalDraft, readMetal } from '../batches/evidence-draft';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { given } from '../tried';
import { WhenDraft } from '../when';
import { runWords as w } from './run-words';

const Instrument = z.enum(['paper', 'meter']);
export type Instrument = z.infer<typeof Instrument>;

export const ReadingDraft = z.object({
  ph: Typed,
  instrument: z.optional(Instrument),
  temperature: Typed,
  colour: z.string(),
  metals: z.array(MetalDraft),
  note: z.string(),
  when: WhenDraft,
});
export type ReadingDraft = z.infer<typeof ReadingDraft>;

/** A strip is what most have at hand. */
export const emptyPotMetal = (metal: MetalDraft['metal']): MetalDraft => ({
  ...emptyMetal(metal),
  by: 'strip',
  a: typed('mg/L'),
});

export const emptyReading = (): ReadingDraft => ({
  ph: typed('1'),
  temperature: typed('°C'),
  colour: '',
  metals: [emptyPotMetal('Cu'), emptyPotMetal('Ni')],
  note: '',
  when: '',
});

/** The last one used stands first, and is not chosen. */
export function instrumentsFor(treatment: TreatmentState): readonly Instrument[] {
  return lastPh(treatment)?.body.ph.instrument === 'meter' ? ['meter', 'paper'] : ['paper', 'meter'];
}

const hottest = 110;
const highestPh = 14;

export type ReadingReads = {
  readonly ph: FieldRead<'1'>;
  readonly temperature: FieldRead<'°C'>;
  readonly instrumentMissing: boolean;
  /** Undefined where something is wrong or nothing was read. */
  readonly written: Omit<PotRead, 'kind' | 'v' | 'treatmentId'> | undefined;
  readonly nothing: boolean;
};

function limited<U extends string>(field: Typed, most: number, fault: string): FieldRead<U> {
  const read = readTyped<U>(field);
  return read.state === 'written' && Number(read.written.value) > most ? { state: 'wrong', fault } : read;
}

export function readReading(draft: ReadingDraft): ReadingReads {
  const ph = limited<'1'>(draft.ph, highestPh, w.phFault);
  const temperature = limited<'°C'>(draft.temperature, hottest, w.temperatureFault);
  const metals = draft.metals.map((metal) => readMetal(metal));
  const instrumentMissing = ph.state === 'written' && draft.instrument === undefined;
  const findings = metals.flatMap((metal) => (metal.state === 'known' ? [metal.value] : []));
  const wrong =
    ph.state === 'wrong' ||
    temperature.state === 'wrong' ||
    instrumentMissing ||
    metals.some(({ state }) => state === 'wrong');
  const { instrument } = draft;
  const said = {
    ...(ph.state === 'written' && instrument ? { ph: { value: ph.written, instrument } } : {}),
    ...(temperature.state === 'written' ? { temperature: temperature.written } : {}),
    ...given('colour', draft.colour),
    ...(findings.length > 0 ? { findings } : {}),
    ...given('note', draft.note),
  };
  const nothing = !wrong && Object.keys(said).length === 0;
  return {
    ph,
    temperature,
    instrumentMissing,
    nothing,
    written: wrong || nothing ? undefined : (said as ReadingReads['written']),
  };
}
