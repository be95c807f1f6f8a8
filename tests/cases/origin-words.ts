/**
 * From the words of a case to how waste came about. A case says it in a sentence; the app asks for it. Words are looked for in
 * this order, the first that fits counts; words that fit nothing are waste that arose, and it counts.
 */
import type { Known, Origin } from '../../src/rules/quantities/counting';

const has = (text: string, words: RegExp): boolean => words.test(text);

const straight =
  /straight|direct(ly)?\b|immediate(ly)?\b|(up)?on generation|as (it|they) (is |are )?(arises?|generated|produced)|piped|(without|no|not) (any |prior |previous )*(stor|accumulat)/;
const stored =
  /(?<!(without|no|not) (any |prior |previous )?)(stor(ed|age)|accumulat|held|kept|stood|drummed)\b.*\b(before|first|then|for|and|until)\b|\b(after|from|out of) ((\w+ )*(storage|accumulation|days?)|(a |the )?(drums?|containers?|carboys?|tanks?))|\blater\b|\bnot (straight|direct)/;

const notCounted =
  /\bcounted (here |now )?(for )?the first time|\b(never|not|un)[- ]*(yet |previously |already |been |before )*counted|uncounted/;
const counted =
  /(already|previously|once|was|were|been|is)\s+(been\s+)?counted|counted\s+(already|before|once|previously|earlier|in|last|when|at|the|on)\b|\bcounted (\w+ )?(liquor|waste|water|acid)\b/;

const countedBefore = (text: string): Known => {
  if (has(text, notCounted)) return 'no';
  return has(text, counted) ? 'yes' : 'not determined';
};

const units: readonly (readonly [
  RegExp,
  'elementary-neutralisation' | 'wastewater-treatment' | 'totally-enclosed',
])[] = [
  [/neutrali[sz](ation|ing|er)|\benu\b/, 'elementary-neutralisation'],
  [/waste ?water treatment|\bwwtu?\b/, 'wastewater-treatment'],
  [/totally[- ]enclosed/, 'totally-enclosed'],
];
const intoUnit =
  /\b(in|into|to|through|via)\b[^,;.]*(neutrali[sz](ation|ing|er)|\benu\b|waste ?water treatment|\bwwtu?\b|totally[- ]enclosed)/;

/** What makes waste hazardous besides its corrosivity; phrases that say it is not there are taken out first. */
const absent =
  /\b(no|without|free of|below|under|less than|not)\b[^,;.]*\b(silver|lead|barium|d0\d\d)\b|\b(silver|lead|barium)[- ]free\b/g;
const otherHazard =
  /\bd0(0[13-9]|[1-4]\d)\b|\b[fkpu]\d{3}\b|\b(silver|lead|barium|cadmium|chromium|arsenic|oxidi[sz]er|ignitable|toxic)\b/;

const residue =
  /\b(sludge|residues?|filter ?cake|cake|precipitate|filtrate|still bottoms?|ash)\b[^.;]*\b(from|of|after|left)\b[^.;]*(treat|neutrali[sz]|precipitat|lim(e|ing)|reclaim|evaporat|cementation)|\btreatment[- ](sludge|residues?)|\b(sludge|filtrate|filter ?cake)\b[^.;]*\b(from|of)\b[^.;]*\b(liquor|waste|acid|wash water|\d+ ?kg)\b[^.;]*\babove\b/;
const moved =
  /\b(moved?|moving|transfer\w*|relocat\w*|consolidat\w*|re-?pack\w*|bulked)\b|\b(taken|removed|emptied) (out )?(of|from)\b|\breturned to\b[^.;]*(accumulation|storage|area)|\bfrom (on-site )?(satellite|storage|accumulation|central)|\b(carried over|left over|standing|stored) (from|since)\b|\b(shipment|pick-?up|shipped|handed over|collected by)\b/;

const empty =
  /(?<!not )(?<!not yet )(?<!not rcra[- ])\b(rcra[- ])?empty\b|\bemptied (container|drum|bottle|bag)s?\b(?! and returned)/;
