/** Rails, what joins their pieces, brackets and corner posts. */

import type { RailRun } from '../layout/runs.js';
import type { Side } from '../layout/sides.js';
import { drawCornerPost, postMatrix } from '../parts/corner-post.js';
import { drawEmitterRail } from '../parts/emitter-rail.js';
import { drawCornerBracket, drawSillBar, drawWallPlate } from '../parts/joints.js';
import { drawReceiverRail } from '../parts/receiver-rail.js';
import { applyDirection, frame, multiply, rotation, translation } from '../solid/matrix.js';
import type { Matrix, Vec3 } from '../solid/mesh.js';
import { type Bench, fixKey, formedOverlap, move } from './bench.js';
import { segmentName } from './mounts.js';
import type { Move } from './types.js';

/** The way in which each rail comes to its place: from outside. */
const INWARD: Record<Side, Vec3> = { far: [0, -1, 0], near: [0, 1, 0], left: [1, 0, 0], right: [-1, 0, 0] };
const CORNERS = [
  { name: 'far-right', along: 'far', end: 'last', across: 'right', turn: 0 },
  { name: 'far-left', along: 'far', end: 'first', across: 'left', turn: 1 },
  { name: 'near-left', along: 'near', end: 'last', across: 'left', turn: 2 },
  { name: 'near-right', along: 'near', end: 'first', across: 'right', turn: 3 },
] as const;

/** Names of what stands in the corners. */
export const BRACKETS: readonly string[] = CORNERS.map(({ name }) => `${name}-bracket`);
export const POSTS: readonly string[] = CORNERS.map(({ name }) => `${name}-post`);

export function placeFrame(b: Bench): void {
  for (const run of b.layout.runs) placeRun(b, run);
  raiseRails(b);
  placeCorners(b);
}

/** Id of a segment's part: equal segments are one part. */
function segmentPart(b: Bench, run: RailRun, i: number): string {
  const { runs } = b.layout;
  const segment = run.segments[i]!;
  const signature = (s: typeof segment) => JSON.stringify({ ...s, from: 0 });
  const all = runs.flatMap((r) =>
    r.segments.map((s, j) => ({ id: `${r.kind}-rail-${segmentName(r, j).replace('-rail', '')}`, s })),
  );
  const first = all.find(({ s }) => signature(s) === signature(segment))!;
  return b.printed(first.id, `${segment.kind} rail, ${pieceTitle(first.id)}`, () =>
    segment.kind === 'emitter' ? drawEmitterRail(b.k, b.layout, segment) : drawReceiverRail(b.k, b.layout, segment),
  );
}

/** Pieces of the neighbouring rails that this run may meet. */
const corners = (b: Bench, run: RailRun): string[] =>
  b.layout.runs.filter((r) => r !== run).flatMap((r) => r.segments.map((_, i) => segmentName(r, i)));

/** `far` or `far, piece 2` from a part's id. */
export const pieceTitle = (id: string): string =>
  (/(far|near|left|right)(?:-(\d+))?$/.exec(id) ?? []).slice(1).filter(Boolean).join(', piece ');

