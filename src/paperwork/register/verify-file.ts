/** Whether a file is as it was made: a register, a disposal paper, a PDF with such data inside, or an archive of them. */
import { strFromU8, unzipSync } from 'fflate';
import { hashOf } from '../../ledger/seal';
import { DisposalData } from '../disposal/disposal-data';
import { type NewerEntry, type RegisterVerdict, verifyRegister } from './verify-register';
import type { FileWrong } from './wrong';

/** Data that carries its own hash and no entries. */
type PaperVerdict =
  | {
      readonly whole: true;
      readonly kind: 'disposal-paper';
      readonly codes: readonly string[];
      readonly contentHash: string;
    }
  | { readonly whole: false; readonly kind: 'disposal-paper'; readonly wrong: readonly FileWrong[] };

/** Why nothing can be said of a file. `line` counts from 1. */
export type Unreadable =
  | { readonly code: 'empty' | 'too-large' | 'broken-archive' | 'broken-pdf' | 'nothing-inside' | 'not-ours' }
  | { readonly code: 'no-json'; readonly line: number | null }
  | { readonly code: 'another-version'; readonly v: unknown }
  | NewerEntry;

export type Verdict = RegisterVerdict | PaperVerdict | { readonly whole: null; readonly why: Unreadable };

/** `name` says where it lay: the file itself, or "register.json in papers.zip". */
export type Checked = { readonly name: string; readonly verdict: Verdict };

/** Files inside a PDF, by their names. It throws where the PDF cannot be read. */
export type InsidePdf = (pdf: Uint8Array) => Promise<Readonly<Record<string, Uint8Array>>>;

/**
 * The most bytes that are looked at, also after an archive is unpacked. Reasoned: a hundred thousand entries, a kilobyte each,
 * with their lines, take less; a phone has room for this once as text and once as data.
 */
export const mostBytes = 256 * 1024 * 1024;

const unreadable = (why: Unreadable): Verdict => ({ whole: null, why });

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function verifyPaper(raw: Readonly<Record<string, unknown>>): PaperVerdict {
  const { contentHash: stated, ...rest } = raw;
  const computed = hashOf(rest);
  const read = DisposalData.safeParse(raw);
  const wrong: FileWrong[] = read.success
    ? []
    : read.error.issues
        .slice(0, 1)
        .map(({ path, message }) => ({ of: 'file', code: 'schema', path: path.join('.'), message }));
  if (stated !== computed) wrong.push({ of: 'file', code: 'content-hash', stated: String(stated), computed });
  return read.success && wrong.length === 0
    ? {
        whole: true,
        kind: 'disposal-paper',
        codes: read.data.containers.map(({ code }) => code),
        contentHash: read.data.contentHash,
      }
    : { whole: false, kind: 'disposal-paper', wrong };
}

const parsed = (text: string): { readonly value: unknown } | null => {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return null;
  }
};

/** Our registers have each entry on a line of its own: damage to one is found in its line. */
function verifyDamaged(text: string): Verdict {
  const lines = text.split('\n');
  const isRegister = lines.slice(0, 5).some((line) => /^"kind": ?"register",?$/.test(line));
  const at = lines.findIndex((line) => !/^("|[[\]{}]?,?$)/.test(line) && !parsed(line.replace(/,$/, '')));
  const number = Number(/"number":(\d+),/.exec(lines[at] ?? '')?.[1] ?? 0);
  if (!isRegister || number === 0) return unreadable({ code: 'no-json', line: at < 0 ? null : at + 1 });
  const why = { code: 'damaged', line: at + 1 } as const;
  return {
    whole: false,
    kind: 'register',
    wrong: [{ of: 'entry', number, id: null, codes: [], says: null, why }],
  };
}

function verifyText(text: string): Verdict {
  if (text.trim() === '') return unreadable({ code: 'empty' });
  const read = parsed(text);
  if (!read) return verifyDamaged(text);
  const { value } = read;
  if (!isObject(value) || (value.kind !== 'register' && value.kind !== 'disposal-paper'))
    return unreadable({ code: 'not-ours' });
  if (value.v !== 1) return unreadable({ code: 'another-version', v: value.v });
  return value.kind === 'register' ? verifyRegister(value) : verifyPaper(value);
}

const begins = (bytes: Uint8Array, text: string): boolean =>
  strFromU8(bytes.subarray(0, text.length), true) === text;

const isOurs = ({ verdict }: Checked): boolean => verdict.whole !== null || verdict.why.code !== 'not-ours';

/** Of what lies inside a file, what is ours; where nothing is, that. */
const inside = (name: string, checked: readonly Checked[]): readonly Checked[] => {
  const ours = checked.filter(isOurs);
  return ours.length > 0 ? ours : [{ name, verdict: unreadable({ code: 'nothing-inside' }) }];
};

async function verifyPdf(name: string, bytes: Uint8Array, insidePdf: InsidePdf): Promise<readonly Checked[]> {
  let files: Readonly<Record<string, Uint8Array>>;
  try {
    files = await insidePdf(bytes);
  } catch {
    return [{ name, verdict: unreadable({ code: 'broken-pdf' }) }];
  }
  return inside(
    name,
    Object.entries(files).map(([file, content]) => ({
      name: `${file} in ${name}`,
      verdict: verifyText(new TextDecoder().decode(content)),
    })),
  );
}

function unpacked(bytes: Uint8Array): Readonly<Record<string, Uint8Array>> | Unreadable {
  let room = mostBytes;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        const wanted = /\.(json|pdf)$/i.test(name);
        if (wanted) room -= originalSize;
        return wanted && room >= 0;
      },
    });
    return room < 0 ? { code: 'too-large' } : files;
  } catch {
    return { code: 'broken-archive' };
  }
}

const isUnreadable = (value: object): value is Unreadable =>
  'code' in value && typeof value.code === 'string';

/**
 * @param name what the file is called
 * @returns what was found, one for each that can be checked; never empty
 */
export async function verifyFile(
  name: string,
  bytes: Uint8Array,
  insidePdf: InsidePdf,
): Promise<readonly Checked[]> {
  if (bytes.length > mostBytes) return [{ name, verdict: unreadable({ code: 'too-large' }) }];
  if (begins(bytes, '%PDF-')) return verifyPdf(name, bytes, insidePdf);
  if (!begins(bytes, 'PK')) return [{ name, verdict: verifyText(new TextDecoder().decode(bytes)) }];
  const files = unpacked(bytes);
  if (isUnreadable(files)) return [{ name, verdict: unreadable(files) }];
  const checked: Checked[] = [];
  for (const [file, content] of Object.entries(files)) {
    const path = `${file} in ${name}`;
    if (begins(content, '%PDF-')) checked.push(...(await verifyPdf(path, content, insidePdf)));
    else checked.push({ name: path, verdict: verifyText(new TextDecoder().decode(content)) });
  }
  return inside(name, checked);
}
