/** How the page of a report looks on a screen, light or dark, and on paper. */
import { themeVariables } from '../pictures/theme.ts';

/** Nothing is loaded and nothing runs, whatever stands in a journal. */
export const PAGE_POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** A lot begins a page of the binder. A table breaks its cells where it is too wide, on paper also its words. */
export function pageStyle(): string {
  return `
:root { color-scheme: light dark; ${themeVariables('light')} }
@media (prefers-color-scheme: dark) { :root { ${themeVariables('dark')} } }
@media (prefers-contrast: more) { :root { ${themeVariables('contrast-light')} } }
@media (prefers-contrast: more) and (prefers-color-scheme: dark) { :root { ${themeVariables('contrast-dark')} } }
body { margin: 0; font: 15px/1.5 system-ui, sans-serif; color: var(--draw-ink); background: var(--draw-paper) }
main { max-width: 60rem; margin: 0 auto; padding: 1.5rem }
h1 { font-size: 1.4rem } h2 { font-size: 1.25rem; margin: 3rem 0 .25rem } h3 { font-size: 1rem; margin: 1.25rem 0 .25rem }
a { color: inherit } nav li, p, li { overflow-wrap: anywhere }
figure { margin: .5rem 0 } svg { max-width: 100%; height: auto }
.table { overflow-x: auto } table { border-collapse: collapse; margin: .5rem 0; font-variant-numeric: tabular-nums }
th, td { text-align: left; vertical-align: top; padding: .2rem .8rem .2rem 0; border-bottom: 1px solid var(--draw-grid) }
tbody th { font-weight: normal; white-space: nowrap } thead th { color: var(--draw-soft); font-weight: 600 }
.number { text-align: right; white-space: nowrap }
summary { cursor: pointer; color: var(--draw-soft) } footer { margin-top: 3rem; color: var(--draw-soft); font-size: .9rem }
@media (max-width: 48rem) { .number { white-space: normal } th, td { padding-right: .5rem } main { padding: 1rem } }
@media print {
  @page { margin: 14mm }
  :root { color-scheme: light; ${themeVariables('print')} }
  body { font-size: 10pt } main { max-width: none; padding: 0 }
  section { break-before: page } figure, tr, li { break-inside: avoid } details { display: none }
  th, td { padding-right: .5rem } .table { overflow: visible }
  td { overflow-wrap: anywhere } td.number { white-space: normal; overflow-wrap: normal }
  h2, h3 { break-after: avoid; margin-top: .75rem }
}
`;
}
