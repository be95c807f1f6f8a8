/** Lays labels out for the page as they are printed. What lays them out is loaded when the first one is shown. */
import type { LabelsData } from '../../paperwork/labels/label-data';
import { labelSheets } from '../../paperwork/labels/label-sizes';
import type { LabelLayout } from '../../paperwork/labels/layout';
import type { Fonts } from '../../paperwork/pdf/pen';
import type { Common } from '../papers/making';
import type { LabelsWanted } from './labels-job';

const loadTools = async () => {
  const [job, layout, file, fonts] = await Promise.all([
    import('./labels-job'),
    import('../../paperwork/labels/layouts'),
    import('../../paperwork/pdf/file'),
    import('../../paperwork/pdf/fonts'),
  ]);
  const bytes = await fonts.loadFonts();
  return { ...job, ...layout, measure: file.measureIn(bytes), fonts: bytes };
};

/** How the labels will look: each laid out as it is printed. */
export type LabelsLaidOut = {
  readonly data: LabelsData;
  /** Of each container in turn, one or two. */
  readonly layouts: readonly (readonly LabelLayout[])[];
  readonly fonts: Fonts;
};

/** @throws when a part that draws labels is not on the phone yet */
export async function layOutLabels(wanted: LabelsWanted, common: Common): Promise<LabelsLaidOut> {
  const use = await loadTools();
  const data = use.labelsDataOf(wanted, common);
  const { size } = labelSheets[wanted.sheet];
  const layouts = data.labels.map((label) => use.labelLayouts(data, label, size, wanted.frame, use.measure));
  return { data, layouts, fonts: use.fonts };
}
