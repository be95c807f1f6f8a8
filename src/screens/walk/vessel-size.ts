/** How large a vessel of the walk is drawn. */
import { type VesselFamily, vesselKind } from '../../ui/vessel-kinds';

/** Room for the drawing, px: the looks and both answers stay on a small phone. Reasoned. */
const most = { width: 120, height: 128 };

/** Above it the code would not fit on the label of a bottle. */
const mostScale = 0.4;

/** px a mm, so that it fits. */
export function fittedScale(family: VesselFamily, capacityL: number): number {
  const { widthMm, heightMm } = vesselKind(family, capacityL);
  return Math.min(mostScale, most.width / widthMm, most.height / heightMm);
}