function placeRun(b: Bench, run: RailRun): void {
  const { layout, k } = b;
  const { section, joint, tab } = layout.frame;
  const names = run.segments.map((_, i) => segmentName(run, i));
  run.segments.forEach((segment, i) => {
    b.place({
      name: names[i]!,
      part: segmentPart(b, run, i),
      matrix: multiply(run.matrix, translation([segment.from, 0, 0])),
      // Rails meet at the field's corners along an edge.
      touches: [...(i > 0 ? [names[i - 1]!] : []), ...corners(b, run)],
    });
  });
  if (run.seams.length === 0) return;

  const moves: Move[] = [];
  const joins = [...names];
  const hardware: string[] = [];
  run.seams.forEach((at, i) => {
    const [before, after] = [names[i]!, names[i + 1]!];
    moves.push(move(after, [-1, 0, 0], 40, { inFrameOf: before }));
    const bar = b.place({
      name: `${run.side}-bar-${i + 1}`,
      part: b.printed('sill-bar', 'bar across a seam in the sill', () => drawSillBar(k, layout)),
      matrix: multiply(run.matrix, frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [at, -section.sillBehind, 0])),
      touches: [before, after],
    });
    const low = section.floor + 0.4;
    const plate = b.place({
      name: `${run.side}-plate-${i + 1}`,
      part: b.printed('wall-plate', 'plate across a seam inside the outer wall', () => drawWallPlate(k, layout)),
      matrix: multiply(
        run.matrix,
        frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [at, section.width - section.wall - tab.gap, low]),
      ),
      touches: [before, after],
    });
    joins.push(bar, plate);
    moves.push(move(bar, [0, 0, -1], section.sillTop + 3, { inFrameOf: before }));
    moves.push(move(plate, [0, 0, -1], section.height + 3, { inFrameOf: before }));
    for (const distance of joint.screws)
      for (const sign of [-1, 1]) {
        const x = at + sign * distance;
        const rail = sign < 0 ? before : after;
        const one = sillScrew(b, {
          name: `${bar}-screw-${hardware.length + 1}`,
          matrix: multiply(
            run.matrix,
            frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [x, -section.sill, section.sillTop / 2]),
          ),
          through: bar,
          rail,
        });
        hardware.push(one);
        moves.push(move(one, [0, 1, 0], joint.screwLength + 3, { inFrameOf: before, tool: fixKey(b) }));
        for (const z of tab.heights) {
          const two = wallScrew(b, {
            name: `${plate}-screw-${hardware.length + 1}`,
            matrix: multiply(run.matrix, frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [x, section.width, z])),
            rail,
            into: plate,
            standing: true,
          });
          hardware.push(two);
          moves.push(move(two, [0, -1, 0], tab.screwLength + 3, { inFrameOf: before, tool: fixKey(b) }));
        }
      }
  });
  b.step(
    `Join the pieces of the ${run.side} rail: bar in the sill, plate inside the outer wall, screws from both sides`,
    {
      joins,
      hardware,
      moves,
    },
  );
}

/** The rails meet on the table, from outside. */
function raiseRails(b: Bench): void {
  // The kit grows on what was put together first: a rail in pieces, where there is one.
  const first = b.layout.runs.find((run) => run.seams.length > 0)?.side ?? 'far';
  const rest = (['far', 'left', 'right', 'near'] as const).filter((at) => at !== first);
  const order: readonly Side[] = [first, ...rest];
  const runs = order.map((at) => b.layout.runs.find((run) => run.side === at)!);
  const travel = b.layout.frame.section.width;
  b.step('Lay the four rails around the field on a flat table', {
    joins: runs.filter((run) => run.seams.length === 0).map((run) => segmentName(run, 0)),
    hardware: [],
    moves: runs.slice(1).map((run) => move(segmentName(run, 0), INWARD[run.side], travel)),
  });
}

