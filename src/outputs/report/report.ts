/** `report.html`: the kit on one page, without network, for screen, phone and paper. */
import { verdict } from '../../checks/accept.js';
import { CAUTIONS } from '../cautions.js';
import type { Output, OutputContext } from '../context.js';
import { tally } from '../findings-text.js';
import { KIT_SIZE } from '../pictures.js';
import { madeText } from '../summary.js';
import { alignHtml } from './align.js';
import { bayHtml } from './bay.js';
import { boardsHtml } from './boards.js';
import { aimFigure, fingerFigure, leafFigure } from './figures.js';
import { findingsHtml } from './findings.js';
import { hardwareHtml } from './hardware.js';
import { list, pngData, table, text } from './html.js';
import { legendsHtml } from './legends.js';
import { sceneData } from './scene.js';
import { sourcesHtml } from './sources.js';
import { stepsHtml } from './steps.js';
import { STYLE } from './style.js';
import { supplyHtml } from './supply.js';

export const report: Output = (context) => [
  { path: 'report.html', bytes: new TextEncoder().encode(reportHtml(context)) },
];

const CHAPTERS = [
  ['view', 'The kit'],
  ['findings', 'Findings'],
  ['cautions', 'Cautions'],
  ['parts', 'Parts and hardware'],
  ['assembly', 'Putting it together'],
  ['align', 'Alignment'],
  ['bay', 'Electronics bay'],
  ['boards', 'Boards'],
  ['supply', 'Supply and wiring'],
  ['budgets', 'Budgets'],
  ['chosen', 'Chosen for you'],
  ['sources', 'Sources'],
] as const;

export function reportHtml(context: OutputContext): string {
  const { spec, findings } = context;
  const good = verdict(findings).good;
  const warnings = findings.some(({ severity }) => severity === 'warning');
  const kind = good ? (warnings ? 'warn' : 'good') : 'bad';
  const said = good ? `It can be built${warnings ? '; read the warnings first' : ''}` : 'It must not be built as it is';
  const still = pngData(context.drawn.kitPicture());
  const scene = JSON.stringify(sceneData(context)).replaceAll('<', '\\u003c');
  const chapters: Readonly<Record<(typeof CHAPTERS)[number][0], string>> = {
    view: viewHtml(still, context),
    findings: findingsHtml(findings),
    cautions: `<div class="cautions">${list(CAUTIONS)}</div>`,
    parts: `${hardwareHtml(context)}${legendsHtml(context)}`,
    assembly: `<p>In the pictures what is new stands in full colour, a little off its place.</p>${stepsHtml(context)}`,
    align: alignHtml(context),
    bay: bayHtml(context),
    boards: boardsHtml(context),
    supply: supplyHtml(context),
    budgets: `${aimFigure(context)}\n${fingerFigure(context)}\n${leafFigure(context.travel)}`,
    chosen: chosenHtml(context),
    sources: `<p>Figures that a catalogue gives carry its source; the preset’s own say so. Measure what you can and put it in the preset.</p>${sourcesHtml(spec)}`,
  };
  // A chapter with nothing in it is left out.
  const shown = CHAPTERS.filter(([id]) => chapters[id] !== '');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'; connect-src 'self'">
<title>${text(spec.title)}</title>
<style>${STYLE}</style>
</head>
<body>
<header>
<h1>${text(spec.title)}</h1>
<p class="verdict ${kind}">${said}: ${text(tally(findings))}</p>
<p>${text(madeText(context, 10_000).replaceAll('\n', ' '))}</p>
<nav aria-label="Chapters"><ul>${shown.map(([id, title]) => `<li><a href="#${id}">${title}</a></li>`).join('')}</ul></nav>
</header>
<main>
${shown.map(([id, title]) => `<section id="${id}" aria-labelledby="${id}-title">\n<h2 id="${id}-title">${title}</h2>\n${chapters[id]}\n</section>`).join('\n')}
</main>
<footer>Made by beamloom from ${text(spec.name)}. Lengths in millimetres. What is estimated here is not a promise: print one mount, one collar, one socket and one lid first and try them.</footer>
<script type="application/json" id="scene-data">${scene}</script>
<script>${context.viewer.replaceAll('</script', '<\\/script')}</script>
</body>
</html>
`;
}

/** Directions to the eye. */
const VIEWS = [
  ['Front', '-0.6,-1,0.8'],
  ['Back', '0.6,1,0.8'],
  ['Above', '0,-0.01,1'],
  ['Below', '-0.6,-1,-0.8'],
] as const;

const viewHtml = (
  still: string,
  { spec }: OutputContext,
): string => `<div id="stage"><img src="${still}" width="${KIT_SIZE[0]}" height="${KIT_SIZE[1]}" alt="${text(`${spec.title}, assembled, seen from the front left`)}"></div>
<div id="view-tools" hidden>
<label>Take apart <input type="range" id="apart" min="0" max="100" value="0"></label>
<label><input type="checkbox" id="covers" checked> Covers</label>
<label><input type="checkbox" id="beams" checked> Beams</label>
${VIEWS.map(([name, way]) => `<button type="button" data-view="${way}">${name}</button>`).join('\n')}
<button type="button" id="closer" aria-label="Closer">+</button>
<button type="button" id="farther" aria-label="Farther">−</button>
<label>Part <select id="pick"><option value="">none</option></select></label>
</div>
<p id="picked" class="soft" aria-live="polite"></p>`;

const chosenHtml = ({ solved }: OutputContext): string =>
  table(
    'What the preset leaves open: the value taken, and why',
    ['key', 'value', 'why'],
    solved.map(({ path, value, why }) => [
      path,
      typeof value === 'object' ? value.map(short).join(', ') : typeof value === 'number' ? short(value) : value,
      why,
    ]),
  );

const short = (value: number): string => String(Number(value.toPrecision(4)));
