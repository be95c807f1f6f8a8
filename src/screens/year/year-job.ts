/** Makes the paper of a time. Loaded with the first one, into the worker. */
import { metalByMonth, type YearAccount, yearAccount } from '../../ledger/year-account';
import type { Days } from '../../ledger/year-flows';
import type { DrawingBlock } from '../../paperwork/document';
import { plotBlock } from '../../paperwork/pdf/plots';
import { renderPdf } from '../../paperwork/pdf/render';
import { yearData } from '../../paperwork/year/gather-year';
import { attachmentOf, fileName, yearPaper } from '../../paperwork/year/year-paper';
import { yearPaperWords } from '../../paperwork/year/year-words';
import type { DecimalSign } from '../../quantities/format';
import { plotGeometry } from '../../ui/plot/plot-geometry';
import type { PlotSpec } from '../../ui/plot/plot-spec';
import type { Maker } from '../papers/jobs';
import { paperFile } from '../papers/making';
import type { Sheet } from '../papers/sheet';
import { hasPlot, metalsPlot, monthsPlot } from './plot';
import { yearWords as w } from './words';

export type YearWanted = Days & {
  /** It is of all of them. */
  readonly containerIds: readonly string[];
  readonly sheet: Sheet;
};

/** Printed width and type of a plot, pt. */
const size = { width: 470, text: 8.5, height: 150 } as const;

const drawn = (spec: PlotSpec | undefined, caption = spec?.title): readonly DrawingBlock[] =>
  spec ? [plotBlock(plotGeometry(spec, size), caption)] : [];

function plotsOf(account: YearAccount, told: readonly string[], sign: DecimalSign): readonly DrawingBlock[] {
  const months = account.months.filter(({ month }) => told.includes(month));
  if (!hasPlot(months)) return [];
  const metals = (['Cu', 'Ni'] as const).flatMap((of) => metalByMonth(account, of, told) ?? []);
  const waste = monthsPlot(months, sign);
  return [...drawn(waste, w.plotCaption(waste.title)), ...drawn(metalsPlot(metals, sign))];
}

export const makeYear: Maker<YearWanted> = async (wanted, common, tell, fonts) => {
  const { first, last, sheet } = wanted;
  const data = yearData({ first, last }, common, tell);
  const account = yearAccount(common.state, { first, last }, common.zone);
  const plots = plotsOf(
    account,
    data.months.map(({ month }) => month),
    common.sign,
  );
  const attachment = attachmentOf(data);
  const document = yearPaper(data, { paper: sheet, plots });
  const bytes = await renderPdf(document, fonts, { attachments: [attachment], tell });
  return {
    containerIds: [],
    codes: [yearPaperWords.days(first, last)],
    contentHash: data.contentHash,
    files: [
      paperFile(bytes, fileName(data, 'pdf'), 'application/pdf'),
      paperFile(attachment.bytes, attachment.name, attachment.mime),
    ],
  };
};
