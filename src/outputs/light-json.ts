/** The light's budget as data: degrees, mm, shares from 0 to 1. */
import type { LightBudget } from '../layout/light/budget.js';
import type { GridSamples } from '../layout/light/sample-grids.js';
import type { Hit } from '../optics/finger-hit.js';
import { deg } from '../units.js';
import { type Json, tidy } from './json-text.js';

export function lightJson({ aim, levers, exit, signal, finger }: LightBudget): Json {
  const { inputs } = aim;
  return {
    boresight_sigma_deg: tidy(deg(inputs.boresight)),
    lean_deg: tidy(deg(inputs.wedge)),
    mount_error_sigma_deg: tidy(deg(inputs.mountError)),
    tilt_deg: tidy(deg(inputs.tilt)),
    warp_deg: tidy(deg(inputs.warp)),
    slide_mm: tidy(inputs.slide),
    exit_mm: exit.map((v) => tidy(v)),
    lines: aim.lines.map(({ line, count, distance, lever, tolerance, chance, all, step }) => ({
      line,
      count,
      distance_mm: tidy(distance),
      lever_mm: tidy(lever),
      tolerance_mm: tidy(tolerance),
      chance: tidy(chance),
      all: tidy(all),
      mm_per_turn: tidy(step.perTurn),
      deg_per_turn: tidy(deg(step.angle)),
    })),
    all: tidy(aim.all),
    emitters_needed: aim.needed,
    emitters_to_buy: aim.buy,
    signal: {
      response: tidy(signal.response),
      lit_from_ma: tidy(signal.levels.lit),
      dark_below_ma: tidy(signal.levels.dark),
      pull_up_ohm: [signal.pullUp.least, signal.pullUp.most].map((v) => (Number.isFinite(v) ? tidy(v, 0) : null)),
      ambient_diffuse_ma: tidy(signal.ambient.diffuse),
      ambient_direct_ma: tidy(signal.ambient.direct),
      diffuse_cut_to: tidy(1 / signal.rejection),
      cut_off_deg: tidy(deg(signal.cutOff)),
      lines: signal.lines.map(({ line, w, lit, toTake, staysLit }) => ({
        line,
        beam_radius_mm: tidy(w),
        lit_ma: tidy(lit),
        share_to_take: toTake === null ? null : tidy(toTake),
        stays_lit_mm: tidy(staysLit),
      })),
    },
    fingers:
      finger === null
        ? null
        : {
            axes: finger.axes.map(({ axis, pitch, scatter, overlap, fingers, advice }) => ({
              axis,
              pitch_mm: tidy(pitch),
              scatter_mm: tidy(scatter),
              overlap_mm: tidy(overlap),
              least_pitch_mm: advice?.least?.pitch ?? null,
              best_pitch_mm: advice?.best.pitch ?? null,
              fingers: fingers.map(({ breadth, atBeam, reach, hit }) => ({
                breadth_mm: breadth,
                at_beam_mm: tidy(atBeam),
                reach_mm: reach === null ? null : tidy(reach),
                ...hitJson(hit),
              })),
            })),
            keys: finger.keys.map(({ breadth, hit }) => ({ breadth_mm: breadth, ...hitJson(hit) })),
          },
    levers: levers.map(({ path, change, all }) => ({ path, change, all: tidy(all) })),
  };
}

const hitJson = ({ aimed, double, wrong, none }: Hit) => ({
  aimed: tidy(aimed),
  double: tidy(double),
  wrong: tidy(wrong),
  none: tidy(none),
});

/** Grids that were drawn, beside the budget. */
export const samplesJson = ({ grids, seed, lines, all }: GridSamples): Json => ({
  grids,
  seed,
  lines: lines.map(({ line, share, error, chance }) => ({
    line,
    drawn: tidy(share),
    standard_error: tidy(error),
    budget: tidy(chance),
  })),
  all: { drawn: tidy(all.share), standard_error: tidy(all.error), budget: tidy(all.chance) },
});
