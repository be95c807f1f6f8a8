/** Words of Today. */
import { format } from 'date-fns';
import Decimal from 'decimal.js';
import { type Flag, neededRules } from '../../ledger/flags';
import { namesOfElements } from '../../paperwork/element-names';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { amountText } from '../amounts';
import { substanceNames } from '../batches/evidence-words';
import { sentence } from '../checklist/words';
import { thingInside } from '../words';

const clockText = (iso: string): string => format(new Date(iso), 'd\u00a0MMM\u00a0yyyy, HH:mm');

export const todayWords = {
  title: (iso: string) => format(new Date(iso), 'EEEE d MMMM'),
  look: (n: number) => (n === 1 ? '1 container needs a look.' : `${n} containers need a look.`),
  notDetermined: (n: number) => (n === 1 ? '1 is not determined.' : `${n} are not determined.`),
  inOrder: (n: number) => (n === 1 ? '1 is in order.' : `${n} are in order.`),
  noContainers: 'No container yet.',
  /** While it is worked out: nothing is called in order before. */
  looking: 'Looking through the containers.',
  lookingRow: 'What is wrong: being worked out',
  lookingRowSecond: 'Days and clocks stand here already.',
  shelf: 'Shelf of containers',
  startStep: 'Start a step',
  nextFor: (code: string) => `For ${code}, or another batch`,
  firstBatch: 'Open the first batch',
  firstBatchSecond: 'Then its checklist, then what it gave',
  due: 'Due and wrong',
  clearedUntil: (hour: string) => `Cleared until ${hour}`,
  /** A clearance holds for one person only. */
  for: (name: string | undefined) => `for ${name ?? 'somebody else'} only`,
  running: (when: string) => `Running since ${when}`,
  stillToAnswer: (n: number) => (n === 1 ? '1 question to answer' : `${n} questions to answer`),
  damaged: (n: number) => (n === 1 ? 'One entry could not be read' : `${n} entries could not be read`),
  damagedSecond: 'They are kept as they are. See Record.',
  clockBehind: 'The clock of this phone may stand wrong',
  clockBehindSecond: (now: string, last: string) =>
    `It says ${clockText(now)}, but the last entry stands under ${clockText(last)}. If the clock is wrong, set it right: days and limits are counted by it. Entries keep their order.`,
} as const;

const litresOrGrams = (digits: string, unit: 'L' | 'g', sign: DecimalSign): string =>
  `${formatNumber(new Decimal(digits), unit === 'L' ? 2 : 0, sign)}\u202f${unit}`;

/** "12.4 % less than the record": below nothing is less. */
export function differsText(percent: string, sign: DecimalSign): string {
  const share = new Decimal(percent).toDecimalPlaces(1);
  if (share.isZero()) return 'as by the record';
  return `${formatNumber(share.abs(), 1, sign)}\u202f% ${share.isNegative() ? 'less' : 'more'} than the record`;
}

const hourText = (iso: string): string => format(new Date(iso), 'd\u00a0MMM HH:mm');

