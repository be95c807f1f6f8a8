/**
 * Holds the directions in which the rooms of src/ may import, and keeps the rooms that only reckon free of clock,
 * chance and browser. Works on a tree given as path → text, so that it can be tried on an invented one.
 */
import { posix } from 'node:path';
import { parseSync } from 'vite';

const lower = {
  reference: [],
  quantities: ['reference'],
  chemistry: ['reference', 'quantities'],
  safety: ['reference', 'quantities', 'chemistry'],
  rules: ['reference', 'quantities', 'chemistry'],
  ledger: ['reference', 'quantities', 'chemistry', 'safety', 'rules'],
  storage: ['reference', 'quantities', 'chemistry', 'safety', 'rules', 'ledger'],
  paperwork: ['reference', 'quantities', 'chemistry', 'safety', 'rules', 'ledger'],
  ui: ['quantities'],
  screens: [
    'reference',
    'quantities',
    'chemistry',
    'safety',
    'rules',
    'ledger',
    'storage',
    'paperwork',
    'ui',
  ],
  app: [
    'reference',
    'quantities',
    'chemistry',
    'safety',
    'rules',
    'ledger',
    'storage',
    'paperwork',
    'ui',
    'screens',
  ],
} as const satisfies Record<string, readonly string[]>;

type Room = keyof typeof lower;

const pure: readonly Room[] = ['reference', 'quantities', 'chemistry', 'safety', 'rules', 'ledger'];

/** Packages that only some rooms may import; all others are open to every room. */
const packageRooms: Readonly<Record<string, readonly Room[]>> = {
  ics: ['paperwork'],
  idb: ['storage'],
  pdfkit: ['paperwork'],
  uuid: ['app'],
  preact: ['ui', 'screens', 'app'],
  '@preact/signals': ['ui', 'screens', 'app'],
  'workbox-window': ['app'],
};

const outsideWorld = new Set(
  `window self globalThis document navigator location history screen crypto performance indexedDB caches
  localStorage sessionStorage fetch XMLHttpRequest WebSocket Worker setTimeout setInterval queueMicrotask
  requestAnimationFrame alert confirm prompt process require`.split(/\s+/),
);

/** Functions of date-fns that read the clock. */
const readsClock =
  /^(is(Past|Future|Today|Tomorrow|Yesterday|This\w+)|(startOf|endOf)(Today|Tomorrow|Yesterday)|\w+ToNow\w*|constructNow)$/;

type Node = { readonly type: string; readonly [key: string]: unknown };

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

const childrenOf = (node: Node): [string, Node][] =>
  Object.entries(node).flatMap(([key, value]) =>
    (Array.isArray(value) ? value : [value]).filter(isNode).map((child): [string, Node] => [key, child]),
  );

type Visit = (node: Node, parent: Node | undefined, key: string) => void;

function walk(node: Node, visit: Visit, parent?: Node, key = ''): void {
  visit(node, parent, key);
  for (const [childKey, child] of childrenOf(node)) walk(child, visit, node, childKey);
}

const text = (value: unknown): string | undefined =>
  isNode(value) && typeof value.value === 'string' ? value.value : undefined;

const nameOf = (value: unknown): string | undefined =>
  isNode(value) && value.type === 'Identifier' ? (value.name as string) : undefined;

const isGlobCall = (node: Node): boolean => {
  const callee = node.callee;
  return (
    node.type === 'CallExpression' &&
    isNode(callee) &&
    isNode(callee.object) &&
    callee.object.type === 'MetaProperty' &&
    nameOf(callee.property) === 'glob'
  );
};

/** What a node imports: in every form, types and import.meta.glob included. */
function specifiersOf(node: Node): string[] {
  const found = [text(node.source)];
  if (isGlobCall(node))
    walk({ type: 'Arguments', list: node.arguments }, (inner) => {
      found.push(inner.type === 'Literal' ? text(inner) : undefined);
    });
  return found.filter((specifier) => specifier !== undefined);
}

