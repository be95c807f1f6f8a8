import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import station from '../../../checklists/at-a-place/station.json';
import bases from '../../../src/reference/bases.json';
import { askedAtMost } from '../../../src/safety/checklist-faults';
import { doorsFor, type Item, stopsOf } from '../../../src/safety/checklist-item';
import { Checklist } from '../../../src/safety/checklist-schema';
import { checklistForStep, checklists, contentHash } from '../../../src/safety/checklists';
import { emergencyCards } from '../../../src/safety/emergency-cards';
import { shownChoices } from '../../../src/safety/shown-choices';
import { type Sketch, sketches } from '../../../src/safety/sketches';
import { listNamed } from './build-run';

const lists = [...checklists.values()];

describe('the checklists in the repository', () => {
  it('are all read, each under the name of its file', () => {
    const files = readdirSync('checklists').filter(
      (name) => name.endsWith('.json') && !name.endsWith('.schema.json'),
    );
    expect(files).toHaveLength(14);
    expect([...checklists.keys()].sort()).toEqual(files.map((name) => name.replace('.json', '')).sort());
    for (const id of checklists.keys())
      expect(JSON.parse(readFileSync(`checklists/${id}.json`, 'utf8')).id).toBe(id);
  });

  it.each(lists.map((list) => [list.id, list] as const))(
    '%s has nothing in it that its shape forbids',
    (_, list) => {
      expect(Checklist.safeParse(list).success).toBe(true);
    },
  );

  it('show a way to make it right for every answer that stops', () => {
    const stops = lists.flatMap(({ items }) =>
      items.flatMap((item) => stopsOf(item).map((stop) => ({ item, stop }))),
    );
    expect(stops.length).toBeGreaterThan(100);
    for (const { item, stop } of stops)
      expect(doorsFor(item, stop).length, `${item.id} ${stop}`).toBeGreaterThan(0);
  });

  it('require only lists that there are, and open only cards that there are', () => {
    for (const list of lists) {
      for (const id of list.requires) expect(checklists.has(id), `${list.id} requires ${id}`).toBe(true);
      for (const { id, card } of list.items)
        if (card !== undefined) expect(emergencyCards.has(card), `${id} opens ${card}`).toBe(true);
    }
  });

  it('use an item id once in all of them, so that a record can name an item alone', () => {
    const shared = station.items.map(({ id }) => id);
    const ids = lists.flatMap(({ items }) => items.map(({ id }) => id)).filter((id) => !shared.includes(id));
    expect(new Set([...ids, ...shared]).size).toBe(ids.length + shared.length);
  });

  it('ask for wet acid work only after the readiness walk', () => {
    const free = lists.filter(({ requires }) => requires.length === 0).map(({ id }) => id);
    expect(free.sort()).toEqual(['container-inspection', 'hand-over', 'spill-response-readiness']);
  });

  it('never call anything safe or compliant', () => {
    for (const list of lists)
      for (const item of list.items) {
        const shown = [
          list.mayStart,
          item.ask,
          item.look,
          item.why,
          ...(item.doors ?? []).map((door) => door.do),
        ];
        for (const line of shown) expect(line).not.toMatch(/\b(safe|compliant)\b/i);
      }
  });

  it('ask at most eight things of a person at a pause, and a ninth only of who leaves a leach', () => {
    const most = lists.map(({ id, items }) => [id, askedAtMost(items, undefined)] as const);
    expect(most.filter(([, asked]) => asked > 8)).toEqual([['leach-check', 9]]);
  });

  it('answer a confirmation in words of its own, that say what was seen', () => {
    for (const list of lists) {
      const said = list.items.flatMap((item) => (item.kind === 'confirm' ? [item.yes ?? ''] : []));
      expect(new Set(said).size, list.id).toBe(said.length);
      for (const yes of said) {
        expect(yes).not.toMatch(/^$|^(yes|ok|done|checked)\b/i);
        expect(yes.split(' ').length, yes).toBeLessThanOrEqual(6);
      }
    }
  });

  it('offer four or five reasons wherever a no goes in with one, and answers that fit a button', () => {
    for (const item of lists.flatMap(({ items }) => items)) {
      const takesReason =
        item.kind === 'choice' ? item.choices.some(({ asksReason }) => asksReason) : !item.stop;
      if (takesReason) expect([4, 5], item.id).toContain(item.reasons?.length);
      else expect(item.reasons, item.id).toBeUndefined();
      const answers = item.kind === 'choice' ? item.choices.map(({ answer }) => answer) : [];
      for (const answer of [...answers, ...(item.reasons ?? []), ...(item.naReasons ?? [])])
        expect(answer.length, answer).toBeLessThanOrEqual(40);
    }
  });

  it('keep the answers of a choice on one screen of a small phone, but for the bags of every base', () => {
    // A button takes some twenty letters a line, and six lines leave room for the question and what to look at.
    const lines = (text: string): number => Math.ceil(text.length / 20);
    for (const item of lists.flatMap(({ items }) => items))
      if (item.kind === 'choice' && item.expects === undefined) {
        expect(item.choices.length, item.id).toBeLessThanOrEqual(5);
        const all = item.choices.reduce((sum, { answer }) => sum + lines(answer), 0);
        expect(
          all,
          `${item.id}: ${item.choices.map(({ answer }) => answer).join(' | ')}`,
        ).toBeLessThanOrEqual(6);
      }
  });

  it('ask for every base that a plan can name, by the name it is sold under', () => {
    const item = listNamed('neutralise-lime').items.find(({ id }) => id === 'lim-base');
    if (item?.kind !== 'choice') throw new Error('a choice');
    const asked = item.choices.flatMap(({ base, answer }) => (base === undefined ? [] : [[base, answer]]));
    const sold = Object.entries(bases).map(([id, { name }]) => [id, name.toLowerCase()]);
    expect(asked.sort()).toEqual(sold.sort());
  });

  it('carry no mark of a workshop: those are put on by the app', () => {
    for (const item of lists.flatMap(({ items }) => items)) {
      expect(item.own).toBeUndefined();
      if (item.kind === 'reading') expect([item.range, item.shipped]).toEqual([undefined, undefined]);
    }
  });

  it('use each sketch that is to be drawn', () => {
    const used = new Set(lists.flatMap(({ items }) => items.flatMap(({ sketch }) => sketch ?? [])));
    expect(Object.keys(sketches).filter((name) => !used.has(name as Sketch))).toEqual([]);
  });

  it('clear one step each, and the leach a second time while it runs', () => {
    expect(checklistForStep('leach')?.id).toBe('leach-start');
    expect(checklistForStep('leach', 'running')?.id).toBe('leach-check');
    expect(checklistForStep('filtration')?.id).toBe('filtration');
    expect(checklistForStep('filtration', 'running')).toBeUndefined();
    const places = lists.map(({ step, moment }) => `${step} ${moment}`);
    expect(new Set(places).size).toBe(places.length);
  });
});

