/** Faults planted in the workshop, told truthfully at the question that they meet: each must be caught, with a way to mend it. */
import { describe, expect, it, test } from 'vitest';
import { doorsFor, type Item, stopsOf } from '../../../src/safety/checklist-item';
import { answer, answerLater, begin, type Standing, standing } from '../../../src/safety/checklist-run';
import { checklists } from '../../../src/safety/checklists';
import type { Given } from '../../../src/safety/run-schema';
import { context, goodAnswer, listNamed, must, past, T0, walk } from './build-run';

const choose = (answer: string): Given => ({ kind: 'choice', answer });
const read = (written: string): Given => ({ kind: 'reading', written });
const no: Given = { kind: 'confirm', yes: false };
const worked = (result: 'split' | 'none'): Given => ({ kind: 'worked-out', result, from: 'the check' });

/** Everything in order but what `truth` says. */
function honest(id: string, truth: Readonly<Record<string, Given>>): Standing {
  let now = standing(begin(listNamed(id), context, T0));
  for (let second = 5; now.state === 'next'; second += 5) {
    const told = answer(now.run, truth[now.item.id] ?? goodAnswer(now.item), past(second));
    if (!told.ok && told.failure.code === 'reason-missing') return now;
    now = must(told);
  }
  return now;
}

const outdoors = { 'sta-place': choose('outdoors') };
const leaving = { 'lck-stay': choose('leaving') };

type Planted = readonly [fault: string, truth: Readonly<Record<string, Given>>, caughtAt: string];

