/**
 * Reads the directory of a zip that lies in a Blob, so that an archive larger than memory can be looked into file by file. fflate,
 * which packs and unpacks, wants the whole of it at once or trusts what stands between the files. Stricter than a zip need be:
 * what none of our archives has is refused.
 * Source: APPNOTE.TXT 6.3.10 (4.3.7 local header, 4.3.9 data descriptor, 4.3.12 directory, 4.3.16 end). Status: memory.
 */
import { sealLength } from './manifest';
import { refuse } from './refusal';

/** `at` is where its packed bytes begin. */
export type Packed = {
  readonly name: string;
  readonly deflated: boolean;
  readonly at: number;
  readonly packedBytes: number;
  readonly bytes: number;
};

export type Directory = {
  readonly files: ReadonlyMap<string, Packed>;
  /** The comment at its end, and where it begins. */
  readonly comment: string;
  readonly commentAt: number;
};

const signature = { local: 0x04034b50, central: 0x02014b50, end: 0x06054b50 } as const;
const length = { local: 30, central: 46, end: 22 } as const;

/** With or without its signature; nothing else may stand between two files. */
const descriptorLengths: readonly number[] = [0, 12, 16];

/** Bytes that the directory of the most files takes; more is not read into memory. */
const mostDirectoryBytes = 16 * 1024 * 1024;

const broken = (detail: string): never => refuse({ code: 'broken-archive', detail });

const viewOf = async (file: Blob, from: number, to: number): Promise<DataView<ArrayBuffer>> => {
  const bytes = await file.slice(from, to).arrayBuffer();
  return bytes.byteLength === to - from ? new DataView(bytes) : broken('cut short');
};

type Look = (from: number, to: number) => Promise<DataView>;

/** Bytes read at once: tens of thousands of tiny files are looked at in a few hundred readings, not in one each. */
const windowBytes = 16 * 1024;

function windowOn(file: Blob): Look {
  let [start, view] = [0, new DataView(new ArrayBuffer(0))];
  return async (from, to) => {
    if (from < start || to > start + view.byteLength) {
      const end = Math.min(file.size, Math.max(to, from + windowBytes));
      [start, view] = [from, await viewOf(file, from, end)];
    }
    return new DataView(view.buffer, from - start, to - from);
  };
}

function asciiIn(view: DataView, from: number, to: number): string {
  let text = '';
  for (let at = from; at < to; at += 1) {
    const code = view.getUint8(at);
    if (code < 0x20 || code > 0x7e) return broken('a name with other signs than ours');
    text += String.fromCharCode(code);
  }
  return text;
}

type End = {
  readonly count: number;
  readonly from: number;
  readonly bytes: number;
  readonly comment: string;
  readonly at: number;
};

/** The end has our comment or none. */
async function endOf(file: Blob): Promise<End> {
  for (const commentLength of [sealLength, 0]) {
    const at = file.size - length.end - commentLength;
    if (at < 0) continue;
    const view = await viewOf(file, at, file.size);
    if (view.getUint32(0, true) !== signature.end || view.getUint16(20, true) !== commentLength) continue;
    const [disk, first, here, count] = [4, 6, 8, 10].map((place) => view.getUint16(place, true));
    if (disk !== 0 || first !== 0 || here !== count || count === undefined) return broken('in several parts');
    const comment = asciiIn(view, length.end, length.end + commentLength);
    return { count, bytes: view.getUint32(12, true), from: view.getUint32(16, true), comment, at };
  }
  return broken('no end of an archive');
}

type Row = Omit<Packed, 'at'> & { readonly flags: number; readonly header: number };

function rowsIn(view: DataView, count: number): readonly Row[] {
  const rows: Row[] = [];
  let at = 0;
  for (let n = 0; n < count; n += 1) {
    if (at + length.central > view.byteLength || view.getUint32(at, true) !== signature.central)
      return broken('the directory');
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const [packedBytes, bytes] = [view.getUint32(at + 20, true), view.getUint32(at + 24, true)];
    const [named, extra, comment] = [28, 30, 32].map((place) => view.getUint16(at + place, true));
    if (!named || extra !== 0 || comment !== 0 || at + length.central + named > view.byteLength)
      return broken('the directory');
    if ((flags & 1) !== 0 || (method !== 0 && method !== 8))
      return broken('packed in a way that is not ours');
    const name = asciiIn(view, at + length.central, at + length.central + named);
    const header = view.getUint32(at + 42, true);
    rows.push({ name, deflated: method === 8, packedBytes, bytes, flags, header });
    at += length.central + named;
  }
  return at === view.byteLength ? rows : broken('the directory');
}

/** Where the packed bytes begin, once the header before them says the same as the directory. */
async function placeOf(look: Look, row: Row, end: number): Promise<number> {
  const to = row.header + length.local + row.name.length;
  if (to > end) return broken('a file beyond the end');
  const view = await look(row.header, to);
  const [flags, method] = [view.getUint16(6, true), view.getUint16(8, true)];
  const [named, extra] = [view.getUint16(26, true), view.getUint16(28, true)];
  const same =
    view.getUint32(0, true) === signature.local &&
    flags === row.flags &&
    (method === 8) === row.deflated &&
    named === row.name.length &&
    extra === 0 &&
    asciiIn(view, length.local, length.local + named) === row.name;
  return same ? to : broken('a file is not where the directory says');
}

/**
 * The files of an archive, none lying over another: so nothing can be counted twice.
 * @throws NotTaken
 */
export async function directoryOf(file: Blob): Promise<Directory> {
  const end = await endOf(file);
  if (end.from + end.bytes !== end.at || end.bytes > mostDirectoryBytes) return broken('the directory');
  const rows = rowsIn(await viewOf(file, end.from, end.at), end.count);
  const files = new Map<string, Packed>();
  const look = windowOn(file);
  let free = 0;
  for (const row of [...rows].sort((a, b) => a.header - b.header)) {
    if (files.has(row.name)) return broken('two files of one name');
    if (!descriptorLengths.includes(row.header - free) || (free === 0 && row.header !== 0))
      return broken('files lie over each other, or something between them');
    const at = await placeOf(look, row, file.size);
    free = at + row.packedBytes;
    const { name, deflated, packedBytes, bytes } = row;
    if (!deflated && packedBytes !== bytes) return broken('sizes');
    files.set(name, { name, deflated, at, packedBytes, bytes });
  }
  if (!descriptorLengths.includes(end.from - free)) return broken('something after the files');
  return { files, comment: end.comment, commentAt: file.size - end.comment.length };
}
