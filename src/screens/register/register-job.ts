/** Makes the register of a period. Loaded with the first one, into the worker. */
import { renderPdf } from '../../paperwork/pdf/render';
import { registerData } from '../../paperwork/register/gather-register';
import type { Days } from '../../paperwork/register/period';
import { attachmentOf, fileName, registerPaper } from '../../paperwork/register/register-paper';
import { registerWords } from '../../paperwork/register/register-words';
import type { Maker } from '../papers/jobs';
import { paperFile } from '../papers/making';
import type { Sheet } from '../papers/sheet';

export type RegisterWanted = Days & {
  /** It is of all of them. */
  readonly containerIds: readonly string[];
  readonly sheet: Sheet;
};

export const makeRegister: Maker<RegisterWanted> = async (wanted, common, tell, fonts) => {
  const { firstDay, lastDay, sheet } = wanted;
  tell({ stage: 'gathering', done: 0, of: 1 });
  const data = registerData({ firstDay, lastDay }, common);
  tell({ stage: 'gathering', done: 1, of: 1 });
  const attachment = attachmentOf(data);
  const document = registerPaper(data, { paper: sheet, sign: common.sign });
  const bytes = await renderPdf(document, fonts, { attachments: [attachment], tell });
  return {
    containerIds: [],
    codes: [registerWords.days(firstDay, lastDay)],
    contentHash: data.contentHash,
    files: [
      paperFile(bytes, fileName(data, 'pdf'), 'application/pdf'),
      paperFile(attachment.bytes, attachment.name, attachment.mime),
    ],
  };
};
