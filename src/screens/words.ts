/**
 * Words shared by several places: what a failure, a flag and a kind are called. Each place keeps its own beside its
 * screens. Nothing is worded inside a screen, so another language replaces these files and touches no screen.
 */

import Decimal from 'decimal.js';
import type { Law } from '../ledger/entries/local-rules';
import type { Refusal } from '../ledger/refusal';
import { formatNumber } from '../quantities/format';
import type { NumberFailure } from '../quantities/written';
import { dilution } from '../reference/dilution-tables';
import { sources } from '../reference/tables';
import { nameOfThing, type ThingId } from '../safety/must-not-meet/matter';
import { saidBy } from '../safety/must-not-meet/words';
import type { StreamKind } from '../safety/stream-kind';
import type { StoreFailure } from '../storage/failure';
import { caution } from './caution';
import { ownFaultWords } from './own-fault-words';

export const words = {
  /** Unit of a basicity factor after ASTM C400. */
  asLime: 'g CaO/g',
  appName: 'Leesbook',
  noNetwork: 'no network',
  back: 'Back',
  cancel: 'Leave it',
  keep: 'Keep',
  choose: 'Choose',
  optional: 'may stay empty',
  notDetermined: 'not determined',
  howKnown: 'how it is known',
  to: 'to',
  andMore: (first: string, n: number) => `${first} and ${n} more`,
  demoRibbon: 'Invented demo workshop',
  demoLeave: 'Leave',
  newVersion: 'A new version waits',
  newVersionTake: 'Take the new version',
  newVersionSecond: 'What you have typed stays.',
  caution,
  number: {
    missing: 'Write a number here.',
    look: 'Something above is missing or wrong. Nothing is lost.',
    zero: 'It must be more than nothing.',
    whole: 'Write a whole number.',
    tooMuch: (most: string, unit: string) => `At most ${most} ${unit}. Check the number and its unit.`,
    readAs: (value: string, unit: string) =>
      `Read as ${value} ${unit}, not as thousands. For thousands leave the sign out.`,
  },
  when: { label: 'When', empty: 'empty: now', fault: 'Choose a day and hour that have passed.' },
  begun: 'You had begun this.',
  beginAgain: 'Begin again',
  /** A file that was made here, handed to another app of the phone. */
  share: { share: 'Share it', not: 'It was not shared. Save it instead.' },
  text: { missing: 'Write something here.', tooLong: 'That is too long.' },
  choice: { missing: 'Choose one.' },
  /** A field that is picked, or written when it is none of the usual. */
  pick: {
    another: 'another, not in this list',
    none: 'not said',
    write: (label: string) => `${label}, in words`,
  },
} as const;

/** A wrong number, and what to do about it. */
export function numberFault(failure: NumberFailure): string {
  switch (failure.code) {
    case 'empty':
      return words.number.missing;
    case 'not-a-number':
      return `“${failure.text}” is not a number. Write digits with one point or comma, such as 2.50.`;
    case 'thousands-marks':
      return 'Leave out marks between thousands: write 1250, or 1250.5.';
    case 'negative':
      return 'An amount cannot be below nothing. Write it without the minus.';
    case 'too-long':
      return 'Too many digits: nine before and nine after the point at most.';
  }
}

export const streamName: Readonly<Record<StreamKind, string>> = {
  'leach-liquor': 'Leach liquor',
  'barren-liquor': 'Barren liquor',
  'wash-water': 'Wash water',
  'chloride-test-waste': 'Chloride-test waste',
  'ammonia-test-waste': 'Ammonia-test waste',
  'ceramic-residue': 'Ceramic residue',
  'spent-filters': 'Spent filters',
  'soiled-ppe': 'Soiled PPE and wipes',
  'spill-absorbent': 'Spill absorbent',
  'treated-slurry': 'Treated slurry',
  filtrate: 'Filtrate',
  'hydroxide-sludge': 'Hydroxide sludge',
};

const wasteNames: Readonly<Record<string, string>> = streamName;

