import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { evaluateFolder } from '../../cases/evaluate';
import { evaluateLow, LowCase } from '../../cases/low-case';
import { consignmentOf, evaluateTransport, TransportCase } from '../../cases/transport-case';

const transport = (input: object, expected: object = {}, title?: string) =>
  TransportCase.parse({ id: 'T', kind: 'transport', ...(title ? { title } : {}), input, expected });
const low = (input: unknown, expected: object, title?: string) =>
  evaluateLow(LowCase.parse({ id: 'L', kind: 'low', ...(title ? { title } : {}), input, expected })).checks;
const failing = (checks: readonly { ok: boolean; line: string }[]) =>
  checks.filter(({ ok }) => !ok).map(({ line }) => line);

describe('cases of carriage and of the waste list', () => {
  const wrong = evaluateFolder(fileURLToPath(new URL('../../cases/wrong-on-purpose', import.meta.url)));
  it.each(['W-TRA', 'W-LOW'])('%s, made wrong on purpose, fails in every line', (id) => {
    const checks = wrong.find((one) => one.id === id)?.outcome.checks ?? [];
    expect(checks.length).toBeGreaterThan(5);
    expect(checks.filter(({ ok }) => ok)).toEqual([]);
  });

  it('a case that expects nothing fails', () => {
    expect(failing(evaluateTransport(transport({})).checks)).toEqual(['nothing expected']);
    expect(failing(low({ stream: 'lime' }, {}))).toEqual(['nothing expected']);
  });
});

describe('a case of carriage', () => {
  it('dry hydroxide sludge: class 9, and the row of the USA', () => {
    const input = { state: 'solid', massPercent: { 'Cu(OH)2': '30', 'Ni(OH)2': '4' }, rcraCodes: ['D011'] };
    const expected = {
      candidates: ['UN 3077'],
      usOnly: ['NA3077'],
      notFirst: ['UN 1477', 'UN 3260'],
      packingGroup: 'III',
      wastePrefix: true,
      environmentallyHazardous: true,
    };
    expect(failing(evaluateTransport(transport(input, expected)).checks)).toEqual([]);
  });

  it.each([
    [{ state: 'solid, wet with liquor' }, 'solid', 'wet'],
    [{ state: 'dry salt' }, 'solid', 'dry'],
    [{ state: 'sludge' }, 'sludge', undefined],
    [{ state: 'solid', freeLiquid: false }, 'solid', 'wet'],
    [{ state: 'solid', freeLiquid: true }, 'liquid', undefined],
    [{ state: 'solid', wet: true, massPercent: { HNO3: '4', water: '40' } }, 'solid', 'wet'],
    [{ state: 'solid', dry: true }, 'solid', 'dry'],
    [{}, 'liquid', undefined],
  ] as const)('%j is %s, %s', (input, state, wetness) => {
    const read = consignmentOf(transport(input));
    expect([read.mixture.state, read.wetness]).toEqual([state, wetness]);
  });

  it.each([
    [{ corrosionCategory: 'Skin Corr. 1A' }, { skinCorrosion: '1A' }],
    [{ corrosionCategory: '1' }, { skinCorrosion: '1B' }],
    [{ corrosionCategory: 'III' }, { skinCorrosion: '1C' }],
    [{ corrosionCategory: 'none' }, { skinCorrosion: 'none' }],
    [{ corrosive: false }, { skinCorrosion: 'none' }],
    [{ oxidiserByTest: true }, { oxidising: 'of no known group' }],
    [{ oxidiserByTest: 'II' }, { oxidising: 'II' }],
    [{ oxidiserByTest: false }, { oxidising: 'none' }],
    [{}, {}],
  ] as const)('%j was tested: %j', (input, tested) => {
    expect(consignmentOf(transport(input)).tested).toEqual(tested);
  });

  it('what the table of substances does not hold is left out, and told', () => {
    const given = transport(
      { state: 'solid', massPercent: { HNO3: '4', cellulose: '60' } },
      { first: 'UN 3244' },
    );
    const { checks, notes } = evaluateTransport(given);
    expect(failing(checks)).toEqual([]);
    expect(notes).toContain('left out, not in the table: cellulose');
  });
});

describe('a case of the waste list', () => {
  it.each([
    [{ stream: 'leach liquor' }, '11 02 07*'],
    ['spent filter papers', '15 02 02*'],
    [{ stream: 'hydroxide-sludge' }, '11 02 07*'],
    [{ waste: 'ceramic residue, washed, shown not hazardous' }, '11 02 99'],
    [{ material: 'ceramic residue', hp: [] }, '11 02 99'],
    [{ material: 'ceramic residue', hp: ['HP 10'] }, '11 02 07*'],
    [{ material: 'ceramic residue', hazardous: false }, '11 02 99'],
    [{ material: 'ceramic residue', hp: 'none' }, '11 02 99'],
    [{ material: 'ceramic residue', hazardousProperties: 'HP 7, HP 14' }, '11 02 07*'],
    [{ item: 'sludge', activity: 'leaching of ceramics with nitric acid liquor' }, '11 02 07*'],
    [{ item: 'wash water', activity: 'chemical surface treatment' }, '11 01 11*'],
    [{ stream: 'wash water', process: 'chemical surface treatment' }, '11 01 11*'],
    [{ stream: 'scrap iron' }, null],
  ] as const)('%j: %s', (input, first) => {
    expect(failing(low(input, { first }))).toEqual([]);
  });

  it('the title says what the input does not', () => {
    expect(failing(low({}, { first: '06 02 01*' }, 'Surplus lime'))).toEqual([]);
    expect(failing(low({ item: 'leach liquor' }, { first: '11 02 07*' }, 'Not as surplus acid'))).toEqual([]);
  });

  it('shares of a washed residue that bring no property speak for the entry without asterisk', () => {
    const residue = (share: string) => ({
      stream: 'ceramic residue',
      state: 'solid',
      massPercent: { 'Ni(OH)2': share },
    });
    expect(failing(low(residue('2'), { first: '11 02 07*' }))).toEqual([]);
    expect(failing(low(residue('0.001'), { first: '11 02 99' }))).toEqual([]);
  });
});
