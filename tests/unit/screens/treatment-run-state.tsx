/** An invented can of barren liquor ready to be treated, and a phone that follows its own addresses. */
import { cleanup, configure, render, screen } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { loadEveryday, screenAt } from '../../../src/app/routes';
import type { Finding } from '../../../src/ledger/entries/findings';
import type { IntentionOf } from '../../../src/ledger/intention';
import { ShellProvider } from '../../../src/screens/shell';
// Pages that are fetched when first opened are here already: a test waits for the page, not for its code.
import '../../../src/screens/treatment/bench-test';
import '../../../src/screens/treatment/run-already';
import '../../../src/screens/treatment/run-begin';
import '../../../src/screens/treatment/run-choose';
import '../../../src/screens/treatment/run-dose';
import '../../../src/screens/treatment/run-end';
import '../../../src/screens/treatment/run-page';
import '../../../src/screens/treatment/run-reading';
import '../../../src/screens/treatment/run-working';
import { disposalState } from '../paperwork/disposal-state';

await loadEveryday();

export const user = userEvent.setup();
// The model takes a moment, and longer on a machine that has other work.
configure({ asyncUtilTimeout: 4_000 });
const minute = 60_000;

const list = (
  checklist: string,
  step: string,
  containerId: string,
  at: string,
  until: string,
): IntentionOf<'finish-checklist'> => ({
  do: 'finish-checklist',
  runId: crypto.randomUUID(),
  step,
  batchId: null,
  containerId,
  checklist: { id: checklist, version: '1', hash: '0'.repeat(64), title: 'Neutralise with lime' },
  outcome: 'cleared',
  startedAt: at,
  finishedAt: at,
  validUntil: until,
  answers: [{ item: 'lim-law', ask: 'Does your local rule allow this?', kind: 'choice', answer: 'yes', at }],
});

/** Can C-07 with 6.70 L of 17.6 g/L copper, 6.2 g/L nickel, 0.58 mol/L acid. */
export async function runState() {
  const memory = await disposalState();
  const { shell, does, now, pass } = memory;
  const later = (minutes: number): string => new Date(Date.parse(now.value) + minutes * minute).toISOString();

  /** Shows the address that the phone is at, anew as after a reload. */
  function show(address?: string): void {
    if (address !== undefined) shell.go(address);
    cleanup();
    const found = screenAt(shell.path.value);
    if (!found) throw new Error(`nothing at ${shell.path.value.join('/')}`);
    render(
      <ShellProvider value={shell}>
        <found.screen at={found.at} />
      </ShellProvider>,
    );
  }

  const title = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });

  /** Follows a link on the page. */
  async function follow(name: string | RegExp): Promise<void> {
    const href = (await screen.findByRole('link', { name })).getAttribute('href') ?? '';
    show(href.replace(/^#\//, ''));
  }

  return {
    ...memory,
    later,
    show,
    title,
    follow,
    allows: (value: 'yes' | 'no' = 'yes') =>
      does({
        do: 'state-local-rule',
        stated: { rule: 'treatment-allowed', value },
        saidBy: 'County office',
        saidOn: '2026-05-02',
      }),
    clears: () => does(list('neutralise-lime', 'neutralisation', memory.barren, now.value, later(120))),
    /** Begun without the pages. */
    begun: async (targetPh = '9') => {
      const { body } = await does({
        do: 'log-treatment-happened',
        containerId: memory.barren,
        stages: [{ agent: 'hydrated-lime', targetPh: { value: targetPh, unit: '1' } }],
        targetPh: { value: targetPh, unit: '1' },
        clearance: null,
      });
      return body.kind === 'treatment-begun' ? body.treatmentId : '';
    },
    dose: (treatmentId: string, grams: string) =>
      does({ do: 'log-dose', treatmentId, agent: 'hydrated-lime', mass: { value: grams, unit: 'g' } }),
    reads: (treatmentId: string, ph: string, celsius?: string, findings: Finding[] = []) =>
      does({
        do: 'log-pot-reading',
        treatmentId,
        ph: { value: { value: ph, unit: '1' }, instrument: 'meter' },
        ...(celsius === undefined ? {} : { temperature: { value: celsius, unit: '°C' } }),
        ...(findings.length > 0 ? { findings } : {}),
      }),
    waits: (minutes: number) => pass(minutes * minute),
  };
}
