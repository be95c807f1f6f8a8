/** Makes the receipt of a hand-over. Loaded with the first one, into the worker. */
import { renderPdf } from '../../paperwork/pdf/render';
import { receiptData } from '../../paperwork/receipt/gather-receipt';
import { receiptAttachment, receiptFileName, receiptPaper } from '../../paperwork/receipt/receipt-paper';
import type { Maker } from './jobs';
import { paperFile } from './making';
import type { Sheet } from './sheet';

export type ReceiptWanted = {
  readonly handOverId: string;
  /** The containers of the load, as every job names them. */
  readonly containerIds: readonly string[];
  readonly sheet: Sheet;
};

export const makeReceipt: Maker<ReceiptWanted> = async ({ handOverId, sheet }, common, tell, fonts) => {
  const data = receiptData(handOverId, common);
  const attachment = receiptAttachment(data);
  const bytes = await renderPdf(receiptPaper(data, { paper: sheet }), fonts, {
    attachments: [attachment],
    tell,
  });
  return {
    containerIds: data.containers.map(({ containerId }) => containerId),
    codes: data.containers.map(({ code }) => code),
    contentHash: data.contentHash,
    files: [
      paperFile(bytes, receiptFileName(data, 'pdf'), 'application/pdf'),
      paperFile(attachment.bytes, attachment.name, attachment.mime),
    ],
  };
};
