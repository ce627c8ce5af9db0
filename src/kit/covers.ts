/** Covers over the rails, the alignment hood, and the plugs that close the covers' openings afterwards. */

import { side } from '../layout/fits.js';
import { PLUG } from '../layout/openings.js';
import type { RailRun } from '../layout/runs.js';
import { drawCoverPlug } from '../parts/cover-plug.js';
import { drawHoodPanel, hoodMatrix } from '../parts/hood.js';
import { coverScrews } from '../parts/rail.js';
import { drawRailCover } from '../parts/rail-cover.js';
import { frame, multiply, translation } from '../solid/matrix.js';
import { type Bench, fixKey, formedOverlap, move } from './bench.js';
import { POSTS, pieceTitle } from './frame.js';
import { railName, segmentName } from './mounts.js';

const coverOf = (rail: string): string => rail.replace('rail', 'cover');
export const coverName = (run: RailRun, i: number): string => coverOf(segmentName(run, i));

/** @returns the covers' screws */
export function placeCovers(b: Bench): readonly string[] {
  const { layout, k } = b;
  const { section, boss } = layout.frame;
  const covers: string[] = [];
  const screws: string[] = [];
  for (const run of layout.runs)
    run.segments.forEach((segment, i) => {
      const rail = segmentName(run, i);
      const signature = JSON.stringify({ ...segment, from: 0, yields: false, bay: null });
      const same = layout.runs
        .flatMap((r) => r.segments.map((s, j) => ({ id: `cover-${segmentName(r, j).replace('-rail', '')}`, s })))
        .find(({ s }) => JSON.stringify({ ...s, from: 0, yields: false, bay: null }) === signature)!;
      const cover = b.place({
        name: coverName(run, i),
        part: b.printed(same.id, `cover of the ${segment.kind} rail, ${pieceTitle(same.id)}`, () =>
          drawRailCover(k, layout, segment),
        ),
        matrix: multiply(
          run.matrix,
          translation([segment.from, 0, 0]),
          frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, section.height + section.cover]),
        ),
        // At a seam pieces of rail and cover meet edge to edge.
        touches: [
          ...run.segments.map((_, j) => segmentName(run, j)),
          ...POSTS,
          ...(i > 0 ? [coverName(run, i - 1)] : []),
        ],
      });
      covers.push(cover);
      for (const [j, [x, y]] of coverScrews(layout, segment).entries())
        screws.push(
          b.screw({
            name: `${cover}-screw-${j + 1}`,
            head: 'sunk',
            size: layout.spec.screws.fix,
            length: boss.screwLength,
            matrix: multiply(run.matrix, translation([segment.from + x, y, section.height + section.cover])),
            overlaps: [formedOverlap(layout, { with: rail, engaged: boss.engaged, standing: true })],
            into: { kind: 'formed', part: rail, engaged: boss.engaged },
            tipRoom: boss.pilotDepth - boss.engaged,
            when: 'at its step',
            through: [cover],
          }),
        );
    });
  b.step(
    layout.bay?.rail
      ? 'Lead the wires along the rails, over the notch into the bay and to their boards, and tie the bundle to the rib beside the notch; then lay the covers on the rails and screw them down'
      : 'Lead the wires along the rails and out at the slot of a corner, tie each bundle to the wall with a cable tie through the two slits beside the slot; then lay the covers on the rails and screw them down',
    {
      joins: covers,
      hardware: screws,
      moves: [
        ...covers.map((name) => move(name, [0, 0, -1], 20)),
        ...screws.map((name) => move(name, [0, 0, -1], 15, { tool: fixKey(b) })),
      ],
    },
  );
  return screws;
}

/** By which ends meet another panel. */
const PANEL_PLACE: Readonly<Record<string, string>> = { '-on': '-first', 'on-on': '-middle', 'on-': '-last' };

export function placeHood(b: Bench, screws: readonly string[]): void {
  const { layout, k } = b;
  const names = layout.hood.panels.map((panel) => {
    const run = layout.runs.find((r) => r.side === panel.side)!;
    const count = layout.hood.panels.filter((p) => p.side === panel.side).indexOf(panel) + 1;
    const place = panel.meets.map((meets) => (meets ? 'on' : '')).join('-');
    const size = `${Math.round((panel.to - panel.from) * 10) / 10}x${panel.height}${PANEL_PLACE[place] ?? ''}`;
    return b.place({
      name: `${panel.side}-hood-${count}`,
      part: b.printed(`hood-${size}`, 'panel of the alignment hood', () => drawHoodPanel(k, layout, panel)),
      matrix: multiply(run.matrix, hoodMatrix(layout, panel)),
      touches: layout.runs
        .flatMap((r) => r.segments.map((_, j) => coverName(r, j)))
        .concat(screws)
        .concat(POSTS),
    });
  });
  b.step(
    'Hang the alignment hood over both receiver rails: it stays until the last line is set, then it is lifted off',
    {
      joins: names,
      hardware: [],
      moves: names.map((name) => move(name, [0, 0, -1], layout.hood.skirt + 5)),
    },
  );
}

export function placePlugs(b: Bench): void {
  const { layout, k } = b;
  const { section } = layout.frame;
  const names = layout.runs.flatMap((run) =>
    run.beams.map((beam) => {
      const front = run.kind === 'emitter' ? section.mountFront : section.socketFront;
      const cover = coverOf(railName(run, beam.at));
      const name = b.place({
        name: `${beam.line}-${beam.index}-${run.kind === 'emitter' ? 'mount' : 'socket'}-plug`,
        part: b.printed(
          run.kind === 'emitter' ? 'plug-mount' : 'plug-socket',
          `plug for the openings over a ${run.kind === 'emitter' ? 'mount' : 'socket'}`,
          () => drawCoverPlug(k, layout, run.kind),
        ),
        matrix: multiply(
          run.matrix,
          frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [beam.at, front, section.height + section.cover + PLUG.plate]),
        ),
        touches: [cover],
        afterAlignment: true,
      });
      b.fit({
        a: cover,
        b: name,
        what: 'the plug in its openings',
        fitClass: 'snug',
        drawn: side(layout.spec, 'snug'),
      });
      return name;
    }),
  );
  b.step(
    'Align every line, one at a time, as the report’s chapter on alignment says; then press the plugs into the openings',
    {
      joins: names,
      hardware: [],
      moves: names.map((name) => move(name, [0, 0, -1], 10)),
    },
  );
}