/** Whether an identifier is read as a value, not the name of a property, a key or a label. */
const isRead = (parent: Node | undefined, key: string): boolean => {
  if (!parent) return false;
  if (parent.type === 'MemberExpression') return key === 'object' || parent.computed === true;
  if (parent.type === 'Property') return key === 'value' || parent.computed === true;
  return !/^(TS(?!AsExpr|SatisfiesExpr|NonNullExpr)|Import|Export|MethodDef|PropertyDef|Label|Break|Continue)/.test(
    parent.type,
  );
};

/** Names that the file declares itself: a parameter called `document` is not the browser's. */
function declaredIn(program: Node): ReadonlySet<string> {
  const names = new Set<string>();
  const bind = (pattern: unknown): void => {
    if (!isNode(pattern)) return;
    walk(pattern, (node) => {
      const name = nameOf(node);
      if (name !== undefined) names.add(name);
    });
  };
  walk(program, (node, parent, key) => {
    if (node.type === 'VariableDeclarator') bind(node.id);
    if (key === 'params' && parent && /Function/.test(parent.type)) bind(node);
    if (/^Import\w*Specifier$/.test(node.type)) bind(node.local);
    if (/^(Function|Class)/.test(node.type)) bind(node.id);
    if (node.type === 'CatchClause') bind(node.param);
  });
  return names;
}

/** What a node takes from clock, chance or browser. */
function impurityOf(node: Node, parent: Node | undefined, key: string, own: ReadonlySet<string>) {
  const name = nameOf(node);
  if (name !== undefined && outsideWorld.has(name) && !own.has(name) && isRead(parent, key)) return name;
  if (node.type === 'MemberExpression') {
    const member = `${nameOf(node.object)}.${nameOf(node.property) ?? text(node.property)}`;
    if (member === 'Date.now' || member === 'Math.random') return member;
  }
  if (node.type === 'NewExpression' && nameOf(node.callee) === 'Date')
    return (node.arguments as unknown[]).length === 0 ? 'new Date()' : undefined;
  if (node.type === 'CallExpression' && nameOf(node.callee) === 'Date') return 'Date()';
  if (node.type === 'ImportSpecifier' && readsClock.test(nameOf(node.imported) ?? ''))
    return nameOf(node.imported);
  return undefined;
}

const roomOf = (path: string): Room | undefined => {
  const room = /^src\/([^/]+)\//.exec(path)?.[1];
  return room !== undefined && room in lower ? (room as Room) : undefined;
};

const packageOf = (specifier: string): string =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

/** Why this room may not import that, if it may not. */
function strayImport(room: Room, path: string, specifier: string): string | undefined {
  if (specifier.startsWith('node:')) return `${room} runs in a browser and imports ${specifier}`;
  if (!specifier.startsWith('.')) {
    const rooms = packageRooms[packageOf(specifier)];
    return rooms && !rooms.includes(room) ? `${room} imports the package ${specifier}` : undefined;
  }
  const target = posix.join(posix.dirname(path), specifier);
  if (room === 'safety' && target.startsWith('checklists/')) return undefined;
  const targetRoom = roomOf(target);
  if (targetRoom === room) return undefined;
  if (targetRoom === undefined) return `${room} imports ${target}, which is in no room`;
  return (lower[room] as readonly Room[]).includes(targetRoom) ? undefined : `${room} imports ${targetRoom}`;
}

/** @returns one line a breach: "src/rules/x.ts: rules imports safety" */
export function breaches(tree: Readonly<Record<string, string>>): string[] {
  return Object.entries(tree).flatMap(([path, source]) => {
    if (/^src\/[^/]+$/.test(path)) return [];
    const room = roomOf(path);
    if (room === undefined) return [`${path}: in no room`];
    const { program, errors } = parseSync(path, source);
    if (errors.length > 0) return [`${path}: cannot be read: ${errors[0]?.message}`];
    const root = program as unknown as Node;
    const own = declaredIn(root);
    const found: string[] = [];
    walk(root, (node, parent, key) => {
      for (const specifier of specifiersOf(node)) found.push(strayImport(room, path, specifier) ?? '');
      if (pure.includes(room)) {
        const impurity = impurityOf(node, parent, key, own);
        if (impurity !== undefined) found.push(`${room} reads ${impurity}`);
      }
    });
    return found.filter((line) => line !== '').map((line) => `${path}: ${line}`);
  });
}
