import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { ContainerOpened } from '../../../src/ledger/entries/containers';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { choose, fill, follow, open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';

const litres = (value: string) => ({ value, unit: 'L' }) as const;
const title = () => screen.getByRole('heading', { level: 1 }).textContent?.replaceAll('\u2011', '-');
const plain = (text: string | null | undefined) => (text ?? '').replaceAll('\u2011', '-');

async function withContainers() {
  const memory = await workshopInMemory();
  const can = (made?: Partial<ContainerOpened>) => openCan(memory, made);
  const log = (stream: StreamKind, volume: string, containerId?: string) =>
    logLiquid(memory, stream, litres(volume), containerId);
  const holds = (id: string) => Number(memory.state.value.containers.get(id)?.holds.volume.toFixed());
  /** The page moved on: past the moment in which a tap does not count. */
  const look = () => memory.pass(1000);
  const goTo = () => open(memory.shell, memory.path.value.join('/'));
  return { ...memory, can, log, holds, look, goTo };
}

describe('a waste that must not go into a container', () => {
  async function refused() {
    const p = await withContainers();
    const [nitrate, ammonia] = [await p.can(), await p.can()];
    await p.log('leach-liquor', '2', nitrate);
    await p.log('ammonia-test-waste', '0.1', ammonia);
    const stream = await p.log('ammonia-test-waste', '0.2');
    open(p.shell, `containers/${nitrate}/in/${stream}`);
    await tap(/^All of it/);
    await screen.findByText('Transfer refused');
    p.look();
    return { ...p, nitrate, ammonia, stream };
  }

  test('is refused by a page that names both, what would happen, and where it belongs', async () => {
    const { holds, nitrate } = await refused();
    expect(title()).toContain('Ammonia-test waste must not meet C-01.');
    expect(screen.getByRole('img', { name: /wall between the waste and C.01/ })).toBeTruthy();
    expect(
      screen.getByText(/C.01 holds leach liquor. Silver with ammonia can explode, even wet/),
    ).toBeTruthy();
    expect(screen.getByText(/Its own plastic bottle, never glass/)).toBeTruthy();
    expect(holds(nitrate)).toBe(2);
  });

  test('has its rule and source one tap away, and the way back', async () => {
    const { look } = await refused();
    await tap('Rule and source');
    look();
    const list = screen.getAllByRole('listitem');
    expect(list[0]?.textContent).toContain('Rule AG-NH3');
    expect(list[0]?.textContent).toContain('8 Jan 1996');
    expect(list[0]?.textContent).toContain('Seen in a copy of the source');
    expect(within(list[0] as HTMLElement).getByRole('img', { name: 'not to be done' })).toBeTruthy();
    await tap('Back');
    look();
    await tap('Back');
    expect(screen.getByLabelText('How much goes in')).toBeTruthy();
  });

  test('goes into a container of its own kind with one tap, with the amount that was written', async () => {
    const p = await refused();
    await tap('Back');
    await fill('How much goes in', '0.15');
    await tap('Put it in');
    await screen.findByText('Transfer refused');
    p.look();
    await user.click(screen.getByRole('button', { name: /^Put it in C.02/ }));
    expect(p.path.value.join('/')).toBe(`containers/${p.ammonia}/in/${p.stream}`);
    p.goTo();
    await tap('Put it in');
    await waitFor(() => expect(p.holds(p.ammonia)).toBe(0.25));
    expect(p.holds(p.nitrate)).toBe(2);
  });

  test('that is in already is written down, the emergency card opens, and leads on to the container', async () => {
    const p = await refused();
    await tap('Already done? Write it down.');
    await waitFor(() => expect(p.path.value.join('/')).toBe(`sos/ammonia-silver/then/${p.nitrate}`));
    expect(p.holds(p.nitrate)).toBe(2.2);
    p.goTo();
    expect(title()).toBe('Old ammonia and silver');
    follow(p.shell, /^Then: C.01 in the record$/);
    expect(title()).toBe('Container C-01');
    expect(plain(screen.getByText(/has met/).textContent)).toBe(
      'Leach liquor has met ammonia-test waste. They must not.',
    );
    follow(p.shell, /^What to do now$/);
    expect(title()).toBe('Old ammonia and silver');
    open(p.shell, 'today');
    follow(p.shell, /^C.01: leach liquor has met ammonia-test waste/);
    expect(title()).toBe('Old ammonia and silver');
  });

  test('a tap in the moment in which the page appears does not count', async () => {
    const p = await refused();
    await tap('Back');
    await tap(/^All of it/);
    await screen.findByText('Transfer refused');
    await tap('Already done? Write it down.');
    expect(screen.getByText('Transfer refused')).toBeTruthy();
    expect(p.holds(p.nitrate)).toBe(2);
  });

  test('goes into a new container, which is told what it is for', async () => {
    const p = await withContainers();
    const nitrate = await p.can();
    await p.log('leach-liquor', '2', nitrate);
    const stream = await p.log('ammonia-test-waste', '0.2');
    open(p.shell, `containers/${nitrate}/in/${stream}`);
    await tap(/^All of it/);
    await screen.findByText('Transfer refused');
    p.look();
    await tap('Put it in a new container');
    p.goTo();
    expect(screen.getByText(/Its own plastic bottle, never glass/)).toBeTruthy();
    await tap('Open this container');
    await waitFor(() => expect(p.path.value.join('/')).toMatch(new RegExp(`/in/${stream}$`)));
    p.goTo();
    await tap(/^All of it/);
    await waitFor(() => expect(p.holds(p.path.value[1] ?? '')).toBe(0.2));
  });
});

describe('taking out into a container where it must not go', () => {
  test('is refused with both codes; another container is chosen at the thumb, and the amount stays', async () => {
    const p = await withContainers();
    const [nitrate, chloride, empty] = [await p.can(), await p.can(), await p.can()];
    await p.log('barren-liquor', '2', nitrate);
    await p.log('chloride-test-waste', '0.5', chloride);
    open(p.shell, `containers/${chloride}/out`);
    await fill('Take out', '0.4');
    await choose('Into which', nitrate);
    await tap('Write it down');
    await screen.findByText('Transfer refused');
    expect(title()).toContain('C-02 must not meet C-01.');
    p.look();
    await user.click(screen.getByRole('button', { name: /^Put it in C.03/ }));
    await tap('Write it down');
    await waitFor(() => expect(p.holds(empty)).toBe(0.4));
    expect(p.holds(nitrate)).toBe(2);
  });

  test('goes into a new one, which is chosen in the form that was left', async () => {
    const p = await withContainers();
    const [nitrate, chloride] = [await p.can(), await p.can()];
    await p.log('barren-liquor', '2', nitrate);
    await p.log('chloride-test-waste', '0.5', chloride);
    open(p.shell, `containers/${chloride}/out`);
    await fill('Take out', '0.4');
    await choose('Into which', nitrate);
    await tap('Write it down');
    await screen.findByText('Transfer refused');
    p.look();
    await tap('Put it in a new container');
    p.goTo();
    await tap('Open this container');
    await waitFor(() => expect(p.path.value.join('/')).toBe(`containers/${chloride}/out`));
    p.goTo();
    await tap('Write it down');
    await waitFor(() => expect(p.holds(chloride)).toBeCloseTo(0.1));
    expect(p.holds(nitrate)).toBe(2);
  });
});

describe('logging a waste into a container where it must not go', () => {
  test('a described steel can is refused by its material, and taken when it is in already', async () => {
    const p = await withContainers();
    open(p.shell, `batches/${p.batch}/log/barren-liquor`);
    await fill('Volume', '2');
    await choose('Into which container', 'new');
    await choose('Made of', 'other');
    await fill('What it is made of', 'an old steel can');
    await tap('Keep this barren liquor');
    await screen.findByText('Transfer refused');
    expect(title()).toContain('Barren liquor must not stand in the new container.');
    expect(screen.getByText(/made of steel, galvanised or cast iron/)).toBeTruthy();
    expect(p.state.value.streams.size).toBe(0);
    p.look();
    await tap('Already done? Write it down.');
    await waitFor(() => expect(p.path.value.join('/')).toMatch(/^sos\/bulging-container\/then\//));
    expect(p.holds(p.path.value[3] ?? '')).toBe(2);
  });

  test('another container is taken with one tap, and nothing that was written is lost', async () => {
    const p = await withContainers();
    const [nitrate, ammonia] = [await p.can(), await p.can()];
    await p.log('leach-liquor', '2', nitrate);
    await p.log('ammonia-test-waste', '0.2', ammonia);
    open(p.shell, `batches/${p.batch}/log/barren-liquor`);
    await fill('Volume', '1.5');
    await choose('Into which container', ammonia);
    await tap('Keep this barren liquor');
    await screen.findByText('Transfer refused');
    p.look();
    await user.click(screen.getByRole('button', { name: /^Put it in C.01/ }));
    await tap('Keep this barren liquor');
    await waitFor(() => expect(p.holds(nitrate)).toBe(3.5));
    expect(p.holds(ammonia)).toBe(0.2);
  });
});

describe('a base that went onto ammonia waste', () => {
  test('is written down, and the emergency card opens at once', async () => {
    const p = await withContainers();
    const first = await p.can();
    await p.log('ammonia-test-waste', '0.5', first);
    const stages = [{ agent: 'hydrated-lime' as const }];
    const { body } = await p.does({
      do: 'log-treatment-happened',
      containerId: first,
      stages,
      clearance: null,
    });
    const treatmentId = body.kind === 'treatment-begun' ? body.treatmentId : '';
    open(p.shell, `treatment/${treatmentId}/dose`);
    await user.type(
      await screen.findByRole('textbox', { name: 'Weighed, as sold' }, { timeout: 5000 }),
      '20',
    );
    await tap('It is in');
    await waitFor(() => expect(p.path.value.join('/')).toBe(`sos/ammonia-silver/then/${first}`));
    expect(p.state.value.treatments.get(treatmentId)?.doses).toHaveLength(1);
  });
});

describe('looking a pair up', () => {
  const answer = () => plain(screen.getByRole('status').textContent);

  test('two that must not meet are told with codes, rule, source and how well it is known', async () => {
    const p = await withContainers();
    open(p.shell, 'meets');
    expect(answer()).toBe('Pick two things.');
    await choose('The one', 'nitric-acid');
    await choose('The other', 'hypochlorite');
    expect(answer()).toMatch(/^They must not meet\./);
    for (const said of [
      'Chlorine.',
      'Rule ACID-HYPO',
      'toxic gas',
      'Source: German',
      'Seen in a copy of the source',
    ])
      expect(answer()).toContain(said);
  });

  test('a blank is no leave, and nothing is called safe', async () => {
    const p = await withContainers();
    open(p.shell, 'meets');
    await choose('The one', 'leach-liquor');
    await choose('The other', 'peroxide');
    expect(answer()).toMatch(/^The chart says nothing: that is no leave\./);
    expect(document.body.textContent).not.toMatch(/\bsafe\b|compliant|harmless/i);
    await choose('The other', 'unlisted');
    expect(answer()).toMatch(/^Not determined/);
    await choose('The other', 'barren-liquor');
    expect(answer()).toMatch(/^Mind what comes of it\.This is no leave either/);
  });

  test('opens from a container with what is in it, and knows its strength and its material', async () => {
    const p = await withContainers();
    const first = await p.can();
    await p.log('leach-liquor', '2', first);
    open(p.shell, `containers/${first}`);
    follow(p.shell, /^May it meet/);
    await choose('The other', 'ammonia-test-waste');
    expect(answer()).toContain('Rule AG-NH3');
    await choose('The other', 'acetone');
    expect(answer()).toContain('Rule NO3-ORG');
  });

  test('a container of which nobody knows what is in it meets nothing', async () => {
    const p = await withContainers();
    const first = await p.can();
    await p.log('wash-water', '2', first);
    await p.does({ do: 'mark-container', containerId: first, mark: 'contents-doubtful' });
    open(p.shell, `containers/${first}/meets`);
    await choose('The other', 'sand');
    expect(answer()).toBe('Not determined: nobody knows what is in it. It meets nothing.');
  });

  test('stands within three taps of the emergency cards and of the record', async () => {
    const p = await withContainers();
    open(p.shell, 'sos');
    await tap('More');
    p.goTo();
    follow(p.shell, /^May these two meet/);
    expect(title()).toBe('May these two meet?');
    open(p.shell, 'record');
    follow(p.shell, /^May these two meet/);
    expect(title()).toBe('May these two meet?');
  });

  test('what was picked stands again after a reload', async () => {
    const p = await withContainers();
    open(p.shell, 'meets');
    await choose('The one', 'nitric-acid');
    await choose('The other', 'sulfide');
    open(p.shell, 'meets');
    expect(answer()).toContain('Rule ACID-SULF');
  });
});
