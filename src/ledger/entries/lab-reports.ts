/** What a laboratory found in a sample of all that a container holds. */
import * as z from 'zod/mini';
import { WrittenPerLitre, writtenIn } from '../../quantities/written';
import { levelElements } from '../../rules/element-levels';
import { Files } from './files';
import { Id } from './identity';
import { Day } from './moments';
import { Photos } from './photos';
import { Line, Note } from './text';

const Element = z.enum(levelElements);

/** `below`: the laboratory found none down to this. */
const found = { element: Element, below: z.optional(z.literal(true)) };

/** `total`: a kilogram of it as it is. The others a litre: of what a filter lets through, of the extract of a leaching test. */
const LabResult = z.discriminatedUnion('in', [
  z.strictObject({ ...found, in: z.literal('total'), level: writtenIn('mg/kg') }),
  z.strictObject({ ...found, in: z.literal('filtered'), level: WrittenPerLitre }),
  z.strictObject({ ...found, in: z.literal('tclp'), level: WrittenPerLitre }),
  z.strictObject({ ...found, in: z.literal('wet'), level: WrittenPerLitre }),
]);

export const LabReported = z
  .strictObject({
    kind: z.literal('lab-reported'),
    v: z.literal(1),
    containerId: Id,
    laboratory: Line,
    /** Number of the report. */
    document: z.optional(Line),
    sampledOn: Day,
    ph: z.optional(writtenIn('1')),
    results: z.array(LabResult).check(z.maxLength(120)),
    photos: z.optional(Photos),
    files: z.optional(Files),
    note: z.optional(Note),
  })
  .check(z.refine(({ ph, results }) => ph !== undefined || results.length > 0, 'nothing was found'));

export type LabResult = z.infer<typeof LabResult>;
export type LabReported = z.infer<typeof LabReported>;
