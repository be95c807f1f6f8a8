/** The workshop and its local rules, as every paper prints them. */
import { type Block, table } from '../document';
import { notDetermined } from '../words';
import type { DisposalData } from './disposal-data';
import { paperWords as w } from './paper-words';
import { dayOr, strong } from './printed';

export function placeBlocks({ workshop, localRules }: DisposalData): Block[] {
  return [
    { kind: 'heading', level: 1, text: w.workshop, anchor: 'place' },
    {
      kind: 'facts',
      facts: [
        { term: w.name, says: workshop.name },
        { term: w.address, says: workshop.address },
        { term: w.generatorNumber, says: workshop.generatorNumber },
        { term: w.authority, says: workshop.authority },
        { term: w.collector, says: workshop.collector },
        { term: w.licence, says: workshop.collectorLicence },
        { term: w.counter, says: workshop.hazardousWasteCounter },
        { term: w.emergency, says: workshop.emergencyNumber },
      ],
    },
    { kind: 'heading', level: 1, text: w.localRules },
    table(
      [
        { key: 'rule', head: w.rule, share: 26 },
        { key: 'value', head: w.value, share: 16 },
        { key: 'by', head: w.saidBy, share: 28 },
        { key: 'on', head: w.saidOn, share: 16 },
        { key: 'document', head: w.document, share: 20 },
      ],
      localRules.map(({ rule, value, saidBy, saidOn, document }) =>
        value === notDetermined
          ? { kind: 'one-answer' as const, name: strong(rule), says: w.ruleOpen }
          : {
              kind: 'cells' as const,
              cells: { rule: strong(rule), value, by: saidBy, on: dayOr(saidOn), document },
            },
      ),
    ),
  ];
}
