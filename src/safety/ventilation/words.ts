/** The words for what the ventilation check tells: the only sentences here outside the data and beside the formulas. */
import type { Reason, VentilationResult } from './check';

export const verdictWords: Readonly<Record<VentilationResult['verdict'], string>> = {
  enough: 'This place is enough for this lot',
  split: 'Too much for this place: split it',
  none: 'No acceptable place',
};

export const estimate = 'An estimate, not a measurement.';

/** What is wrong, and what to do. */
export const reasonWords: Readonly<Record<Reason, string>> = {
  'room-air': 'Room air is no answer to this gas. Work at a ducted hood or outdoors.',
  'ductless-hood': 'It blows back into the room. Work at a ducted hood or outdoors.',
  'opening-missing': 'The opening has no size. Measure width and height, sash at its mark.',
  'face-not-measured': 'Nobody has measured the air in the opening. Have it measured.',
  'face-too-slow': 'Too slow: it lets gas out. Sash to the mark, fan up, measure again.',
  'face-too-fast': 'Too fast: it swirls gas back out. Fan down, measure again.',
  'reading-too-old': 'The reading is older than a year. Measure again.',
  'reading-before-change': 'The hood was changed after it was measured. Measure again.',
  'reading-not-yet': 'The day of the reading has not come yet. Correct it.',
  'certificate-does-not-count':
    'Its certificate is older than the last change, or outside what any hood may have. Have it tested again.',
  'peak-in-duct': 'At the peak the duct would throw out more than is immediately dangerous to life.',
  'over-ceiling': 'More metal than goes into one lot, however good the place.',
  'acid-outside-table': 'That is no strength of nitric acid that is known here. Look at the bottle again.',
  'no-metal': 'No metal in the charge. Weigh it, or reckon it.',
  'no-acid': 'No acid in the charge. Say how much, and how strong.',
  'no-gas-from-these': 'None of these metals makes gas in nitric acid. Look at what goes in.',
  'no-release-time': 'The gas comes in no time. Say in how many hours.',
  'no-peak-time': 'The peak comes in no time. Say in how many minutes.',
  'peak-share-outside': 'The share of the peak lies above 0 and up to 100 %.',
  'no-limit': 'The limit is nothing. Choose one, or say what your authority says.',
  'mixing-outside': 'The mixing factor lies from 1 to 10. An efficiency of 0.2 is a factor of 5.',
  'no-airflow': 'No air goes through. Measure it.',
  'no-room': 'The room has no size. Measure it.',
};
