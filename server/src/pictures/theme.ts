/** The colours of all pictures. Nothing is told by colour alone: dashes, weights, shapes and words say the same. */

/** CSS colours. All but `grid` and the tints stand out 4.5 to 1 from `paper`. */
export interface Theme {
  readonly paper: string;
  readonly ink: string;
  /** Numbers at the axes and whatever explains. */
  readonly soft: string;
  /** Lines to read along. */
  readonly grid: string;
  readonly untreated: string;
  /** For each agent the weakest dose first; the strongest stands out most. */
  readonly agents: readonly (readonly string[])[];
  readonly cold: string;
  readonly warm: string;
  readonly soak: string;
  /** What is late, or too much. */
  readonly alert: string;
}

const light: Theme = {
  paper: '#ffffff', ink: '#1d2125', soft: '#565d64', grid: '#e2e5e8', untreated: '#666d74',
  agents: [
    ['#4d7f2c', '#33691a', '#1f520d', '#0f3a05'],
    ['#8a5bb5', '#713f9f', '#582885', '#3f1369'],
    ['#a8601c', '#8c4a0c', '#703804', '#532800'],
  ],
  cold: '#1f6396', warm: '#a6521a', soak: '#6d4aa0', alert: '#b3261e',
};

const dark: Theme = {
  paper: '#1e2124', ink: '#eceff1', soft: '#b0b8bf', grid: '#3a4046', untreated: '#a3abb2',
  agents: [
    ['#7ba552', '#93c167', '#b0da86', '#d2f0b1'],
    ['#a98bd0', '#c0a5e2', '#d6c1f1', '#ecdffc'],
    ['#cf8f4e', '#e3a76b', '#f2c190', '#fbdcbc'],
  ],
  cold: '#7fb8e6', warm: '#ec9f6a', soak: '#bfa3ea', alert: '#ff8a80',
};

const contrastDark: Theme = {
  paper: '#000000', ink: '#ffffff', soft: '#ffffff', grid: '#6a6a6a', untreated: '#d0d0d0',
  agents: [
    ['#8fd15f', '#aee685', '#ccf5ad', '#ecffd9'],
    ['#c9a6ff', '#d9c0ff', '#e8d9ff', '#f6efff'],
    ['#ffb25f', '#ffc688', '#ffdab0', '#ffeedb'],
  ],
  cold: '#9ad4ff', warm: '#ffb98a', soak: '#d9c2ff', alert: '#ffb0a8',
};

const contrastLight: Theme = {
  paper: '#ffffff', ink: '#000000', soft: '#292929', grid: '#b8b8b8', untreated: '#4a4a4a',
  agents: [
    ['#2c5f14', '#24560f', '#164206', '#0a2d00'],
    ['#63328f', '#512078', '#3f1062', '#2c0449'],
    ['#84470c', '#6b3705', '#532900', '#3c1c00'],
  ],
  cold: '#0b4673', warm: '#7a3608', soak: '#4c2b7d', alert: '#8c1008',
};

const BLACK = ['#000000'];
/** Black on white, for a printer without colours. */
const print: Theme = {
  paper: '#ffffff', ink: '#000000', soft: '#333333', grid: '#cccccc', untreated: '#555555',
  agents: [BLACK, BLACK, BLACK], cold: '#000000', warm: '#000000', soak: '#000000', alert: '#000000',
};

export const themes = { light, dark, 'contrast-dark': contrastDark, 'contrast-light': contrastLight, print } as const;

export type ThemeName = keyof typeof themes;

export function isThemeName(name: unknown): name is ThemeName {
  return typeof name === 'string' && Object.hasOwn(themes, name);
}

/**
 * The colours as CSS variables, for pictures within a page that sets them by `themeVariables`: it may change them when
 * the editor changes its colours, or when it is printed.
 */
export const pageTheme: Theme = mapTheme(light, name => `var(--${name})`);

/** The declarations that give the variables of a page the colours of a theme. */
export function themeVariables(name: ThemeName): string {
  const declared: string[] = [];
  mapTheme(themes[name], (variable, colour) => {
    declared.push(`--${variable}: ${colour}`);
    return colour;
  });
  return declared.join('; ');
}

function mapTheme(theme: Theme, change: (variable: string, colour: string) => string): Theme {
  const one = (key: Exclude<keyof Theme, 'agents'>): string => change(`draw-${key}`, theme[key]);
  return {
    paper: one('paper'), ink: one('ink'), soft: one('soft'), grid: one('grid'), untreated: one('untreated'),
    agents: light.agents.map((ramp, agent) => ramp.map((_, rung) => {
      const own = theme.agents[agent]!;
      return change(`draw-agent-${agent}-${rung}`, own[Math.min(rung, own.length - 1)]!);
    })),
    cold: one('cold'), warm: one('warm'), soak: one('soak'), alert: one('alert'),
  };
}
