/** Lines of JSON: splitting them, and reading one that nobody has vouched for. */
import { canonicalText } from '../../ledger/seal';
import { deepest, longestLine } from './limits';
import { refuse } from './refusal';

const newline = 0x0a;

/** The lines of a text as bytes, without their newlines. @throws NotTaken when the last has none, or one is too long */
export function* linesIn(name: string, bytes: Uint8Array, longest = longestLine): Generator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let [from, line] = [0, 0];
  while (from < bytes.length) {
    line += 1;
    const to = bytes.indexOf(newline, from);
    if (to < 0) return refuse({ code: 'line-unreadable', name, line, detail: 'it does not end' });
    // A character takes at most three bytes more than it has UTF-16 units.
    if (to - from > longest * 3)
      return refuse({ code: 'line-unreadable', name, line, detail: 'it is too long' });
    yield decoded(decoder, bytes.subarray(from, to), name, line);
    from = to + 1;
  }
}

function decoded(decoder: TextDecoder, bytes: Uint8Array, name: string, line: number): string {
  try {
    return decoder.decode(bytes);
  } catch {
    return refuse({ code: 'line-unreadable', name, line, detail: 'it is no UTF-8' });
  }
}

/** How deep the objects and lists of a JSON text lie in each other, without reading it. */
function depthOf(json: string): number {
  let [depth, most, inText] = [0, 0, false];
  for (let at = 0; at < json.length; at += 1) {
    const sign = json[at];
    if (inText) {
      if (sign === '\\') at += 1;
      else if (sign === '"') inText = false;
    } else if (sign === '"') inText = true;
    else if (sign === '{' || sign === '[') most = Math.max(most, ++depth);
    else if (sign === '}' || sign === ']') depth -= 1;
  }
  return most;
}

/**
 * What a line says, when it says it in canonical JSON (RFC 8785) and neither too long nor too deep.
 * @returns the value, or in a word what is wrong with it
 */
export function canonicalValue(
  line: string,
  longest = longestLine,
): { readonly value: unknown } | { readonly wrong: string } {
  if (line.length > longest) return { wrong: 'it is too long' };
  // Before anything goes down into it: that could run out of stack.
  if (depthOf(line) > deepest) return { wrong: 'it is too deep' };
  try {
    const value: unknown = JSON.parse(line);
    return canonicalText(value) === line ? { value } : { wrong: 'it is not canonical' };
  } catch {
    return { wrong: 'it is no JSON' };
  }
}
