/** The tables of a disposal paper as files. They are made of its data alone, so paper and tables cannot differ. */
import type { DecimalSign } from '../../quantities/format';
import type { DisposalData } from '../disposal/disposal-data';
import type { ArchiveFile } from './archive';
import { columnsOf } from './columns';
import { containerTables } from './container-tables';
import { csvBytes, forPrograms, forSheets } from './csv';
import { lawTables } from './law-tables';
import { paperTable, recordTables } from './record-tables';
import type { Table } from './table';

export const disposalTables = (data: DisposalData): readonly Table[] => [
  paperTable(data),
  ...containerTables(data),
  ...lawTables(data),
  ...recordTables(data),
];

/** Each table twice, and the table of all columns: in "spreadsheet" as this reader's program opens it, in "programs" always the same. */
export function tableFiles(
  tables: readonly Table[],
  sign: DecimalSign,
  demo: boolean,
): readonly ArchiveFile[] {
  const all = [...tables, columnsOf(tables)];
  return (['spreadsheet', 'programs'] as const).flatMap((folder) =>
    all.map((table) => ({
      folder,
      name: `${demo ? 'invented-' : ''}${table.name}.csv`,
      says: table.says,
      bytes: csvBytes(table, folder === 'programs' ? forPrograms : forSheets(sign)),
    })),
  );
}

/** @param sign the decimal sign of the person who asks */
export const tablesOf = (data: DisposalData, sign: DecimalSign): readonly ArchiveFile[] =>
  tableFiles(disposalTables(data), sign, data.demo);
