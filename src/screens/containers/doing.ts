/** Where each thing that may be done with a container is done. */
import type { Doing } from '../../ledger/container-life';
import type { ContainerState } from '../../ledger/state';

const pages: Readonly<Partial<Record<Doing, string>>> = {
  'put-in': 'in',
  'take-out': 'out',
  'move-all': 'move-all',
  'say-what-it-is': 'what-it-is',
  'read-level': 'level',
  'lab-report': 'lab-report',
  'water-lost': 'water',
  'change-vessel': 'change',
};

/** Of a container that left with a load: done for the load. */
const pagesOfLoad: Readonly<Partial<Record<Doing, string>>> = {
  'proof-filed': 'proof',
  'came-back': 'back',
};

export function doingHref({ body, handOverId }: ContainerState, doing: Doing): string {
  const ofLoad = handOverId === null ? undefined : pagesOfLoad[doing];
  if (ofLoad !== undefined) return `#/hand-overs/${handOverId}/${ofLoad}`;
  if (doing === 'hand-over') return `#/hand-overs/new/${body.containerId}`;
  return `#/containers/${body.containerId}/${pages[doing] ?? `mark/${doing}`}`;
}
