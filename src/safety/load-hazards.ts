/** What a load of containers may be, in plain words, for whoever stands before it; and whom to call where nobody else is named. */
import * as z from 'zod/mini';
import { checked } from '../reference/checked';
import file from '../reference/load-hazards.json';
import { cited, Line, Slug } from './cited';
import { emergencyCards } from './emergency-cards';
import { StreamKind } from './stream-kind';

const CardName = Slug.check(z.refine((id) => emergencyCards.has(id), 'there is no such card'));

const LoadHazard = z.strictObject({
  id: Slug,
  title: z.string().check(z.minLength(1), z.maxLength(40)),
  /** Kinds of waste that it concerns. */
  streams: z.array(StreamKind),
  /** It concerns what nobody knows for sure. */
  unknown: z.optional(z.literal(true)),
  is: Line,
  gases: z.array(Line).check(z.minLength(1)),
  /** What must not be brought to it. */
  notUsed: z.array(Line).check(z.minLength(1)),
  cards: z.array(CardName).check(z.minLength(1)),
  ...cited,
});

const Equipment = z.strictObject({ says: Line, ...cited });
const Service = z.strictObject({ number: z.string().check(z.regex(/^\d{3}$/)), ...cited });

const File = z.strictObject({
  about: z.string(),
  /** The worst first. */
  hazards: z.array(LoadHazard),
  equipment: z.array(Equipment),
  services: z.strictObject({ eu: Service, us: Service }),
});

export type LoadHazard = z.infer<typeof LoadHazard>;

const { hazards, equipment, services } = checked(() => File, file);

/** What somebody wears and has at hand. */
export const loadEquipment: readonly z.infer<typeof Equipment>[] = equipment;

/** The number of the emergency services, by the law of the place. */
export const emergencyServices = services;

/** @param unknown somebody has to reckon with what nobody knows */
export const hazardsOf = (kinds: readonly StreamKind[], unknown: boolean): readonly LoadHazard[] =>
  hazards.filter(
    (hazard) =>
      (unknown && hazard.unknown === true) || hazard.streams.some((stream) => kinds.includes(stream)),
  );
