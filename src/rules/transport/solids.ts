/** Entries for solids and sludges: dry, or wet with liquor that nobody sees run. */
import type { EntryId } from '../../reference/transport-tables';
import { type Consignment, partsOf, usualIn } from './consignment';
import { extremePh, sideOf } from './corrosive';
import { type Draft, draft } from './draft';
import { citedRule, type Finding, graver } from './finding';
import type { Findings } from './findings';
import { predominant, solidEntry } from './named-entry';
import { mostlyNitrate } from './oxidising';
import { toxicComesFirst } from './precedence';

const ofSide = {
  acid: 'corrosive-acid-solid',
  base: 'corrosive-base-solid',
  neither: 'corrosive-solid',
} as const;
const ofSideLiquid = {
  acid: 'corrosive-acid-liquid',
  base: 'corrosive-base-liquid',
  neither: 'corrosive-liquid',
} as const;

/** Told, or acid in it, or what is usual in its kind. Asked only of what is taken for corrosive. */
function wetWithLiquor(consignment: Consignment): boolean {
  const { mixture, wetness, kind } = consignment;
  if (wetness !== undefined) return wetness === 'wet';
  return (
    partsOf(mixture).some(({ as }) => as.wets) ||
    usualIn(kind)?.wet === true ||
    (mixture.state === 'solid' && extremePh(mixture) === 'acid')
  );
}

const fit = [citedRule('collective')];

function nitrate(consignment: Consignment, found: Findings, ox: Finding): readonly Draft[] {
  const acid = partsOf(consignment.mixture).some(({ as }) => as.wets);
  const skin = found.skin?.taken || acid ? found.skin : null;
  const part = predominant(consignment);
  const own = part && solidEntry(part);
  const drafts: Draft[] = [];
  if (own) drafts.push(draft(own, { ...ox, standing: 'fires' }, [citedRule('named')]));
  // Silver nitrate is corrosive and stands in class 5.1 alone: the entry that names it has seen to that.
  if ((skin?.taken || acid) && !own)
    drafts.push(
      draft(
        'oxidising-corrosive-solid',
        ox,
        [citedRule('precedence-8-5')],
        'decides',
        graver(ox.group, skin?.group ?? 'III'),
      ),
    );
  if (found.namedToxic.length > 0 && !own) drafts.push(draft('oxidising-toxic-solid', ox, fit));
  drafts.push(draft('nitrates', ox, fit), draft('oxidising-solid', ox, fit));
  for (const { entry, finding } of found.namedToxic) drafts.push(draft(entry, finding, fit));
  return drafts;
}

/** Solids that are no dangerous goods with corrosive liquid on them need no test of class 8: no free liquid, group II. */
function wet(consignment: Consignment, skin: Finding): readonly Draft[] {
  const seen = ['that no liquid is seen when the package is closed'];
  const side = sideOf(consignment) === 'neither' ? 'acid' : sideOf(consignment);
  const maybe: Finding = { ...skin, standing: 'judgement', taken: false };
  return [
    draft(
      'solid-with-corrosive-liquid',
      { ...skin, lacks: [...skin.lacks, ...seen] },
      [citedRule('wet-solid')],
      'decides',
      'II',
    ),
    draft(ofSide[side], maybe, fit),
    draft(ofSideLiquid[side], { ...maybe, lacks: [...maybe.lacks, ...seen] }, fit),
  ];
}

function corrosive(consignment: Consignment, found: Findings, skin: Finding): readonly Draft[] {
  const nos: EntryId = ofSide[sideOf(consignment)];
  const part = predominant(consignment);
  const own = part && solidEntry(part);
  const drafts: Draft[] = own ? [draft(own, skin, [citedRule('named')])] : [];
  const toxicity = found.toxic.find(({ taken }) => taken);
  if (toxicity) {
    const why = [toxicity.citation, citedRule('precedence-8-6')];
    const pair = [draft('corrosive-toxic-solid', skin, why), draft('toxic-corrosive-solid', toxicity, why)];
    drafts.push(...(toxicComesFirst(toxicity.group, skin.group, 'solid') ? pair.reverse() : pair));
  }
  drafts.push(draft(nos, skin, fit));
  if (consignment.mixture.state === 'sludge' && consignment.wetness !== 'dry') {
    const poured: Finding = { ...skin, standing: 'judgement', taken: false };
    drafts.push(draft(ofSideLiquid[sideOf(consignment)], poured, fit));
  }
  return drafts;
}

function rest(consignment: Consignment, found: Findings): readonly Draft[] {
  const drafts: Draft[] = [];
  for (const finding of found.toxic) drafts.push(draft('toxic-solid', finding, fit));
  for (const { entry, finding } of found.namedToxic) drafts.push(draft(entry, finding, fit));
  if (found.oxidising) drafts.push(draft('oxidising-solid', found.oxidising, fit));
  if (found.skin && !found.skin.taken) drafts.push(draft(ofSide[sideOf(consignment)], found.skin, fit));
  return drafts;
}

function environment({ mixture, wetness }: Consignment, finding: Finding): readonly Draft[] {
  const rank = finding.standing === 'close' ? 'close' : 'environment';
  const solid = draft('environment-solid', finding, [citedRule('wet-solid-environment')], rank);
  if (mixture.state !== 'sludge' || wetness === 'dry') return [solid];
  const poured: Finding = { ...finding, standing: 'judgement', taken: false };
  return [solid, draft('environment-liquid', poured, [citedRule('wet-solid-environment')])];
}

export function solidDrafts(consignment: Consignment, found: Findings): readonly Draft[] {
  const { skin, oxidising, aquatic } = found;
  if (oxidising?.taken && (mostlyNitrate(consignment) || consignment.tested?.oxidising))
    return nitrate(consignment, found, oxidising);
  if (skin?.taken && wetWithLiquor(consignment))
    return [...wet(consignment, skin), ...rest(consignment, found)];
  const drafts = skin?.taken ? corrosive(consignment, found, skin) : [];
  return [...drafts, ...rest(consignment, found), ...(aquatic ? environment(consignment, aquatic) : [])];
}
