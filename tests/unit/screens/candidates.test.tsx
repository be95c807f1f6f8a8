/** What the laws make of a container, as its pages tell it: every candidate with its number, no verdict, and whose word there is. */
import { cleanup, screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { lackingIn } from '../../../src/ledger/candidate-words';
import { bySchemes, type ContainerCandidates, candidatesOf } from '../../../src/ledger/container-candidates';
import type { Law } from '../../../src/ledger/entries/local-rules';
import { codeText, meaningOf, nameOfLack, schemeWords } from '../../../src/paperwork/candidate-words';
import { groundText, limitText, rangedText } from '../../../src/paperwork/ground-words';
import type { Candidate } from '../../../src/rules/candidate';
import { candidatePath, candidatesPath } from '../../../src/screens/candidates/addresses';
import { labelsKnown } from '../../../src/screens/labels/known';
import { choose, fill, open, tap, user } from '../../support/hand';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';

type Workshop = Awaited<ReturnType<typeof disposalState>>;

/** No page and no paper says so of a waste. */
const verdicts =
  /\b(safe|safely|compliant|compliance|complies|harmless|non-hazardous|not hazardous|allowed|fit for)\b/i;

function known({ state, barren }: Workshop, id: string = barren): ContainerCandidates {
  const container = state.value.containers.get(id);
  const all = container && candidatesOf(state.value, container);
  if (all === undefined || typeof all === 'string') throw new Error(`${all}`);
  return all;
}

const every = (all: ContainerCandidates): readonly Candidate[] => bySchemes(all).flatMap(([, list]) => list);

const goesBy = (workshop: Workshop, ...value: Law[]) =>
  workshop.does({
    do: 'state-local-rule',
    stated: { rule: 'laws', value },
    saidBy: 'County office',
    saidOn: '2026-05-10',
  });

const told = (): string => document.body.textContent ?? '';

async function openAll(workshop: Workshop, id: string = workshop.barren): Promise<void> {
  open(workshop.shell, candidatesPath(id));
  await screen.findByRole('heading', { name: 'Dilution is no treatment' });
}

async function openOne(workshop: Workshop, candidate: Pick<Candidate, 'scheme' | 'code'>): Promise<void> {
  open(workshop.shell, candidatePath(workshop.barren, candidate));
  await screen.findByRole('heading', { name: 'The rule' });
}

const part = (title: string) => {
  const found = screen.getByRole('heading', { level: 2, name: title }).closest('section');
  if (!found) throw new Error(title);
  return within(found as HTMLElement);
};

describe('the page of a container', () => {
  test('has every candidate of every law with its number against its limit, as the rules have them', async () => {
    const workshop = await disposalState();
    await goesBy(workshop, 'us-federal', 'us-california', 'eu');
    await openAll(workshop);
    const all = known(workshop);
    expect(bySchemes(all)).toHaveLength(7);
    for (const [scheme, candidates] of bySchemes(all)) {
      const links = part(schemeWords[scheme]).queryAllByRole('link');
      for (const candidate of candidates.filter(({ standing }) => standing !== 'open')) {
        const row = links.find(
          (one) => one.getAttribute('href') === `#/${candidatePath(workshop.barren, candidate)}`,
        );
        expect(row?.textContent, candidate.code).toContain(codeText(candidate.code));
        expect(row?.textContent, candidate.code).toContain(meaningOf(candidate));
        const [ground] = candidate.grounds;
        if (ground) expect(row?.textContent, candidate.code).toContain(groundText(ground, '.'));
      }
      for (const { code } of candidates.filter(({ standing }) => standing === 'open'))
        expect(part(schemeWords[scheme]).getByText(/^Not determined/).textContent).toContain(codeText(code));
    }
  });

  test('gathers what nobody determined by what it takes, each thing with all that waits for it', async () => {
    const workshop = await disposalState();
    await openAll(workshop);
    const all = known(workshop);
    const lacking = lackingIn(all);
    expect(lacking.map(({ kind }) => kind)).toContain('metals');
    const open_ = every(all).filter(({ standing }) => standing === 'open');
    expect(new Set(lacking.flatMap(({ decides }) => decides))).toEqual(new Set(open_));
    for (const { what } of lacking)
      for (const { name, decides } of what) {
        const item = part('Not determined')
          .getAllByRole('listitem', { hidden: true })
          .find(
            (one) =>
              one.textContent?.toLowerCase().startsWith(`${nameOfLack(name)}:`.toLowerCase()) &&
              !one.querySelector('ul'),
          );
        for (const { code } of decides)
          expect(item?.textContent, `${name} ${code}`).toContain(codeText(code));
      }
    const lead = lacking.flatMap(({ what }) => what).find(({ name }) => name === 'Pb');
    expect(lead?.decides.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['D008', 'Repr. 1A H360Df', 'UTS Pb']),
    );
  });

  test('tells apart what only the pH brings', async () => {
    const workshop = await disposalState();
    await openAll(workshop);
    const byPh = screen.getByRole('list', { name: `${schemeWords.clp}: By the pH alone` });
    expect(
      within(byPh)
        .getAllByRole('link')
        .map((one) => one.textContent),
    ).toEqual([expect.stringContaining('H314')]);
    const calculated = screen.getByRole('list', {
      name: `${schemeWords.clp}: By calculation from what is in it`,
    });
    expect(calculated.textContent).not.toContain('H314');
  });

  test('says which laws it looks at while nobody has said whose apply, and keeps to those that were said', async () => {
    const workshop = await disposalState();
    await openAll(workshop);
    expect(screen.getByText('Whose laws apply is not entered')).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Say whose laws apply' }).getAttribute('href')).toBe(
      '#/record/rules/laws',
    );
    expect(screen.queryByRole('heading', { name: schemeWords.california })).toBeNull();
    await goesBy(workshop, 'us-federal');
    await openAll(workshop);
    expect(screen.queryByText('Whose laws apply is not entered')).toBeNull();
    expect(screen.queryByRole('heading', { name: schemeWords['eu-hp'] })).toBeNull();
    expect(screen.getByRole('heading', { name: schemeWords.rcra })).toBeTruthy();
  });

  test('counts what nobody has confirmed, less what somebody has', async () => {
    const workshop = await disposalState();
    const firing = every(known(workshop)).filter(({ standing }) => standing === 'fires').length;
    await openAll(workshop);
    expect(screen.getByText('Candidates: nobody has confirmed any of them.')).toBeTruthy();
    const said = { scheme: 'rcra', code: 'D002', saidBy: 'Fenwater', saidOn: '2026-05-17' } as const;
    await workshop.does({
      do: 'answer-candidate',
      containerId: workshop.barren,
      answer: 'accepted',
      ...said,
    });
    await openAll(workshop);
    expect(screen.getByText(`Candidates: nobody has confirmed ${firing - 1} of ${firing}.`)).toBeTruthy();
    expect(screen.getByRole('link', { name: /^confirmed D002.*Confirmed by Fenwater/ })).toBeTruthy();
  });

  test('of contents that nobody knows puts no rule to it, and says what to do', async () => {
    const workshop = await disposalState();
    const { barren, shell, does } = workshop;
    await does({ do: 'mark-container', containerId: barren, mark: 'contents-doubtful' });
    open(shell, candidatesPath(barren));
    expect(await screen.findByText('Contents not determined')).toBeTruthy();
    expect(screen.getByRole('link', { name: 'What to test, whom to ask' }).getAttribute('href')).toBe(
      `#/containers/${barren}/unknown`,
    );
    expect(told()).not.toMatch(/D002|H3\d\d|UN.\d{4}/);
  });

  test('of an empty container says so', async () => {
    const workshop = await disposalState();
    const id = await workshop.opens('C-09', '5');
    open(workshop.shell, candidatesPath(id));
    expect(await screen.findByText('Empty')).toBeTruthy();
  });
});

