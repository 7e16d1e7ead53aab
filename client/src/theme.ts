/** Which colours the editor has, so that pictures go with them. */
import { ColorThemeKind, window, type Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ThemeName } from '../../server/src/pictures/theme.ts';

const names: Readonly<Record<ColorThemeKind, ThemeName>> = {
  [ColorThemeKind.Light]: 'light',
  [ColorThemeKind.Dark]: 'dark',
  [ColorThemeKind.HighContrast]: 'contrast-dark',
  [ColorThemeKind.HighContrastLight]: 'contrast-light',
};

export function themeName(): ThemeName {
  return names[window.activeColorTheme.kind];
}

/** Tells the server when the editor changes its colours. */
export function followTheme(client: BaseLanguageClient): Disposable {
  return window.onDidChangeActiveColorTheme(() => void client.sendNotification('plumule/theme', { theme: themeName() }));
}
