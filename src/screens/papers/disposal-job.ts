/** Makes a disposal paper. Loaded with the first one, into the worker. */
import type { Signature } from '../../ledger/entries/signatures';
import { attachmentOf, disposalPaper, fileName } from '../../paperwork/disposal/disposal-paper';
import { disposalData } from '../../paperwork/disposal/gather';
import { renderPdf } from '../../paperwork/pdf/render';
import type { Maker } from './jobs';
import { paperFile } from './making';
import { paperVessel } from './paper-vessel';
import type { Sheet } from './sheet';

export type DisposalWanted = {
  readonly containerIds: readonly string[];
  readonly sheet: Sheet;
  /** Whether the working of every figure is printed. */
  readonly working: boolean;
  /** Whether the label of each container is in it, too. */
  readonly labels: boolean;
  /** Under the statement; null where it will be signed with a pen. */
  readonly signature: Signature | null;
};

export const makeDisposal: Maker<DisposalWanted> = async (wanted, common, tell, fonts) => {
  const { containerIds, sheet, working } = wanted;
  const { state, sign } = common;
  const data = disposalData(containerIds, common, tell);
  const drawings = new Map(
    containerIds.flatMap((id) => {
      const container = state.containers.get(id);
      return container ? [[id, paperVessel(state, container, sign)] as const] : [];
    }),
  );
  const attachment = attachmentOf(data);
  const document = disposalPaper(data, { paper: sheet, working, drawings });
  const bytes = await renderPdf(document, fonts, { attachments: [attachment], tell });
  return {
    containerIds: data.containers.map(({ containerId }) => containerId),
    codes: data.containers.map(({ code }) => code),
    contentHash: data.contentHash,
    files: [
      paperFile(bytes, fileName(data, 'pdf'), 'application/pdf'),
      paperFile(attachment.bytes, attachment.name, attachment.mime),
    ],
  };
};
