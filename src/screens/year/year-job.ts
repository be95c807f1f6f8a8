/** Makes the paper of a time. Loaded with the first one, into the worker. */
import { metalByMonth, type YearAccount, yearAccount } from '../../ledger/year-account';
import type { Days } from '../../ledger/year-days';
import type { DrawingBlock } from '../../paperwork/document';
import { plotBlock } from '../../paperwork/pdf/plots';
import { renderPdf } from '../../paperwork/pdf/render';
import { aboutOf, archiveOf } from '../../paperwork/tables/archive';
import { fileWords } from '../../paperwork/tables/read-me';
import { tableFiles } from '../../paperwork/tables/tables-of';
import { yearData } from '../../paperwork/year/gather-year';
import type { YearData } from '../../paperwork/year/year-data';
import { attachmentOf, fileName, yearPaper } from '../../paperwork/year/year-paper';
import { yearTables } from '../../paperwork/year/year-tables';
import { yearPaperWords } from '../../paperwork/year/year-words';
import type { DecimalSign } from '../../quantities/format';
import { plotGeometry } from '../../ui/plot/plot-geometry';
import type { PlotSpec } from '../../ui/plot/plot-spec';
import type { Maker } from '../papers/jobs';
import { type PaperFile, paperFile } from '../papers/making';
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

/** The paper, its data and its tables in one file. @param sign of whoever opens the tables in a spreadsheet */
function archived(data: YearData, pdf: PaperFile, json: PaperFile, sign: DecimalSign): PaperFile {
  const tables = tableFiles(yearTables(data), sign, data.demo);
  const files = [{ ...pdf, says: fileWords.pdf }, { ...json, says: fileWords.json }, ...tables];
  const about = aboutOf(data, yearPaperWords.title, json.name);
  return paperFile(archiveOf(files, about), json.name.replace(/json$/, 'zip'), 'application/zip');
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
  const pdf = paperFile(bytes, fileName(data, 'pdf'), 'application/pdf');
  const json = paperFile(attachment.bytes, attachment.name, attachment.mime);
  return {
    containerIds: [],
    codes: [yearPaperWords.days(first, last)],
    contentHash: data.contentHash,
    files: [pdf, json, archived(data, pdf, json, common.sign)],
  };
};
