/**
 * The register of a period as plain data: what it prints, and the sealed entries themselves, so that whoever has the file can
 * work every hash out again. Version 1 of the shape is read for ever; a new shape is a new `v`.
 */
import * as z from 'zod/mini';
import { hashOf } from '../../ledger/seal';
import { Day, Hash, Instant, says, Text, text, texts, told } from '../described';
import { headOf, withHash } from '../paper-head';
import { groups } from './groups';

const Place = z.int().check(z.minimum(1));
const Counter = says(z.int().check(z.minimum(1)), 'Place in the chain of its device, from 1.');
const Device = text('Identifier of the device that wrote it.');
const Group = z.enum(groups);

/** Its form is looked at entry by entry, so that the one that is wrong can be named. */
export const SealedEntry = z.strictObject({
  id: text('Identifier of the entry.'),
  device: Device,
  counter: Counter,
  writtenAt: says(Instant, 'When it was written.'),
  happenedAt: says(Instant, 'When it happened, as written.'),
  zone: text('Zone of the device at writing.'),
  who: says(z.nullable(Text), 'Identifier of the person; null where nobody had said who.'),
  previous: says(z.nullable(Hash), 'Hash of the entry before on this device; null in its first.'),
  body: says(
    z.looseObject({ kind: text('Kind of entry.'), v: says(z.int(), 'Version of its shape.') }),
    'What it says, as stored.',
  ),
  hash: says(Hash, 'SHA-256 of the canonical JSON (RFC 8785) of everything else in the entry.'),
});

export const whyHere = ['period', 'change', 'changed', 'chain'] as const;

export const Held = z.strictObject({
  number: says(Place, 'Its place in the record.'),
  why: says(
    z.enum(whyHere),
    'Why it stands here: it happened or was written in the period; it corrects or withdraws one that did; one that did corrects or withdraws it; or it is next to the period in the chain of its device.',
  ),
  entry: says(SealedEntry, 'The entry as it is stored.'),
});

const Amount = z.strictObject({
  of: text('Way to it in the entry.'),
  what: text('The same in words.'),
  value: text('As written.'),
  unit: text('As written; "1" where there is none.'),
});

const Thing = z.strictObject({
  what: says(z.enum(['container', 'batch']), 'What it is.'),
  id: text('Its identifier in the record.'),
  code: text('The code that it bears; hyphens are U+2011.'),
});

const Change = z.strictObject({
  number: says(Place, 'The entry that changes it.'),
  how: says(z.enum(['corrected', 'withdrawn']), 'What it does.'),
});

const Line = z.strictObject({
  number: says(Place, 'Its place in the record.'),
  id: text('Identifier of the entry.'),
  hash: says(Hash, 'Hash of the entry.'),
  group: says(Group, 'The part of the register that it stands in.'),
  kind: text('Kind of entry, as in the entry.'),
  called: text('Kind of entry in words.'),
  says: text('What it says, as written.'),
  about: says(z.array(Thing), 'What it is about.'),
  amounts: says(z.array(Amount), 'Every amount in it, as written.'),
  happenedAt: says(Instant, 'When it happened, as written.'),
  writtenAt: says(Instant, 'When it was written.'),
  who: told('Who wrote it.'),
  standing: says(
    z.enum(['as-written', 'corrected', 'withdrawn']),
    'What became of it by the record as it stood when this was made.',
  ),
  changedBy: says(z.array(Change), 'Entries that change it, in order, whether or not they count themselves.'),
  changes: z.optional(says(Place, 'The entry that it corrects or withdraws; absent where it does not.')),
  now: z.optional(
    says(
      z.strictObject({
        happenedAt: says(Instant, 'When it happened.'),
        says: text('What it says.'),
        amounts: says(z.array(Amount), 'Every amount in it.'),
        changed: says(
          z.array(
            z.strictObject({
              of: text('Way to it in the entry.'),
              was: says(z.nullable(z.string()), 'As first written; null where it was not there.'),
              is: says(z.nullable(z.string()), 'As it counts; null where it is there no more.'),
            }),
          ),
          'What the corrections changed.',
        ),
      }),
      'What counts instead; absent where nothing does.',
    ),
  ),
});

const Standing = z.strictObject({
  containerId: text('Identifier of the container in the record.'),
  code: text('Code that it bears.'),
  vessel: text('Kind of vessel and what it can hold.'),
  holds: text('What is in it by the record, by volume and mass.'),
  wastes: texts('What was put into it since it was last empty.'),
});