type Key = string | number;

/** What is said of a copy of a list with the value at `path` put in, or taken out where it is undefined. */
function spoilt(id: string, path: readonly Key[], value: unknown): readonly string[] {
  const list = structuredClone(listNamed(id));
  let inner = list as unknown as Record<Key, unknown>;
  for (const key of path.slice(0, -1)) inner = inner[key] as Record<Key, unknown>;
  const last = path.at(-1) ?? '';
  if (value === undefined) delete inner[last];
  else inner[last] = value;
  const read = Checklist.safeParse(list);
  return read.success ? [] : read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
}

function place(id: string, name: string): readonly [number, Item] {
  const index = listNamed(id).items.findIndex((one) => one.id === name);
  const item = listNamed(id).items[index];
  if (!item) throw new Error(`no item ${name}`);
  return [index, item];
}

describe('a list made wrong on purpose is refused, at the right place', () => {
  const [paper, medium] = place('filtration', 'fil-medium');
  const [temp] = place('filtration', 'fil-temp');
  const [quiet] = place('leach-check', 'lck-quiet');
  const [vent] = place('leach-start', 'lst-vent');
  const [bag] = place('neutralise-lime', 'lim-base');
  const [named] = place('leach-start', 'lst-with');
  const first = listNamed('leach-start').items;
  const unnamed = [{ answer: 'somebody' }, { answer: 'nobody', stops: true }];
  it.each<[string, string, readonly Key[], unknown, string]>([
    [
      'a question of ten words',
      'filtration',
      ['items', paper, 'ask'],
      'a b c d e f g h i j',
      `items.${paper}.ask: ask-over-nine-words`,
    ],
    [
      'thirteen words of what to look at',
      'filtration',
      ['items', paper, 'look'],
      'a b c d e f g h i j k l m',
      `items.${paper}.look: look-over-twelve-words`,
    ],
    [
      'a stop that no choice makes',
      'filtration',
      ['items', paper, 'choices'],
      [{ answer: 'glass' }, { answer: 'paper' }],
      `items.${paper}.stop: stop-does-not-match-choices`,
    ],
    [
      'a question whose every answer stops',
      'filtration',
      ['items', paper, 'choices'],
      [
        { answer: 'glass', stops: true },
        { answer: 'paper', stops: true },
      ],
      `items.${paper}.choices: every-answer-stops`,
    ],
    [
      'a stop without doors',
      'filtration',
      ['items', paper, 'doors'],
      undefined,
      `items.${paper}.doors: stop-without-way-right`,
    ],
    [
      'a stop that can only be put off',
      'filtration',
      ['items', paper, 'doors'],
      medium.doors?.slice(1),
      `items.${paper}.doors: stop-without-way-right`,
    ],
    [
      'a stop with four doors',
      'filtration',
      ['items', paper, 'doors'],
      [...(medium.doors ?? []), ...(medium.doors ?? [])],
      `items.${paper}.doors: too-many-doors`,
    ],
    [
      'a door for an answer that is not there',
      'filtration',
      ['items', paper, 'doors', 0, 'for'],
      ['wool'],
      `items.${paper}.doors.0.for: door-for-no-stop`,
    ],
    [
      'a door where nothing stops',
      'filtration',
      ['items', temp, 'doors'],
      medium.doors,
      `items.${temp}.doors.0: door-without-stop`,
    ],
    [
      'a door to no card',
      'filtration',
      ['items', paper, 'doors', 1, 'leads'],
      'open-card',
      `items.${paper}.doors.1.leads: no-card-to-open`,
    ],
    [
      'limits the wrong way round',
      'filtration',
      ['items', temp, 'min'],
      '31',
      `items.${temp}.max: max-not-above-min`,
    ],
    [
      'equal limits written differently',
      'filtration',
      ['items', temp, 'min'],
      '30.0',
      `items.${temp}.max: max-not-above-min`,
    ],
    [
      'a reading without limits',
      'leach-check',
      ['items', quiet, 'min'],
      undefined,
      `items.${quiet}.min: no-limit`,
    ],
    [
      'a no without reasons to pick',
      'filtration',
      ['items', temp, 'reasons'],
      undefined,
      `items.${temp}.reasons: no-reasons`,
    ],
    [
      'the same id twice',
      'filtration',
      ['items', paper, 'id'],
      'sta-ribbon',
      `items.${paper}.id: same-id-twice`,
    ],
    [
      'the same answer twice',
      'filtration',
      ['items', paper, 'choices', 1, 'answer'],
      'glass fibre',
      `items.${paper}.choices.1.answer: same-answer-twice`,
    ],
    [
      'a condition nobody can meet',
      'leach-check',
      ['items', quiet, 'onlyIf', 'answer'],
      'asleep',
      `items.${quiet}.onlyIf: condition-never-met`,
    ],
    [
      'ten questions at one pause',
      'leach-start',
      ['items'],
      [...first, { ...first[9], id: 'one-more' }, { ...first[9], id: 'and-another' }],
      'items: over-nine-at-one-pause',
    ],
    [
      'a second person nobody names',
      'leach-start',
      ['items', named, 'choices'],
      unnamed,
      'secondPerson: nobody-named',
    ],
    [
      'a longest time shorter than the usual',
      'leach-check',
      ['longestHours'],
      3,
      'longestHours: shorter-than-valid',
    ],
    [
      'a result of the ventilation that has no answer',
      'leach-start',
      ['items', vent, 'choices'],
      [
        { answer: 'enough', result: 'enough' },
        { answer: 'split', result: 'split', stops: true },
      ],
      `items.${vent}.choices: result-missing`,
    ],
    [
      'a charge too big that goes on',
      'leach-start',
      ['items', vent, 'choices', 1, 'stops'],
      undefined,
      `items.${vent}.choices: result-does-not-match-stop`,
    ],
    [
      'a result that a person could tap',
      'leach-start',
      ['items', vent, 'answeredBy'],
      undefined,
      `items.${vent}.choices: result-without-check`,
    ],
    [
      'two bags of one base',
      'neutralise-lime',
      ['items', bag, 'choices', 1, 'base'],
      'hydrated-lime',
      `items.${bag}.choices: same-base-twice`,
    ],
    [
      'a bag without a name that goes in',
      'neutralise-lime',
      ['items', bag, 'choices', 7, 'stops'],
      undefined,
      `items.${bag}.choices: no-base-does-not-stop`,
    ],
    [
      'bases that no plan is held against',
      'neutralise-lime',
      ['items', bag, 'expects'],
      undefined,
      `items.${bag}.choices: base-not-expected`,
    ],
    [
      'a look of the walk that nobody knows of what it is',
      'container-inspection',
      ['items', 0, 'of'],
      undefined,
      'items.0.of: of-what-it-is-asked',
    ],
    [
      'a question of another list that is of a container',
      'filtration',
      ['items', paper, 'of'],
      'container',
      `items.${paper}.of: of-what-it-is-asked`,
    ],
    [
      'a look of the walk that is asked later',
      'container-inspection',
      ['items', 3, 'when'],
      'after',
      'items.3: walk-asks-always',
    ],
    [
      'a stop on the walk that is answered again, with nothing to say what was done',
      'container-inspection',
      ['items', 0, 'doors', 1, 'leads'],
      'answer-again',
      'items.0.doors: stop-without-way-right',
    ],
    [
      'a stop elsewhere where somebody says what was done, and the question stays',
      'filtration',
      ['items', paper, 'doors', 0, 'leads'],
      'say-done',
      `items.${paper}.doors.0.leads: leads-nowhere-here`,
    ],
    [
      'a drawing that there is not',
      'filtration',
      ['items', paper, 'sketch'],
      'dragon',
      `items.${paper}.sketch: `,
    ],
    ['a limit that is a number, not digits', 'filtration', ['items', temp, 'min'], 5, `items.${temp}.min: `],
    ['a field too many', 'filtration', ['items', paper, 'colour'], 'red', `items.${paper}: `],
    [
      'a status of another kind',
      'filtration',
      ['items', paper, 'status'],
      'certain',
      `items.${paper}.status: `,
    ],
  ])('%s', (_, id, path, value, fault) => {
    expect(spoilt(id, path, value)).toContainEqual(expect.stringContaining(fault));
  });
});

