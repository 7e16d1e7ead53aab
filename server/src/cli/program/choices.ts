/** What the options that take one of a few words can be; without the commands, so that help costs nothing else. */
import type { Severity } from '../../model/problems.ts';
import { plantRanks } from '../../model/plant.ts';
import { labelSheets, type LabelSheetName } from '../../report/paper/label-sheets.ts';
import { themes, type ThemeName } from '../../pictures/theme.ts';

export const textFormats = ['text', 'json'] as const;
export const checkFormats = ['text', 'json', 'sarif', 'github'] as const;
export const reportFormats = ['text', 'json', 'md', 'html'] as const;
export const adviceFormats = ['text', 'md', 'json'] as const;
/** When a report draws courses in block characters. */
export const blocksWhen = ['auto', 'always', 'never'] as const;
export const reportRanks = ['lot', ...plantRanks] as const;
/** From the gravest to the slightest. */
export const severities = ['error', 'warning', 'information', 'hint'] as const satisfies readonly Severity[];
export { privates } from '../../model/privates.ts';
export const benches = ['kitchen', 'laboratory'] as const;
export const setups = ['git'] as const;
export const labelSheetNames = Object.keys(labelSheets) as LabelSheetName[];
export const shells = ['bash', 'zsh', 'fish'] as const;
export const themeNames = Object.keys(themes) as ThemeName[];
