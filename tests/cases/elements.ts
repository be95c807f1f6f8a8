/** The names that case files give to what the model calls components. */
import type { Component } from '../../src/chemistry/equilibrium/reaction';

export const componentOf: Readonly<Record<string, Component>> = {
  Cu: 'Cu+2',
  Ni: 'Ni+2',
  Zn: 'Zn+2',
  Fe: 'Fe+3',
  Ag: 'Ag+',
  Pb: 'Pb+2',
  Pd: 'Pd+2',
  Ba: 'Ba+2',
  Sn: 'Sn+4',
  Al: 'Al+3',
  Mg: 'Mg+2',
  Ca: 'Ca+2',
  Na: 'Na+',
  NO3: 'NO3-',
  Cl: 'Cl-',
  S: 'SO4-2',
  SO4: 'SO4-2',
  C: 'CO3-2',
  NH3: 'NH3',
};

/** A metal by its symbol enters as its nitrate; anything else is a substance by its own formula. */
export const substanceOf = (name: string): string => {
  const charge = /\+(\d*)$/.exec(componentOf[name] ?? '')?.[1];
  if (charge === undefined) return name;
  return charge === '' ? `${name}NO3` : `${name}(NO3)${charge}`;
};
