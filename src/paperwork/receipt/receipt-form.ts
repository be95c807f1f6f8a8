/** The receipt before the hand-over: what is known is printed, everything else has a line to write on. */

import type { DisposalData } from '../disposal/disposal-data';
import { strong } from '../disposal/printed';
import { holdsText, massText } from '../disposal/quantity-text';
import { type Block, table } from '../document';
import { notDetermined } from '../words';
import { receiptWords as w } from './receipt-words';

/** Known ones are printed; the others are written in by hand. */
function partiesOf({ workshop }: DisposalData): Block[] {
  const known = [
    [w.from, `${workshop.name}, ${workshop.address}`],
    [w.generatorNumber, workshop.generatorNumber],
    [w.to, workshop.collector],
    [w.licence, workshop.collectorLicence],
  ] as const;
  const open = known.slice(2).filter(([, says]) => says === notDetermined);
  const labels = [
    ...open.map(([term]) => term),
    w.at,
    w.count,
    w.driver,
    w.vehicle,
    w.document,
    w.destination,
  ];
  return [
    { kind: 'facts', facts: known.map(([term, says]) => ({ term, says })) },
    { kind: 'signatures', lines: labels.map((label) => ({ label })) },
  ];
}

export function receiptForm(data: DisposalData): Block[] {
  const { load } = data;
  return [
    { kind: 'part-head', title: w.title, anchor: 'receipt', line: w.formLine },
    ...partiesOf(data),
    table(
      [
        { key: 'code', head: w.code, share: 10 },
        { key: 'what', head: w.what, share: 40 },
        { key: 'recorded', head: w.recorded, share: 22 },
        { key: 'agreed', head: w.agreed, share: 11 },
        { key: 'differs', head: w.differs, share: 34 },
      ],
      [
        ...data.containers.map(({ code, name, quantity }) => ({
          kind: 'cells' as const,
          cells: {
            code: strong(code),
            what: name,
            recorded: `${holdsText(quantity)}; ${massText(quantity)}`,
            agreed: w.box,
            differs: w.box,
          },
        })),
        {
          kind: 'cells' as const,
          cells: {
            code: strong(w.total),
            what: strong(w.packages(load.containers)),
            recorded: strong(`${holdsText(load)}; ${massText(load)}`),
            agreed: w.box,
            differs: w.box,
          },
        },
      ],
    ),
    {
      kind: 'together',
      parts: [
        { kind: 'paragraph', text: w.meaning },
        { kind: 'signatures', lines: [{ label: w.generatorSigns }, { label: w.collectorSigns }] },
      ],
    },
  ];
}
