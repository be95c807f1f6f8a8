/** Makes a disposal paper. Loaded with the first one, into the worker. */
import type { Signature } from '../../ledger/entries/signatures';
import { attachmentOf, disposalPaper, fileName, labelsAnchor } from '../../paperwork/disposal/disposal-paper';
import { disposalData } from '../../paperwork/disposal/gather';
import { labelsData } from '../../paperwork/labels/gather';
import { labelPages } from '../../paperwork/labels/label-pdf';
import { labelSheetFor } from '../../paperwork/labels/label-sizes';
import { type PagesAfter, renderPdf } from '../../paperwork/pdf/render';
import { labelsKnown } from '../labels/known';
import { archived } from './archived';
import type { Maker } from './jobs';
import { type Common, paperFile } from './making';
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

/** In their real size on sheets as large as those of the paper, to cut apart. */
function labelsAfter({ containerIds, sheet }: DisposalWanted, common: Common): PagesAfter {
  const data = labelsData(containerIds, common, labelsKnown(common.state, containerIds));
  const wanted = { sheet: labelSheetFor[sheet], frame: 'red', firstPlace: 0 } as const;
  return { anchor: labelsAnchor, pages: (pen) => labelPages(data, wanted, pen) };
}

export const makeDisposal: Maker<DisposalWanted> = async (wanted, common, tell, fonts) => {
  const { containerIds, sheet, working, labels, signature } = wanted;
  const { state, sign } = common;
  const data = disposalData(containerIds, { ...common, signature }, tell);
  const drawings = new Map(
    containerIds.flatMap((id) => {
      const container = state.containers.get(id);
      return container ? [[id, paperVessel(state, container, sign)] as const] : [];
    }),
  );
  const attachment = attachmentOf(data);
  const document = disposalPaper(data, { paper: sheet, working, drawings, labels });
  const after = labels ? { after: labelsAfter(wanted, common) } : {};
  const bytes = await renderPdf(document, fonts, { attachments: [attachment], ...after, tell });
  const pdf = paperFile(bytes, fileName(data, 'pdf'), 'application/pdf');
  const json = paperFile(attachment.bytes, attachment.name, attachment.mime);
  return {
    containerIds: data.containers.map(({ containerId }) => containerId),
    codes: data.containers.map(({ code }) => code),
    contentHash: data.contentHash,
    files: [pdf, json, archived(data, pdf, json, sign)],
  };
};
