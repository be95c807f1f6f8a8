/** Outlines of the marks in a 36 × 36 box, as pure path strings; the papers draw from them too. */

const point = (radius: number, degrees: number): string => {
  const angle = (degrees * Math.PI) / 180;
  return `${(18 + radius * Math.cos(angle)).toFixed(2)} ${(18 + radius * Math.sin(angle)).toFixed(2)}`;
};

/** Regular octagon standing on a flat side. @param radius centre to corner */
export const octagon = (radius: number): string =>
  `M${Array.from({ length: 8 }, (_, at) => point(radius, 22.5 + 45 * at)).join('L')}Z`;

/** Seal with twelve lobes; `radius` is the centre to the notches. */
export const seal = (radius: number): string => {
  const lobe = (radius * Math.PI) / 12 + 0.2;
  const arcs = Array.from(
    { length: 12 },
    (_, at) => `A${lobe.toFixed(2)} ${lobe.toFixed(2)} 0 0 1 ${point(radius, 30 * (at + 1))}`,
  );
  return `M${point(radius, 0)}${arcs.join('')}Z`;
};

/**
 * The wedge of time left, ending at twelve o'clock: as time goes it shrinks towards twelve.
 * @param share time left, 0 to 1
 */
export function wedge(share: number, radius: number): string {
  const left = Math.min(1, Math.max(0, share));
  if (left === 0) return '';
  if (left > 0.999) return `M18 ${18 - radius}a${radius} ${radius} 0 1 0 .01 0Z`;
  return `M18 18V${18 - radius}A${radius} ${radius} 0 ${left > 0.5 ? 1 : 0} 0 ${point(radius, -90 - 360 * left)}Z`;
}
