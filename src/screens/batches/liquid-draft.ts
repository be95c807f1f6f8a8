/** A liquid as it stands in a form: volume, density, evidence of what is dissolved; and what it comes to. */
import * as z from 'zod/mini';
import { type Liquor, liquorFrom } from '../../chemistry/liquor';
import { writtenLiquor } from '../../ledger/container-load';
import type { AcidFinding, Finding } from '../../ledger/entries/findings';
import type { LiquidPart } from '../../ledger/entries/streams';
import { readTyped, Typed, typed } from '../form';
import {
  AcidDraft,
  emptyAcid,
  emptyMetal,
  type FeedTold,
  MetalDraft,
  readAcid,
  readMetal,
} from './evidence-draft';

/** What is known of a liquid, without how much there is of it. */
export const EvidenceDraft = z.object({
  density: Typed,
  acid: AcidDraft,
  /** Further ways of knowing it; a draft of an earlier version has none. */
  moreAcid: z._default(z.array(AcidDraft), []),
  metals: z.array(MetalDraft),
});
export type EvidenceDraft = z.infer<typeof EvidenceDraft>;

export const LiquidDraft = z.extend(EvidenceDraft, { volume: Typed });
export type LiquidDraft = z.infer<typeof LiquidDraft>;

export const emptyEvidence = (): EvidenceDraft => ({
  density: typed('kg/L'),
  acid: emptyAcid(),
  moreAcid: [],
  metals: [emptyMetal('Cu'), emptyMetal('Ni')],
});

export const emptyLiquid = (): LiquidDraft => ({ volume: typed('L'), ...emptyEvidence() });

export const readVolume = ({ volume }: Pick<LiquidDraft, 'volume'>) =>
  readTyped<LiquidPart['volume']['unit']>(volume, { aboveZero: true, most: 100_000 });
export const readDensity = ({ density }: EvidenceDraft) =>
  readTyped<'kg/L' | 'g/mL'>(density, { aboveZero: true, most: 3 });

export type EvidenceRead = {
  readonly density?: LiquidPart['density'];
  readonly findings: readonly Finding[];
  readonly freeAcid: readonly AcidFinding[];
  /** Some line cannot be read. */
  readonly wrong: boolean;
};

/** What can be read of it so far, in every way that can be read. */
export function readEvidence(draft: EvidenceDraft, feed: FeedTold | null): EvidenceRead {
  const density = readDensity(draft);
  const acids = [draft.acid, ...draft.moreAcid].map(readAcid);
  const metals = draft.metals.map((metal) => readMetal(metal, feed));
  return {
    ...(density.state === 'written' ? { density: density.written } : {}),
    findings: metals.flatMap((read) => (read.state === 'known' ? [read.value] : [])),
    freeAcid: acids.flatMap((read) => (read.state === 'known' ? [read.value] : [])),
    wrong: density.state === 'wrong' || [...acids, ...metals].some(({ state }) => state === 'wrong'),
  };
}

/** A metal of which nothing can be read is not determined, and so is the acid. Null without a volume. */
export function readLiquid(
  draft: LiquidDraft,
  feed: FeedTold | null,
): { readonly liquid: LiquidPart | null; readonly wrong: boolean } {
  const volume = readVolume(draft);
  const { wrong, findings, freeAcid, density } = readEvidence(draft, feed);
  if (volume.state !== 'written') return { liquid: null, wrong: true };
  const told = new Set(findings.map(({ metal }) => metal));
  const untold = [...new Set(draft.metals.map(({ metal }) => metal))].filter((metal) => !told.has(metal));
  return {
    wrong,
    liquid: {
      volume: volume.written,
      ...(density ? { density } : {}),
      findings: [...findings, ...untold.map((metal) => ({ by: 'not-determined' as const, metal }))],
      freeAcid: freeAcid.length > 0 ? [...freeAcid] : [{ by: 'not-determined' }],
    },
  };
}

export const draftLiquor = (liquid: LiquidPart | null, batchId: string | null = null): Liquor | null =>
  liquid && liquorFrom(writtenLiquor('draft', liquid, batchId));