test('no page of candidates says a verdict, and none a number to dilute to', async () => {
  const workshop = await disposalState();
  await goesBy(workshop, 'us-federal', 'us-california', 'eu');
  const check = (where: string) => {
    expect(told().length, where).toBeGreaterThan(100);
    expect(told(), where).not.toMatch(verdicts);
    expect(told(), where).not.toMatch(/dilute (it )?(until|to|with)|add \S+ of water|times as much water/i);
  };
  for (const id of [workshop.barren, workshop.wash]) {
    await openAll(workshop, id);
    check(id);
  }
  for (const candidate of every(known(workshop))) {
    await openOne(workshop, candidate);
    check(candidate.code);
  }
  open(workshop.shell, `${candidatePath(workshop.barren, { scheme: 'rcra', code: 'D002' })}/said`);
  await screen.findByRole('heading', { name: /D002/ });
  check('said');
  cleanup();
}, 60_000);

describe('the page of a candidate', () => {
  test('has its rule with whether it was read, each number and limit with a working, and why dilution is no way out', async () => {
    const workshop = await disposalState();
    const all = known(workshop);
    for (const candidate of every(all).filter(({ grounds }) => grounds.length > 0)) {
      await openOne(workshop, candidate);
      expect(told(), candidate.code).toContain(candidate.citation.rule);
      expect(told(), candidate.code).toContain(candidate.citation.cite);
      for (const [at, { figure, limit }] of candidate.grounds.entries()) {
        const href = (key: string) => `#/${candidatePath(workshop.barren, candidate)}/working/${key}-${at}`;
        const row = (key: string) =>
          part('The numbers')
            .getAllByRole('link')
            .find((one) => one.getAttribute('href') === href(key));
        for (const end of rangedText(figure, '.')
          .split(/[\s()]+| to /)
          .filter(Boolean))
          expect(row('figure')?.textContent?.replace(/\s/g, ''), candidate.code).toContain(
            end.replace(/\s/g, ''),
          );
        expect(row('limit')?.textContent?.replace(/\s/g, '')).toContain(
          limitText(limit, '.').replace(/\s/g, ''),
        );
      }
      expect(screen.getByRole('heading', { name: 'Dilution is no treatment' })).toBeTruthy();
      expect(told()).toMatch(/40 CFR 268\.3|Directive 2008\/98\/EC, Article 18/);
    }
  }, 60_000);

  test('opens the working of its number down to what was read', async () => {
    const workshop = await disposalState();
    const path = candidatePath(workshop.barren, { scheme: 'clp', code: 'Skin Sens. 1 H317' });
    open(workshop.shell, `${path}/working/figure-0`);
    expect(await screen.findByRole('heading', { level: 1, name: /Share of nickel dinitrate/ })).toBeTruthy();
    const [step] = screen.getAllByRole('link', { name: /worked out/ });
    expect(step?.getAttribute('href')).toBe(`#/${path}/working/figure-0/0`);
    expect(screen.getByRole('link', { name: 'Back' }).getAttribute('href')).toBe(`#/${path}`);
  });

  test('that nobody can decide says so, and names what is missing', async () => {
    const workshop = await disposalState();
    await openOne(workshop, { scheme: 'rcra', code: 'D008' });
    expect(screen.getByText('Nobody can say: what it rests on is not determined.')).toBeTruthy();
    expect(screen.getByText('Lead: not determined')).toBeTruthy();
    expect(screen.getByText('No number stands behind it: what it rests on is not determined.')).toBeTruthy();
  });

  test('of the list of waste has why, its mirror, and the codes not to be taken', async () => {
    const workshop = await disposalState();
    await openOne(workshop, { scheme: 'waste-list', code: '11 02 07*' });
    expect(screen.getByText('Its mirror entry:', { exact: false })).toBeTruthy();
    const wrong = known(workshop).wasteList?.wrong ?? [];
    expect(wrong.length).toBeGreaterThan(0);
    for (const { code, why } of wrong) {
      expect(screen.getByRole('list', { name: 'Not to be taken' }).textContent).toContain(codeText(code));
      expect(screen.getByRole('list', { name: 'Not to be taken' }).textContent).toContain(why.rule);
    }
  });

  test('of transport has the lines of both papers, and the reportable quantities', async () => {
    const workshop = await disposalState();
    await openOne(workshop, { scheme: 'transport', code: 'UN 3264' });
    const { candidates, reportable } = known(workshop).transport;
    const [first] = candidates;
    for (const line of Object.values(first?.described ?? {})) expect(screen.getByText(line)).toBeTruthy();
    expect(reportable.length).toBeGreaterThan(0);
    for (const { of } of reportable)
      expect(screen.getByRole('list', { name: 'Reportable quantity, one package' }).textContent).toContain(
        of,
      );
  });

  test('at an address that no law has says so', async () => {
    const workshop = await disposalState();
    open(workshop.shell, `containers/${workshop.barren}/candidates/no-law/D002`);
    expect(await screen.findByText('There is no such candidate.')).toBeTruthy();
  });
});

