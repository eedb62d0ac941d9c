/** How booklet.html looks on a screen and on paper. */

export const CSS = `
:root { color-scheme: light; }
html { font: 16px/1.45 "Source Sans 3", "Source Sans Pro", system-ui, sans-serif; color: #1c2024; background: #fff; hyphens: manual; }
body { max-width: 46rem; margin: 0 auto; padding: 1.5rem; font-variant-numeric: lining-nums; }
h1 { font-size: 2.4rem; line-height: 1.15; margin: 0 0 .3em; }
h2 { font-size: 1.7rem; line-height: 1.2; margin: 2em 0 .5em; }
h3 { font-size: 1.2rem; margin: 1.6em 0 .4em; }
h4 { font-size: 1rem; margin: 1.3em 0 .3em; }
p, ol, ul { margin: .5em 0; }
li { margin: .2em 0; }
.lead { font-size: 1.2rem; }
.note, figcaption { font-size: .85rem; color: #5b636b; }
table { border-collapse: collapse; width: 100%; margin: .8em 0; font-size: .92rem; }
th, td { text-align: left; vertical-align: top; padding: .25em .5em; border-bottom: 1px solid #b8bfc6; font-weight: normal; }
thead th { font-weight: 600; border-bottom: 2px solid #404040; }
.strong { background: #f1f3f5; }
figure { margin: 1em 0; }
figure svg { display: block; width: auto; height: auto; max-width: 100%; max-height: 34rem; }
figure.large svg { max-height: 24rem; }
figure.small svg { max-height: 13rem; }
figure.middle { max-width: 62%; }
figure.line svg g { stroke-opacity: 1; }
.figures { display: grid; grid-template-columns: repeat(auto-fill, minmax(13rem, 1fr)); gap: 1rem; }
.figures figure { max-width: none; margin: 0; }
.step { display: grid; grid-template-columns: 14rem 1fr; gap: 1.2rem; align-items: start; margin: .8em 0; }
.step figure { margin: 0; max-width: none; }
.swatch { width: .8em; height: .8em; margin-right: .45em; vertical-align: -.05em; }
aside { background: #f1f3f5; border-left: 4px solid #b8bfc6; padding: .3em 1em; margin: 1em 0; }
aside h3 { margin-top: .5em; }
nav ol { columns: 2; }
a { color: inherit; }
@media (max-width: 40rem) { .step { grid-template-columns: 1fr; } figure.middle { max-width: none; } }
@media print {
  html { font-size: 10pt; }
  body { max-width: none; padding: 0; }
  section.page { break-before: page; }
  nav { break-before: page; }
  h2, h3, h4, h3 + p { break-after: avoid; }
  tr, figure, aside, li { break-inside: avoid; }
  p, li { orphans: 2; widows: 2; }
  thead { display: table-header-group; }
  figure.page svg, figure.cover svg { max-height: 180mm; }
  figure.large svg { max-height: 80mm; }
  figure.middle svg { max-height: 95mm; }
  a { text-decoration: none; }
}`.trim();
