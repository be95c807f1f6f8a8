/** The waste of a test as it stands in its form. */
import type { LiquidPart } from '../../ledger/entries/streams';
import type { Figure } from '../../quantities/figure';
import { mostDrops, testVolume } from '../../safety/test-volume';
import { type FieldRead, readTyped } from '../form';
import type { KeptTest, WasteDraft } from './kept-test';
import { silverWords as w } from './words';

type Volume = LiquidPart['volume'];
export type TestWaste = 'ammonia-test-waste' | 'chloride-test-waste';

/** On a plate: a spot test of more than a few millilitres is none. */
const mostMillilitres = 1_000;

export const readSample = ({ sample }: KeptTest): FieldRead<Volume['unit']> =>
  readTyped<Volume['unit']>(sample, { aboveZero: true, most: mostMillilitres });

export function readDrops({ drops }: KeptTest): FieldRead<'1'> {
  const read = readTyped<'1'>(drops, { most: mostDrops });
  return read.state === 'written' && !Number.isInteger(Number(read.written.value))
    ? { state: 'wrong', fault: w.waste.dropsWhole }
    : read;
}

export const readVolume = ({ volume }: WasteDraft): FieldRead<Volume['unit']> =>
  readTyped<Volume['unit']>(volume, { aboveZero: true, most: mostMillilitres });

/** Sample and drops together; undefined until both can be read. */
export function workedVolume(test: KeptTest): Figure<'mL'> | undefined {
  const [sample, drops] = [readSample(test), readDrops(test)];
  return sample.state === 'written' && drops.state === 'written'
    ? testVolume(sample.written, Number(drops.written.value))
    : undefined;
}

/** Kinds that the test made, the one in the test well first. Where ammonia went in, the other wells hold chloride alone. */
export const kindsMade = ({ ammoniaAt }: KeptTest): readonly [TestWaste, ...TestWaste[]] =>
  ammoniaAt === null ? ['chloride-test-waste'] : ['ammonia-test-waste', 'chloride-test-waste'];

/** Of a small test nothing is known but what it was: no zero stands for that. */
export const liquidOf = (volume: Volume): LiquidPart => ({
  volume,
  findings: (['Ag', 'Cu', 'Ni'] as const).map((metal) => ({ by: 'not-determined', metal })),
  freeAcid: [{ by: 'not-determined' }],
});
