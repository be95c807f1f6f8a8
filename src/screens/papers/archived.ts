/** A disposal paper, its data and its tables in one file that can be mailed or kept. Made in the worker. */
import type { DisposalData } from '../../paperwork/disposal/disposal-data';
import { aboutOf, archiveOf } from '../../paperwork/tables/archive';
import { fileWords } from '../../paperwork/tables/read-me';
import { tablesOf } from '../../paperwork/tables/tables-of';
import type { DecimalSign } from '../../quantities/format';
import { type PaperFile, paperFile } from './making';
import { setWords as w } from './set-words';

/** @param sign the decimal sign of whoever opens the tables in a spreadsheet */
export function archived(data: DisposalData, pdf: PaperFile, json: PaperFile, sign: DecimalSign): PaperFile {
  const files = [{ ...pdf, says: fileWords.pdf }, { ...json, says: fileWords.json }, ...tablesOf(data, sign)];
  const name = json.name.replace(/json$/, 'zip');
  return paperFile(archiveOf(files, aboutOf(data, w.title, json.name)), name, 'application/zip');
}
