/** Words of papers that came as a file: the field, their rows, and why one could not be kept. */

import Decimal from 'decimal.js';
import type { DecimalSign } from '../../quantities/format';
import { formatNumber } from '../../quantities/format';
import type { FileFieldWords } from '../../ui/file-field';
import { type FileFault, mostFileMegabytes } from './prepare-file';

export const fileWords = {
  label: 'Papers as PDF',
  tooMany: (most: number) => `One entry takes ${most} files. The others you chose were left out.`,
  save: (name: string) => `Open ${name}`,
  missing: 'Not on this phone: it lies where it was filed.',
  damaged: 'Damaged: its bytes are not the ones that were kept. It is not opened.',
  notRead: 'Could not be read just now. Go back and come again.',
  opening: 'opening…',
  field: {
    choose: 'Choose a PDF',
    keeping: 'Keeping the file…',
    optional: 'may stay empty',
    full: (most: number) => `${most} files: the most that one entry takes.`,
    remove: 'Remove',
    removeOne: (name: string) => `Remove ${name}`,
    removed: 'File removed.',
    putBack: 'Put it back',
  } satisfies FileFieldWords,
} as const;

/** "PDF, 240 kB" */
export function sizeText(bytes: number, sign: DecimalSign): string {
  const kilobytes = new Decimal(bytes).div(1000);
  return kilobytes.lt(1000)
    ? `PDF, ${formatNumber(Decimal.max(1, kilobytes), 0, sign)}\u202fkB`
    : `PDF, ${formatNumber(kilobytes.div(1000), 1, sign)}\u202fMB`;
}

/** What was wrong with a file, and what to do. Form and record stand as they were in all of these. */
export function fileFaultWords(fault: FileFault): string {
  switch (fault.code) {
    case 'not-a-pdf':
      return 'This is not a PDF. Choose one, or take a photo of the paper instead.';
    case 'too-big':
      return `This file is larger than ${mostFileMegabytes}\u00a0MB. Ask for a smaller one, or take photos of the pages that matter.`;
    case 'not-handed-over':
      return 'The phone did not hand the file over. If it lies in a cloud, fetch it to the phone first, then choose it again.';
    case 'not-stored':
      return fault.failure.code === 'disk-full'
        ? 'The phone is full: the file was not kept. What you have written stands. Make room, then choose it again, or keep without it.'
        : 'The file could not be kept just now. What you have written stands. Choose it again, or keep without it.';
  }
}
