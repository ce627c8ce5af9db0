/** Where a kit is put together: parts are drawn once, placements, screws and steps are added in order. */
import { hexKeyFor, threads } from '../components/index.js';
import type { HexKey, ScrewSize } from '../components/types.js';
import { grown, side } from '../layout/fits.js';
import type { Layout } from '../layout/layout.js';
import type { AtPoses } from '../layout/types.js';
import { drawCapScrew, drawNut, drawSetScrew, drawSunkScrew } from '../parts/bought.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { apply, applyDirection } from '../solid/matrix.js';
import type { Matrix, Vec3 } from '../solid/mesh.js';
import type {
  Beam,
  Fit,
  Handling,
  Kit,
  KitLegend,
  MeantOverlap,
  Move,
  Part,
  Placement,
  Pose,
  Reach,
  Screw,
  Step,
} from './types.js';

export type ScrewHead = 'cap' | 'sunk' | 'set';

export interface PlaceOptions {
  readonly name: string;
  readonly part: string;
  readonly matrix: Matrix;
  readonly rides?: Placement['rides'];
  readonly touches?: readonly string[];
  readonly overlaps?: readonly MeantOverlap[];
  readonly afterAlignment?: boolean;
}

export interface ScrewOptions extends Omit<PlaceOptions, 'part'> {
  readonly head: ScrewHead;
  readonly size: ScrewSize;
  readonly length: number;
  readonly into: Screw['into'];
  readonly tipRoom: number | null;
  readonly when: Screw['tool']['when'];
  /** Turned with the key's short arm, where the long one has no room. */
  readonly shortArm?: boolean;
  /** What the shank passes and the head bears on. */
  readonly through: readonly string[];
}

/** A part that stands otherwise in the kit than as printed. */
export interface Posed {
  readonly solid: Solid;
  readonly posed: Readonly<Record<Pose, Solid>>;
  readonly springCut: AtPoses<Solid>;
}

export interface Bench {
  readonly k: Kernel;
  readonly layout: Layout;
  /** @returns the part's id; drawn at the first call only */
  printed(id: string, title: string, draw: () => Solid): string;
  posed(id: string, title: string, draw: () => Posed): string;
  bought(part: Omit<Part, 'kind' | 'posed' | 'solid'>, draw: () => Solid): string;
  place(options: PlaceOptions): string;
  screw(options: ScrewOptions): string;
  nut(size: ScrewSize): string;
  fit(options: Omit<Fit, 'wanted'>): void;
  handle(handling: Handling): void;
  reach(reach: Reach): void;
  beam(beam: Beam): void;
  legend(legend: KitLegend): void;
  step(title: string, options: Omit<Step, 'step' | 'title'>): void;
  kit(): Kit;
}

const STEEL = 7.85;
const STANDARD: Record<ScrewHead, readonly [id: string, title: string, standard: string]> = {
  cap: ['cap-screw', 'socket head cap screw', 'ISO 4762'],
  sunk: ['countersunk-screw', 'countersunk socket screw', 'ISO 10642'],
  set: ['set-screw', 'set screw, flat point', 'ISO 4026'],
};

