/** What is open or not in order about a container, as a paper says it. */
import type { Flag } from '../../ledger/flags';
import { saidBy } from '../../safety/must-not-meet/words';
import { namesOfElements } from '../element-names';
import { ruleNames } from '../rule-words';
import { unbroken } from '../words';

/** Amounts come printed. */
export function flagWords(
  flag: Flag,
  amount: (digits: string, unit: 'L' | 'g') => string,
  day: (iso: string) => string,
): string {
  switch (flag.code) {
    case 'over-capacity':
      return `Over its capacity by the record: ${amount(flag.holds, 'L')} logged, ${amount(flag.capacity, 'L')} when full.`;
    case 'over-fill-limit':
      return `Too full: ${amount(flag.holds, 'L')}, limit ${amount(flag.limit, 'L')} (${flag.limitPercent} %).`;
    case 'tight-cap-on-gassing-waste':
      return 'Tight cap on waste that may still give off gas. Vent before it is carried.';
    case 'contents-doubtful':
      return `Contents doubtful since ${day(flag.since)}. The figures are what the record says, not what is known to be in it.`;
    case 'met-what-it-must-not':
      return `Two things are in it that must not meet. ${saidBy(flag.by)} Confirm with the collector before anybody touches it.`;
    case 'container-does-not-hold':
      return `What the container is made of does not stand what is in it. ${saidBy(flag.by)}`;
    case 'material-not-determined':
      return 'Whether the container stands what is in it is not determined.';
    case 'more-taken-than-held':
      return `More was taken out (${amount(flag.taken, flag.unit)}) than it held by the record (${amount(flag.held, flag.unit)}).`;
    case 'added-while-closed':
      return 'Something was added while it was marked closed.';
    case 'added-while-held':
      return 'Something was added while it was being held as it was.';
    case 'added-while-gone':
      return 'Something was added though it was marked as gone.';
    case 'handed-over-while-gone':
      return 'It was handed over though it was gone already.';
    case 'quantity-differs':
      return `The collector has another amount: ${flag.agreed.value}\u202f${flag.agreed.unit}.`;
    case 'load-came-back':
      return `A load with it was refused; it is here again since ${day(flag.since)}.`;
    case 'container-damaged':
      return `The container is damaged, since ${day(flag.since)}, and is not empty by the record.`;
    case 'said-empty-yet-holds':
      return `Said to be empty; by the record it holds ${volumeAndMass(flag, amount)}.`;
    case 'level-disagrees':
      return `Read to hold ${amount(flag.level, flag.unit)} on ${day(flag.at)}; by the record ${amount(flag.held, flag.unit)}. Not explained.`;
    case 'report-disagrees':
      return `What a laboratory found dissolved and what is known of its wastes disagree beyond their uncertainty: ${namesOfElements(flag.of)}.`;
    case 'finding-open':
      return `Seen on a walk, not closed: ${flag.ask} ${flag.answer}.`;
    case 'was-diluted':
      return `Mixing made ${flag.codes.join(', ')} disappear by what was known then. That is dilution: the waste is to be treated as having had them.`;
    case 'answer-stale':
      return `Confirmed for what was in it before, not for what is in it now: ${flag.answered.join(', ')}.`;
    case 'placed-in-another-unit':
      return 'A waste was put in by another measure than it was logged by; its share is not determined.';
    case 'stream-not-placed':
      return `Of a waste in it, some is in no container by the record (${volumeAndMass(flag, amount)}).`;
    case 'placed-more-than-logged':
      return `More of a waste was put into containers than was logged (${volumeAndMass(flag, amount)} over).`;
    case 'evidence-disagrees':
      return 'Two ways of knowing what is dissolved in it disagree beyond their uncertainty.';
    case 'more-acid-taken-than-charged':
      return 'Its metals took more acid than was charged, by what was written down.';
    case 'step-without-clearance':
      return flag.lateListAt === null
        ? `Step done without a clearance: ${flag.step.replaceAll('-', ' ')}.`
        : `Step done without a clearance: ${flag.step.replaceAll('-', ' ')}. Its list was gone through afterwards, ${day(flag.lateListAt)}.`;
    case 'clearance-does-not-hold':
      return `The clearance of a step does not hold: ${flag.step.replaceAll('-', ' ')}.`;
    case 'treatment-running':
      return flag.lastReadingAt === null
        ? `A treatment has been running since ${day(flag.since)}; nothing was read yet.`
        : `A treatment has been running since ${day(flag.since)}; last read ${day(flag.lastReadingAt)}.`;
    case 'treatment-fell-short':
      return flag.read === null
        ? `Treatment told to have reached its end, aim pH ${flag.aim}; no pH was read.`
        : `Treatment ended at pH ${flag.read}, aim ${flag.aim}: not neutralised by what was read.`;
    case 'treatment-not-allowed':
      return flag.because === 'not-allowed'
        ? 'Treated though the local rules did not allow it.'
        : 'Treated though nobody had said that it is allowed.';
    case 'treatment-without-clearance':
      return 'Treated without a clearance.';
    case 'treatment-clearance-does-not-hold':
      return 'The clearance of its treatment does not hold.';
    case 'ammonia-in-treatment':
      return flag.baseAdded
        ? 'Ammonia-test waste has met a base in it: it may explode. Confirm with the collector before anybody touches it.'
        : 'A treatment was begun on ammonia-test waste. No base may be put on it.';
    case 'dose-outside-treatment':
      return 'Something was added as a treatment while none was running.';
    case 'treatment-while-another-runs':
      return 'Two treatments ran in it at once by the record.';
    case 'added-during-treatment':
      return 'Waste was put in while a treatment was running.';
    case 'code-used-twice':
      return `The code ${unbroken(flag.used)} is used twice in the record.`;
    case 'entry-does-not-add-up':
      return 'An entry behind it does not fit the others.';
    case 'workshop-not-described':
      return 'The workshop is not described.';
    case 'local-rules-missing':
      return `Local rules not entered: ${flag.rules.map((rule) => ruleNames[rule].toLowerCase()).join(', ')}.`;
    case 'treatment-for-planning-only':
      return 'Treatment is for planning only.';
    case 'nothing-fit-for-drain':
      return 'Nothing here is fit for a drain.';
  }
}

const volumeAndMass = (
  flag: { readonly volume: string; readonly mass: string },
  amount: (digits: string, unit: 'L' | 'g') => string,
): string =>
  [flag.volume === '0' ? '' : amount(flag.volume, 'L'), flag.mass === '0' ? '' : amount(flag.mass, 'g')]
    .filter((part) => part !== '')
    .join(', ');