const planted: Readonly<Record<string, readonly Planted[]>> = {
  'acid-dilution': [
    ['a filter hood without a duct', { 'sta-place': choose('ductless filter hood') }, 'sta-place'],
    ['the garage, door open', { 'sta-place': choose('indoors, no hood') }, 'sta-place'],
    ['a ribbon that flutters in one corner', { 'sta-ribbon': choose('weak, or flutters') }, 'sta-ribbon'],
    ['a fan that is off', { 'sta-ribbon': choose('hangs still') }, 'sta-ribbon'],
    ['no wind', { ...outdoors, 'sta-wind': choose('still, or turning') }, 'sta-wind'],
    ['wind in the face', { ...outdoors, 'sta-wind': choose('into my face') }, 'sta-wind'],
    ['nitrile gloves at strong acid', { 'dil-gloves': choose('nitrile') }, 'dil-gloves'],
    ['safety glasses', { 'dil-face': choose('no sealed goggles') }, 'dil-face'],
    ['the apron on its hook', { 'dil-face': choose('no apron') }, 'dil-face'],
    ['a jam jar', { 'dil-vessel': choose('other glass, a jar') }, 'dil-vessel'],
    ['acid in first', { 'dil-first': choose('acid') }, 'dil-first'],
    ['water by eye', { 'dil-first': choose('water, not measured') }, 'dil-first'],
    ['a rag on the bench', { 'dil-clear': no }, 'dil-clear'],
  ],
  'leach-start': [
    ['nobody told', { 'lst-with': choose('nobody') }, 'lst-with'],
    ['somebody at home, no call agreed', { 'lst-with': choose('somebody, no time agreed') }, 'lst-with'],
    ['a charge too big for the hood', { 'lst-vent': worked('split') }, 'lst-vent'],
    ['no station that does', { 'lst-vent': worked('none') }, 'lst-vent'],
    ['latex gloves', { 'lst-gloves': choose('latex, or none') }, 'lst-gloves'],
    ['a shield without goggles', { 'lst-face': choose('no sealed goggles') }, 'lst-face'],
    ['epoxy-dipped parts', { 'lst-feed': choose('plastic, paint or board') }, 'lst-feed'],
    ['12 g of metal at once', { 'lst-first': read('12') }, 'lst-first'],
    ['cling film over the beaker', { 'lst-cover': choose('tight lid or film') }, 'lst-cover'],
    ['a beaker filled to two thirds', { 'lst-cover': choose('more than half full') }, 'lst-cover'],
    ['a saucer for a tray', { 'lst-tray': no }, 'lst-tray'],
  ],
  'leach-check': [
    ['brown gas over the liquid', { 'lck-colour': choose('brown') }, 'lck-colour'],
    ['46 °C and rising', { 'lck-temp': read('46') }, 'lck-temp'],
    ['foam on the way up', { 'lck-level': choose('rising') }, 'lck-level'],
    ['a wet tray', { 'lck-tray': no }, 'lck-tray'],
    ['the hood switched off', { 'sta-ribbon': choose('hangs still') }, 'sta-ribbon'],
    ['leaving half an hour after a portion', { ...leaving, 'lck-quiet': read('30') }, 'lck-quiet'],
    ['leaving without a sign', { ...leaving, 'lck-sign': no }, 'lck-sign'],
    [
      'leaving, a call without an hour',
      { ...leaving, 'lck-call': choose('somebody, no time set') },
      'lck-call',
    ],
  ],
  filtration: [
    ['paper with strong acid', { 'fil-medium': choose('paper, stronger acid') }, 'fil-medium'],
    ['a coffee filter of cotton', { 'fil-medium': choose('cotton or cloth') }, 'fil-medium'],
    ['a pump without a trap', { 'fil-pull': choose('vacuum, no trap') }, 'fil-pull'],
    ['a bare flask under vacuum', { 'fil-pull': choose('vacuum, bare glass flask') }, 'fil-pull'],
    ['alcohol in the rinse bottle', { 'fil-rinse': choose('alcohol') }, 'fil-rinse'],
    ['a rinse bottle without a label', { 'fil-rinse': choose('no label on it') }, 'fil-rinse'],
    ['thin gloves', { 'fil-gloves': choose('thin, latex or none') }, 'fil-gloves'],
    ['liquor still at 50 °C', { 'fil-temp': read('50') }, 'fil-temp'],
    ['nowhere wet for the used filter', { 'fil-wet': no }, 'fil-wet'],
  ],
  cementation: [
    ['a spot test poured back', { 'cem-amm': choose('yes') }, 'cem-amm'],
    ['an unlabelled bucket', { 'cem-amm': choose('not sure') }, 'cem-amm'],
    ['pH 0.3', { 'cem-acid': read('0.3') }, 'cem-acid'],
    ['liquor gone basic', { 'cem-acid': read('8') }, 'cem-acid'],
    ['too much free acid for the hood', { 'cem-vent': worked('split') }, 'cem-vent'],
    ['enamelled wire', { 'cem-bare': choose('lacquer or enamel') }, 'cem-bare'],
    ['soldered pipe', { 'cem-bare': choose('solder or tin') }, 'cem-bare'],
    ['a lid snapped shut', { 'cem-cover': choose('screwed or snapped shut') }, 'cem-cover'],
    ['bare hands', { 'cem-gloves': choose('none yet') }, 'cem-gloves'],
    ['no tray', { 'cem-tray': no }, 'cem-tray'],
  ],
  'spot-test-chloride': [
    ['the drop goes into the pot', { 'cl-where': choose('into the main vessel') }, 'cl-where'],
    ['strong hydrochloric acid', { 'cl-acid': choose('concentrated') }, 'cl-acid'],
    ['5 mL', { 'cl-drop': read('5') }, 'cl-drop'],
    ['bleach under the sink', { 'cl-bleach': no }, 'cl-bleach'],
    ['the drops go to the nitric waste', { 'cl-waste': choose('nitric waste bottle') }, 'cl-waste'],
    ['a tight cap on the chloride jar', { 'cl-waste': choose('chloride jar, tight cap') }, 'cl-waste'],
    ['safety glasses', { 'cl-face': choose('no sealed goggles') }, 'cl-face'],
    ['no shield', { 'cl-face': choose('goggles, no shield') }, 'cl-face'],
  ],
  'spot-test-ammonia': [
    ['only salt water to destroy it', { 'am-kill': choose('salt water only') }, 'am-kill'],
    ['bleach to destroy it', { 'am-kill': choose('bleach') }, 'am-kill'],
    ['5 mL', { 'am-drop': read('5') }, 'am-drop'],
    ['a watch glass', { 'am-vessel': choose('open glass') }, 'am-vessel'],
    ['a vial with a lid', { 'am-vessel': choose('closed vial') }, 'am-vessel'],
    ['lime on the bench', { 'am-alkali': no }, 'am-alkali'],
    ['no shield over silver and ammonia', { 'am-face': choose('goggles, no shield') }, 'am-face'],
    ['household gloves', { 'am-gloves': choose('latex or rubber') }, 'am-gloves'],
  ],
  'wash-dry-weigh': [
    ['metal from an ammonia test, untreated', { 'wdw-history': choose('yes, untreated') }, 'wdw-history'],
    ['nobody knows where it comes from', { 'wdw-history': choose('not sure') }, 'wdw-history'],
    ['acid left in it', { 'wdw-rinse': read('3') }, 'wdw-rinse'],
    ['rinsed with acetone to dry faster', { 'wdw-liquid': choose('acetone') }, 'wdw-liquid'],
    ['filter paper under it', { 'wdw-under': choose('filter paper') }, 'wdw-under'],
    ['the oven at 180 °C', { 'wdw-oven': read('180') }, 'wdw-oven'],
    ['dry dust', { 'wdw-dust': no }, 'wdw-dust'],
  ],
  'waste-transfer': [
    ['an old solvent bottle', { 'wt-bottle': choose('once held organics') }, 'wt-bottle'],
    ['a lemonade bottle', { 'wt-bottle': choose('drink or food bottle') }, 'wt-bottle'],
    ['ammonia waste to nitrate', { 'wt-same': choose('no') }, 'wt-same'],
    ['the old label still on', { 'wt-label': choose('what was in it before') }, 'wt-label'],
    ['bubbles an hour ago', { 'wt-quiet': read('1') }, 'wt-quiet'],
    ['filled to the brim', { 'wt-fill': read('98') }, 'wt-fill'],
    ['a tight cap', { 'wt-cap': choose('tight solid cap') }, 'wt-cap'],
    ['a solid cap left loose', { 'wt-cap': choose('solid cap, left loose') }, 'wt-cap'],
    ['no goggles', { 'wt-face': choose('no sealed goggles') }, 'wt-face'],
  ],
  'neutralise-lime': [
    ['alone', { 'lim-with': choose('nobody') }, 'lim-with'],
    ['a test poured into it', { 'lim-amm': choose('yes') }, 'lim-amm'],
    ['quicklime for slaked lime', { 'lim-base': choose('quicklime') }, 'lim-base'],
    ['the bag of caustic soda', { 'lim-base': choose('caustic soda') }, 'lim-base'],
    ['limestone without a plan', { 'lim-base': choose('limestone') }, 'lim-base'],
    ['a bag without a name', { 'lim-base': choose('bag without a name') }, 'lim-base'],
    ['a vessel half full, nothing known of the base', { 'lim-room': read('50') }, 'lim-room'],
    ['warm liquor', { 'lim-temp0': read('38') }, 'lim-temp0'],
    ['dry lime without a mask', { 'lim-face': choose('goggles, no mask') }, 'lim-face'],
    ['a garage', { 'sta-place': choose('indoors, no hood') }, 'sta-place'],
  ],
  'sludge-filter': [
    ['pH fallen to 7', { 'slu-ph': read('7') }, 'slu-ph'],
    ['bare hands', { 'slu-gloves': choose('goggles, bare hands') }, 'slu-gloves'],
    ['an unmarked tub', { 'slu-tub': no }, 'slu-tub'],
    ['the cake spread in the sun', { 'slu-damp': choose('by a heater, in the sun') }, 'slu-damp'],
    ['the hose in the drain', { 'slu-water': choose('drain') }, 'slu-water'],
    ['30 mg/L of copper', { 'slu-test': read('30') }, 'slu-test'],
  ],
  'container-inspection': [
    ['a bulging bottle', { 'insp-shape': choose('bulged or hissing') }, 'insp-shape'],
    ['a leak', { 'insp-leak': choose('leak') }, 'insp-leak'],
    ['a crust that was wiped', { 'insp-leak': choose('weep') }, 'insp-leak'],
    ['a tight cap', { 'insp-cap': choose('tight, without a vent') }, 'insp-cap'],
    ['a label washed off', { 'insp-label': no }, 'insp-label'],
    ['a wet tray', { 'insp-tray': no }, 'insp-tray'],
    ['ammonia beside acid', { 'insp-apart': no }, 'insp-apart'],
    ['a dead eyewash', { 'insp-eye': no }, 'insp-eye'],
    ['frost', { 'insp-temp': read('-2') }, 'insp-temp'],
  ],
  'hand-over': [
    ['counting alone', { 'ho-with': choose('nobody') }, 'ho-with'],
    ['a licence for other waste', { 'ho-who': choose('other waste codes only') }, 'ho-who'],
    ['a licence run out', { 'ho-who': choose('it has run out') }, 'ho-who'],
    ['none counted', { 'ho-count': read('0') }, 'ho-count'],
    ['a warm container', { 'ho-quiet': choose('warm to the hand') }, 'ho-quiet'],
    ['a label of another code', { 'ho-label': no }, 'ho-label'],
    ['a loose cap', { 'ho-cap': no }, 'ho-cap'],
    ['acid against ammonia in the van', { 'ho-apart': no }, 'ho-apart'],
    ['no kit at the van', { 'ho-ppe': choose('gloves, goggles, no kit') }, 'ho-ppe'],
  ],
  'spill-response-readiness': [
    ['boxes before the eyewash', { 'rdy-way': choose('eyewash blocked') }, 'rdy-way'],
    ['an eyewash that last ran 9 days ago', { 'rdy-run': read('9') }, 'rdy-run'],
    ['an empty battery', { 'rdy-call': choose('phone, battery low') }, 'rdy-call'],
    ['no signal', { 'rdy-call': choose('phone, no signal') }, 'rdy-call'],
    ['nobody knows', { 'rdy-buddy': choose('nobody') }, 'rdy-buddy'],
    ['half a tub of soda', { 'rdy-kit': read('0.6') }, 'rdy-kit'],
    ['a pinhole in the glove', { 'rdy-ppe': no }, 'rdy-ppe'],
    ['the wrong thing done at brown gas', { 'rdy-drill': choose('open sash and look') }, 'rdy-drill'],
    ['a bad night', { 'rdy-fit': choose('tired, slept badly') }, 'rdy-fit'],
    ['a cough since yesterday', { 'rdy-fit': choose('cough or tight chest') }, 'rdy-fit'],
  ],
};

