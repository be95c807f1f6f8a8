import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What an independent reader finds in a PDF file. Lengths in pt. */
export interface ReadPdf {
  readonly title: string;
  readonly language: string | null;
  /** In the place of the file's name. */
  readonly titleShown: boolean;
  /** Says that it is tagged. */
  readonly marked: boolean;
  readonly pages: readonly ReadPage[];
  /** Names of attached files and their bytes. */
  readonly attachments: Readonly<Record<string, Uint8Array>>;
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  /** Runs of text in the order of the file; `right` is where the run ends. */
  readonly runs: readonly { text: string; x: number; right: number; y: number; size: number }[];
  /** The text of the page, a line a base line. */
  readonly text: string;
  /** Names of the roles in the structure of the page, in reading order. */
  readonly roles: readonly string[];
  /** Names of the fonts the page uses; a font that is not in the file is marked "missing". */
  readonly fonts: readonly string[];
}

interface StructNode {
  readonly role?: string;
  readonly children?: readonly StructNode[];
}

const rolesOf = (node: StructNode | null): string[] =>
  node === null
    ? []
    : [...(node.role === undefined ? [] : [node.role]), ...(node.children ?? []).flatMap(rolesOf)];

type Pdf = Awaited<ReturnType<typeof getDocument>['promise']>;
type Page = Awaited<ReturnType<Pdf['getPage']>>;

async function runsOf(page: Page): Promise<ReadPage['runs']> {
  const { items } = await page.getTextContent({ disableNormalization: true });
  return items.flatMap((item) => {
    if (!('str' in item) || item.str === '') return [];
    const [, , , size = 0, x = 0, y = 0] = item.transform as readonly number[];
    return [{ text: item.str, x, right: x + item.width, y, size }];
  });
}

/** Runs on one base line belong to one line, left to right; a space stands where there is white between them. */
function textIn(runs: ReadPage['runs']): string {
  const lines = new Map<number, ReadPage['runs'][number][]>();
  for (const run of runs) {
    const key = [...lines.keys()].find((y) => Math.abs(y - run.y) < 1) ?? run.y;
    lines.set(key, [...(lines.get(key) ?? []), run]);
  }
  return [...lines]
    .sort(([a], [b]) => b - a)
    .map(([, line]) => {
      const sorted = [...line].sort((a, b) => a.x - b.x);
      return sorted.reduce((text, run, index) => {
        const before = sorted[index - 1];
        const apart = before !== undefined && run.x - before.right > run.size * 0.15;
        return text + (apart && !text.endsWith(' ') ? ' ' : '') + run.text;
      }, '');
    })
    .join('\n');
}

async function fontsOf(page: Page): Promise<readonly string[]> {
  await page.getOperatorList();
  const { items } = await page.getTextContent();
  const names = new Set(items.flatMap((item) => ('fontName' in item ? [item.fontName] : [])));
  return [...names].map((name) => {
    const font = page.commonObjs.get(name) as { name: string; missingFile?: boolean };
    return font.missingFile ? `${font.name} missing` : font.name;
  });
}

async function readPage(pdf: Pdf, number: number): Promise<ReadPage> {
  const page = await pdf.getPage(number);
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = page.view;
  const runs = await runsOf(page);
  return {
    width: x1 - x0,
    height: y1 - y0,
    runs,
    text: textIn(runs),
    roles: rolesOf((await page.getStructTree()) as StructNode | null),
    fonts: await fontsOf(page),
  };
}

/** Reads a file with a reader that shares no code with the writer. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  // The reader takes its input away from the caller: it gets a copy.
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const { info } = await pdf.getMetadata();
  const properties = info as { Title?: string; Language?: string | null };
  const attached = (await pdf.getAttachments()) as Record<string, { content: Uint8Array }> | null;
  const numbers = Array.from({ length: pdf.numPages }, (_, index) => index + 1);
  const pages: ReadPage[] = [];
  for (const number of numbers) pages.push(await readPage(pdf, number));
  const [preferences, mark] = [await pdf.getViewerPreferences(), await pdf.getMarkInfo()];
  await task.destroy();
  return {
    title: properties.Title ?? '',
    language: properties.Language ?? null,
    titleShown: (preferences as { DisplayDocTitle?: boolean } | null)?.DisplayDocTitle === true,
    marked: (mark as { Marked?: boolean } | null)?.Marked === true,
    pages,
    attachments: Object.fromEntries(
      Object.entries(attached ?? {}).map(([name, file]) => [name, file.content]),
    ),
  };
}

/** All the text of a file, its pages parted by a form feed. */
export async function textOf(bytes: Uint8Array): Promise<string> {
  const { pages } = await readPdf(bytes);
  return pages.map((page) => page.text).join('\f');
}