/** A flag as a row: what is wrong, and what to do. `name` is the container, batch or waste it is about. */
export function flagWords(
  flag: Flag,
  name: string,
  sign: DecimalSign = '.',
): { readonly title: string; readonly second: string } {
  switch (flag.code) {
    case 'over-capacity':
      return { title: `${name} holds more than fits`, second: 'Read the level again, or correct an entry.' };
    case 'over-fill-limit':
      return {
        title: `${name} is too full`,
        second: `Limit ${flag.limitPercent} %${flag.limitStated ? '' : ', the careful one'}. Take some out.`,
      };
    case 'tight-cap-on-gassing-waste':
      return {
        title: `${name} is capped tight`,
        second: 'Nitric waste gives off gas for days. Fit a vented cap.',
      };
    case 'contents-doubtful':
      return {
        title: `${name}: contents not known`,
        second: flag.damaged ? 'Do not add.' : 'Do not add. Do not move.',
      };
    case 'met-what-it-must-not':
      return {
        title: `${name}: ${thingInside(flag.a)} has met ${thingInside(flag.b)}`,
        second: 'They must not meet. Tap: what to do now.',
      };
    case 'container-does-not-hold':
      return {
        title: `${name}: ${thingInside(flag.a)} does not hold ${thingInside(flag.b)}`,
        second: 'Wrong container for it. Tap: what to do now.',
      };
    case 'material-not-determined':
      return {
        title: `${name}: does it hold the acid?`,
        second:
          flag.lacks === 'strength'
            ? 'Not determined. Say how strong the acid is.'
            : 'Not determined. Ask whoever sold it what it is made of.',
      };
    case 'more-taken-than-held':
      return { title: `More went out of ${name} than was in`, second: 'Correct one of the entries.' };
    case 'added-while-closed':
      return { title: `${name} was filled while closed`, second: 'Reopen it, or correct the entry.' };
    case 'added-while-held':
      return { title: `${name} was filled while held`, second: 'Let it go, or correct the entry.' };
    case 'added-while-gone':
      return { title: `${name} was filled though gone`, second: 'Correct one of the entries.' };
    case 'handed-over-while-gone':
      return { title: `${name} was handed over though gone`, second: 'Correct one of the entries.' };
    case 'quantity-differs':
      return {
        title: `${name}: the collector has ${amountText(flag.agreed, sign)}`,
        second: `${differsText(flag.percent, sign)}. Ask the collector, or correct an entry.`,
      };
    case 'load-came-back':
      return {
        title: `${name} came back and must leave again`,
        second: `Refused, here again since ${hourText(flag.since)}. Its days run on.`,
      };
    case 'container-damaged':
      return { title: `${name} is damaged`, second: 'Move all of it to a sound container, now.' };
    case 'said-empty-yet-holds':
      return { title: `${name}: said to be empty`, second: 'By the record it is not. Say where it went.' };
    case 'level-disagrees':
      return {
        title: `${name}: level and record disagree`,
        second: `Read ${litresOrGrams(flag.level, flag.unit, sign)}, by the record ${litresOrGrams(flag.held, flag.unit, sign)}. Say why.`,
      };
    case 'report-disagrees':
      return {
        title: `${name}: laboratory and record disagree`,
        second: `On ${namesOfElements(flag.of)}. See both, correct the one that is wrong.`,
      };
    case 'finding-open':
      return {
        title: [name, flag.ask].filter(Boolean).join(': '),
        second: `${sentence(flag.answer)}. Close it when it is done.`,
      };
    case 'was-diluted':
      return {
        title: `${name}: diluted, ${flag.codes.join(', ')} gone`,
        second: `Dilution is no treatment. Tell the collector that it had ${flag.codes.length === 1 ? 'it' : 'them'}.`,
      };
    case 'answer-stale':
      return {
        title: `${name}: confirmed for other contents`,
        second: `${flag.answered.join(', ')}. Ask again for what is in it now.`,
      };
    case 'placed-in-another-unit':
      return {
        title: `${name}: litres and grams do not match`,
        second: 'Correct the amount that was placed.',
      };
    case 'stream-not-placed':
      return { title: `${name} is in no container`, second: 'Say which container holds it.' };
    case 'placed-more-than-logged':
      return { title: `${name}: more placed than logged`, second: 'Correct the volume, or what was placed.' };
    case 'evidence-disagrees':
      return {
        title: `${name}: two ways of knowing disagree`,
        second: `On ${substanceNames(flag.of)}. See both, correct the one that is wrong.`,
      };
    case 'more-acid-taken-than-charged':
      return {
        title: `${name}: metals took more acid than was charged`,
        second: 'See both, correct the volume, the strength or a metal.',
      };
    case 'step-without-clearance':
      return {
        title: `${name} without clearance`,
        second:
          flag.lateListAt === null
            ? 'Tap: go through its list now, as late. It stays visible.'
            : `Its list was gone through after all, ${hourText(flag.lateListAt)}. It stays visible.`,
      };
    case 'clearance-does-not-hold':
      return {
        title: `${name}: its clearance did not hold`,
        second: 'It stays visible on the batch and the papers.',
      };
    case 'treatment-running':
      return {
        title: `${name}: treatment running`,
        second:
          flag.lastReadingAt === null
            ? `No reading yet. Begun ${hourText(flag.since)}.`
            : `Last reading ${hourText(flag.lastReadingAt)}.`,
      };
    case 'treatment-fell-short':
      return {
        title:
          flag.read === null
            ? `${name}: treatment ended, no pH read`
            : `${name}: ended at pH ${flag.read.replace('.', sign)}, aim ${flag.aim.replace('.', sign)}`,
        second:
          flag.read === null
            ? `Aim ${flag.aim.replace('.', sign)}. Read the pH.`
            : 'Not neutralised by what was read.',
      };
    case 'treatment-not-allowed':
      return {
        title: `${name}: treated, not allowed`,
        second:
          flag.because === 'not-allowed'
            ? 'The local rules said no. It stays visible on the papers.'
            : 'Nobody had said that it is allowed. If they had: enter it, with its day.',
      };
    case 'treatment-without-clearance':
      return {
        title: `${name}: treated without clearance`,
        second: 'It stays visible on the container and the papers.',
      };
    case 'treatment-clearance-does-not-hold':
      return {
        title: `${name}: clearance of its treatment did not hold`,
        second: 'It stays visible on the container and the papers.',
      };
    case 'ammonia-in-treatment':
      return flag.baseAdded
        ? {
            title: `${name}: base on ammonia waste`,
            second:
              'Alkaline is the explosive side. Add nothing, do not close it, keep away, ask the collector.',
          }
        : {
            title: `${name}: treatment begun on ammonia waste`,
            second: 'Put no base on it. End the treatment, ask the collector.',
          };
    case 'dose-outside-treatment':
      return {
        title: `${name}: base added while no treatment ran`,
        second: 'Begin another treatment for it, or correct the hour.',
      };
    case 'treatment-while-another-runs':
      return { title: `${name}: two treatments at once`, second: 'End one, or withdraw it.' };
    case 'added-during-treatment':
      return {
        title: `${name}: waste put in during treatment`,
        second: 'What was worked out before it no longer holds. Read the pH.',
      };
    case 'code-used-twice':
      return { title: `${flag.used} is used twice`, second: 'Correct one of the codes and its label.' };
    case 'entry-does-not-add-up':
      if (flag.why === 'refers-to-unknown')
        return {
          title: 'What an entry is about is not here',
          second:
            'It was lost, or lies on another phone. Leave the entry as it is, and bring in a backup that has it.',
        };
      return { title: 'An entry does not fit the others', second: 'Open it: correct or withdraw it.' };
    case 'workshop-not-described':
      return { title: 'The workshop is not described', second: 'The papers and the emergency card need it.' };
    case 'local-rules-missing':
      return {
        title:
          flag.rules.length === neededRules.length
            ? 'Local rules: not entered yet'
            : `Local rules: ${flag.rules.length} of ${neededRules.length} missing`,
        second: 'Careful limits hold until your authority’s are in.',
      };
    case 'treatment-for-planning-only':
      return {
        title: 'Treatment is shown for planning only',
        second:
          flag.because === 'not-allowed'
            ? 'Your local rules do not allow it here.'
            : 'Nobody has said yet that it is allowed here.',
      };
    case 'nothing-fit-for-drain':
      return { title: 'Nothing here is fit for a drain', second: 'Not until local limits are in and met.' };
  }
}