test('every list has its planted faults', () => {
  expect(Object.keys(planted).sort()).toEqual([...checklists.keys()].sort());
});

describe.each(Object.entries(planted))('%s catches', (id, faults) => {
  it.each(faults)('%s', (_, truth, caughtAt) => {
    const now = honest(id, truth);
    if (now.state === 'complete') throw new Error('the list went through');
    // Stopped with a way to mend it, or held at the question until a reason is said.
    expect(now.item.id).toBe(caughtAt);
    if (now.state === 'stopped') expect(now.doors.length).toBeGreaterThan(0);
  });
});

test('gloves that strong acid goes through pass only on a reason that tells how weak it is', () => {
  const excused = [...checklists.values()]
    .flatMap(({ items }) => items)
    .filter((item) => item.kind === 'choice' && item.id.endsWith('-gloves') && item.reasons !== undefined);
  expect(excused.length).toBeGreaterThan(0);
  for (const { reasons = [] } of excused)
    for (const reason of reasons)
      expect(reason).toMatch(/under 10 %|pH 1 or more|no liquor|acid used up|no acid left/);
});

describe('a fault after the step has begun', () => {
  it.each([
    ['acid-dilution', 'dil-temp', '55'],
    ['neutralise-lime', 'lim-hot', '61'],
    ['neutralise-lime', 'lim-ph', '8.1'],
    ['spot-test-ammonia', 'am-time', '40'],
    ['spot-test-ammonia', 'am-dead', '9'],
  ])('stops %s at %s: %s', (id, name, written) => {
    const late = must(answerLater(walk(id).run, name, read(written), past(1000)));
    if (late.state !== 'stopped') throw new Error('it went on');
    expect(late.item.id).toBe(name);
    expect(late.doors.length).toBeGreaterThan(0);
  });
});

