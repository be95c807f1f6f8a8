/** Words of the app itself, before any screen can speak. */
export const appWords = {
  troubleTitle: 'The record does not open',
  openAgain: 'Open again',
  notFoundTitle: 'Nothing is here',
  notFound: 'This address leads nowhere: it may have been typed wrongly, or the thing was withdrawn.',
  faultTitle: 'This page met an error',
  fault:
    'Nothing was lost: what was kept is in the record. Only this page does not show. SOS and Record still open below.',
  faultUnnamed: 'Error',
  toToday: 'To Today',
  opening: 'Opening',
  notHereTitle: 'This page is not on the phone yet',
  notHere: 'Nothing was lost. Open Leesbook once with a network; then it is here without one.',
} as const;
