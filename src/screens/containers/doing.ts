/** Where each thing that may be done with a container is done. */
import type { Doing } from '../../ledger/container-life';

const pages: Readonly<Partial<Record<Doing, string>>> = {
  'put-in': 'in',
  'take-out': 'out',
  'move-all': 'move-all',
  'say-what-it-is': 'what-it-is',
  'read-level': 'level',
  'water-lost': 'water',
  'change-vessel': 'change',
};

export const doingHref = (containerId: string, doing: Doing): string =>
  `#/containers/${containerId}/${pages[doing] ?? `mark/${doing}`}`;
