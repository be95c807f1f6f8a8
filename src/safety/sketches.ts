/** The small drawings beside questions: what each shows, so that a list can name one and somebody can draw it. */
import * as z from 'zod/mini';

export const sketches = {
  gloves: 'A long-cuffed glove, the print on its cuff marked',
  goggles: 'Sealed goggles with a face shield over them',
  ribbon: 'A hood opening from the front, a thin ribbon at its edge pulled inward',
  wind: 'A person seen from above, arrows of wind coming from behind',
  tray: 'A vessel standing in a tray that is wider and dry to its corners',
  'vent-cover': 'A beaker with a loose watch glass, gas leaving at the lip',
  'vent-cap': 'A bottle neck with a cap, the vent in the cap marked',
  'fill-line': 'A vessel from the side, liquid to a third, the line marked',
  'beaker-water': 'A beaker with water in it, an arrow of acid going in',
  'vessel-mark': 'A vessel turned over, the material mark under its base',
  'bottle-label': 'A bottle, its label with name, hazard and date',
  'bag-label': 'A sack of base, name and formula printed large',
  pipette: 'A pipette with one drop, read at eye level',
  'spot-plate': 'An open plastic plate with wells, a drop in one',
  'ph-paper': 'A pH strip beside its colour scale',
  strip: 'A metal test strip beside its scale, and a clock',
  thermometer: 'A thermometer standing in a liquid, clear of the wall',
  scales: 'A scale with a small dish on it',
  filter: 'A funnel with a filter in it, seen into from above',
  trap: 'A flask, a trap and a pump, joined by hose',
  parts: 'Bare ceramic chips spread on a white tray',
  copper: 'A strip of bright copper, a lacquered one crossed out',
  tub: 'A wide tub with lid and label',
  fume: 'A vessel behind a sash, brown gas over the liquid',
  foam: 'A vessel from the side, foam climbing over a mark',
  sign: 'A sign on a closed door',
  person: 'Two people, a clock between them',
  eyewash: 'An eyewash running on both sides',
  exit: 'A way from bench to door with nothing on it',
  phone: 'A telephone with its battery full',
  kit: 'A tub of baking soda beside a scoop',
  bulge: 'A bottle with straight walls beside one that bulges',
  apart: 'Three containers, each in a tray of its own',
  dryer: 'A dryer door with dial and thermometer',
  paper: 'A paper with a signature, a finger on one line',
  vehicle: 'Containers braced in a load bed, seen from behind',
} as const;

export const Sketch = z.enum(Object.keys(sketches) as [keyof typeof sketches, ...(keyof typeof sketches)[]]);

export type Sketch = z.infer<typeof Sketch>;
