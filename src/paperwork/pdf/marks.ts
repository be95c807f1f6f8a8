import type { MarkName, Shape } from '../document';

const black = '#000000';
const white = '#ffffff';
const line = { stroke: black, strokeWidth: 2 } as const;

/** A circle about (cx, cy) as path data. */
const circle = (cx: number, cy: number, r: number): string =>
  `M${cx - r} ${cy}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** A seal: twelve bows around (12, 12), their ends 9 from it. */
function seal(): string {
  const at = (step: number) => {
    const angle = (step * Math.PI) / 6;
    return `${(12 + 9.2 * Math.sin(angle)).toFixed(2)} ${(12 - 9.2 * Math.cos(angle)).toFixed(2)}`;
  };
  const bows = Array.from({ length: 12 }, (_, step) => `A2.5 2.5 0 0 1 ${at(step + 1)}`);
  return `M${at(0)}${bows.join('')}Z`;
}

/** The marks in a box of 24 by 24 units, in black and white only: what tells them apart is the outline. */
export const marks: Readonly<Record<MarkName, readonly Shape[]>> = {
  stop: [
    { path: 'M7.4 1H16.6L23 7.4V16.6L16.6 23H7.4L1 16.6V7.4Z', fill: black },
    { path: 'M8.2 3H15.8L21 8.2V15.8L15.8 21H8.2L3 15.8V8.2Z', stroke: white, strokeWidth: 1.2 },
    { path: 'M6 9.8H18V14.2H6Z', fill: white },
  ],
  wrong: [
    { path: 'M12 2.2L22.6 21.4H1.4Z', ...line },
    { path: 'M10.8 8.5H13.2V14.8H10.8Z', fill: black },
    { path: circle(12, 17.7, 1.5), fill: black },
  ],
  due: [
    { path: circle(12, 12, 10), ...line },
    { path: 'M12 12V5A7 7 0 0 0 5.34 14.16Z', fill: black },
  ],
  overdue: [
    { path: circle(12, 12, 11), fill: black },
    { path: 'M12 5.5V12.4L16.6 15.6', stroke: white, strokeWidth: 2.2 },
  ],
  unknown: [
    { path: circle(12, 12, 10), ...line, dash: [3.6, 2.68] },
    { path: 'M8.9 9.4A3.1 3.1 0 1 1 13.6 12.1C12.4 12.9 12 13.4 12 14.8', ...line },
    { path: circle(12, 17.6, 1.3), fill: black },
  ],
  candidate: [
    { path: seal(), stroke: black, strokeWidth: 1.8 },
    { path: circle(7.6, 12, 1.5) + circle(12, 12, 1.5) + circle(16.4, 12, 1.5), fill: black },
  ],
  confirmed: [
    { path: seal(), fill: black, stroke: black, strokeWidth: 1.8 },
    { path: 'M7.2 12.4L10.8 15.8L16.8 8.4', stroke: white, strokeWidth: 2.4 },
  ],
  clearance: [
    { path: 'M8 2.5H21.5V21.5H8L2.5 16V8Z', ...line },
    { path: circle(7.6, 12, 2), fill: black },
  ],
};
