/**
 * `tune.svg`: one design's way along its screw (tilt, force, share of its limits), and the sweep's trade-off of strain against
 * mount length. Plain shapes and text, classes for colours, light and dark by the reader's own setting.
 */
import { plastics } from '../materials/index.js';
import type { TuneReport } from '../tune/report.js';
import type { OutputFile } from './context.js';
import { escapeXml } from './svg-scale.js';
import { tradeOff } from './tune-svg-sweep.js';
import { travelPanels } from './tune-svg-travel.js';
import { leafName } from './tune-words.js';

const WIDTH = 1080;
const HEIGHT = 720;

/** Colours by what they mean; contrast of text to ground is 7 : 1 or more in both. */
const STYLE = `
  text { font: 13px system-ui, "Segoe UI", "DejaVu Sans", sans-serif; fill: #1c2630 }
  .title { font-size: 19px; font-weight: 600 }
  .head { font-weight: 600 }
  .soft { fill: #46525e }
  .paper { fill: #ffffff }
  .way { fill: #e8f0f8 }
  .grid { stroke: #d9dfe5 }
  .axis { stroke: #46525e }
  .mark { stroke: #7b8794; stroke-dasharray: 2 4 }
  .line { fill: none; stroke: #0a5ca8; stroke-width: 2.2; stroke-linejoin: round }
  .second { stroke-dasharray: 7 4 }
  .limit { stroke: #b3261e; stroke-width: 1.6; stroke-dasharray: 9 4 }
  .warn { fill: #a01c14 }
  .fail { fill: none; stroke: #7b8794; stroke-width: 1.2 }
  .pass { fill: #8fb8dc }
  .front { fill: #0a5ca8 }
  .taken { fill: none; stroke: #1c2630; stroke-width: 1.8 }
  @media (prefers-color-scheme: dark) {
    text { fill: #e6ebf0 }
    .soft { fill: #b4bfca }
    .paper { fill: #13181e }
    .way { fill: #1d2a38 }
    .grid { stroke: #2c3641 }
    .axis { stroke: #b4bfca }
    .mark { stroke: #8a96a3 }
    .line { stroke: #6cb4f2 }
    .limit { stroke: #ff8a80 }
    .warn { fill: #ffaba4 }
    .fail { stroke: #8a96a3 }
    .pass { fill: #4478a8 }
    .front { fill: #6cb4f2 }
    .taken { stroke: #e6ebf0 }
  }
`;

export function tuneSvg(report: TuneReport): OutputFile {
  const { spec, shown, rows } = report;
  const title = `${spec.title}: the mount’s leaf`;
  const said = shown
    ? `Design ${shown.point.number} of ${rows.length}: ${leafName(shown.point)}, ${plasticOf(shown.point.material) ?? spec.material.plastic.title}`
    : `${rows.length} designs, none of which can be drawn`;
  const markup = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-labelledby="title about">`,
    `<title id="title">${escapeXml(title)}</title>`,
    `<desc id="about">${escapeXml(about(report))}</desc>`,
    `<style>${STYLE}</style>`,
    `<rect class="paper" width="${WIDTH}" height="${HEIGHT}"/>`,
    `<text class="title" x="64" y="36">${escapeXml(title)}</text>`,
    `<text class="soft" x="64" y="58">${escapeXml(said)}</text>`,
    ...travelPanels(report, { left: 64, right: 560, top: 136, bottom: 668 }),
    ...tradeOff(report, { left: 656, right: 1048, top: 136, bottom: 500 }),
    '</svg>',
  ];
  return { path: 'tune.svg', bytes: new TextEncoder().encode(`${markup.join('\n')}\n`) };
}

const plasticOf = (name: string | undefined): string | undefined =>
  name === undefined ? undefined : plastics[name as keyof typeof plastics].title;

/** The figure in words, for those who can't see it. */
function about({ shown, travel, rows, front }: TuneReport): string {
  const sweep = `${rows.length} designs, ${front.size} of them unbeaten.`;
  if (!travel || !shown) return sweep;
  const { highest, lowest, stopLatest } = travel.marks;
  const turns = (lowest.turns - highest.turns).toFixed(2);
  return `From the highest to the lowest beam the screw makes ${turns} turns, the beam tilts from ${highest.tilt.toFixed(1)} to ${lowest.tilt.toFixed(1)} degrees, the screw pushes with ${highest.force.toFixed(2)} to ${lowest.force.toFixed(2)} newton; the stop touches at ${stopLatest.tilt.toFixed(1)} degrees at the latest. ${sweep}`;
}
