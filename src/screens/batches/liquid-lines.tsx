/** The lines that ask for a liquid: how much, and what is known of what is dissolved in it. */
import type { Liquor } from '../../chemistry/liquor';
import type { BatchState } from '../../ledger/state';
import { NumberField } from '../number-field';
import { AcidWays } from './acid-ways';
import type { FeedTold } from './evidence-draft';
import { type EvidenceDraft, type LiquidDraft, readDensity, readVolume } from './liquid-draft';
import { MetalWays } from './metal-ways';
import { logWords as w } from './words';

type Props = {
  readonly draft: EvidenceDraft;
  readonly change: (part: Partial<EvidenceDraft>) => void;
  readonly batch?: BatchState | undefined;
  readonly feed?: FeedTold | null;
  readonly liquor: Liquor | null;
  readonly tried: boolean;
};

export const EvidenceFields = ({ draft, change, batch, feed = null, liquor, tried }: Props) => (
  <>
    <MetalWays
      drafts={draft.metals}
      onChange={(metals) => change({ metals })}
      batch={batch}
      feed={feed}
      liquor={liquor}
      tried={tried}
    />
    <AcidWays
      drafts={[draft.acid, ...draft.moreAcid]}
      onChange={([acid = draft.acid, ...moreAcid]) => change({ acid, moreAcid })}
      batch={batch}
      liquor={liquor}
      tried={tried}
    />
    <NumberField
      label={w.density}
      field={draft.density}
      units={['kg/L', 'g/mL']}
      onChange={(density) => change({ density })}
      read={readDensity(draft)}
      tried={tried}
      optional
      hint={w.densityHint}
    />
  </>
);

type LiquidProps = Omit<Props, 'draft' | 'change'> & {
  readonly draft: LiquidDraft;
  readonly change: (part: Partial<LiquidDraft>) => void;
};

export const LiquidLines = ({ draft, change, ...rest }: LiquidProps) => (
  <>
    <NumberField
      label={w.volume}
      field={draft.volume}
      units={['L', 'mL', 'US gal']}
      onChange={(volume) => change({ volume })}
      read={readVolume(draft)}
      tried={rest.tried}
      evidence={w.volumeHow}
    />
    <EvidenceFields draft={draft} change={change} {...rest} />
  </>
);