/** A truthful answer that stops the item in the way named. */
function stoppingAnswer(item: Item, stop: string): Given {
  if (item.kind === 'confirm') return no;
  if (item.kind === 'reading')
    return read(stop === 'below' ? String(Number(item.min) - 0.01) : String(Number(item.max) + 0.01));
  const result = item.choices.find((choice) => choice.answer === stop)?.result;
  return result && result !== 'enough' ? worked(result) : choose(stop);
}

const everyStop = [...checklists.values()].flatMap((list) =>
  list.items
    .filter(({ when }) => when === undefined)
    .flatMap((item) => stopsOf(item).map((stop) => ({ list: list.id, item, stop }))),
);

test('one truthful stop among answers in order is enough, whichever it is, and has its doors', () => {
  expect(everyStop.length).toBeGreaterThan(150);
  for (const { list, item, stop } of everyStop) {
    const met = item.onlyIf ? { [item.onlyIf.item]: choose(item.onlyIf.answer) } : {};
    const now = honest(list, { ...met, [item.id]: stoppingAnswer(item, stop) });
    if (now.state !== 'stopped') throw new Error(`${list} went on after ${item.id}: ${stop}`);
    expect(now.item.id).toBe(item.id);
    expect(now.doors).toEqual(doorsFor(item, stop));
  }
});
