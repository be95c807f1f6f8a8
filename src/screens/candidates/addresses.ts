/** Addresses of candidates: a code may hold spaces, a slash, an asterisk. */
import type { Candidate } from '../../rules/candidate';

type Named = { readonly scheme: string; readonly code: string };

export const candidatesPath = (containerId: string): string => `containers/${containerId}/candidates`;

export const candidatePath = (containerId: string, { scheme, code }: Named): string =>
  `${candidatesPath(containerId)}/${scheme}/${encodeURIComponent(code)}`;

export const candidateHref = (containerId: string, candidate: Pick<Candidate, 'scheme' | 'code'>): string =>
  `#/${candidatePath(containerId, candidate)}`;
