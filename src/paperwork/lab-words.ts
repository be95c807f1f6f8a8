/** Words of what a laboratory reported; pages and papers share them. */
import type { LabResult } from '../ledger/entries/lab-reports';

/** What it was found in. */
export const foundIn: Readonly<Record<LabResult['in'], string>> = {
  total: 'the waste as it is',
  filtered: 'the filtered liquid',
  tclp: 'the TCLP extract',
  wet: 'the WET extract',
};
