/** The description of the workshop as a form holds it, what is wrong with it, and what is written of it. */
import * as z from 'zod/mini';
import type { WorkshopDescribed } from '../../ledger/entries/workshop';
import type { IntentionOf } from '../../ledger/intention';
import { given, missing } from '../tried';
import { workshopWords } from './words';

export const WorkshopFields = z.object({
  name: z.string(),
  address: z.string(),
  emergencyNumber: z.string(),
  mapReference: z.string(),
  noSignal: z.string(),
  generatorNumber: z.string(),
  authority: z.string(),
  authorityContact: z.string(),
  collector: z.string(),
  collectorContact: z.string(),
  collectorLicence: z.string(),
  counter: z.string(),
});
export type WorkshopFields = z.infer<typeof WorkshopFields>;
export type WorkshopField = keyof WorkshopFields;

/** As described before, or empty. */
export const fieldsOf = (body: WorkshopDescribed | undefined): WorkshopFields => ({
  name: body?.name ?? '',
  address: body?.address ?? '',
  emergencyNumber: body?.emergencyNumber ?? '',
  mapReference: body?.mapReference ?? '',
  noSignal: body?.noSignal ?? '',
  generatorNumber: body?.generatorNumber ?? '',
  authority: body?.authority?.name ?? '',
  authorityContact: body?.authority?.contact ?? '',
  collector: body?.collector?.name ?? '',
  collectorContact: body?.collector?.contact ?? '',
  collectorLicence: body?.collector?.licence ?? '',
  counter: body?.hazardousWasteCounter ?? '',
});

/** Three digits are the shortest number that anybody answers. */
const diallable = (number: string): boolean => (number.match(/\d/g)?.length ?? 0) >= 3;

export function workshopFaults(fields: WorkshopFields): Partial<Record<WorkshopField, string>> {
  const faults: Partial<Record<WorkshopField, string | undefined>> = {
    name: missing(fields.name),
    address: missing(fields.address),
    emergencyNumber:
      missing(fields.emergencyNumber) ??
      (diallable(fields.emergencyNumber) ? undefined : workshopWords.notDiallable),
  };
  const { nameToContact, contactToName } = workshopWords;
  if (fields.authority.trim() !== '')
    faults.authorityContact = missing(fields.authorityContact, contactToName);
  else if (fields.authorityContact.trim() !== '') faults.authority = nameToContact;
  if (fields.collector.trim() !== '')
    faults.collectorContact = missing(fields.collectorContact, contactToName);
  else if (`${fields.collectorContact}${fields.collectorLicence}`.trim() !== '')
    faults.collector = nameToContact;
  return Object.fromEntries(Object.entries(faults).filter(([, fault]) => fault !== undefined));
}

/** Only for fields without faults. */
export function workshopIntention(fields: WorkshopFields): IntentionOf<'describe-workshop'> {
  const { authority, collector } = fields;
  return {
    do: 'describe-workshop',
    name: fields.name,
    address: fields.address,
    emergencyNumber: fields.emergencyNumber,
    ...given('mapReference', fields.mapReference),
    ...given('noSignal', fields.noSignal),
    ...given('generatorNumber', fields.generatorNumber),
    ...(authority.trim() === '' ? {} : { authority: { name: authority, contact: fields.authorityContact } }),
    ...(collector.trim() === ''
      ? {}
      : {
          collector: {
            name: collector,
            contact: fields.collectorContact,
            ...given('licence', fields.collectorLicence),
          },
        }),
    ...given('hazardousWasteCounter', fields.counter),
  };
}
