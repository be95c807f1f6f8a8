/** The message to whoever checks on somebody from elsewhere: they have no other paper in the hand when nobody answers. */
import type { WorkshopDescribed } from '../../ledger/entries/workshop';
import { words as sosWords } from '../sos/words';

export type MessageParts = {
  readonly from: string;
  /** The step, as its list is called, with batch or container. */
  readonly step: string;
  /** The station, where it is known. */
  readonly place: string | undefined;
  readonly workshop:
    | Pick<WorkshopDescribed, 'name' | 'address' | 'mapReference' | 'emergencyNumber'>
    | undefined;
  /** Hours as a person reads them, with the day where it is another one; null where there is none. */
  readonly until: string | null;
  readonly ring: { readonly at: string } | 'now' | null;
  /** Who rings, and the number to ring. */
  readonly to: string | undefined;
  readonly phone: string | null;
  /** Out of the invented workshop: nobody may take it for true. */
  readonly invented: boolean;
};

const said = (text: string): string => `${text.replace(/\.$/, '')}.`;

function askFor({ ring, to, phone, from }: MessageParts): string {
  const name = to === undefined ? 'Please' : `${to}, please`;
  const number = phone === null ? '' : `, ${phone}`;
  if (ring === null) return `${name} keep your phone at hand for ${from}${number}.`;
  return `${name} ring ${from} ${ring === 'now' ? 'now' : `at ${ring.at}`}${number}.`;
}

/** With no described workshop it says neither number nor address: the page asks the person to write them in. */
function unanswered({ workshop }: MessageParts): string {
  const call =
    workshop === undefined
      ? 'call the emergency number of the place'
      : `call ${workshop.emergencyNumber}, the emergency number there, and give the address`;
  return `No answer? Ring again at once. Still none: ${call}. Say: “Nitric acid, perhaps brown gas. Somebody may be hurt.” Do not go in yourself.`;
}

/** Lines, each one sentence or two, in the order in which they are needed. */
export function messageText(parts: MessageParts): string {
  const { from, step, place, workshop, until, invented } = parts;
  const where = [
    ...(place === undefined ? [] : [said(place)]),
    ...(workshop === undefined ? [] : [sosWords.address(workshop.address)]),
    ...(workshop?.mapReference === undefined ? [] : [sosWords.map(workshop.mapReference)]),
  ];
  return [
    ...(invented ? ['A trial in an invented workshop. Nothing of this happens.'] : []),
    said(workshop === undefined ? from : `${from}, ${workshop.name}`),
    said(`What: ${step}`),
    ...(where.length === 0 ? [] : [`Where: ${where.join(' ')}`]),
    ...(until === null ? [] : [`Cleared until ${until}.`]),
    askFor(parts),
    unanswered(parts),
  ].join('\n');
}