describe('the most that is asked at one pause', () => {
  it('counts one way through a list, and nothing that the app answers', () => {
    const asked = (id: string) => askedAtMost(listNamed(id).items, undefined);
    // Ribbon or wind, with, gloves, face, feed, portion, cover, tray; place and ventilation are the app's.
    expect(asked('leach-start')).toBe(8);
    expect(listNamed('leach-start').items).toHaveLength(11);
    expect(askedAtMost(listNamed('spot-test-ammonia').items, 'after')).toBe(1);
  });
});

describe('the hash of a list', () => {
  it('does not depend on the order of fields in the file, and does on one letter of a question', () => {
    const list = listNamed('filtration');
    const turned = Object.fromEntries(Object.entries(list).reverse()) as Checklist;
    expect(contentHash(turned)).toBe(contentHash(list));
    const changed = structuredClone(list);
    const first = changed.items[0];
    if (first) first.ask += '!';
    expect(contentHash(changed)).not.toBe(contentHash(list));
    expect(contentHash(list)).toMatch(/^[0-9a-f]{64}$/);
  });

  it('is SHA-256 over canonical JSON, as another implementation reckons it', async () => {
    // Keys sorted by code unit and no spaces: for lists without numbers in exponent form this is RFC 8785.
    const sorted = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(sorted)
        : value !== null && typeof value === 'object'
          ? Object.fromEntries(
              Object.entries(value)
                .sort(([a], [b]) => (a < b ? -1 : 1))
                .map(([k, v]) => [k, sorted(v)]),
            )
          : value;
    const { createHash } = await import('node:crypto');
    const list = listNamed('leach-start');
    expect(contentHash(list)).toBe(
      createHash('sha256')
        .update(JSON.stringify(sorted(list)))
        .digest('hex'),
    );
  });
});

describe('the order of answers on the screen', () => {
  const gloves = listNamed('filtration').items.find(({ id }) => id === 'fil-gloves');
  const colour = listNamed('leach-check').items.find(({ id }) => id === 'lck-colour');
  it('changes from run to run, stays within one, and loses none', () => {
    if (gloves?.kind !== 'choice') throw new Error('gloves are a choice');
    const orders = ['a', 'b', 'c', 'd', 'e'].map((seed) =>
      shownChoices(gloves, seed).map(({ answer }) => answer),
    );
    expect(new Set(orders.map(String)).size).toBeGreaterThan(1);
    expect(shownChoices(gloves, 'a')).toEqual(shownChoices(gloves, 'a'));
    for (const order of orders)
      expect([...order].sort()).toEqual(gloves.choices.map(({ answer }) => answer).sort());
  });
  it('is kept where it means something', () => {
    if (colour?.kind !== 'choice') throw new Error('colour is a choice');
    for (const seed of ['a', 'b', 'c', 'd', 'e'])
      expect(shownChoices(colour, seed).map(({ answer }) => answer)).toEqual([
        'clear',
        'faint yellow',
        'brown',
      ]);
  });
});
