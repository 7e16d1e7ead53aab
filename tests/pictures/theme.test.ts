import { describe, expect, test } from 'vitest';
import { pageTheme, themes, themeVariables, type Theme } from '../../server/src/pictures/theme.ts';

/** Contrast ratio of two colours, by the formulas of WCAG 2.1, "relative luminance" and "contrast ratio". */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5]
    .map(at => parseInt(colour.slice(at, at + 2), 16) / 255)
    .map(part => (part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function coloursOf(theme: Theme): string[] {
  const { ink, soft, untreated, agents, cold, warm, soak, alert } = theme;
  return [ink, soft, untreated, ...agents.flat(), cold, warm, soak, alert];
}

describe('the colours of pictures', () => {
  test('are measured by the ratios that WCAG names', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    // WebAIM's contrast checker, from memory: #767676 is the lightest grey that passes on white, #777777 does not.
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  test.each(Object.entries(themes))('stand out 4.5 to 1 from the paper in %s', (_, theme) => {
    const weak = coloursOf(theme).filter(colour => contrast(colour, theme.paper) < 4.5);
    expect(weak).toEqual([]);
  });

  test.each(['contrast-dark', 'contrast-light'] as const)('stand out 7 to 1 in %s', name => {
    const weak = coloursOf(themes[name]).filter(colour => contrast(colour, themes[name].paper) < 7);
    expect(weak).toEqual([]);
  });

  test.each(Object.entries(themes))('make a stronger dose stand out more in %s', (name, theme) => {
    for (const ramp of theme.agents) {
      const ratios = ramp.map(colour => contrast(colour, theme.paper));
      expect(ratios, name).toEqual(ratios.toSorted((a, b) => a - b));
    }
  });

  test('are variables in a page, and each of them is declared', () => {
    const declared = new Set(
      themeVariables('print')
        .split('; ')
        .map(line => `var(${line.slice(0, line.indexOf(':'))})`),
    );
    expect(coloursOf(pageTheme).filter(colour => !declared.has(colour))).toEqual([]);
    expect(themeVariables('dark')).toContain(`--draw-ink: ${themes.dark.ink}`);
  });
});
