import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** An export that nobody needs. */
export interface Unused {
  readonly file: string;
  readonly name: string;
  readonly says: string;
}

/** What is called from outside: by the editor that loads the extension, and by the one that runs tests inside itself. */
const CALLED_FROM_OUTSIDE = /^(src\/editor\/(extension|web)\.ts#(de)?activate|test\/editor\/suite\/[^#]+#run)$/;

/** The product: tools are there for tests too. */
const PRODUCT = /^src\/(?!tools\/)/;

interface Exported {
  readonly is: 'value' | 'type' | 'passed on';
  /** Where it comes from, if it is passed on. */
  readonly from?: { readonly file: string; readonly name: string };
}

interface Module {
  readonly exported: ReadonlyMap<string, Exported>;
  /** Files of which everything is passed on. */
  readonly whole: readonly string[];
  /** What it imports, as file#name; `*` is all of a file. */
  readonly imports: readonly string[];
  /** How often each word stands in it. */
  readonly words: ReadonlyMap<string, number>;
}

/**
 * Exports of src and test that nobody needs: those that no other file imports, those that an index passes on to nobody,
 * and what only tests import though nothing of the product uses it. A type may be exported for whoever reads the
 * signatures of its file.
 */
export function unusedExports(root: string): Unused[] {
  const modules = new Map<string, Module>();
  for (const folder of ['src', 'test']) {
    for (const file of readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })) {
      const full = path.posix.join(folder, file.split(path.sep).join('/'));
      if (/\.m?ts$/.test(full)) modules.set(full, moduleOf(full, readFileSync(path.join(root, full), 'utf8')));
    }
  }
  const users = usersIn(modules);
  return [...modules].flatMap(([file, { exported, words }]) => [...exported].flatMap(([name, { is }]): Unused[] => {
    if (CALLED_FROM_OUTSIDE.test(`${file}#${name}`)) return [];
    const by = users(file, name);
    const usedHere = (words.get(name) ?? 0) > 1;
    if (by.size === 0) return is === 'type' && usedHere ? [] : [{ file, name, says: is === 'passed on' ? 'is passed on to nobody' : 'is imported by nobody' }];
    const forTests = PRODUCT.test(file) && ![...by].some((one) => one.startsWith('src/'));
    return forTests && is !== 'passed on' && !usedHere ? [{ file, name, says: 'is used by tests alone' }] : [];
  }));
}

/** The files that import something, also by way of those that pass it on. */
function usersIn(modules: ReadonlyMap<string, Module>): (file: string, name: string) => ReadonlySet<string> {
  const direct = new Map<string, string[]>();
  const passers = new Map<string, { readonly file: string; readonly as: string | undefined }[]>();
  for (const [file, { imports, exported, whole }] of modules) {
    for (const one of imports) put(direct, one, file);
    for (const [as, { from }] of exported) if (from !== undefined) put(passers, `${from.file}#${from.name}`, { file, as });
    for (const one of whole) put(passers, `${one}#*`, { file, as: undefined });
  }
  return (file, name) => {
    const found = new Set<string>();
    const seen = new Set<string>();
    const visit = (at: string, called: string) => {
      if (seen.has(`${at}#${called}`)) return;
      seen.add(`${at}#${called}`);
      for (const key of [`${at}#${called}`, `${at}#*`]) {
        for (const one of direct.get(key) ?? []) found.add(one);
        for (const { file: next, as } of passers.get(key) ?? []) visit(next, as ?? called);
      }
    };
    visit(file, name);
    return found;
  };
}

function put<V>(map: Map<string, V[]>, key: string, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

function moduleOf(file: string, text: string): Module {
  const exported = new Map<string, Exported>();
  const whole: string[] = [];
  const imports: string[] = [];
  const words = new Map<string, number>();
  const target = (written: string) => path.posix.join(path.posix.dirname(file), written).replace(/\.js$/, '.ts');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);

  for (const statement of source.statements) {
    if (ts.isExportDeclaration(statement)) passedOn(statement);
    else if (ts.isExportAssignment(statement)) exported.set('default', { is: 'value' });
    else if (ts.canHaveModifiers(statement) && ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true) declared(statement);
  }
  visit(source);
  return { exported, whole, imports, words };

  function passedOn({ moduleSpecifier, exportClause }: ts.ExportDeclaration): void {
    const from = moduleSpecifier !== undefined && ts.isStringLiteral(moduleSpecifier) ? target(moduleSpecifier.text) : file;
    if (exportClause === undefined) whole.push(from);
    else if (ts.isNamespaceExport(exportClause)) exported.set(exportClause.name.text, { is: 'passed on', from: { file: from, name: '*' } });
    else for (const { name, propertyName } of exportClause.elements) exported.set(name.text, { is: 'passed on', from: { file: from, name: (propertyName ?? name).text } });
  }

  function declared(statement: ts.Statement): void {
    const is = ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement) ? 'type' : 'value';
    if (ts.isVariableStatement(statement)) for (const { name } of statement.declarationList.declarations) exportedIn(name);
    else exported.set((statement as ts.DeclarationStatement).name?.getText(source) ?? 'default', { is });
  }

  function exportedIn(name: ts.BindingName): void {
    if (ts.isIdentifier(name)) exported.set(name.text, { is: 'value' });
    else for (const one of name.elements) if (ts.isBindingElement(one)) exportedIn(one.name);
  }

  function visit(node: ts.Node): void {
    if (ts.isIdentifier(node)) words.set(node.text, (words.get(node.text) ?? 0) + 1);
    else if (ts.isImportDeclaration(node)) imported(node);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) imports.push(`${target(node.argument.literal.text)}#*`);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && node.arguments[0] !== undefined && ts.isStringLiteral(node.arguments[0])) imports.push(`${target(node.arguments[0].text)}#*`);
    ts.forEachChild(node, visit);
  }

  function imported({ moduleSpecifier, importClause }: ts.ImportDeclaration): void {
    if (!ts.isStringLiteral(moduleSpecifier) || !moduleSpecifier.text.startsWith('.')) return;
    const from = target(moduleSpecifier.text);
    if (importClause?.name !== undefined) imports.push(`${from}#default`);
    const named = importClause?.namedBindings;
    if (named === undefined) return;
    if (ts.isNamespaceImport(named)) imports.push(`${from}#*`);
    else for (const { name, propertyName } of named.elements) imports.push(`${from}#${(propertyName ?? name).text}`);
  }
}
