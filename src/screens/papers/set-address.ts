/** Addresses of a set that is being put together. */

/** The set that is chosen by hand; any other is named by the container, or the earlier paper, that it is made of. */
export const chosenSet = 'chosen';

export const setPath = (set: string): string => `papers/new/${set}`;

/** Where the set is looked through. */
export const setHref = (set: string): string => `#/${setPath(set)}`;
