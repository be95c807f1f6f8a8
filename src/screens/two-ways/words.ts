/** Words of handing over as it is, or treated first. What is side by side here is never weighed against each other. */
import type { NotTreated } from '../../ledger/two-ways';
import type { BaseId } from '../../reference/tables';

export const twoWaysWords = {
  open: 'Hand over as it is, or treat first?',
  openSecond: 'Side by side: mass, volume, hours, money',
  openAll: 'All liquid containers, side by side',
  title: 'Hand over as it is, or treat first?',
  of: (code: string) => `${code}, its free liquor. Nothing but prices is written down here.`,
  ofAll: (counted: number | undefined, n: number) =>
    `${counted === undefined || counted === n ? n : `${counted} of ${n}`} ${n === 1 ? 'container' : 'containers'} with liquid. Nothing but prices is written down here.`,
  countedAre: (codes: string) => `Counted: ${codes}.`,
  noLiquid: 'No free liquor is in it.',
  noLiquidAll: 'No container holds free liquor.',
  // The form
  base: 'Base',
  pH: 'pH at the end',
  finer: 'As you know it better',
  solids: 'Solids in the wet sludge',
  solidsEmpty: (low: string, high: string) => `empty: ${low} to ${high}\u202f%, drained through cloth`,
  portions: 'Portions',
  portionsEmpty: 'empty: from the heat; the plan of a treatment counts them',
  hours: 'Hours of yours at the pot',
  hoursEmpty: 'empty: a wait after each portion',
  coming: 'Being worked out.',
  // Local rules
  ask: 'Whom to ask',
  askThem: (names: string) => `Ask ${names}, and enter what they said.`,
  askUnnamed: 'Ask the authority for waste where you are, and your collector. Enter what they said.',
  askDoor: 'Enter what they said',
  // The columns
  asItIs: 'As it is',
  treated: 'Treated first',
  planning: 'Treated first, for planning only',
  none: 'none',
  notWorkedOut: 'not worked out',
  handed: 'To hand over',
  liquid: 'Liquid',
  liquidSecond: 'liquor; filtrate',
  liquidMass: 'Mass of it',
  sludge: 'Sludge, wet',
  inAll: 'Mass in all',
  inAllSecond: 'the filtrate goes as well',
  atLeast: 'At least. More may be needed, and more be made.',
  missing: (names: string) => `What is not known of ${names} is not counted.`,
  made: 'What it takes',
  buy: 'Base to buy, as sold',
  water: 'Water the base is stirred into',
  gas: 'Carbon dioxide, as foam and gas',
  atThePot: 'Hours at the pot',
  standing: 'Hours it stands and drains',
  standingAll: 'Hours each stands and drains',
  practice: 'common practice, no source',
  // Money
  money: 'Money, by your prices',
  otherCurrency: 'another code',
  currencyCode: 'Currency, its three letters',
  currencyHint: 'For example EUR.',
  noPrice: 'no price entered',
  lines: {
    liquid: 'Collection of the liquid',
    sludge: 'Collection of the sludge',
    visit: 'One visit of the collector',
    base: 'Base',
  },
  sum: 'In all',
  notAdded: (what: readonly string[]) => `not added up: no price for ${what.join('; ')}`,
  notOneCurrency: (currencies: string) => `not added up: ${currencies} are not one currency`,
  moneySecond:
    'Liquid by the litre where a litre has a price, else by the kilogram; sludge by the kilogram. A collector may ask another price for sludge or filtrate. Hours, water, cloth and PPE are not in it.',
  // Month and clock
  month: 'Monthly quantity and storage time',
  monthArose: 'Adds to the month, counted as it arose',
  monthHanded: 'Adds to the month, counted as handed over',
  monthDecides: 'Which of the two counts is a rule. Your authority decides.',
  since: 'Storage days run since',
  sinceOldest: 'Storage days of the oldest run since',
  lastDay: 'Last day',
  lastDayUnknown: 'storage time not entered',
  clockSame: 'Treating does not start the days anew, unless your local rules say so.',
  // What it is
  still: 'What each still is',
  liquor: (metals: string) =>
    metals === ''
      ? 'As it is: an acid, corrosive liquid. Metals are not determined.'
      : `As it is: an acid, corrosive liquid with nitrates of ${metals}.`,
  sludgeIs: (metals: string, carbonate: boolean) =>
    `Sludge: a wet solid with ${carbonate ? 'hydroxides and carbonates' : 'hydroxides'} of ${metals}. A waste of its own, to be told afresh.`,
  sludgeNone: 'Sludge: hardly any. No metal that is known comes down.',
  filtrateIs: (salt: string, stays: string) =>
    `Filtrate: a liquid with nitrate, now of ${salt}${stays === '' ? '' : `, and with ${stays} still in it`}. Traces of each metal stay. It is waste until a named authority says otherwise.`,
  salts: {
    'hydrated-lime': 'calcium',
    quicklime: 'calcium',
    limestone: 'calcium',
    'magnesium-hydroxide': 'magnesium',
    'caustic-soda': 'sodium',
    'soda-ash': 'sodium',
    'sodium-bicarbonate': 'sodium',
  } satisfies Record<BaseId, string>,
  cautionsTitle: 'Mind',
  cautions: [
    'No pH is a permission. Nothing here is fit for a drain.',
    'Base takes no nitrate out. Water that is added takes nothing out either.',
    'Drying or boiling down is a treatment of another kind, with rules of its own.',
  ],
  residueToo: 'Wet residue in it is on neither side.',
  leftOut: 'On neither side',
  whyNot: 'Why treating is not worked out',
  and: (names: readonly string[]) =>
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`,
  /** Those that the page of a container words too are taken from there. */
  notTreated: (why: NotTreated): string | null => {
    if (why.code === 'stalls')
      return `Not worked out: this base ends at pH ${why.pH.toFixed(1)}. Choose a lower pH or another base.`;
    if (why.code === 'model-failed') return 'Not worked out: the model finds no answer for it.';
    return why.code === 'no-liquid' ? twoWaysWords.noLiquid : null;
  },
  // Prices
  prices: 'Your prices',
  pricesSecond: 'As an offer or an invoice says. Write 0 where nothing is asked.',
  saidBy: 'Who or what says so',
  keepPrices: 'Keep the prices',
  pricesNothing: 'Nothing has changed.',
} as const;