/** What containers were rinsed with is a waste of its own. */
const rinseOf = /\b(rinse|rinsate|rinsing|washings?|wash water)\b[^,;.]*\b(of|from)\b[^,;.]*\bempt/;
const ownRules = /universal[- ]waste|used oil|lead[- ]acid batter|scrap metal|\bsamples? (for|sent|kept)\b/;
const notHazardous =
  /\bnon-?hazardous\b|\bhousehold waste\b|\bnot (a )?hazardous\b|\bnot (a )?waste\b|\bsold as (a )?product\b/;
const months = 'january february march april may june july august september october november december'.split(
  ' ',
);
const arose = /\b(generated|arose|arisen|produced|made|from) (in|during) (\w+)(?: (\d{4}))?/;

/** Whether the words say that it arose in another month than the one counted, "2026-05". */
function aroseInOtherMonth(text: string, month: string): boolean {
  if (has(text, /\b(last|previous) month\b|\bmonth before\b/)) return true;
  const [, , , name = '', year = month.slice(0, 4)] = arose.exec(text) ?? [];
  const index = months.indexOf(name);
  return index >= 0 && `${year}-${String(index + 1).padStart(2, '0')}` !== month;
}

const elsewhere = /\boff[- ]?site\b/;

/**
 * @param text all words of the event
 * @param month the month that is counted, "2026-05"
 * @param othersCount whether other waste of the month counts, which it was treated from where nothing else is said
 */
export function originOf(written: string, othersCount: boolean, month: string): Origin {
  const text = written.toLowerCase();
  const before = countedBefore(text);
  if (has(text, notHazardous)) return { kind: 'not-hazardous' };
  if (has(text, /mixed with (a )?hazardous/)) return { kind: 'generated' };
  if ((has(text, empty) && !has(text, rinseOf)) || has(text, ownRules)) return { kind: 'own-rules' };
  if (has(text, /\bepisodic\b/))
    return { kind: 'episodic-event', notified: has(text, /notif|subpart l/) ? 'yes' : 'not determined' };
  if (has(text, residue)) {
    // An exempt unit kept what went into it out of the count, so what is left of it was never counted.
    const fromUnit = units.some(([words]) => words.test(text)) && has(text, /\bunit\b|exempt|\benu\b/);
    const unsaid: Known = fromUnit ? 'no' : othersCount ? 'yes' : 'not determined';
    return { kind: 'residue-of-treatment', countedBefore: before === 'not determined' ? unsaid : before };
  }
  const unit = has(text, intoUnit) ? units.find(([words]) => words.test(text))?.[1] : undefined;
  if (unit && before !== 'yes') {
    const onlyCorrosive = has(text.replace(absent, ''), otherHazard) ? 'no' : 'yes';
    return { kind: 'into-unit', unit, straight: has(text, stored) ? 'no' : 'yes', onlyCorrosive };
  }
  if (has(text, /reclaim|regenerat|distill/) && !has(text, elsewhere)) {
    const again = has(text, /\b(again|second|third|fourth|repeated)/);
    return { kind: 'reclaimed-on-site', countedBefore: again && before !== 'no' ? 'yes' : before };
  }
  if (
    has(text, /recycl|reus|fed back|back (in)?to the process/) &&
    !has(text, elsewhere) &&
    before !== 'yes'
  ) {
    if (has(text, stored)) return { kind: 'recycled-on-site', straight: 'no' };
    return { kind: 'recycled-on-site', straight: has(text, straight) ? 'yes' : 'not determined' };
  }
  if (has(text, moved) || before === 'yes' || aroseInOtherMonth(text, month))
    return { kind: 'from-accumulation', countedBefore: before === 'no' ? 'no' : 'yes' };
  return { kind: 'generated' };
}

/** "non-acute" is not acute; P-codes are. */
export function acuteOf(written: string): 'no' | 'acute' | 'acute-spill' {
  const text = written.toLowerCase().replace(/\b(non|not)[- ]acute(ly)?\b/g, '');
  if (!has(text, /\bacute(ly)?\b(?! tox)|\bp\d{3}\b|\bp-listed\b/)) return 'no';
  return has(text, /spill|clean[- ]?up/) ? 'acute-spill' : 'acute';
}
