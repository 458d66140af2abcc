import { parse } from 'svelte/compiler';
import ts from 'typescript';

/** Folders of src in the order of the work; each may import only what stands in its row, always something above it. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  words: [],
  route: [],
  terrain: ['route'],
  vehicle: [],
  traverse: ['terrain', 'vehicle'],
  grade: ['terrain', 'traverse', 'vehicle'],
  convoy: ['route', 'terrain', 'vehicle', 'traverse', 'grade'],
  draw: ['route', 'terrain', 'vehicle', 'traverse', 'grade', 'convoy'],
  brief: ['route', 'terrain', 'vehicle', 'traverse', 'grade', 'convoy', 'draw'],
  archive: ['route', 'terrain', 'vehicle', 'traverse', 'grade', 'convoy', 'brief'],
  workers: ['route', 'terrain', 'vehicle', 'traverse', 'grade', 'convoy', 'archive'],
  map: ['route', 'terrain', 'grade'],
  offline: [],
  ui: [
    'route',
    'terrain',
    'vehicle',
    'traverse',
    'grade',
    'convoy',
    'draw',
    'brief',
    'archive',
    'workers',
    'map',
    'offline',
  ],
  cli: ['route', 'terrain', 'vehicle', 'traverse', 'grade', 'convoy', 'draw', 'brief', 'archive'],
  build: ['brief', 'offline'],
};

/** The one door of each library: a file, or a folder that ends in a slash. */
const DOORS: Readonly<Record<string, readonly string[]>> = {
  '@turf/turf': ['route/geo.ts'],
  'maplibre-gl': ['map/'],
  'maplibre-contour': ['map/'],
  idb: ['archive/database.ts'],
  '@automerge/automerge': ['archive/replica.ts', 'workers/history.ts'],
  flatbush: ['archive/boxIndex.ts'],
  geojson: ['map/', 'archive/'],
  'playwright-core': ['cli/pdf.ts'],
  '@fontsource/noto-sans': ['map/', 'ui/', 'main.ts'],
  saxes: ['route/'],
  '@streamparser/json': ['archive/featureWalk.ts'],
  fflate: ['route/', 'archive/folder/', 'archive/publish/', 'map/background.ts'],
  '@sqlite.org/sqlite-wasm': ['archive/geopackage/'],
  geotiff: ['route/geoTiff.ts', 'route/tiffBlock.ts'],
  proj4: ['route/projection.ts'],
  pmtiles: ['map/background.ts', 'archive/publish/'],
  '@noble/hashes': ['archive/publish/'],
  exifr: ['ui/photoTags.ts', 'ui/exifr.d.ts'],
  svelte: ['ui/', 'map/', 'main.ts'],
  'node:': ['cli/', 'build/'],
  vite: ['build/'],
};

/** Folders that are given everything they need, and reach for nothing. */
const CORE = [
  'words',
  'route',
  'terrain',
  'vehicle',
  'traverse',
  'grade',
  'convoy',
  'draw',
  'brief',
  'archive',
];

/** The doors of the store are the files among them that touch the world. */
const OUTSIDE_CORE = ['archive/database.ts', 'archive/store.ts'];

const WORLD = new Set(
  `document window self globalThis fetch XMLHttpRequest WebSocket localStorage sessionStorage indexedDB navigator
  location console performance process crypto setTimeout setInterval setImmediate queueMicrotask requestAnimationFrame
  postMessage Worker alert confirm prompt`.split(/\s+/),
);

/** One source: its path below src, with slashes, and its text. */
export interface Source {
  readonly path: string;
  readonly text: string;
}

/** Every import that runs against the table, as a sentence. */
export function importFaults(sources: readonly Source[]): string[] {
  return sources.flatMap((source) =>
    importsOf(source).flatMap((to) => importFault(source.path, to.split('?')[0]) ?? []),
  );
}

/** Every use that the pure core makes of the world, as a sentence. */
export function worldFaults(sources: readonly Source[]): string[] {
  const core = sources.filter(({ path }) => isCore(path));
  const texts = new Map(core.map(({ path, text }) => [path, text]));
  const program = ts.createProgram(
    [...texts.keys()],
    { noLib: true, noResolve: true, types: [] },
    {
      getSourceFile: (path, version) =>
        texts.has(path) ? ts.createSourceFile(path, texts.get(path)!, version, true) : undefined,
      getDefaultLibFileName: () => '',
      writeFile: () => undefined,
      getCurrentDirectory: () => '',
      getCanonicalFileName: (path) => path,
      useCaseSensitiveFileNames: () => true,
      getNewLine: () => '\n',
      fileExists: (path) => texts.has(path),
      readFile: (path) => texts.get(path),
    },
  );
  const checker = program.getTypeChecker();
  return core.flatMap(({ path }) => {
    const faults: string[] = [];
    visit(program.getSourceFile(path)!, (node) => {
      const use = useOfWorld(node, checker);
      if (use) faults.push(`${path} uses ${use}; the core is given what it needs, as an argument.`);
    });
    return faults;
  });
}