async function says(workshop: Workshop, code: string, answer: RegExp, day = '2026-05-17'): Promise<void> {
  open(workshop.shell, `${candidatePath(workshop.barren, { scheme: 'clp', code })}/said`);
  await screen.findByRole('heading', { name: /Who has said what/ });
  await user.click(screen.getByRole('radio', { name: answer }));
  await fill('Who said it', 'Fenwater Collection');
  await fill('When', day);
  await tap('Write it down');
}

const answers = ({ state, barren }: Workshop) =>
  state.value.containers.get(barren)?.answers.map(({ body }) => [body.scheme, body.code, body.answer]);

const onLabel = ({ state, barren }: Workshop) => labelsKnown(state.value, [barren]).get(barren)?.hazards;

describe('somebody’s word', () => {
  test('is asked for in full, written down, and goes on the label as theirs', async () => {
    const workshop = await disposalState();
    const { shell } = workshop;
    const address = candidatePath(workshop.barren, { scheme: 'clp', code: 'Skin Sens. 1 H317' });
    open(shell, `${address}/said`);
    await screen.findByRole('heading', { name: /Who has said what/ });
    await tap('Write it down');
    expect(screen.getByText('Choose one.')).toBeTruthy();
    expect(screen.getByText('Write something here.')).toBeTruthy();
    expect(answers(workshop)).toEqual([]);
    await fill('In which document', 'acceptance 14/9');
    await says(workshop, 'Skin Sens. 1 H317', /^It is so/);
    await waitFor(() => expect(answers(workshop)).toEqual([['clp', 'Skin Sens. 1 H317', 'accepted']]));
    expect(workshop.state.value.containers.get(workshop.barren)?.answers[0]?.body).toMatchObject({
      saidBy: 'Fenwater Collection',
      saidOn: '2026-05-17',
      document: 'acceptance 14/9',
    });
    expect(onLabel(workshop)).toMatchObject({ standing: { is: 'candidate' } });
    expect(onLabel(workshop)?.statements.map(({ code }) => code)).toContain('H317');
    await openOne(workshop, { scheme: 'clp', code: 'Skin Sens. 1 H317' });
    expect(screen.getByText('Confirmed by Fenwater Collection, 17 May')).toBeTruthy();
    expect(screen.getByText('Document: acceptance 14/9')).toBeTruthy();
  });

  test('gives way to a later one, and both stay in the record', async () => {
    const workshop = await disposalState();
    await says(workshop, 'Skin Sens. 1 H317', /^It is so/);
    await waitFor(() => expect(answers(workshop)).toHaveLength(1));
    workshop.pass(60_000);
    await says(workshop, 'Skin Sens. 1 H317', /^It is not so/);
    await waitFor(() => expect(answers(workshop)).toEqual([['clp', 'Skin Sens. 1 H317', 'refused']]));
    expect(workshop.state.value.log.filter(({ body }) => body.kind === 'candidate-answered')).toHaveLength(2);
    expect(onLabel(workshop)).toMatchObject({ standing: { is: 'candidate' } });
    await openOne(workshop, { scheme: 'clp', code: 'Skin Sens. 1 H317' });
    expect(screen.getByText('Not so, says Fenwater Collection, 17 May')).toBeTruthy();
  });

  test('was for other contents once something else came in: it waits again', async () => {
    const workshop = await disposalState();
    await says(workshop, 'Skin Sens. 1 H317', /^It is so/);
    await waitFor(() => expect(answers(workshop)).toHaveLength(1));
    workshop.pass(60_000);
    const more = { ...barrenLiquor, volume: { value: '0.50', unit: 'L' } } as const;
    await workshop.logs(workshop.barren, null, 'barren-liquor', more);
    await openOne(workshop, { scheme: 'clp', code: 'Skin Sens. 1 H317' });
    expect(screen.getByText('Fenwater Collection’s word of 17 May was for other contents')).toBeTruthy();
    await openAll(workshop);
    expect(screen.getByText('Candidates: nobody has confirmed any of them.')).toBeTruthy();
  });

  test('cannot be of a day that has not come', async () => {
    const workshop = await disposalState();
    await says(workshop, 'Skin Sens. 1 H317', /^It is so/, '2026-12-24');
    expect(answers(workshop)).toEqual([]);
    expect(screen.getByLabelText('When').getAttribute('aria-invalid')).toBe('true');
  });

  test('may be another code than the rules propose, which then stands beside them', async () => {
    const workshop = await disposalState();
    open(workshop.shell, `${candidatesPath(workshop.barren)}/another`);
    await screen.findByRole('heading', { name: /a code somebody gave/ });
    await tap('Write it down');
    expect(answers(workshop)).toEqual([]);
    await choose('Whose code', schemeWords['waste-list']);
    await fill('The code', ' 16 05 07* ');
    await fill('Who said it', 'Fenwater Collection');
    await fill('When', '2026-05-17');
    await tap('Write it down');
    await waitFor(() => expect(answers(workshop)).toEqual([['waste-list', '16 05 07*', 'accepted']]));
    await openAll(workshop);
    const given = screen.getByRole('list', { name: `${schemeWords['waste-list']}: Given by somebody` });
    expect(given.textContent).toMatch(/16.05.07\*.*Confirmed by Fenwater Collection/);
  });

  test('is not lost when the phone is full', async () => {
    const workshop = await disposalState();
    workshop.breakStore({ code: 'disk-full' });
    await says(workshop, 'Skin Sens. 1 H317', /^It is so/);
    expect((await screen.findByRole('alert')).textContent).toMatch(/phone is full/);
    workshop.breakStore(null);
    await tap('Write it down');
    await waitFor(() => expect(answers(workshop)).toHaveLength(1));
  });
});

test('a container’s page has the way there at once, and then what it comes to', async () => {
  const workshop = await disposalState();
  open(workshop.shell, `containers/${workshop.barren}`);
  const door = screen.getByRole('link', { name: /^Candidates/ });
  expect(door.getAttribute('href')).toBe(`#/${candidatesPath(workshop.barren)}`);
  const firing = every(known(workshop)).filter(({ standing }) => standing === 'fires').length;
  await waitFor(() => expect(door.textContent).toContain(`Not confirmed: ${firing}.`));
  expect(door.textContent).toContain('D002');
  expect(door.textContent).not.toMatch(verdicts);
});
