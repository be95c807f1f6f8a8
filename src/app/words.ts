/** Words of the app itself, before any screen can speak. */
export const appWords = {
  troubleTitle: 'The record does not open',
  openAgain: 'Open again',
  takeOut: 'Take out what is here',
  takeOutSecond: 'A file with all that can be read',
  notFoundTitle: 'Nothing is here',
  notFound: 'This address leads nowhere: it may have been typed wrongly, or the thing was withdrawn.',
  faultTitle: 'This page met an error',
  fault:
    'Nothing was lost: what was kept is in the record. Only this page does not show. SOS and Record still open below.',
  faultUnnamed: 'Error',
  toToday: 'To Today',
  opening: 'Opening',
  readingTitle: 'Reading the whole record',
  reading: (entries: number) =>
    `${entries} entries. This is done once after an update, or when something old was changed; it may take a minute. SOS opens meanwhile.`,
  notLoadedTitle: 'Leesbook is not on the phone yet',
  notHereTitle: 'This page is not on the phone yet',
  notHere: 'Nothing was lost. Open Leesbook once with a network; then it is here without one.',
  olderTitle: 'This window is of an older version',
  older:
    'A newer Leesbook is on the phone, and this page of the older one is gone. Nothing was lost: what you typed stays, and the page opens in the new version.',
  openNewer: 'Open it in the new version',
} as const;
