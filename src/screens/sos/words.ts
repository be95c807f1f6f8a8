/** Words around the emergency cards. None of them says that a call will get through. */
import type { WorkshopDescribed } from '../../ledger/entries/workshop';
import type { EmergencyCard } from '../../safety/emergency-cards';

type Place = Pick<WorkshopDescribed, 'address' | 'mapReference'>;

export const words = {
  back: 'Back',
  more: 'More',
  allTitle: 'What has happened?',
  all: 'Emergency cards',
  steps: 'What to do, in this order',
  call: (number: string) => `Call ${number}`,
  emergency: 'emergency number',
  note: 'Note',
  noted: (hours: string) => `Noted: ${hours}.`,
  forget: 'Strike out the times',
  address: (address: string) => `${address.replaceAll(/,?\s*\n\s*/g, ', ').replace(/\.$/, '')}.`,
  map: (reference: string) => `Map ${reference}.`,
  placeUnknown: 'Say where you are: street, house, village.',
  noSignal: (where: string) => `No signal? ${where}`,
  noSignalUnknown: 'No signal? Go to the nearest neighbour or road, and ask for a phone.',
  notDescribed:
    'The workshop is not described yet, so its number and address are not known here. Dial your local emergency number: 112 in Europe and many other countries, 911 in North America.',
  local: ['112', '911'],
} as const;

/** What to say, with the place to read aloud. */
export function sayWords(card: EmergencyCard, place: Place | undefined): string {
  const where =
    place === undefined
      ? []
      : [
          words.address(place.address),
          ...(place.mapReference === undefined ? [] : [words.map(place.mapReference)]),
        ];
  return `“${[...card.say, ...where].join(' ')}”`;
}
