/** Words of the app itself, before any screen can speak. */
export const appWords = {
  troubleTitle: 'The record does not open',
  openAgain: 'Open again',
  notFoundTitle: 'Nothing is here',
  notFound: 'This address leads nowhere: it may have been typed wrongly, or the thing was withdrawn.',
  toToday: 'To Today',
} as const;
