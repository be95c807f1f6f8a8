/** Words of what a batch was given, what was got back, and whether the two close. */
import type { Missing } from '../../ledger/account';
import type { Substance } from '../../ledger/batch-closure';
import type { Charge, Recovery } from '../../ledger/entries/accounts';

export const chargeWords: Readonly<Record<Charge['what'], string>> = {
  acid: 'Nitric acid charged',
  'dilution-water': 'Water for diluting',
  'wash-water': 'Water for washing',
  copper: 'Copper weighed in',
};

export const recoveryWords: Readonly<Record<Recovery['what'], string>> = {
  silver: 'Silver, dry',
  palladium: 'Palladium, dry',
  copper: 'Copper weighed out, dry',
  residue: 'Residue, dried',
};

export const accountWords = {
  title: 'Charged and got back',
  none: 'Nothing written down yet.',
  add: 'Charged or got back',
  addSecond: 'Acid, water, copper, silver …',
  formTitle: (code: string) => `${code}: charged or got back`,
  what: 'What it was',
  charged: 'Charged',
  recovered: 'Got back',
  volume: 'Volume',
  mass: 'Mass',
  strength: 'Strength as charged',
  keep: 'Write it down',
  again: 'Written down. Add the next, or go back.',
} as const;

export const closureWords = {
  title: 'In against out',
  of: {
    volume: 'Volume',
    copper: 'Copper',
    silver: 'Silver',
    acid: 'Nitric acid',
  } satisfies Record<Substance, string>,
  pageTitle: (name: string, code: string) => `${name} of ${code}`,
  in: 'In',
  out: 'Out',
  sumIn: 'In, together',
  sumOut: 'Out, together',
  nothing: 'Nothing is written down.',
  unaccounted: 'Unaccounted for',
  closes: 'Closes within its uncertainty',
  missing: 'More in than out: where is the rest?',
  excess: 'More out than in: what is not written down?',
  cannot: 'Cannot be told',
  cannotWhy: (names: string) => `Cannot be told: nobody wrote down ${names}.`,
  atLeast: 'at least',
  left: {
    volume: 'Evaporation, drips and what filters hold are not written down; each takes a little.',
    copper: 'Copper on filters, in dust and in the powder is not written down.',
    silver: 'Silver on filters, in dust and in the ceramic is not written down.',
    acid: 'Acid that left as fume is not written down.',
  } satisfies Record<Substance, string>,
  became: 'The leach liquor became the barren liquor, and is not counted twice.',
  lost: {
    'acid-charged': 'the acid charged',
    'acid-strength': 'a strength of the acid that the table knows',
    'water-charged': 'the water for washing',
    'copper-in': 'the copper weighed in',
    'copper-out': 'the copper weighed out',
    'copper-of-feed': 'the copper of the leach liquor',
    'silver-of-feed': 'the silver of the leach liquor',
    'silver-recovered': 'the silver got back',
    streams: 'any liquor that came out',
    held: 'what liquor is held in',
    copper: 'a measurement of copper in',
    nickel: 'a measurement of nickel in',
    silver: 'a measurement of silver in',
    acid: 'a full measurement of free acid in',
  } satisfies Record<Missing['what'], string>,
  lostIn: (what: string, stream: string) => `${what} ${stream}`,
} as const;
