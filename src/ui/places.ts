/** The five places of the app, in the order of the bar. */
export const places = ['today', 'batches', 'containers', 'papers', 'record'] as const;

export type Place = (typeof places)[number];

export const placeNames: Readonly<Record<Place, string>> = {
  today: 'Today',
  batches: 'Batches',
  containers: 'Containers',
  papers: 'Papers',
  record: 'Record',
};
