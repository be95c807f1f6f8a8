/** Parts of the schemas of what leaves as data, with the sentences that the published schemas say of them. */
import * as z from 'zod/mini';
import { notDetermined } from './words';

/** The sentence goes into the published schema: beside the member, so that neither is changed without the other. */
export const says = <S extends z.ZodMiniType>(schema: S, sentence: string): S =>
  schema.check(z.describe(sentence));
export const named = <S extends z.ZodMiniType>(schema: S, id: string, description: string): S => {
  z.globalRegistry.add(schema, { id, description });
  return schema;
};

export const Text = z.string().check(z.minLength(1));
export const Hash = named(
  z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  'Hash',
  'SHA-256 in lower-case hexadecimal.',
);
export const Digits = named(
  z.string().check(z.regex(/^-?\d+(\.\d+)?$/)),
  'Digits',
  'A number as text, so that no digit is lost: decimal point, no exponent, hyphen-minus before a negative one.',
);
export const Instant = named(
  z.iso.datetime({ precision: 3 }),
  'Instant',
  'A moment in UTC, with milliseconds.',
);
export const Day = named(z.iso.date(), 'Day', 'A calendar day in the zone of the workshop.');
export const NotDetermined = named(
  z.literal(notDetermined),
  'NotDetermined',
  'Not measured, or not said by anybody. It does not mean zero.',
);
export const orNotDetermined = <S extends z.ZodMiniType>(schema: S) => z.union([NotDetermined, schema]);
export const text = (sentence: string) => says(Text, sentence);
export const texts = (sentence: string) => says(z.array(Text), sentence);
/** Text that is "not determined" where nobody said. */
export const told = (sentence: string) => says(Text, `${sentence} "${notDetermined}" where nobody said.`);
