/** What is said once and now and then: the place and its people, rules, prices, bases, stations, lists. */
import type { LocalRuleStated } from '../../../src/ledger/entries/local-rules';
import { type Book, day, hour, type Story } from './book';

export type Place = { stationId: string; name: string };

const days = (value: string) => ({ value, unit: 'days' }) as const;
const rules: readonly LocalRuleStated['stated'][] = [
  { rule: 'laws', value: ['eu', 'us-federal'] },
  { rule: 'storage-days', value: days('180') },
  { rule: 'inspection-days', value: days('7') },
  { rule: 'proof-days', value: days('45') },
  { rule: 'fill-limit', value: { value: '95', unit: '%' } },
  { rule: 'treatment-allowed', value: 'yes' },
  { rule: 'generator-category', value: 'small quantity' },
  { rule: 'month-limit', value: { value: '1000', unit: 'kg' } },
  { rule: 'on-site-limit', value: { value: '2000', unit: 'kg' } },
  { rule: 'retention-years', value: { value: '10', unit: 'years' } },
];

const names = [
  'Maren',
  'Tobias',
  'Wies',
  'Henrike',
  'Jonna',
  'Casper',
  'Leontien',
  'Ruud',
  'Sytske',
  'Odile',
];

function addPerson(book: Book): void {
  const personId = book.newId();
  const name = names[book.whole(0, names.length - 1)] ?? 'Maren';
  book.write({ kind: 'person-added', v: 1, personId, name });
  book.people.set(personId, name);
}

function describes(book: Book): void {
  book.write({
    kind: 'workshop-described',
    v: 1,
    name: 'Invented workshop of ten years',
    address: 'Weir Yard 6, Ostermill',
    emergencyNumber: '112',
    noSignal: 'Phone at Weir Yard 4.',
    mapReference: '4471 0926',
    authority: { name: 'Invented county office', contact: '01632 960 021' },
    collector: { name: 'Fenwater Collection', contact: '01632 960 077', licence: 'FC-0000 (invented)' },
  });
}

function statesRules(book: Book): void {
  const said = { saidBy: 'Invented county office', saidOn: book.today, document: 'letter 7' };
  for (const stated of rules) book.write({ kind: 'local-rule-stated', v: 1, stated, ...said });
}

function measuresHood(book: Book, { stationId, name }: Place): void {
  const speed = { value: book.digits(0.48, 0.56, 2), unit: 'm/s' } as const;
  const cm = (value: string) => ({ value, unit: 'cm' }) as const;
  const face = { speed, measuredOn: book.today };
  const station = { is: 'ducted-hood', width: cm('90'), height: cm('32'), face } as const;
  book.write({ kind: 'station-described', v: 1, stationId, name, station });
}

function statesPrices(book: Book): void {
  const prices = [
    ['collection-per-kilogram', 1.6],
    ['collection-visit', 180],
    ['hydrated-lime', 0.9],
    ['limestone', 0.5],
    ['iron', 2.2],
  ] as const;
  for (const [what, usual] of prices) {
    const amount = { value: (usual * book.between(0.9, 1.2)).toFixed(2), unit: 'EUR' };
    book.write({ kind: 'price-stated', v: 1, what, amount, saidBy: 'invoice' });
  }
}

/** The first day, and then each year. */
export function* keepsOffice(book: Book, place: Place): Story {
  for (let i = 0; i < 3; i += 1) addPerson(book);
  describes(book);
  statesRules(book);
  yield book.now + hour;
  measuresHood(book, place);
  const yard = { stationId: book.newId(), name: 'Yard, lee side', station: { is: 'outdoors' } } as const;
  book.write({ kind: 'station-described', v: 1, ...yard });
  for (;;) {
    statesPrices(book);
    const room = { value: String(book.whole(5, 7)), unit: 'g' };
    const change = { change: 'range', list: 'leach-start', item: 'lst-first', max: room.value } as const;
    book.write({ kind: 'list-changed', v: 1, change });
    yield book.now + 170 * day;
    const [first] = book.people.keys();
    if (first !== undefined && book.people.size > 2) {
      book.write({ kind: 'person-left', v: 1, personId: first });
      book.people.delete(first);
    }
    addPerson(book);
    yield book.now + 190 * day;
    measuresHood(book, place);
    statesRules(book);
  }
}

/** A bag of lime lasts a quarter. */
export function* opensBags(book: Book): Story {
  for (;;) {
    const purity = { value: book.digits(92, 97, 0), unit: '%' } as const;
    book.write({ kind: 'base-described', v: 1, base: 'hydrated-lime', purity, saidBy: 'as on the bag' });
    book.write({ kind: 'base-described', v: 1, base: 'limestone', purity, saidBy: 'as on the bag' });
    yield book.now + 90 * day;
  }
}
