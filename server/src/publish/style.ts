/** What pages of a site have beside the style of a report. */
export const SITE_STYLE = `
[hidden] { display: none } nav.way { font-size: .9rem; color: var(--draw-soft) }
nav.way a { display: inline-block; padding: .25rem 0; margin-right: 1rem }
.search { margin: 1.5rem 0 } .search label { display: block; color: var(--draw-soft); font-size: .9rem }
.search input { box-sizing: border-box; width: 100%; max-width: 28rem; padding: .5rem .6rem; font: inherit;
  color: inherit; background: var(--draw-paper); border: 1px solid var(--draw-soft); border-radius: .3rem }
section.list ul, ul.files { padding-left: 0; list-style: none }
section.list li, ul.files li { padding: .35rem 0; border-bottom: 1px solid var(--draw-grid) }
section.list li span, figcaption { color: var(--draw-soft) } ul.files a { margin-right: .75rem }
figure img { max-width: 100%; max-height: 30rem; height: auto }
@media (max-width: 40rem) { figure { overflow-x: auto } figure > svg { max-width: none } }
`;