function isCore(path: string): boolean {
  const folder = folderOf(path);
  return (folder === '' ? path !== 'main.ts' : CORE.includes(folder)) && !OUTSIDE_CORE.includes(path);
}

function folderOf(path: string): string {
  return path.includes('/') ? path.slice(0, path.indexOf('/')) : '';
}

function importFault(path: string, to: string): string | null {
  const from = folderOf(path);
  if (!to.startsWith('.')) return libraryFault(path, to);
  const target = resolved(path, to);
  if (target === null) return `${path} imports ${to}, which lies outside src.`;
  const folder = folderOf(target);
  if (folder === from) return null;
  if (['ui', 'cli'].includes(folder) && path !== 'main.ts')
    return `${path} imports ${target}; nobody imports ${folder}.`;
  if (target === 'main.ts') return `${path} imports main.ts; nobody imports main.ts.`;
  if (folder === '' || folder === 'words' || path === 'main.ts') return null;
  if (from === '') return `${path} imports ${target}; what stands at the top of src imports no folder.`;
  if (!(from in MAY_IMPORT)) return `${path} stands in a folder that the table does not have.`;
  if (MAY_IMPORT[from].includes(folder)) return null;
  const may = MAY_IMPORT[from].join(', ') || 'no other folder';
  return `${path} imports ${target}; ${from} may import ${may}.`;
}

function libraryFault(path: string, to: string): string | null {
  const name = to.startsWith('node:')
    ? 'node:'
    : to
        .split('/')
        .slice(0, to.startsWith('@') ? 2 : 1)
        .join('/');
  const doors = DOORS[name];
  if (!doors) return `${path} imports ${to}, a library that has no door yet.`;
  if (doors.some((door) => (door.endsWith('/') ? path.startsWith(door) : path === door))) return null;
  return `${path} imports ${to}, whose one door is ${doors.join(' or ')}.`;
}

/** The path below src that a relative import means, or null where it leaves src. */
function resolved(path: string, to: string): string | null {
  const url = new URL(to, `file:///src/${path}`).pathname;
  return url.startsWith('/src/') ? url.slice('/src/'.length) : null;
}

/** Everything a source imports: values, types, `import()`, re-exports, and files named for a worker. */
function importsOf({ path, text }: Source): string[] {
  const found: string[] = [];
  for (const script of path.endsWith('.svelte') ? scriptsOf(text) : [text])
    visit(ts.createSourceFile(path, script, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS), (node) => {
      const named = importedBy(node);
      if (named && ts.isStringLiteralLike(named)) found.push(named.text);
    });
  return found;
}

function importedBy(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isExternalModuleReference(node)) return node.expression;
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) return node.argument.literal;
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
    return node.arguments[0];
  if (ts.isNewExpression(node) && node.expression.getText() === 'URL')
    return node.arguments?.[1]?.getText() === 'import.meta.url' ? node.arguments[0] : undefined;
  return undefined;
}

function scriptsOf(text: string): string[] {
  const { instance, module } = parse(text, { modern: true });
  return [instance, module]
    .filter((script) => script != null)
    .map(({ content }) => {
      const { start, end } = content as unknown as { start: number; end: number };
      return text.slice(start, end);
    });
}

/** What of the world a node uses, or null. A name that the file declares itself is not the world's. */
function useOfWorld(node: ts.Node, checker: ts.TypeChecker): string | null {
  if (!ts.isIdentifier(node) || isOnlyAName(node) || isDeclared(node, checker)) return null;
  const { text, parent } = node;
  if (WORLD.has(text)) return text;
  if (text === 'Math' && ts.isPropertyAccessExpression(parent) && parent.name.text === 'random')
    return 'Math.random';
  if (text !== 'Date') return null;
  if (ts.isPropertyAccessExpression(parent) && parent.name.text === 'now') return 'Date.now';
  if (ts.isCallExpression(parent) && parent.expression === node) return 'Date()';
  if (ts.isNewExpression(parent) && !parent.arguments?.length) return 'new Date()';
  return null;
}

function isDeclared(node: ts.Identifier, checker: ts.TypeChecker): boolean {
  const symbol = ts.isShorthandPropertyAssignment(node.parent)
    ? checker.getShorthandAssignmentValueSymbol(node.parent)
    : checker.getSymbolAtLocation(node);
  return (symbol?.declarations ?? []).length > 0;
}

/** Whether an identifier names a member or a type, and so no variable. */
function isOnlyAName(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.name === node;
  if (ts.isPropertyAssignment(parent)) return parent.name === node;
  return ts.isTypeReferenceNode(parent) || ts.isQualifiedName(parent) || ts.isTypeElement(parent);
}

function visit(node: ts.Node, see: (node: ts.Node) => void): void {
  see(node);
  ts.forEachChild(node, (child) => visit(child, see));
}
