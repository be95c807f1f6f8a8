/**
 * Every form keeps its draft until the entry is on the disk. Held over the source of all screens, so that a new form is
 * held to it as well: in a function that writes, a draft is dropped only behind every write, and only where the answer of
 * each was asked about.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../../../src/screens');

type Node = { readonly type: string; readonly start: number; readonly end: number } & Record<string, unknown>;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

const childrenOf = (node: Node): readonly Node[] => Object.values(node).flat().filter(isNode);

const isFunction = ({ type }: Node): boolean => /Function/.test(type);

/** Everything in a node, functions inside it apart: those are looked at by themselves. */
const within = (node: Node): readonly Node[] =>
  childrenOf(node).flatMap((child) => (isFunction(child) ? [] : [child, ...within(child)]));

const functionsIn = (node: Node): readonly Node[] =>
  childrenOf(node).flatMap((child) => [...(isFunction(child) ? [child] : []), ...functionsIn(child)]);

/** What a function that is called is named by: `form.done` is "form.done", `done` is "done". */
function calledIn(source: string, node: Node): string | null {
  if (node.type !== 'CallExpression' || !isNode(node.callee)) return null;
  return source.slice(node.callee.start, node.callee.end);
}

/** Writes an entry and answers whether it is on the disk. */
const writes =
  /^(write|perform|shell\.perform|on\.finish|finish|write[A-Z]\w*|keepCheck|keepWaste|endAll|on\.keepFound)$/;

/** Drops a draft, or leaves the form, which does. */
const drops = /^((\w+\.)?done|leave|drop|on\.drop|(\w+\.)*draft\.drop)$/;

/** A question about the answer: `if (!written) return`, `if (await write(…)) leave()`, `if (written) { … }`. */
function asksAbout(source: string, write: Node, drop: Node, all: readonly Node[]): boolean {
  const holder = all.find(
    ({ type, start, end }) => type === 'VariableDeclarator' && start <= write.start && write.end <= end,
  );
  const named = holder && isNode(holder.id) ? source.slice(holder.id.start, holder.id.end) : null;
  const names = new Set(named?.match(/\w+/g) ?? []);
  // What is taken from the answer stands for it: const body = written?.[0]?.body.
  for (const one of all)
    if (one.type === 'VariableDeclarator' && isNode(one.init) && isNode(one.id) && one.start > write.end) {
      const from = source.slice(one.init.start, one.init.end).match(/\w+/g) ?? [];
      if (from.some((name) => names.has(name)))
        for (const name of source.slice(one.id.start, one.id.end).match(/\w+/g) ?? []) names.add(name);
    }
  return all.some((one) => {
    if (one.type !== 'IfStatement' || !isNode(one.test) || !isNode(one.consequent)) return false;
    const inTest = one.test.start <= write.start && write.end <= one.test.end;
    const tested = source.slice(one.test.start, one.test.end).match(/\w+/g) ?? [];
    if (!inTest && !(one.start > write.end && tested.some((name) => names.has(name)))) return false;
    const around = one.consequent.start <= drop.start && drop.end <= one.consequent.end;
    const leaves = source.slice(one.consequent.start, one.consequent.end).includes('return');
    return around || (leaves && one.end <= drop.start);
  });
}

/** Places where a draft goes before it is known that the entry is on the disk. */
function tooEarlyIn(path: string, source: string): readonly string[] {
  const program = parseSync(path, source).program as unknown as Node;
  return functionsIn(program).flatMap((one) => {
    const all = within(one);
    const calls = all.flatMap((node) => {
      const name = calledIn(source, node);
      return name === null ? [] : [{ node, name }];
    });
    const writing = calls.filter(({ name }) => writes.test(name));
    return calls
      .filter(({ name }) => writing.length > 0 && drops.test(name))
      .filter(
        ({ node: drop }) =>
          !writing.every(({ node: write }) => write.end < drop.start && asksAbout(source, write, drop, all)),
      )
      .map(({ node, name }) => `${path}:${source.slice(0, node.start).split('\n').length} ${name}`);
  });
}

const sources = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/.test(path) && !path.endsWith('.d.ts'))
  .map((path) => [path, readFileSync(join(root, path), 'utf8')] as const);

describe('every form', () => {
  it('keeps its draft until the entry is on the disk', () => {
    const forms = sources.filter(([, source]) => /\buseForm\(/.test(source));
    expect(forms.length).toBeGreaterThan(30);
    expect(sources.flatMap(([path, source]) => tooEarlyIn(path, source))).toEqual([]);
  });
});

const early: readonly (readonly [why: string, body: string])[] = [
  ['nobody asked what became of it', 'await write(x); done(); go(home);'],
  ['it goes before it is written', 'form.done(); if (!(await write(x))) return; go(home);'],
  ['the answer is not waited for', 'void write(x); done();'],
  ['another answer is asked about', 'const kept = await write(x); if (!other) return; done();'],
  ['the question leads on either way', 'const kept = await write(x); if (!kept) say(y); draft.drop(name);'],
  ['the second of two is not asked about', 'if (!(await write(x))) return; await write(y); form.done();'],
];

const late: readonly string[] = [
  'if (!(await write(x))) return; done();',
  'if (await write(x)) leave();',
  'const written = await write(x); const body = written?.[0]?.body; if (body?.kind !== y) return; form.done();',
  'const done = await perform(x); if (done.ok) { draft.drop(name); }',
  'const [photos] = [await settled()]; if (!photos) return; if (!(await write(x))) return; done();',
];

describe('the check of the forms', () => {
  it.each(early)('finds a draft that goes too early: %s', (_, body) => {
    expect(tooEarlyIn('a.ts', `async function keep() { ${body} }`)).toHaveLength(1);
  });
  it.each(late)('lets through: %s', (body) => {
    expect(tooEarlyIn('a.ts', `async function keep() { ${body} }`)).toEqual([]);
  });
});
