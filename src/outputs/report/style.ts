/** How the report looks: light and dark by the reader's setting, one column, tables that scroll by themselves, and on paper. */
export const STYLE = `
:root { color-scheme: light dark; --ink: #1b242c; --soft: #47535f; --ground: #fbfaf7; --card: #ffffff; --line: #d5d9dc; --accent: #0b5a8f;
  --good: #17603a; --warn: #7a4a00; --bad: #a01c14; --bar: #3f7fae; --bar2: #b3742a; --limit: #b3261e }
@media (prefers-color-scheme: dark) { :root { --ink: #e9edf0; --soft: #b6c0c9; --ground: #14181c; --card: #1c2228; --line: #39434c; --accent: #82c0ee;
  --good: #86d9a8; --warn: #f0c070; --bad: #ffaaa2; --bar: #6cb4f2; --bar2: #e0a35a; --limit: #ff8a80 } }
* { box-sizing: border-box }
body { margin: 0; background: var(--ground); color: var(--ink); font: 16px/1.5 system-ui, "Segoe UI", "DejaVu Sans", sans-serif }
header, main, footer { max-width: 68rem; margin: 0 auto; padding: 0 1rem }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 1.5rem 0 .3rem; overflow-wrap: anywhere }
h2 { font-size: 1.25rem; margin: 2.4rem 0 .6rem; padding-top: .8rem; border-top: 2px solid var(--line) }
h3 { font-size: 1.02rem; margin: 1.3rem 0 .3rem }
p, li { max-width: 46rem; overflow-wrap: anywhere }
a { color: var(--accent) }
nav ul { display: flex; flex-wrap: wrap; gap: .2rem 1.1rem; list-style: none; margin: .8rem 0; padding: 0 }
.verdict { display: inline-block; padding: .25rem .7rem; border: 2px solid currentColor; border-radius: .3rem; font-weight: 600 }
.good { color: var(--good) } .warn { color: var(--warn) } .bad { color: var(--bad) } .soft { color: var(--soft) }
#stage { position: relative; height: min(62vh, 34rem); background: var(--card); border: 1px solid var(--line); border-radius: .4rem; overflow: hidden; touch-action: none }
#stage img, #stage canvas { display: block; width: 100%; height: 100%; object-fit: contain }
#view-tools { display: flex; flex-wrap: wrap; gap: .6rem 1.1rem; align-items: center; margin: .7rem 0 }
#view-tools[hidden] { display: none }
#view-tools label { display: inline-flex; gap: .4rem; align-items: center }
button, select { font: inherit; color: inherit; background: var(--card); border: 1px solid var(--soft); border-radius: .3rem; padding: .25rem .6rem; max-width: 100% }
input { accent-color: var(--accent) }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px }
.wide { overflow-x: auto; margin: .8rem 0 }
table { border-collapse: collapse; font-size: .92rem }
caption { text-align: left; font-weight: 600; padding: .2rem 0 }
th, td { text-align: left; vertical-align: top; padding: .25rem .8rem .25rem 0; border-bottom: 1px solid var(--line) }
.number { text-align: right; font-variant-numeric: tabular-nums }
.steps { list-style: none; margin: 0; padding: 0; display: grid; gap: 1rem; grid-template-columns: repeat(auto-fill, minmax(min(19rem, 100%), 1fr)) }
.steps li { background: var(--card); border: 1px solid var(--line); border-radius: .4rem; padding: .7rem; break-inside: avoid }
.steps img { width: 100%; height: auto; display: block; border-radius: .25rem }
figure { margin: 1rem 0 } figure img { background: #ffffff; border-radius: .25rem } figure svg { width: 100%; max-width: 46rem; height: auto } figcaption { color: var(--soft); max-width: 46rem; font-size: .92rem }
svg text { fill: var(--ink); font: 13px system-ui, "Segoe UI", "DejaVu Sans", sans-serif } svg .soft { fill: var(--soft) } svg .head { font-weight: 600 }
svg .grid { stroke: var(--line) } svg .axis { stroke: var(--soft) } svg .bar { fill: var(--bar) } svg .bar2 { fill: var(--bar2) } svg .way { fill: var(--line); opacity: .45 }
svg .mark { stroke: var(--soft); stroke-dasharray: 2 4 } svg .line { fill: none; stroke: var(--bar); stroke-width: 2.2 } svg .second { stroke-dasharray: 7 4 }
svg .other { stroke: var(--bar2) } svg .limit { stroke: var(--limit); stroke-width: 1.6; stroke-dasharray: 9 4 } svg .warn { fill: var(--limit) }
.cautions { border: 2px solid var(--bad); border-radius: .4rem; padding: .2rem 1rem }
footer { margin: 3rem auto; color: var(--soft); font-size: .9rem }
@media (max-width: 40rem) { body { font-size: 15px } #stage { height: 20rem } }
@media print { :root { color-scheme: light; --ground: #ffffff } nav, #view-tools, #picked { display: none } #stage { height: 22rem; border: 0 } h2 { break-after: avoid } .wide { overflow: visible } .wiring { max-width: 100%; height: auto } body { font-size: 10.5pt } }
`;
