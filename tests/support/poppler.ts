/** What poppler's tools read out of a PDF: a reader that shares no code with the writer. `.ci/ready.mjs` brings them. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const tool = (name: string, ...args: readonly string[]): string =>
  execFileSync(name, [...args], { encoding: 'utf8', maxBuffer: 2 ** 28 });

export type FontRead = {
  readonly name: string;
  readonly embedded: boolean;
  readonly subset: boolean;
  readonly unicode: boolean;
};

export type PopplerRead = {
  readonly text: string;
  readonly info: Readonly<Record<string, string>>;
  /** As width × height in pt, a page each. */
  readonly sizes: readonly string[];
  readonly metadata: string;
  readonly fonts: readonly FontRead[];
  readonly attachments: Readonly<Record<string, Uint8Array>>;
};

/** Columns of pdffonts: name, type, encoding, emb, sub, uni, object ID. */
function fontsIn(listed: string): FontRead[] {
  return listed
    .split('\n')
    .slice(2)
    .flatMap((line) => {
      const found = /^(\S+)\s.*\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.exec(line);
      const [, name, emb, sub, uni] = found ?? [];
      return name === undefined
        ? []
        : [{ name, embedded: emb === 'yes', subset: sub === 'yes', unicode: uni === 'yes' }];
    });
}

function infoIn(told: string): Record<string, string> {
  return Object.fromEntries(
    told.split('\n').flatMap((line) => {
      const at = line.indexOf(':');
      return at < 0 ? [] : [[line.slice(0, at).trim(), line.slice(at + 1).trim()]];
    }),
  );
}

export function readWithPoppler(bytes: Uint8Array): PopplerRead {
  const folder = mkdtempSync(join(tmpdir(), 'poppler-'));
  try {
    const file = join(folder, 'paper.pdf');
    const inside = join(folder, 'inside');
    writeFileSync(file, bytes);
    const info = infoIn(tool('pdfinfo', file));
    const sized = tool('pdfinfo', '-f', '1', '-l', info.Pages ?? '1', file);
    tool('mkdir', inside);
    tool('pdfdetach', '-saveall', '-o', inside, file);
    return {
      text: tool('pdftotext', '-layout', '-enc', 'UTF-8', file, '-'),
      info,
      sizes: [...sized.matchAll(/^Page\s+\d+ size:\s+([\d.]+ x [\d.]+)/gm)].map(([, size = '']) => size),
      metadata: tool('pdfinfo', '-meta', file),
      fonts: fontsIn(tool('pdffonts', file)),
      attachments: Object.fromEntries(
        readdirSync(inside).map((name) => [name, new Uint8Array(readFileSync(join(inside, name)))]),
      ),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Letters alone, without white: where lines break is the setter's affair. */
export const bare = (text: string): string => text.normalize('NFKC').replace(/[\s\u00ad]+/g, '');
