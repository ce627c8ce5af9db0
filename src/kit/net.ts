/** A wire of the panel, before and after its length is known. */

/** A wire as it is soldered, before its length is known. */
export interface Net {
  /** `W1`, `W2` …: emitters, receivers, multiplexers, switches, controller, source. */
  readonly id: string;
  /** What the program looks it up by: `row-0 receiver signal`, `multiplexer 1 A0`. */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** American wire gauge. */
  readonly gauge: number;
  /** The beam and the end whose way along the rails it goes; null: within the electronics. */
  readonly along: { readonly beam: string; readonly end: 'emitter' | 'receiver' } | null;
}

export interface Wire extends Net {
  /** As it is cut, to a whole centimetre [mm]; null where the kit has no such beam. */
  readonly length: number | null;
}
