import { describe, expect, test } from 'vitest';
import type { Intention } from '../../../src/ledger/intention';
import { signedOver } from '../../../src/ledger/signed-over';
import { disposalState } from '../paperwork/disposal-state';
import { dayBefore, reopened } from './opened-again';
import { at, can, id, marked, pour, Scribe, tip, wash } from './scribe';

const mark = (containerId: string, as: 'closed' | 'leaving'): Intention => ({
  do: 'mark-container',
  containerId,
  mark: as,
});

describe('what a signature under containers is of', () => {
  test('changes with whatever is told of them, and with nothing else', async () => {
    const memory = await disposalState();
    const { barren, barrenStream, wash } = memory;
    const now = () => signedOver(memory.state.value, [barren]);
    expect(signedOver(memory.state.value, [barren, wash])).toBe(
      signedOver(memory.state.value, [wash, barren]),
    );
    const changing: readonly Intention[] = [
      {
        do: 'log-stream-test',
        streamId: barrenStream,
        density: { value: '1.1', unit: 'kg/L' },
        findings: [],
        freeAcid: [],
      },
      { do: 'log-level', containerId: barren, level: { value: '6.7', unit: 'L' } },
      mark(barren, 'leaving'),
      mark(barren, 'closed'),
      {
        do: 'log-lab-report',
        containerId: barren,
        laboratory: 'Weir Laboratory',
        sampledOn: '2026-05-17',
        results: [{ element: 'Cd', in: 'tclp', level: { value: '1.4', unit: 'mg/L' } }],
      },
    ];
    for (const intention of changing) {
      const before = now();
      await memory.does(intention);
      expect(now(), intention.do).not.toBe(before);
    }
    const written = memory.state.value.history.find(
      ({ body }) => body?.kind === 'stream-logged' && body.streamId === barrenStream,
    );
    if (written?.body?.kind !== 'stream-logged') throw new Error('no liquor');
    const { entry, body } = written;
    for (const colour of ['green', 'blue'] as const) {
      const before = now();
      await memory.does({
        do: 'correct-entry',
        corrects: entry.id,
        body: { ...body, colour },
        reason: 'seen in daylight',
      });
      expect(now(), 'corrected').not.toBe(before);
    }
    const corrected = memory.state.value.log.at(-1);
    const withCorrection = now();
    await memory.does({ do: 'withdraw-entry', withdraws: corrected?.id ?? '', reason: 'it was a shadow' });
    expect(now(), 'a correction withdrawn').not.toBe(withCorrection);
    const before = now();
    await memory.does(mark(wash, 'closed'));
    await memory.does({ do: 'add-person', name: 'Bo Lindqvist' });
    expect(now()).toBe(before);
  });

  test('is the same after a restart, whatever befell them before they were last empty', () => {
    const scribe = new Scribe();
    const befell = [can(1), wash(1, '2'), wash(2, '1'), pour(1, 1, '1'), tip(1, null, '1'), pour(2, 1, '1')];
    for (const body of [...befell, marked(1, 'closed'), marked(1, 'reopened'), marked(1, 'closed')])
      scribe.write(body);
    const signed = signedOver(scribe.state, [id('c0', 1)]);
    for (const from of [at(6), at(60), dayBefore(at(0), -300)])
      expect(signedOver(reopened(scribe.state, from, from), [id('c0', 1)])).toBe(signed);
  });
});