function placeCorners(b: Bench): void {
  const { layout, k } = b;
  const { section, joint, tab } = layout.frame;
  const { grid } = layout;
  const brackets: string[] = [];
  const posts: string[] = [];
  const bracketScrews: { name: string; way: Vec3 }[] = [];
  const postScrews: { name: string; way: Vec3 }[] = [];
  for (const corner of CORNERS) {
    const runA = layout.runs.find((run) => run.side === corner.along)!;
    const runB = layout.runs.find((run) => run.side === corner.across)!;
    const railA = segmentName(runA, corner.end === 'first' ? 0 : runA.segments.length - 1);
    // Rail B meets the far rail with its last piece on the left, with its first on the right; the near rail the other way.
    const firstOfB = (corner.across === 'left') === (corner.along === 'near');
    const railB = segmentName(runB, firstOfB ? 0 : runB.segments.length - 1);
    const at: Vec3 = [
      corner.across === 'right' ? grid.width : 0,
      corner.along === 'far' ? grid.depth : 0,
      section.bottom,
    ];
    // Corner coordinates: p and q outward at the far right; each next corner a quarter turn on.
    const m = multiply(translation(at), rotation('z', (corner.turn * Math.PI) / 2));
    const into = multiply(m, frame([-1, 0, 0], [0, -1, 0], [0, 0, 1], [-section.sillBehind, -section.sillBehind, 0]));
    const bracket = b.place({
      name: `${corner.name}-bracket`,
      part: b.printed('corner-bracket', 'bracket in a corner of the field', () => drawCornerBracket(k, layout)),
      matrix: into,
      touches: [railA, railB],
    });
    brackets.push(bracket);
    const post = b.place({
      name: `${corner.name}-post`,
      part: b.printed('corner-post', 'corner post', () => drawCornerPost(k, layout)),
      matrix: multiply(m, postMatrix(layout)),
      touches: [railA, railB],
    });
    posts.push(post);
    // At an even turn rail A lies along p (q outward), at an odd one along q.
    const ends = corner.turn % 2 === 0 ? { alongP: railA, alongQ: railB } : { alongP: railB, alongQ: railA };
    for (const distance of joint.screws) {
      for (const [rail, local] of [
        [ends.alongP, frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [-distance, -section.sill, section.sillTop / 2])],
        [ends.alongQ, frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [-section.sill, -distance, section.sillTop / 2])],
      ] as readonly (readonly [string, Matrix])[]) {
        const matrix = multiply(m, local);
        const name = sillScrew(b, {
          name: `${bracket}-screw-${bracketScrews.length + 1}`,
          matrix,
          through: bracket,
          rail,
        });
        bracketScrews.push({ name, way: applyDirection(matrix, [0, 0, -1]) });
      }
    }
    for (const z of tab.heights)
      for (const [rail, local] of [
        [ends.alongP, frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [-tab.reach / 2, section.width, z])],
        [ends.alongQ, frame([0, 0, -1], [0, 1, 0], [1, 0, 0], [section.width, -tab.reach / 2, z])],
      ] as readonly (readonly [string, Matrix])[]) {
        const matrix = multiply(m, local);
        const name = wallScrew(b, {
          name: `${post}-screw-${postScrews.length + 1}`,
          matrix,
          rail,
          into: post,
          standing: false,
        });
        postScrews.push({ name, way: applyDirection(matrix, [0, 0, -1]) });
      }
  }
  b.step(
    'Drop a bracket into each corner of the field and screw it to both rails with the short arm of the key; tighten all only when all are in',
    {
      joins: brackets,
      hardware: bracketScrews.map(({ name }) => name),
      moves: [
        ...brackets.map((name) => move(name, [0, 0, -1], section.sillTop + 3)),
        ...bracketScrews.map(({ name, way }) => move(name, way, joint.screwLength + 3, { tool: fixKey(b) })),
      ],
    },
  );
  b.step('Lower a corner post over each corner, its tabs inside the rails, and screw it from outside', {
    joins: posts,
    hardware: postScrews.map(({ name }) => name),
    moves: [
      ...posts.map((name) => move(name, [0, 0, -1], section.height + 3)),
      ...postScrews.map(({ name, way }) => move(name, way, tab.screwLength + 3, { tool: fixKey(b) })),
    ],
  });
}

/** Screw from the field through bracket or bar into sill and wall; the matrix puts its head on the bracket's face. */
function sillScrew(
  b: Bench,
  { name, matrix, through, rail }: { name: string; matrix: Matrix; through: string; rail: string },
): string {
  const { joint, section } = b.layout.frame;
  const engaged = Math.min(joint.engaged, section.sillBehind + section.wall);
  return b.screw({
    name,
    head: 'sunk',
    size: b.layout.spec.screws.fix,
    length: joint.screwLength,
    matrix,
    overlaps: [formedOverlap(b.layout, { with: rail, engaged, standing: false })],
    into: { kind: 'formed', part: rail, engaged },
    tipRoom: section.sillBehind + section.wall + 1 - joint.engaged,
    when: 'at its step',
    shortArm: true,
    through: [through],
  });
}

/** Screw from outside through the outer wall into a tab or plate, whose pilot lies or stands in print. */
function wallScrew(
  b: Bench,
  {
    name,
    matrix,
    rail,
    into,
    standing,
  }: { name: string; matrix: Matrix; rail: string; into: string; standing: boolean },
): string {
  const { tab } = b.layout.frame;
  return b.screw({
    name,
    head: 'sunk',
    size: b.layout.spec.screws.fix,
    length: tab.screwLength,
    matrix,
    overlaps: [formedOverlap(b.layout, { with: into, engaged: tab.engaged, standing })],
    into: { kind: 'formed', part: into, engaged: tab.engaged },
    tipRoom: tab.thickness + 1 - tab.engaged,
    when: 'at its step',
    through: [rail],
  });
}