/** A kind of waste, a thing from the shelf or a material by its name. */
export const thingName = (thing: ThingId): string => wasteNames[thing] ?? nameOfThing(thing) ?? thing;

/** Inside a sentence; what is written in capitals stays so. */
export function thingInside(thing: ThingId): string {
  const name = thingName(thing);
  return /^[A-Z]{2}/.test(name) ? name : name.toLowerCase();
}

/** The texts that forbid it, by their titles. */
const dilutionLaws = (laws: readonly Law[]): string =>
  laws.map((law) => sources[dilution[law].source].title).join('; ');

const litres = (text: string) => `${formatNumber(new Decimal(text), 2)} L`;

/** Why something was refused, and what makes it right. */
export function refusalWords(refusal: Refusal): string {
  switch (refusal.code) {
    case 'does-not-fit':
      return `Something here does not fit (${refusal.details.path}). Check it and keep again.`;
    case 'unknown':
      return `The ${refusal.details.to} is not in the record any more. Go back and choose again.`;
    case 'code-taken':
      return `${refusal.details.taken} is used already. Choose another code.`;
    case 'already-written':
      return 'This is written down already.';
    case 'already-withdrawn':
      return 'This was withdrawn already.';
    case 'already-ended':
      return 'This step has ended already.';
    case 'no-clearance':
      return 'No clearance for this step. Go through its checklist first.';
    case 'clearance-stopped':
      return 'The checklist ended in a stop. Make it right and go through it again.';
    case 'clearance-expired':
      return 'The clearance has run out. Go through the checklist again.';
    case 'clearance-for-another-step':
    case 'clearance-for-another-batch':
    case 'clearance-for-another-container':
      return 'The clearance is for another step, batch or container. Go through the checklist again.';
    case 'clearance-of-another-person':
      return 'Somebody else went through the list. A clearance holds for one person only: go through it yourself.';
    case 'clearance-for-another-place':
      return 'The list was gone through at another place. Look round here, and go through it again.';
    case 'clearance-for-other-contents':
      return 'Something was put into the container after its list. Look at it again, and go through the list again.';
    case 'clearance-for-another-base':
      return `The list was not gone through for ${thingInside(refusal.details.base)}. Go through it again, with what is to go in.`;
    case 'clearance-used':
      return 'Something was begun on this clearance already. Go through the checklist again.';
    case 'clearance-for-other-acid':
      return `The acid was ${refusal.details.then} when the list was gone through, and is ${refusal.details.now} now. Go through it again.`;
    case 'list-change-not-in-order':
      return ownFaultWords(refusal.details.fault);
    case 'clearance-late':
      return 'This list was gone through when the step had begun already. It clears nothing.';
    case 'container-closed':
      return 'This container is closed. Choose another, or reopen it first.';
    case 'container-held':
      return 'This container is held as it is. Choose another, or let it go first.';
    case 'container-leaving':
      return 'This container is set aside to leave. Choose another.';
    case 'container-gone':
      return 'This container is gone. Choose another.';
    case 'container-damaged':
      return 'This container is damaged. Choose a sound one.';
    case 'finding-closed':
      return 'This finding is closed already.';
    case 'would-dilute':
      return `${refusal.details.codes.join(', ')} would be gone by mixing, by what is known. That is dilution: no treatment, and forbidden (${dilutionLaws(refusal.details.laws)}). Keep the two apart.`;
    case 'contents-doubtful':
      return 'Nobody knows for sure what is in it. Do not add; choose another container.';
    case 'more-than-held':
      return `By the record it holds ${litres(refusal.details.volume)} and ${refusal.details.mass} g. Read the level again, or correct an entry.`;
    case 'contents-unaccounted':
      return 'Something in it is in no log. Do not add; choose another container.';
    case 'must-not-meet':
      return `${thingName(refusal.details.added)} must not meet ${thingInside(refusal.details.there)}. ${saidBy(refusal.details.by)} Choose another container.`;
    case 'material-does-not-hold':
      return `${thingName(refusal.details.added)} must not stand in ${thingInside(refusal.details.material)}. ${saidBy(refusal.details.by)} Choose another container.`;
    case 'over-capacity':
      return `It would hold ${litres(refusal.details.wouldHold)}, more than fits. Choose a larger one, or place a part.`;
    case 'over-fill-limit':
      return `It would hold ${litres(refusal.details.wouldHold)}; the fill limit is ${litres(refusal.details.limit)}. Choose a larger one, or place a part.`;
    case 'must-not-be-treated':
      return `${thingName(refusal.details.there)} is in it. Never add ${thingInside(refusal.details.added)}. ${saidBy(refusal.details.by)} Keep it as it is; ask the collector.`;
    case 'treatment-not-allowed':
      return refusal.details.because === 'not-allowed'
        ? 'Your local rules do not allow treatment here. Keep it in the container for the collector.'
        : 'Nobody has said yet that treatment is allowed here. Ask the authority, then enter what they said.';
    case 'treatment-running':
      return 'A treatment is running in it. End that one first, or choose another container.';
    case 'treatment-ended':
      return 'This treatment has ended already.';
    case 'nothing-to-treat':
      return 'By the record there is nothing in it. Put the waste in first.';
    case 'not-of-hand-over':
      return 'One of these containers did not leave with that load.';
    case 'same-container':
      return 'From and into are the same container.';
    case 'another-kind':
    case 'another-subject':
      return 'A correction must stay about the same thing.';
    case 'not-correctable':
      return 'A correction cannot be corrected: correct the first entry again.';
  }
}

