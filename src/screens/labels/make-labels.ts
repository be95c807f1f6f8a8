/** Makes labels in the browser. What sets and draws them is loaded when the first one is shown or made. */
import type { LabelsData } from '../../paperwork/labels/label-data';
import { type LabelSheetId, labelSheets } from '../../paperwork/labels/label-sizes';
import type { LabelLayout } from '../../paperwork/labels/layout';
import type { FrameColour } from '../../paperwork/labels/pictograms';
import type { Fonts } from '../../paperwork/pdf/pen';
import { type Common, fileOf, type Made, madeWith } from '../papers/making';

export type LabelsWanted = {
  readonly containerIds: readonly string[];
  readonly sheet: LabelSheetId;
  readonly frame: FrameColour;
  readonly firstPlace: number;
};

const loadTools = async () => {
  const [gather, known, layout, pdf, file, fonts] = await Promise.all([
    import('../../paperwork/labels/gather'),
    import('./known'),
    import('../../paperwork/labels/layouts'),
    import('../../paperwork/labels/label-pdf'),
    import('../../paperwork/pdf/file'),
    import('../../paperwork/pdf/fonts'),
  ]);
  const bytes = await fonts.loadFonts();
  return {
    ...gather,
    labelsKnown: known.labelsKnown,
    ...layout,
    ...pdf,
    measure: await file.measureIn(bytes),
    fonts: bytes,
  };
};

type Tools = Awaited<ReturnType<typeof loadTools>>;

/** The address that the phone shows, less the page: where the pattern leads. */
const appAddress = (): string => window.location.href;

const dataOf = ({ containerIds }: LabelsWanted, common: Common, use: Tools): LabelsData => {
  const asked = { ...common, appAddress: appAddress() };
  return use.labelsData(containerIds, asked, use.labelsKnown(common.state, containerIds));
};

/** The labels as a file, or what kept them from being made. */
export const makeLabels = (wanted: LabelsWanted, common: Common): Promise<Made> =>
  madeWith(loadTools, async (use) => {
    const { sheet } = wanted;
    const data = dataOf(wanted, common, use);
    const bytes = await use.labelsPdf(data, wanted, use.fonts);
    const attachment = use.labelsAttachment(data, sheet);
    return {
      containerIds: data.labels.map(({ containerId }) => containerId),
      codes: data.labels.map(({ code }) => code),
      contentHash: data.contentHash,
      pdf: fileOf(bytes, use.labelsFileName(data, sheet, 'pdf'), 'application/pdf'),
      json: fileOf(attachment.bytes, attachment.name, attachment.mime),
    };
  });

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
  const data = dataOf(wanted, common, use);
  const { size } = labelSheets[wanted.sheet];
  const layouts = data.labels.map((label) => use.labelLayouts(data, label, size, wanted.frame, use.measure));
  return { data, layouts, fonts: use.fonts };
}
