/** What a transport document or a manifest asks for, as data for the forms of others: every cell said, or "not determined". */
import { schemeWords } from '../candidate-words';
import { type Block, type Row, table } from '../document';
import { joined, notDetermined } from '../words';
import type { ContainerData, DisposalData } from './disposal-data';
import { paperWords as p } from './paper-words';
import { strong } from './printed';
import { holdsText, massText } from './quantity-text';
import type { Carriage } from './set-data';
import { setPaperWords as w } from './set-paper-words';

const partiesOf = ({ workshop }: DisposalData): Block => ({
  kind: 'facts',
  facts: [
    { term: w.generator, says: workshop.name },
    { term: w.generatorNumber, says: workshop.generatorNumber },
    { term: w.site, says: workshop.address },
    { term: w.telephone, says: workshop.telephone },
    { term: w.emergencyTelephone, says: workshop.emergencyNumber },
    { term: w.transporter, says: workshop.collector },
    { term: w.transporterNumber, says: workshop.collectorLicence },
    { term: w.facility, says: w.byCollector },
    { term: w.documentNumber, says: w.byCollector },
  ],
});

type EntryKey = 'code' | 'number' | 'name' | 'class' | 'group' | 'standing';

function entryRows({ code, carriage }: ContainerData): Row<EntryKey>[] {
  const [best, ...others] = carriage.entries;
  if (best === undefined) return [{ kind: 'one-answer', name: strong(code), says: carriage.noEntry }];
  const { number, name, technicalNames, standing, said, adr, usa } = best;
  const numbers = [...new Set(others.map((one) => w.numberStanding(one.number, one.standing)))];
  return [
    {
      kind: 'cells',
      cells: {
        code: strong(code),
        number: strong(number),
        name: w.namesOf(name, technicalNames === notDetermined ? w.noNames : technicalNames.join(', ')),
        class: best.class,
        group: best.packingGroup,
        standing: `${standing}; ${said}`,
      },
    },
    { kind: 'note', text: w.described(adr, usa, numbers) },
  ];
}

/** Codes of whom the same is said together; those of a State behind the others, under its name. */
function codesOf({ wasteCodes }: Carriage): string {
  const ofState = (scheme: string): boolean => scheme === schemeWords.california;
  const bySaid = new Map<string, string[]>();
  for (const { scheme, code, said } of wasteCodes) {
    const key = JSON.stringify([ofState(scheme) ? scheme : '', said]);
    bySaid.set(key, [...(bySaid.get(key) ?? []), code]);
  }
  const told = [...bySaid].map(([key, codes]) => {
    const [scheme, said] = JSON.parse(key) as [string, string];
    return w.codesSaid(scheme, codes, said);
  });
  const none = wasteCodes.every(({ scheme }) => ofState(scheme));
  return [...(none ? [notDetermined] : []), ...told].join('; ');
}

function reportableOf({ reportable, entries }: Carriage): string {
  if (reportable.length === 0) return entries.length === 0 ? notDetermined : w.notReached;
  const names = (reached: string) => [
    ...new Set(reportable.filter((one) => one.reached === reached).map(({ of }) => of)),
  ];
  const [yes, open] = [names('yes'), names(notDetermined)];
  const said = [
    ...(yes.length > 0 ? [w.reached(yes)] : []),
    ...(open.length > 0 ? [w.reachedOpen(open)] : []),
  ];
  return said.length === 0 ? w.notReached : said.join('; ');
}

const packagesOf = ({ containers, load }: DisposalData): Block =>
  table(
    [
      { key: 'code', head: p.code, share: 10 },
      { key: 'package', head: w.package, share: 28 },
      { key: 'holds', head: w.holds, share: 14 },
      { key: 'mass', head: w.massHead, share: 17 },
      { key: 'codes', head: w.wasteCodes, share: 38 },
      { key: 'reportable', head: w.reportable, share: 26 },
    ],
    [
      ...containers.map(({ code, quantity, carriage }) => ({
        kind: 'cells' as const,
        cells: {
          code: strong(code),
          package: carriage.packages,
          holds: holdsText(quantity),
          mass: massText(quantity),
          codes: codesOf(carriage),
          reportable: reportableOf(carriage),
        },
      })),
      {
        kind: 'note',
        text: `${w.total}: ${w.containers(load.containers)}, ${holdsText(load)}, ${massText(load)}. ${w.packagingMark}`,
      },
    ],
  );

/** Each rule once, with the containers that it concerns. */
function heedOf({ containers }: DisposalData): Block[] {
  const byRule = new Map<string, { rule: string; cite: string; codes: string[] }>();
  for (const { code, carriage } of containers)
    for (const { rule, cite } of carriage.heed) {
      const one = byRule.get(rule) ?? { rule, cite, codes: [] };
      one.codes.push(code);
      byRule.set(rule, one);
    }
  return [...byRule.values()].map(({ rule, cite, codes }) => ({
    kind: 'mark',
    mark: 'stop',
    text: [{ text: `${joined(codes)}. `, strong: true }, { text: `${rule} (${cite})` }],
  }));
}

export const transportBlocks = (data: DisposalData): Block[] => [
  { kind: 'part-head', title: w.parts.transport, anchor: 'transport', line: w.transportLine },
  partiesOf(data),
  ...heedOf(data),
  { kind: 'heading', level: 1, text: w.carriage },
  table(
    [
      { key: 'code', head: p.code, share: 10 },
      { key: 'number', head: w.entry, share: 12 },
      { key: 'name', head: w.properName, share: 52 },
      { key: 'class', head: w.class, share: 11 },
      { key: 'group', head: w.group, share: 9 },
      { key: 'standing', head: w.standing, share: 34 },
    ],
    data.containers.flatMap(entryRows),
  ),
  { kind: 'heading', level: 1, text: w.packages },
  packagesOf(data),
];