/** What went wrong with the store, and what to do. Nothing was written in any of these. */
export function failureWords(failure: StoreFailure): string {
  switch (failure.code) {
    case 'disk-full':
      return 'The phone is full. Nothing was written, and what you typed stays here. Make a backup under Record, delete pictures or apps that the phone can spare, then keep again.';
    case 'photo-missing':
      return 'A photo or a file in this form is not on the phone any more. Nothing was written. Remove it, take it again, then keep again.';
    case 'closed':
      return 'The record was closed by another window, or the browser deleted it: it may be gone. Nothing was written. Open Leesbook again: what you typed is still there, and Leesbook then says whether the record is.';
    case 'blocked':
      return 'An older Leesbook is open in another window. Close it: then this one opens by itself.';
    case 'newer-version':
      return 'The record was written by a newer Leesbook. Nothing was changed. Go online, open Leesbook again and take the new version.';
    case 'no-store':
      return 'This browser gives no place to keep the record (a private window?). Open Leesbook in a normal window.';
    case 'vanished':
      return 'There is no record on this phone any more. Nothing was written. Restore a backup.';
    case 'outdated':
      return 'The record was changed in another window. Nothing was written, and what you typed stays here. Load it anew above, then keep again.';
    case 'read-only':
      return 'The record is not whole, so nothing is written into it. What you have typed stays here. See “Record”.';
    case 'store-failed':
      return `The record did not answer (${failure.name}). Nothing was written. Try again.`;
  }
}

/** Where a page needs more of a long record than is at hand. */
export const wholeWords = {
  title: 'Read the whole record?',
  second: (entries: string) => `${entries} entries`,
  why: 'Of a long record only what is recent, stands here or is still awaited is at hand. This page needs all of it.',
  read: 'Read all of it',
  readSecond: 'May take a minute',
  reading: 'Reading the whole record',
  howFar: (done: string, of: string) => (done === '0' ? 'Begun' : `Entry ${done} of ${of}`),
  workingOut: 'All is read. Working it out: the page stands still for some seconds.',
} as const;

export const holderWords = {
  title: 'Who holds the phone?',
  nobody: 'No people are written down yet. Add the people of the workshop first.',
  toRecord: 'Add people',
  another: 'Somebody else',
  nobodyHolds: 'Nobody holds the phone',
  nobodyHoldsSecond: 'What is written now stands under no name. Tap: say who holds it.',
} as const;
