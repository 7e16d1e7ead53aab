/** The colours of the panel's pictures: those of the kind of theme that the editor has, on its own paper and ink. */
import { themeVariables } from '../../pictures/theme.ts';

/** Rules of CSS for a webview of VS Code, whose body bears the kind of theme. High contrast light bears both names. */
export function panelColours(): string {
  return [
    `body.vscode-light { ${themeVariables('light')} }`,
    `body.vscode-dark { ${themeVariables('dark')} }`,
    `body.vscode-high-contrast { ${themeVariables('contrast-dark')} }`,
    `body.vscode-high-contrast-light { ${themeVariables('contrast-light')} }`,
    'body[data-vscode-theme-kind] { --draw-paper: var(--vscode-editor-background); --draw-ink: var(--vscode-editor-foreground) }',
  ].join('\n');
}
