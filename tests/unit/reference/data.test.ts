import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parsed, reaction } from '../../../src/chemistry/formula';
import { bases, cementation, dissolution, metals, sources } from '../../../src/reference/tables';

const folder = 'src/reference';
const files = readdirSync(folder).filter((name) => name.endsWith('.json') && name !== 'sources.json');

/** Every object in a file that holds a value, with the way to it. */
function valuesIn(node: unknown, way: string): { way: string; node: Record<string, unknown> }[] {
  if (Array.isArray(node)) return node.flatMap((n, i) => valuesIn(n, `${way}/${i}`));
  if (typeof node !== 'object' || node === null) return [];
  const own = node as Record<string, unknown>;
  const below = Object.entries(own).flatMap(([k, n]) => valuesIn(n, `${way}/${k}`));
  return 'value' in own ? [{ way, node: own }, ...below] : below;
}

describe('the published data', () => {
  it.each(files)('%s: every value names its source and whether it was seen there', (name) => {
    for (const { way, node } of valuesIn(JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')), name)) {
      expect(typeof node.source, `${way} has a source`).toBe('string');
      expect(typeof node.status, `${way} has a status`).toBe('string');
    }
  });

  it('every source that is named is described, and every one described is named', () => {
    const text = files.map((name) => readFileSync(`${folder}/${name}`, 'utf8')).join('\n');
    for (const id of Object.keys(sources)) expect(text, `${id} is used`).toContain(`"${id}"`);
  });
});

describe('reactions are balanced', () => {
  const reactions = [
    ...Object.values(dissolution.reactions).flatMap((routes) =>
      routes ? [routes.dilute, routes.strong] : [],
    ),
    ...Object.values(cementation.reactions),
  ];
  it.each(reactions)('%s', (text) => {
    const atoms = new Map<string, number>();
    let charge = 0;
    for (const [species, n] of reaction(text)) {
      const sign = /([+-])(\d*)$/.exec(species);
      if (sign) charge += n * (sign[1] === '+' ? 1 : -1) * Number(sign[2] || 1);
      for (const [element, count] of parsed(species))
        atoms.set(element, (atoms.get(element) ?? 0) + n * count);
    }
    expect([...atoms.values()].every((n) => n === 0)).toBe(true);
    expect(charge).toBe(0);
  });
});

describe('metals and bases', () => {
  it('a solid holds as many hydroxides, or half as many oxides, as the metal takes', () => {
    for (const [metal, { solid, hydroxideTaken }] of Object.entries(metals)) {
      if (solid === null || Number(hydroxideTaken) === 0) continue;
      const atoms = parsed(solid);
      const oxide = (atoms.get('O') ?? 0) * 2 - (atoms.get('H') ?? 0);
      expect(oxide / (atoms.get(metal) ?? 0), metal).toBe(Number(hydroxideTaken));
    }
  });

  it('a base gives as many hydroxides as its formula allows', () => {
    const charges: Record<string, number> = { Ca: 2, Na: 1, Mg: 2 };
    for (const { formula, hydroxidePerMol } of Object.values(bases)) {
      const given = [...parsed(formula)].reduce((sum, [e, n]) => sum + (charges[e] ?? 0) * n, 0);
      expect(given, formula).toBe(Number(hydroxidePerMol));
    }
  });
});
