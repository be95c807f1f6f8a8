/**
 * The colour of a nitrate liquor from its copper and nickel, for the drawn vessel: Beer and Lambert's law through 10 cm,
 * daylight, the eye, the screen. A drawing and never evidence: the bands are weak (reference/absorption.json says how
 * weak), and clear is not clean. Chloride, ammonia, nitrite, iron and palladium are not in it; where one of them is
 * logged, the colour is not computed.
 */
import absorption from '../reference/absorption.json';
import { atomicWeights } from '../reference/tables';

type Triple = readonly [number, number, number];

type Ion = keyof typeof absorption.ions;

const { daylight, observer, lightPathCm, wall } = absorption;

/** Molar absorptivity of an ion in L/(mol cm) at a wave number in 1/cm: a sum of Gaussian bands. */
const absorptivity = (ion: Ion, perCm: number): number =>
  absorption.ions[ion].reduce(
    (sum, { centrePerCm, heightLPerMolCm, widthPerCm }) =>
      sum + heightLPerMolCm * Math.exp(-((perCm - centrePerCm) ** 2) / (2 * widthPerCm ** 2)),
    0,
  );

/** One matching function of the eye: lobes with a width on either side. */
const seen = (lobes: readonly (readonly number[])[], nm: number): number =>
  lobes.reduce((sum, [height = 0, centreNm = 0, belowNm = 1, aboveNm = 1]) => {
    const width = nm < centreNm ? belowNm : aboveNm;
    return sum + height * Math.exp(-(((nm - centreNm) / width) ** 2) / 2);
  }, 0);

const multiplied = (rows: readonly (readonly number[])[], [x, y, z]: Triple): Triple => {
  const [r, g, b] = rows.map(([a = 0, c = 0, d = 0]) => a * x + c * y + d * z);
  return [r ?? 0, g ?? 0, b ?? 0];
};

/** What does not change from colour to colour: weight of each wavelength for the three, and the ions' absorptivities. */
const samples = daylight.values.map((light, at) => {
  const nm = daylight.firstNm + at * daylight.stepNm;
  return {
    weights: [
      light * seen(observer.x, nm),
      light * seen(observer.y, nm),
      light * seen(observer.z, nm),
    ] as const satisfies Triple,
    copper: absorptivity('Cu', 1e7 / nm),
    nickel: absorptivity('Ni', 1e7 / nm),
  };
});

/** Tristimulus sums of the light that passes. */
function passed(copperMolPerL: number, nickelMolPerL: number): Triple {
  let [x, y, z] = [0, 0, 0];
  for (const { weights, copper, nickel } of samples) {
    const share = 10 ** (-lightPathCm.value * (copperMolPerL * copper + nickelMolPerL * nickel));
    x += weights[0] * share;
    y += weights[1] * share;
    z += weights[2] * share;
  }
  return [x, y, z];
}

const water = passed(0, 0);
const whiteOnScreen = multiplied(absorption.screen.rows, water);

const molarMass = (symbol: Ion): number => Number(atomicWeights[symbol]?.value);

const coded = (linear: number): number =>
  linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;

const hexOf = (linear: number): string =>
  Math.round(255 * coded(Math.min(1, Math.max(0, linear))))
    .toString(16)
    .toUpperCase()
    .padStart(2, '0');

/**
 * Colour of a liquor as drawn.
 * @param copperGPerL grams a litre, 0 or more
 * @param nickelGPerL grams a litre, 0 or more
 * @returns '#RRGGBB'; water is #ECECEC
 * Source: reference/absorption.json, each part with its own status.
 * @example tint(17.6, 6.2) // '#38A5A4'
 */
export function tint(copperGPerL: number, nickelGPerL: number): string {
  const light = passed(
    Math.max(0, copperGPerL) / molarMass('Cu'),
    Math.max(0, nickelGPerL) / molarMass('Ni'),
  );
  const [r, g, b] = multiplied(absorption.screen.rows, light);
  const onScreen = [r / whiteOnScreen[0], g / whiteOnScreen[1], b / whiteOnScreen[2]];
  const grey = light[1] / water[1];
  const least = Math.min(...onScreen);
  // A colour that the screen cannot show moves towards the grey of the same brightness until it can.
  const kept = least < 0 ? grey / (grey - least) : 1;
  return `#${onScreen.map((channel) => hexOf(wall.share * (grey + kept * (channel - grey)) + wall.added)).join('')}`;
}
