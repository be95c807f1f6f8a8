/** Entries for what pours. */
import type { EntryId } from '../../reference/transport-tables';
import { type Consignment, partsOf } from './consignment';
import { corrosiveGroup, sideOf } from './corrosive';
import { type Draft, draft } from './draft';
import { citedRule, type Finding, graver } from './finding';
import type { Findings } from './findings';
import { dissolvedEntry, nitricEntry, predominant } from './named-entry';
import { nitratesIn } from './oxidising';
import { toxicComesFirst } from './precedence';

const ofSide = {
  acid: 'corrosive-acid-liquid',
  base: 'corrosive-base-liquid',
  neither: 'corrosive-liquid',
} as const;

/** Nitric acid beside metals: its own row is shown, and not put first. */
function acidOfItsOwn(consignment: Consignment, skin: Finding): readonly Draft[] {
  const acid = partsOf(consignment.mixture).find(({ id }) => id === 'HNO3' || id === 'HNO3-conc');
  if (!acid) return [];
  const finding: Finding = { ...skin, standing: 'judgement', taken: false };
  return [draft(nitricEntry(acid), finding, [citedRule('named'), citedRule('collective')])];
}

function corrosive(consignment: Consignment, found: Findings, skin: Finding): readonly Draft[] {
  const nos: EntryId = ofSide[sideOf(consignment)];
  const part = predominant(consignment);
  const own = part && dissolvedEntry(part);
  const ox = found.oxidising;
  const drafts: Draft[] = [];
  if (own && part)
    drafts.push(draft(own, skin, [citedRule('named')], 'decides', corrosiveGroup(part) ?? skin.group));
  if (ox?.taken && !own) {
    const both = { ...skin, grounds: [...skin.grounds, ...ox.grounds], lacks: [...skin.lacks, ...ox.lacks] };
    const why = [ox.citation, citedRule('precedence-8-5')];
    drafts.push(draft('corrosive-oxidising-liquid', both, why, 'decides', graver(skin.group, ox.group)));
    drafts.push(draft('oxidising-corrosive-liquid', both, why, 'decides', ox.group));
  }
  const [toxicity] = found.toxic;
  if (toxicity?.taken) {
    const both = { ...skin, grounds: [...skin.grounds, ...toxicity.grounds] };
    const why = [toxicity.citation, citedRule('precedence-8-6')];
    const pair = [
      draft('corrosive-toxic-liquid', both, why, 'decides', skin.group),
      draft('toxic-corrosive-liquid', both, why, 'decides', toxicity.group),
    ];
    drafts.push(...(toxicComesFirst(toxicity.group, skin.group, 'liquid') ? pair.reverse() : pair));
  }
  const second: Finding = { ...skin, standing: 'judgement', taken: false };
  drafts.push(draft(nos, own ? second : skin, [citedRule('collective')]));
  if (!own) drafts.push(...acidOfItsOwn(consignment, skin));
  if (ox && !ox.taken) drafts.push(draft('corrosive-oxidising-liquid', ox, [citedRule('precedence-8-5')]));
  if (found.namedToxic[0] && !toxicity?.taken)
    drafts.push(
      draft(
        'corrosive-toxic-liquid',
        found.namedToxic[0].finding,
        [citedRule('precedence-8-6')],
        'may-be',
        skin.group,
      ),
    );
  return drafts;
}

function notCorrosive(consignment: Consignment, found: Findings): readonly Draft[] {
  const drafts: Draft[] = [];
  const fit = [citedRule('collective')];
  for (const finding of found.toxic) drafts.push(draft('toxic-liquid', finding, fit));
  for (const { entry, finding } of found.namedToxic) drafts.push(draft(entry, finding, fit));
  const ox = found.oxidising;
  if (ox) {
    if (nitratesIn(consignment)) drafts.push(draft('nitrates-solution', ox, fit));
    drafts.push(draft('oxidising-liquid', ox, fit));
  }
  if (found.skin) drafts.push(draft(ofSide[sideOf(consignment)], found.skin, fit));
  if (found.metal) drafts.push(draft(ofSide[sideOf(consignment)], found.metal, fit));
  if (found.aquatic) {
    const rank = found.aquatic.standing === 'close' ? 'close' : 'environment';
    drafts.push(draft('environment-liquid', found.aquatic, fit, rank));
  }
  return drafts;
}

export function liquidDrafts(consignment: Consignment, found: Findings): readonly Draft[] {
  if (found.skin?.taken) return corrosive(consignment, found, found.skin);
  if (found.metal?.taken) return corrosive(consignment, found, found.metal);
  return notCorrosive(consignment, found);
}
