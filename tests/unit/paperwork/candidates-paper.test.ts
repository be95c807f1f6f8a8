/** The candidates on a disposal paper: all that the rules found, with rule, numbers, source, standing, and whose word there is. */
import { describe, expect, test } from 'vitest';
import { bySchemes, candidatesOf } from '../../../src/ledger/container-candidates';
import type { IntentionOf } from '../../../src/ledger/intention';
import { codeText, standingWords } from '../../../src/paperwork/candidate-words';
import { disposalPaper } from '../../../src/paperwork/disposal/disposal-paper';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { renderPdf } from '../../../src/paperwork/pdf/render';
import { paperFonts } from '../../support/paper-fonts';
import { readPdf } from '../../support/read-pdf';
import { disposalState } from './disposal-state';

type Made = Awaited<ReturnType<typeof disposalState>>;

const dataOf = ({ state, now }: Made, ids: readonly string[]) =>
  disposalData(ids, {
    state: state.value,
    now: now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.',
    demo: false,
  });

function found({ state, barren }: Made) {
  const container = state.value.containers.get(barren);
  const all = container && candidatesOf(state.value, container);
  if (all === undefined || typeof all === 'string') throw new Error(`${all}`);
  return bySchemes(all).flatMap(([, list]) => list);
}

const says = (memory: Made, one: Pick<IntentionOf<'answer-candidate'>, 'scheme' | 'code' | 'answer'>) =>
  memory.does({
    do: 'answer-candidate',
    containerId: memory.barren,
    saidBy: 'Fenwater',
    saidOn: '2026-05-17',
    ...one,
  });

const plain = (text: string): string => text.replace(/\s+/g, ' ');

/** Column by column, so that what stands in one cell stays together; then line by line. */
async function printed(memory: Made, ids: readonly string[] = [memory.barren]): Promise<string> {
  const document = disposalPaper(dataOf(memory, ids), { paper: 'A4', working: false, drawings: new Map() });
  const { pages } = await readPdf(await renderPdf(document, paperFonts, {}));
  const columns = pages.map(({ runs }) =>
    [...new Set(runs.map(({ x }) => Math.round(x)))].map((place) =>
      runs
        .filter(({ x }) => Math.round(x) === place)
        .map(({ text }) => text)
        .join(' '),
    ),
  );
  const lines = pages.map(({ text }) => text);
  return plain([...columns.flat(), ...lines].join('\n'));
}

describe('candidates on a disposal paper', () => {
  test('are in its data as the rules have them, each figure with its line of the working', async () => {
    const memory = await disposalState();
    const data = dataOf(memory, [memory.barren]);
    const laws = data.containers[0]?.laws;
    const all = found(memory);
    expect(laws?.candidates.map(({ code, standing, rule, cite }) => [code, standing, rule, cite])).toEqual(
      all.map(({ code, standing, citation }) => [
        codeText(code),
        standingWords[standing],
        citation.rule,
        citation.cite,
      ]),
    );
    const lines = new Set(data.working.map(({ id }) => id));
    for (const [at, { grounds }] of all.entries())
      for (const [n, { figure, limit }] of grounds.entries()) {
        const told = laws?.candidates[at]?.numbers[n];
        expect(told?.figure.highValue).toBe(figure.high.toFixed());
        expect(told?.limit.value).toBe(limit.value.toFixed());
        expect(lines.has(told?.figure.line ?? '')).toBe(true);
      }
    expect(new Set(laws?.candidates.map(({ said }) => said))).toEqual(new Set(['nobody has confirmed it']));
  });

  test('are printed with standing, number, limit and rule; what is missing with all that waits for it', async () => {
    const memory = await disposalState();
    const text = await printed(memory);
    expect(text).toContain('Candidates: C‑07');
    for (const { rule } of dataOf(memory, [memory.barren]).containers[0]?.laws?.candidates.filter(
      ({ standing }) => standing !== 'not determined',
    ) ?? [])
      expect(text).toContain(plain(rule));
    expect(text).toContain('D002: corrosive');
    expect(text).toContain('reaches its limit');
    expect(text).toMatch(/pH, by paper 0\.2 .*, limit 2/);
    expect(text).toContain('nobody has confirmed it');
    expect(text).toMatch(/lead.*: not determined; decides .*D008/);
    expect(text).toContain(
      'Diluting a waste, or what is left of treating it, to meet a standard is no treatment.',
    );
    expect(text).not.toMatch(/\b(safe|safely|compliant|compliance|harmless)\b/i);
  });

  test('stand on the first page in one line each, as candidates until somebody has confirmed them', async () => {
    const memory = await disposalState();
    const first = () =>
      dataOf(memory, [memory.barren]).containers[0]?.candidates.map(({ says: line }) => line);
    const [classes, codes, carried] = first() ?? [];
    expect(classes).toMatch(/H317.*\(candidates\)$/);
    expect(codes).toMatch(/^11.02.07\*, D002 \(candidates\)$/);
    expect(carried).toBe('not determined');
    await says(memory, { scheme: 'clp', code: 'Skin Sens. 1 H317', answer: 'accepted' });
    await says(memory, { scheme: 'transport', code: 'UN 3264', answer: 'accepted' });
    expect(first()?.[0]).toMatch(/H314, .*H350i.* \(candidates\)/);
    expect(first()?.[0]).toMatch(/(^|; )H317 \(confirmed by Fenwater\)/);
    expect(first()?.[2]).toMatch(/^UN.3264 \(confirmed by Fenwater\)$/);
    const text = await printed(memory);
    expect(text).toContain('confirmed by Fenwater, 17 May 2026');
  });

  test('tell what was refused, and what was given besides', async () => {
    const memory = await disposalState();
    await says(memory, { scheme: 'rcra', code: 'D002', answer: 'refused' });
    await says(memory, { scheme: 'waste-list', code: '16 05 07*', answer: 'accepted' });
    const text = await printed(memory);
    expect(text).toContain('not so, says Fenwater, 17 May 2026');
    expect(text).toMatch(/16 05 07\*, not proposed by the rules; confirmed by Fenwater/);
  });

  test('are none where nobody knows what is in it', async () => {
    const memory = await disposalState();
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'contents-doubtful' });
    const [c] = dataOf(memory, [memory.barren]).containers;
    expect(c?.laws).toBeUndefined();
    expect(c?.candidates.map(({ says: line }) => line)).toEqual(
      Array.from({ length: 3 }, () => 'not determined'),
    );
    expect(await printed(memory)).not.toContain('Candidates: C');
  });
});
