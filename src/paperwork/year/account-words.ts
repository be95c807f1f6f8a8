/** What the lines of a year's account are called, on screens and papers. */
import type { Upset } from '../../ledger/state';
import type { CameAs } from '../../ledger/year-arising';
import type { Accounted, Balance, BalanceLineName, Gap } from '../../ledger/year-balance';
import type { CodedRow } from '../../ledger/year-codes';
import type { ToWaste } from '../../ledger/year-silver';
import { metals } from '../../reference/tables';
import { capital } from '../words';

export const substanceName = (of: Accounted): string =>
  of === 'acid' ? 'Free nitric acid' : capital(metals[of].name);

export const lineName: Readonly<Record<BalanceLineName, string>> = {
  start: 'Here at the start',
  arose: 'In waste that arose',
  'in-work': 'In leach liquor before cementation',
  'left-of-treating': 'Measured in what treating left',
  'measured-after': 'Measured in pots that were treated before',
  determined: 'In waste logged for what a container holds',
  'came-back': 'In loads that came back',
  'from-elsewhere': 'Poured over from a container that was gone',
  treated: 'Taken out of solution by treating',
  'handed-over': 'Handed over',
  'into-work': 'In leach liquor that went on to cementation',
  sample: 'Taken as samples',
  spill: 'Spilt',
  'taken-out': 'Taken out of containers',
  gone: 'Gone some other way',
  replaced: 'Held by the record before somebody said what is there',
  'to-elsewhere': 'Poured into a container that was gone',
  'lost-sight': 'Dried to nothing',
  end: 'Here at the end',
};

/** What a line needs said beside it. */
export const lineMeans: Partial<Readonly<Record<BalanceLineName, string>>> = {
  'in-work': 'It is no waste yet; the barren liquor after it is counted as waste.',
  'into-work': 'It is no waste yet; the barren liquor after it is counted as waste.',
  treated: 'It lies in the slurry and the sludge that treating left, wherever those are now.',
  determined: 'It stands for what the record held before, which is on the other side.',
  replaced: 'What somebody said is there stands for it, on the other side.',
  'lost-sight': 'Nobody knows what it is by now.',
};

export const besidesName: Readonly<Record<CameAs, string>> = {
  arose: 'Arose',
  'in-work': 'Leach liquor that went on to cementation',
  'left-of-treating': 'Left of treating other waste',
  determined: 'Logged for what a container holds',
};

export const besidesMeans: Readonly<Record<CameAs, string>> = {
  arose: '',
  'in-work': 'No waste yet: the barren liquor after it is counted.',
  'left-of-treating': 'What was treated is counted already.',
  determined: 'What the record held before is counted already.',
};

/** Before the name of what does not tell. */
export const gapSays: Readonly<Record<Gap['why'], string>> = {
  'not-told': 'not determined in',
  held: 'nobody said what liquor is held by',
  unknown: 'nobody knows what is or was in',
};

export const upsetSays: Readonly<Record<Upset['code'], string>> = {
  'more-taken-than-held': 'more was taken out than the record held',
  'added-while-closed': 'something went in while it was closed',
  'added-while-held': 'something went in while it was held back',
  'added-while-gone': 'something went in while it was gone',
  'handed-over-while-gone': 'it was handed over while it was gone already',
  'placed-in-another-unit': 'waste went in by another unit than it was logged in',
  'dose-outside-treatment': 'something was added outside its treatment',
  'treatment-while-another-runs': 'a treatment was begun while another ran',
  'added-during-treatment': 'waste went in while a treatment ran',
};

const things = (n: number): string => (n === 1 ? '1 thing does' : `${n} things do`);

/** How a balance stands, and nothing more: whether that is good enough is for others to say. */
export function balanceSays({ verdict, gaps }: Pick<Balance, 'verdict' | 'gaps'>): string {
  const untold = gaps.length === 0 ? '' : `; ${things(gaps.length)} not tell`;
  switch (verdict) {
    case 'closes':
      return gaps.length === 0 ? 'Closes' : `Closes as far as it is told${untold}`;
    case 'more-in':
      return `Does not close: more came in than is found again${untold}`;
    case 'more-out':
      return `Does not close: more is found than came in${untold}`;
    case 'cannot-be-told':
      return `Not determined${untold}`;
  }
}

export const perSilverName: Readonly<Record<ToWaste, string>> = {
  Cu: 'Copper to waste for a gram of silver',
  Ni: 'Nickel to waste for a gram of silver',
  waste: 'Waste for a gram of silver',
};

/** Of a figure without unit that is a gram of one thing for a gram of another. */
export const perGram = 'g';

export const schemeName: Readonly<Record<string, string>> = {
  rcra: 'United States, federal',
  california: 'California',
  'waste-list': 'European list of waste',
};

export const codeStanding: Readonly<Record<CodedRow['standing'], string>> = {
  accepted: 'confirmed by somebody',
  candidate: 'a candidate, confirmed by nobody',
  open: 'a candidate that needs a judgement or something not determined',
};

/** What is decided about counting and has to be said wherever the account stands. */
export const accountNotes: readonly string[] = [
  'What had happened before the first day counts as it is known now: corrections made since are in it.',
  'A load that came back within the time has not left; one that was handed over twice counts once.',
  'What left counts as the record has it. Where a collector has another amount, that stands with the hand-over.',
  'Waste that was logged because somebody said what is in a container stands for what the record held there, and does not arise a second time. What was found in a vessel that was empty by the record does.',
  'Leach liquor that went on to cementation is no waste here; the barren liquor after it is.',
  'Metals that went through a treatment are counted where they were treated. What was measured in solution afterwards is counted on from there.',
  'Nitrate is not accounted: lime, caustic and soda remove none of it.',
];