const Waste = z.strictObject({
  number: says(Place, 'The entry that tells of it.'),
  day: says(Day, 'The day that it happened.'),
  event: says(
    z.enum(['arose', 'treated', 'left', 'came-back', 'proof']),
    'Waste arose, was treated, left, came back, or what became of it was stated.',
  ),
  quantity: told('How much.'),
  nature: told('What it is, with the codes that somebody confirmed.'),
  origin: told('What it came of.'),
  destination: told('Where it went.'),
  mode: told('How it was carried.'),
  method: told('How it is treated.'),
  document: told('The paper that went with it or states it.'),
});

const Workshop = z.strictObject({
  name: told('Name of the workshop.'),
  address: told('Its address.'),
  generatorNumber: told('Its number as a generator of waste.'),
  emergencyNumber: told('Telephone for an emergency.'),
  authority: told('Its authority, and how to reach it.'),
  collector: told('Its collector, and how to reach it.'),
  hazardousWasteCounter: told('The counter that takes hazardous waste.'),
});

const content = {
  ...headOf('register'),
  period: says(
    z.strictObject({
      firstDay: says(Day, 'First day.'),
      lastDay: says(Day, 'Last day; it belongs to the period.'),
      from: says(Instant, 'First moment of the first day.'),
      until: says(Instant, 'First moment after the last day.'),
    }),
    'The days that it is of.',
  ),
  workshop: says(Workshop, 'The workshop that generated the waste.'),
  proves: texts('What working the hashes out again proves.'),
  doesNotProve: texts('What it does not prove.'),
  notDetermined: texts('What the record does not tell of the period.'),
  counts: says(
    z.array(
      z.strictObject({
        group: says(Group, 'Part of the register.'),
        name: text('The same in words.'),
        lines: says(z.int().check(z.minimum(0)), 'How many entries.'),
        corrected: says(z.int().check(z.minimum(0)), 'How many of them were corrected.'),
        withdrawn: says(z.int().check(z.minimum(0)), 'How many of them were withdrawn.'),
      }),
    ),
    'What is in it.',
  ),
  opening: says(z.array(Standing), 'Containers here at the first moment of the period.'),
  closing: says(z.array(Standing), 'Containers here at the end of the period, or when this was made.'),
  waste: says(
    z.array(Waste),
    'What arose, was treated and left, in the order in which it happened: the data that Directive 2008/98/EC, Article 35, names; corrections are taken into account.',
  ),
  lines: says(z.array(Line), 'One line an entry, in the order of the record.'),
  entries: says(z.array(Held), 'The entries themselves, in the order of the record.'),
  links: says(
    z.array(
      z.strictObject({
        device: Device,
        first: Counter,
        hashes: says(z.array(Hash).check(z.minLength(1)), 'Their hashes, one after the other.'),
      }),
    ),
    'Entries that lie between others in the chain of a device and are not of the period.',
  ),
  heads: says(
    z.array(z.strictObject({ device: Device, counter: Counter, hash: says(Hash, 'Hash of that entry.') })),
    'The last entry of each device, as the record stood.',
  ),
};

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const RegisterData = withHash(content);
const RegisterContent = z.strictObject(content);

export type RegisterData = z.infer<typeof RegisterData>;
export type RegisterContent = z.infer<typeof RegisterContent>;
export type RegisterLine = RegisterData['lines'][number];
export type HeldEntry = RegisterData['entries'][number];
export type WasteLine = RegisterData['waste'][number];

/** The register with its hash; a plain copy without undefined members, as JSON gives it back. */
export function sealedRegister(register: RegisterContent): RegisterData {
  const plain: unknown = JSON.parse(JSON.stringify(register));
  return RegisterData.parse({ ...(plain as RegisterContent), contentHash: hashOf(plain) });
}

/**
 * As a file: each line and each entry on a line of its own, so that it stays small and damage to one stays in its line. The hash
 * is over the canonical form, not over this one.
 */
export function registerText(data: RegisterData): string {
  const members = Object.entries(data).map(([name, value]) => {
    const lines = Array.isArray(value)
      ? `[\n${value.map((one) => JSON.stringify(one)).join(',\n')}\n]`
      : null;
    return `${JSON.stringify(name)}: ${lines ?? JSON.stringify(value)}`;
  });
  return `{\n${members.join(',\n')}\n}\n`;
}
