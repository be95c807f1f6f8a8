/** What checking a file comes to, in words: for the command and for the screen. */
import type { Wrong } from '../../ledger/verify';
import { joined } from '../words';
import { registerWords } from './register-words';
import type { Unreadable, Verdict } from './verify-file';
import type { FileWrong, WhyEntry } from './wrong';

const { days, entries } = registerWords;

const hash = (text: string | null): string => (text === null ? 'none' : `${text.slice(0, 16)}…`);

const schemaText = (issues: Extract<Wrong, { code: 'schema' }>['issues']): string => {
  const [first] = issues;
  return first ? `not in the form of an entry at ${first.path || 'its beginning'}: ${first.message}` : '';
};

function whyText(why: WhyEntry): string {
  switch (why.code) {
    case 'schema':
      return schemaText(why.issues);
    case 'hash-differs':
      return `altered: its hash is stated as ${why.stated}, but what it says gives ${why.computed}`;
    case 'counter-gap':
      return `the chain of its device has a gap before it: ${why.expected} was to follow, ${why.found} does`;
    case 'previous-does-not-match':
      return `it names ${hash(why.stated)} as the hash of the entry before it, which is ${hash(why.expected)}`;
    case 'damaged':
      return `damaged: line ${why.line} of the file cannot be read any more`;
    case 'missing':
      return 'missing: it is listed, but does not stand in the file';
    case 'not-listed':
      return 'it stands in the file, but is not listed';
    case 'twice':
      return 'it stands there twice';
    case 'out-of-order':
      return 'it does not stand in the order of the record';
    case 'line-differs':
      return `the line that prints it says something else than the entry (${why.member})`;
    default:
      return why satisfies never;
  }
}

/** "Entry 12 (C-07), container opened: C-07: altered: …" */
export function wrongText(wrong: FileWrong): string {
  if (wrong.of === 'entry') {
    const { number, codes, says, id } = wrong;
    const name = `Entry ${number ?? 'without a number'}${codes.length > 0 ? ` (${joined(codes)})` : ''}`;
    return `${[name, says].filter((text) => text !== null).join(', ')}: ${whyText(wrong.why)}${id === null ? '' : `. Its id: ${id}`}`;
  }
  if (wrong.of === 'chain')
    return {
      'head-differs': `Device ${wrong.device}: its entries go on to another last entry than the file states`,
      'link-twice': `Device ${wrong.device}: one place in its chain is taken twice`,
      'not-shown': `Device ${wrong.device}: its chain does not show all of the period; entries may be left out`,
    }[wrong.code];
  return wrong.code === 'schema'
    ? `Not in its form at ${wrong.path || 'its beginning'}: ${wrong.message}`
    : `Not as it was made: its content hash is stated as ${wrong.stated}, but the content gives ${wrong.computed}`;
}

export const mostNamed = 20;

function unreadableText(why: Unreadable): string {
  switch (why.code) {
    case 'empty':
      return 'The file is empty. Fetch it again.';
    case 'too-large':
      return 'The file is too large to be looked at (more than 256 MB unpacked). Check the JSON of a shorter period.';
    case 'broken-archive':
      return 'The archive cannot be unpacked: it is damaged, not whole, or locked with a password. Fetch it again.';
    case 'broken-pdf':
      return 'The PDF cannot be read: it is damaged or not whole. Fetch it again, or take the JSON that was saved with it.';
    case 'nothing-inside':
      return 'There is no data of Leesbook inside. Another program may have saved it anew without: take the file as it was made, or the JSON.';
    case 'not-ours':
      return 'This is neither a register nor a disposal paper as data. Choose the JSON or the PDF that Leesbook made.';
    case 'no-json':
      return `The file cannot be read${why.line === null ? '' : ` from line ${why.line} on`}: it is damaged, or no JSON. Fetch it again.`;
    case 'another-version':
      return `It is of version ${JSON.stringify(why.v)}, which this Leesbook does not know. Take a newer one.`;
    case 'newer-entry':
      return `Entry ${why.number ?? 'without a number'} is of a kind that this Leesbook does not know, or of a later form: “${why.kind}”. Nothing is found wrong, and not all is checked. Take a newer one.`;
    default:
      return why satisfies never;
  }
}

const limits = 'It does not prove that what was written is true, nor that nobody wrote all of it anew.';

export type VerdictWords = {
  readonly outcome: 'whole' | 'wrong' | 'unreadable';
  readonly title: string;
  readonly lines: readonly string[];
};

export function verdictWords(verdict: Verdict): VerdictWords {
  if (verdict.whole === null)
    return { outcome: 'unreadable', title: 'not checked', lines: [unreadableText(verdict.why)] };
  if (!verdict.whole) {
    const { wrong } = verdict;
    const more = wrong.length - mostNamed;
    return {
      outcome: 'wrong',
      title: 'NOT whole',
      lines: [
        ...wrong.slice(0, mostNamed).map((one) => `${wrongText(one)}.`),
        ...(more > 0 ? [`${more} more.`] : []),
      ],
    };
  }
  if (verdict.kind === 'disposal-paper')
    return {
      outcome: 'whole',
      title: `whole: disposal paper of ${joined(verdict.codes)}`,
      lines: [
        `Content hash ${verdict.contentHash}`,
        'It is as it was made. The entries it names are not in it.',
      ],
    };
  const { heads, byHash, firstDay, lastDay, contentHash } = verdict;
  return {
    outcome: 'whole',
    title: `whole: ${entries(verdict.entries)}, heads ${heads.map((head) => head.hash).join(' ')}`,
    lines: [
      `Register of ${days(firstDay, lastDay)}; ${entries(verdict.listed)} listed${byHash > 0 ? `, ${byHash} more by hash alone` : ''}.`,
      ...heads.map(({ device, counter, hash: last }) => `Device ${device}: last entry ${counter}, ${last}`),
      `Content hash ${contentHash}`,
      limits,
    ],
  };
}
