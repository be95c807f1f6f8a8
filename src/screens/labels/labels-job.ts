/** Makes labels. Loaded with the first ones, into the worker. */
import { labelsData } from '../../paperwork/labels/gather';
import type { LabelsData } from '../../paperwork/labels/label-data';
import { labelsAttachment, labelsFileName, labelsPdf } from '../../paperwork/labels/label-pdf';
import type { LabelSheetId } from '../../paperwork/labels/label-sizes';
import type { FrameColour } from '../../paperwork/labels/pictograms';
import type { Tell } from '../../paperwork/progress';
import type { Maker } from '../papers/jobs';
import { type Common, paperFile } from '../papers/making';
import { labelsKnown } from './known';

export type LabelsWanted = {
  readonly containerIds: readonly string[];
  readonly sheet: LabelSheetId;
  readonly frame: FrameColour;
  readonly firstPlace: number;
};

export const labelsDataOf = ({ containerIds }: LabelsWanted, common: Common, tell?: Tell): LabelsData =>
  labelsData(containerIds, common, labelsKnown(common.state, containerIds, tell));

export const makeLabels: Maker<LabelsWanted> = async (wanted, common, tell, fonts) => {
  const { sheet } = wanted;
  const data = labelsDataOf(wanted, common, tell);
  const bytes = await labelsPdf(data, wanted, fonts);
  const attachment = labelsAttachment(data, sheet);
  return {
    containerIds: data.labels.map(({ containerId }) => containerId),
    codes: data.labels.map(({ code }) => code),
    contentHash: data.contentHash,
    files: [
      paperFile(bytes, labelsFileName(data, sheet, 'pdf'), 'application/pdf'),
      paperFile(attachment.bytes, attachment.name, attachment.mime),
    ],
  };
};
