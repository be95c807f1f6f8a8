/** Words of the hand-over receipt, in its data and around it. */
import { joined, withUnit } from '../words';

export const receiptWords = {
  title: 'Hand-over receipt',
  formLine: 'To fill in by hand when the containers go. Both keep a copy.',
  paperLine: (name: string, made: string, by: string) => `${name}. Made ${made}; by: ${by}.`,
  subject: (codes: string) => `Hand-over of containers: ${codes}`,
  runningHead: (name: string, made: string) => `Hand-over receipt. ${name}, ${made}`,
  attachment: 'Everything this receipt says, as data; its hash is over the canonical JSON (RFC 8785).',
  from: 'Handed over by',
  generatorNumber: 'Generator number',
  telephone: 'Telephone',
  to: 'Taken by',
  licence: 'Licence',
  contact: 'Contact',
  driver: 'Driver',
  vehicle: 'Vehicle, number plate',
  document: 'Number of the collector’s document',
  destination: 'Destination',
  at: 'Day and hour',
  count: 'Number of containers taken',
  handedOver: 'Handed over',
  set: 'Papers that went with it',
  setHash: (hash: string) => `set of disposal papers, SHA-256 ${hash}`,
  note: 'Note',
  collectorName: 'Collector, name',
  code: 'Code',
  what: 'What it is, by the record',
  recorded: 'By the record',
  agreed: 'Agreed',
  differs: 'Differs: write what',
  box: '□',
  theirs: 'By the collector',
  comparison: 'Compared',
  since: 'Since then',
  packages: (n: number) => (n === 1 ? 'One container' : `${n} containers`),
  total: 'In all',
  meaning:
    'Signing says that these containers went from one to the other, and what each of the two read of their amounts. It does not say what is in them: for that see the sheets.',
  generatorSigns: 'For the generator: name, date, signature',
  collectorSigns: 'For the collector: name, date, signature',
  signedBy: (whose: string, name: string, when: string, typed: boolean) =>
    `${whose}: ${name}, ${when}${typed ? ', in letters in place of a signature' : ''}`,
  generator: 'For the generator',
  collector: 'For the collector',
  signatureOf: (name: string) => `Signature of ${name}`,
  returned: 'Refused, and here again',
  returnedLine: (on: string, codes: readonly string[], by: string, why: string, document: string) =>
    `${on}: ${joined(codes)}. Refused by: ${by}. Why: ${why} Paper: ${document}.`,
  proofs: 'Proof of disposal',
  proofLine: (
    on: string,
    codes: readonly string[],
    by: string,
    how: string,
    document: string,
    dated: string,
  ) =>
    `Filed ${on}: ${joined(codes)}. Stated by: ${by}. Done with it: ${how}. Paper: ${document}, dated ${dated}.`,
  awaited: (codes: readonly string[], due: string) =>
    `No proof is filed yet of ${joined(codes)}. It must be here by: ${due}.`,
  noneAwaited: 'No proof is awaited.',
  // Data
  asRecorded: 'as the record says',
  withCollector: 'with the collector; no proof yet',
  cameBack: (day: string) => `came back ${day}`,
  proofFiled: (day: string) => `proof filed ${day}`,
  difference: (share: string, low: string, high: string) =>
    share === low && share === high
      ? withUnit(share, '%')
      : `${withUnit(share, '%')} (${low} to ${withUnit(high, '%')})`,
  cautions: [
    'This is the workshop’s own receipt, no form of an authority: it takes the place of no manifest, consignment note or transport document.',
    '“Not determined” means not measured or not said, not zero.',
    'What became of the waste is proved by whoever treated it, not by this paper. The collector and the authority confirm what is due.',
  ],
} as const;
