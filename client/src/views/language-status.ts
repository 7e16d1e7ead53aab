/** What Plumule knows of the journal, in the language status: lots and files read, problems found. */
import { DiagnosticSeverity, languages, LanguageStatusSeverity, type Disposable } from 'vscode';
import type { Summary } from '../../../server/src/features/summary.ts';
import { counted } from './brief.ts';

export class JournalStatus {
  readonly #item = languages.createLanguageStatusItem('plumule.journal', { language: 'plumule' });
  readonly #following: Disposable;

  constructor() {
    this.#item.name = 'Plumule';
    this.#item.text = 'Reading the journal';
    this.#item.busy = true;
    this.#item.command = { command: 'workbench.actions.view.problems', title: 'Show Problems' };
    this.#following = languages.onDidChangeDiagnostics(({ uris }) => {
      if (uris.some(({ path, scheme }) => path.endsWith('.germ') || scheme === 'untitled')) this.#count();
    });
  }

  show({ files, lots }: Summary): void {
    this.#item.busy = false;
    this.#item.severity = LanguageStatusSeverity.Information;
    this.#item.text = `${counted(lots, 'lot')} in ${counted(files, 'file')}`;
    this.#count();
  }

  failed(): void {
    this.#item.busy = false;
    this.#item.text = 'Plumule could not read the journal';
    this.#item.severity = LanguageStatusSeverity.Error;
  }

  dispose(): void {
    this.#following.dispose();
    this.#item.dispose();
  }

  #count(): void {
    const found = languages.getDiagnostics().flatMap(([, diagnostics]) => diagnostics).filter(({ source }) => source === 'plumule');
    const errors = found.filter(({ severity }) => severity === DiagnosticSeverity.Error).length;
    const warnings = found.filter(({ severity }) => severity === DiagnosticSeverity.Warning).length;
    const grave = [errors > 0 && counted(errors, 'error'), warnings > 0 && counted(warnings, 'warning')].filter(Boolean);
    this.#item.detail = grave.length > 0 ? grave.join(', ') : 'no errors, no warnings';
  }
}
