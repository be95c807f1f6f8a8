/** All that is printed for one container: its label, and before it is shipped a second one where the law asks for it. */
import type { Measure } from './boxes';
import type { LabelData, LabelsData } from './label-data';
import type { LabelSizeId } from './label-sizes';
import { type LabelLayout, labelLayout } from './layout';
import type { FrameColour } from './pictograms';
import { shipmentLayout } from './shipment-label';

export function labelLayouts(
  data: LabelsData,
  label: LabelData,
  size: LabelSizeId,
  frame: FrameColour,
  measure: Measure,
): readonly LabelLayout[] {
  const own = labelLayout(data, label, size, frame, measure);
  return label.shipment ? [own, shipmentLayout(data, label, label.shipment, size, measure)] : [own];
}
