import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';

const ROOT = new URL('../../', import.meta.url);

/** A text that somebody reads, and where it stands: `server/src/report/words.ts:72`. */
export interface Text {
  readonly place: string;
  readonly text: string;
}

export function pageAt(path: string): string {
  return readFileSync(new URL(path, ROOT), 'utf8');
}

function filesBelow(folder: string, end: string): string[] {
  return readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith(end)).map(name => `${folder}/${name}`).sort();
}

/** The texts in the strings and templates of a module; what a template fills in is a dash. */
export function stringsOf(path: string, source: string): Text[] {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true);
  const found: Text[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node)) add(node, node.text);
    else if (ts.isTemplateExpression(node)) {
      add(node, [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join('–'));
    }
    ts.forEachChild(node, visit);
  };
  const add = (node: ts.Node, text: string) => {
    if (/[a-z] [a-z]/i.test(text)) {
      found.push({ place: `${path}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}`, text });
    }
  };
  visit(file);
  return found;
}

/** The lines of a page without blocks and spans of code, each line joined to the next, for a phrase may break there. */
export function linesOf(path: string, page: string): Text[] {
  const prose = page.replaceAll(/^```.*?^```$/gms, block => block.replaceAll(/[^\n]/g, '')).replaceAll(/`[^`\n]*`/g, '``');
  const lines = prose.split('\n');
  return lines.map((line, n) => ({ place: `${path}:${n + 1}`, text: `${line} ${lines[n + 1]?.trimStart() ?? ''}` }));
}

/** Every text that a user sees: in programs, in the manifest, and on the pages that are packed with the extension. */
export function textsForUsers(): Text[] {
  const modules = ['server/src', 'client/src'].flatMap(folder => filesBelow(folder, '.ts'));
  const pages = ['README.md', 'CHANGELOG.md', ...filesBelow('syntaxes', '.md'), ...filesBelow('client/media', '.md')];
  return [
    ...modules.flatMap(path => stringsOf(path, pageAt(path))),
    ...linesOf('package.json', pageAt('package.json')),
    ...pages.flatMap(path => linesOf(path, pageAt(path))),
  ];
}