export function bench(k: Kernel, layout: Layout): Bench {
  const parts = new Map<string, Part>();
  const placements: Placement[] = [];
  const screws: Screw[] = [];
  const fits: Fit[] = [];
  const handling: Handling[] = [];
  const reaches: Reach[] = [];
  const beams: Beam[] = [];
  const legends: KitLegend[] = [];
  const steps: Step[] = [];
  const { spec } = layout;
  type Drawn = Pick<Part, 'solid' | 'posed' | 'springCut'>;
  // What a part is drawn from is let go as soon as it is drawn.
  const alone = (draw: () => Drawn): Drawn => {
    if (!k.scope) return draw();
    return k.scope(() => {
      const drawn = draw();
      const { solid, posed, springCut } = drawn;
      const cuts = springCut === undefined ? [] : [springCut.printed, ...Object.values(springCut.posed)];
      return { keep: [solid, ...Object.values(posed ?? {}), ...cuts], value: drawn };
    });
  };
  const addPrinted = (id: string, title: string, draw: () => Drawn) => {
    if (!parts.has(id))
      parts.set(id, {
        id,
        title,
        kind: 'printed',
        material: spec.material.name,
        densityGcm3: spec.material.plastic.densityGcm3.value,
        ...alone(draw),
        order: null,
      });
    return id;
  };

  const self: Bench = {
    k,
    layout,
    printed: (id, title, draw) => addPrinted(id, title, () => ({ solid: draw(), posed: null })),
    posed: addPrinted,
    bought(part, draw) {
      if (!parts.has(part.id))
        parts.set(part.id, { ...part, kind: 'bought', ...alone(() => ({ solid: draw(), posed: null })) });
      return part.id;
    },
    place({ name, part, matrix, rides = null, touches = [], overlaps = [], afterAlignment = false }) {
      placements.push({ name, part, matrix, rides, touches, overlaps, ...(afterAlignment ? { afterAlignment } : {}) });
      return name;
    },
    nut(size) {
      return self.bought(
        {
          id: `nut-${size.toLowerCase()}`,
          title: `hexagon nut ${size}`,
          material: 'steel',
          densityGcm3: STEEL,
          order: { standard: 'ISO 4032', size, lengthMm: null },
        },
        () => drawNut(k, size),
      );
    },
    screw(options) {
      const { head, size, length, into, through, matrix } = options;
      const [stem, title, standard] = STANDARD[head];
      const shape = { size, length };
      const part = self.bought(
        {
          id: `${stem}-${size.toLowerCase()}x${length}`,
          title: `${title} ${size} × ${length}`,
          material: 'steel',
          densityGcm3: STEEL,
          order: { standard, size, lengthMm: length },
        },
        () =>
          head === 'cap' ? drawCapScrew(k, shape) : head === 'sunk' ? drawSunkScrew(k, shape) : drawSetScrew(k, shape),
      );
      const held = into.kind === 'nut' ? into.nut : into.part;
      self.place({ ...options, part, touches: [...(options.touches ?? []), ...through, held] });
      const { key, name: tool } = hexKey(size, head);
      screws.push({
        placement: options.name,
        size,
        lengthMm: length,
        head: apply(matrix, [0, 0, 0]),
        direction: applyDirection(matrix, [0, 0, -1]),
        into,
        tipRoom: options.tipRoom,
        tool: {
          name: tool,
          diameter: key.corners.value,
          reach: options.shortArm ? key.shortArm.value : key.longArm.value,
          when: options.when,
        },
      });
      return options.name;
    },
    fit(options) {
      fits.push({ ...options, wanted: side(spec, options.fitClass) });
    },
    handle(one) {
      handling.push(one);
    },
    reach(one) {
      reaches.push(one);
    },
    beam(beam) {
      beams.push(beam);
    },
    legend(legend) {
      legends.push(legend);
    },
    step(title, options) {
      steps.push({ step: steps.length + 1, title, ...options });
    },
    kit: () => ({ parts, placements, screws, fits, handling, reaches, legends, beams, assembly: steps }),
  };
  return self;
}

/** The hexagon key for a screw's socket. */
export function hexKey(size: ScrewSize, head: ScrewHead): { readonly key: HexKey; readonly name: string } {
  const thread = threads[size];
  const flats = (head === 'cap' ? thread.capKey : head === 'sunk' ? thread.sunkKey : thread.setKey).value;
  return { key: hexKeyFor(flats), name: `hex key ${flats}` };
}

/** The key for the countersunk screws that hold the frame. */
export const fixKey = ({ layout }: Bench): string => hexKey(layout.spec.screws.fix, 'sunk').name;

/** What a screw's thread may share with the plastic it is formed in: the ring between pilot and thread, and a little. */
export function formedOverlap(
  layout: Layout,
  {
    with: name,
    engaged,
    standing,
    size = layout.spec.screws.fix,
  }: { readonly with: string; readonly engaged: number; readonly standing: boolean; readonly size?: ScrewSize },
): MeantOverlap {
  const thread = threads[size];
  const pilot = standing ? grown(layout.spec, thread.pilot.value) : thread.pilot.value;
  // A hole drawn as wide as the thread shares nothing with it: it prints smaller.
  const ring = Math.max(0, (Math.PI / 4) * (thread.diameter.value ** 2 - pilot ** 2) * engaged);
  return { with: name, most: Math.round((ring * 1.05 + 0.2) * 100) / 100, why: 'the screw forms its own thread' };
}

/** One straight move in the assembly's axes, or in another placement's. */
export const move = (
  placement: string,
  direction: Vec3,
  travel: number,
  { tool = null, inFrameOf = null }: { readonly tool?: string | null; readonly inFrameOf?: string | null } = {},
): Move => ({ placement, direction, travel, tool, inFrameOf });
